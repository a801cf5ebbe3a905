/* Objects of a scene file, read and written by their fields. */
#include <stdio.h>
#include <string.h>

#include "text/nearest.h"
#include "text/scene_fields.h"

static const recede_field *field_named(const recede_fields *fields, const char *key)
{
    for (size_t i = 0; i < fields->count; i++)
        if (strcmp(fields->list[i].key, key) == 0)
            return &fields->list[i];
    return NULL;
}

static recede_text_status refuse_key(recede_reader *reader, size_t value,
                                     const recede_fields *fields)
{
    char offer[3 * RECEDE_NAME_SIZE];
    const char *key = recede_tree_item(reader->tree, value)->string;
    recede_place place = recede_tree_place(reader->tree, value)->key;
    recede_nearest nearest;
    recede_nearest_start(&nearest, key);
    for (size_t i = 0; i < fields->count; i++)
        recede_nearest_offer(&nearest, fields->list[i].key);
    recede_nearest_say(&nearest, offer, sizeof offer);
    return recede_text_refuse(reader->error, place.line, place.column,
                              "the key \"%s\" is not known in %s; %s", key, fields->called,
                              offer);
}

static recede_text_status check_required(recede_reader *reader, size_t value,
                                         const recede_fields *fields)
{
    recede_place place = recede_tree_place(reader->tree, value)->value;
    for (size_t i = 0; i < fields->count; i++) {
        const recede_field *field = &fields->list[i];
        if (field->required &&
            recede_tree_member(reader->tree, value, field->key) == RECEDE_TREE_NONE)
            return recede_text_refuse(reader->error, place.line, place.column,
                                      "%s has no \"%s\"; add it: %s", fields->called, field->key,
                                      field->form->expected);
    }
    return RECEDE_TEXT_OK;
}

recede_text_status recede_fields_read(recede_reader *reader, size_t value,
                                      const recede_fields *fields, void *base)
{
    const recede_tree *tree = reader->tree;
    size_t end = recede_tree_end(tree, value);
    if (!cJSON_IsObject(recede_tree_item(tree, value))) {
        char expected[80];
        snprintf(expected, sizeof expected, "%s as an object in braces", fields->called);
        return recede_refuse_value(reader, value, expected);
    }
    for (size_t c = recede_tree_first(tree, value); c < end; c = recede_tree_next(tree, c)) {
        const recede_field *field = field_named(fields, recede_tree_item(tree, c)->string);
        recede_text_status status =
            field ? field->form->read(reader, c, field, (char *)base + field->offset)
                  : refuse_key(reader, c, fields);
        if (status)
            return status;
    }
    recede_text_status status = check_required(reader, value, fields);
    if (!status && fields->finish)
        status = fields->finish(reader, value, base);
    return status;
}

/* "horizon", "light" or "lab" */
static void list_keys(const char *const *keys, size_t count, char *out, size_t size)
{
    size_t used = 0;
    for (size_t i = 0; i < count && used < size; i++) {
        const char *between = i == 0 ? "" : i + 1 < count ? ", " : " or ";
        int length = snprintf(out + used, size - used, "%s\"%s\"", between, keys[i]);
        used += length > 0 ? (size_t)length : 0;
    }
}

recede_text_status recede_fields_one_of(recede_reader *reader, size_t value,
                                        const char *const *keys, size_t count,
                                        const char *owner, const char *thing)
{
    size_t first = RECEDE_TREE_NONE;
    for (size_t i = 0; i < count; i++) {
        size_t given = recede_tree_member(reader->tree, value, keys[i]);
        if (given == RECEDE_TREE_NONE)
            continue;
        if (first != RECEDE_TREE_NONE) {
            size_t later = given > first ? given : first, sooner = given > first ? first : given;
            recede_place place = recede_tree_place(reader->tree, later)->key;
            return recede_text_refuse(reader->error, place.line, place.column,
                                      "found \"%s\" beside \"%s\"; %s has one %s: keep one",
                                      recede_tree_item(reader->tree, later)->string,
                                      recede_tree_item(reader->tree, sooner)->string, owner,
                                      thing);
        }
        first = given;
    }
    if (first != RECEDE_TREE_NONE)
        return RECEDE_TEXT_OK;
    char all[120];
    recede_place place = recede_tree_place(reader->tree, value)->value;
    list_keys(keys, count, all, sizeof all);
    return recede_text_refuse(reader->error, place.line, place.column, "%s has no %s; add %s",
                              owner, thing, all);
}

void recede_fields_write(recede_json *json, const recede_fields *fields, const void *base)
{
    for (size_t i = 0; i < fields->count; i++) {
        const recede_field *field = &fields->list[i];
        if (!field->written || field->written(base))
            field->form->write(json, field, (const char *)base + field->offset);
    }
}

static recede_text_status read_object(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    return recede_fields_read(reader, value, field->inside, at);
}

static void write_object(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_object(json, field->key);
    recede_fields_write(json, field->inside, at);
    recede_json_end_object(json);
}

const recede_form recede_form_object = {"an object in braces", "", read_object, write_object};

const recede_field *recede_field_of_path(const char *path)
{
    const recede_fields *fields = &recede_scene_fields;
    const recede_field *field = NULL;
    char name[RECEDE_NAME_SIZE];
    while (*path) {
        size_t length = strcspn(path, ".[");
        if (!fields || length >= sizeof name)
            return NULL;
        memcpy(name, path, length);
        name[length] = '\0';
        field = field_named(fields, name);
        if (!field)
            return NULL;
        fields = field->inside;
        path += length;
        path += strcspn(path, "."); /* over an index */
        path += *path == '.';
    }
    return field;
}
