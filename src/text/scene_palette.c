/* A scene's palette: the name of a built-in one, or a list of paints. */
#include <stdio.h>
#include <string.h>

#include "text/nearest.h"
#include "text/scene_fields.h"

static recede_text_status refuse_unknown(recede_reader *reader, size_t value, const char *what,
                                         const recede_nearest *nearest)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_place place = recede_tree_place(reader->tree, value)->value;
    recede_nearest_say(nearest, offer, sizeof offer);
    return recede_text_refuse(reader->error, place.line, place.column, "%s \"%s\" is not known; %s",
                              what, nearest->found, offer);
}

static recede_text_status read_named(recede_reader *reader, size_t value, const char *name)
{
    if (recede_scene_use_palette(reader->scene, name, NULL) == RECEDE_OK)
        return RECEDE_TEXT_OK;
    recede_nearest nearest;
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        recede_nearest_offer(&nearest, recede_palette_entry_at(i)->name);
    return refuse_unknown(reader, value, "the palette", &nearest);
}

static recede_text_status refuse_paint(recede_reader *reader, size_t value, const char *name)
{
    recede_nearest nearest;
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        recede_nearest_offer(&nearest, recede_pigment_at(i)->name);
        recede_nearest_offer(&nearest, recede_pigment_at(i)->colour_index);
    }
    for (size_t i = 0; i < recede_tube_count(); i++)
        recede_nearest_offer(&nearest, recede_tube_name_at(i));
    return refuse_unknown(reader, value, "the paint", &nearest);
}

static recede_text_status read_paint(recede_reader *reader, size_t value)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    recede_scene *scene = reader->scene;
    recede_place place = recede_tree_place(reader->tree, value)->value;
    if (!cJSON_IsString(item))
        return recede_refuse_value(reader, value, "the name of a paint in double quotes");
    if (scene->paint_count == RECEDE_MOST_PAINTS)
        return recede_text_refuse(reader->error, place.line, place.column,
                                  "found one paint too many; a palette has at most %d",
                                  RECEDE_MOST_PAINTS);
    recede_paint *paint = &scene->paints[scene->paint_count];
    if (recede_paint_named(item->valuestring, paint, NULL) != RECEDE_OK)
        return refuse_paint(reader, value, item->valuestring);
    for (size_t i = 0; i < scene->paint_count; i++)
        if (strcmp(scene->paints[i].name, paint->name) == 0)
            return recede_text_refuse(reader->error, place.line, place.column,
                                      "the paint \"%s\" stands twice in the palette; keep one",
                                      paint->name);
    scene->paint_count++;
    return RECEDE_TEXT_OK;
}

static recede_text_status read_palette(recede_reader *reader, size_t value,
                                       const recede_field *field, void *at)
{
    const recede_tree *tree = reader->tree;
    const cJSON *item = recede_tree_item(tree, value);
    recede_scene *scene = at;
    if (cJSON_IsString(item))
        return read_named(reader, value, item->valuestring);
    if (!cJSON_IsArray(item))
        return recede_refuse_value(reader, value, field->form->expected);
    if (recede_tree_count(tree, value) == 0)
        return recede_refuse_because(reader, value, "it is empty", field->form->expected);
    scene->palette[0] = '\0';
    scene->paint_count = 0;
    size_t end = recede_tree_end(tree, value);
    for (size_t c = recede_tree_first(tree, value); c < end; c = recede_tree_next(tree, c)) {
        recede_text_status status = read_paint(reader, c);
        if (status)
            return status;
    }
    return RECEDE_TEXT_OK;
}

static void write_palette(recede_json *json, const recede_field *field, const void *at)
{
    const recede_scene *scene = at;
    if (scene->palette[0]) {
        recede_json_string(json, field->key, scene->palette);
        return;
    }
    recede_json_array(json, field->key);
    for (size_t i = 0; i < scene->paint_count; i++)
        recede_json_string(json, NULL, scene->paints[i].name);
    recede_json_end_array(json);
}

const recede_form recede_form_palette = {
    "the name of a palette, such as \"landscape-twelve\", or a list of at least one paint", "",
    read_palette, write_palette};
