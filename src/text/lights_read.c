/* A light is read as a scene of which only name, air and light may be given. */
#include "text/lights_read.h"

#include <stdio.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "text/numbers.h"
#include "text/scene_fields.h"
#include "text/scene_read.h"

enum { KEYS = 3 };

/* The scene's own fields for air and light, and its title for the name. */
static recede_fields fields_of_light(recede_field list[KEYS])
{
    static const char *const keys[KEYS] = {"name", "air", "light"};
    for (size_t i = 0; i < KEYS; i++) {
        list[i] = *recede_field_of_path(i == 0 ? "title" : keys[i]);
        list[i].key = keys[i];
    }
    list[0].form = &recede_form_name;
    list[0].required = 1;
    return (recede_fields){"a light", list, KEYS, NULL};
}

static void take(const recede_scene *filled, recede_sky_light *light)
{
    recede_copy_text(light->name, sizeof light->name, filled->title);
    light->air = filled->air;
    light->sky = filled->sky;
}

/* Names are shown side by side: two alike would only confuse. */
static recede_text_status check_name(const recede_tree *tree, size_t value,
                                     const recede_sky_light *lights, size_t index,
                                     recede_text_error *error)
{
    for (size_t i = 0; i < index; i++) {
        if (strcmp(lights[i].name, lights[index].name) != 0)
            continue;
        recede_place place = recede_tree_place(tree, value)->value;
        return recede_text_refuse(error, place.line, place.column,
                                  "the name \"%s\" stands twice; give each its own",
                                  lights[index].name);
    }
    return RECEDE_TEXT_OK;
}

/* An error about "air.visibility" stands where "lights[2].air.visibility" is.
 * Only numbers can be wrong here: all else was checked with the scene. */
static recede_text_status explain(const recede_tree *tree, size_t index, const recede_error *core,
                                  recede_text_error *error)
{
    char path[sizeof core->path + 16], found[RECEDE_SHOWN_SIZE], least[RECEDE_NUMBER_SIZE],
        most[RECEDE_NUMBER_SIZE];
    int whole;
    const recede_field *field = recede_field_of_path(core->path);
    recede_path_index(path, sizeof path, "lights", index, core->path);
    size_t value = recede_tree_find(tree, path, &whole);
    recede_place place = recede_tree_place(tree, value)->value;
    const char *unit = field ? field->form->unit : "";
    if (core->code == RECEDE_NO_MEMORY)
        return recede_text_no_memory(error);
    recede_show_value(tree, value, found);
    recede_number_trimmed(least, core->least, 6);
    recede_number_trimmed(most, core->most, 6);
    return recede_text_refuse(error, place.line, place.column, "%s is %s; expected %s%s to %s%s",
                              field ? field->key : core->path, found, least, unit, most, unit);
}

typedef struct {
    const recede_tree *tree;
    const recede_scene *scene;
    recede_scene *filled;
    recede_sky_light *lights;
    recede_text_error *error;
} reading;

static recede_text_status read_light(const reading *r, size_t value, size_t index)
{
    recede_field list[KEYS];
    const recede_fields fields = fields_of_light(list);
    recede_reader reader = {.tree = r->tree, .scene = r->filled, .error = r->error,
                            .name = ""};
    recede_error core;
    recede_scene_default(r->filled);
    recede_sky clear = r->filled->sky;
    *r->filled = *r->scene;
    r->filled->sky = clear;
    recede_text_status status = recede_fields_read(&reader, value, &fields, r->filled);
    if (!status && recede_scene_check(r->filled, &core))
        return explain(r->tree, index, &core, r->error);
    take(r->filled, &r->lights[index]);
    return status ? status : check_name(r->tree, value, r->lights, index, r->error);
}

static recede_text_status read_list(const reading *r, size_t list, size_t *count)
{
    recede_place place = recede_tree_place(r->tree, list)->value;
    size_t found = recede_tree_count(r->tree, list), end = recede_tree_end(r->tree, list);
    if (!cJSON_IsArray(recede_tree_item(r->tree, list)) || found < 1 || found > RECEDE_MOST_LIGHTS)
        return recede_text_refuse(r->error, place.line, place.column,
                                  "lights is no list of 1 to %d lights", RECEDE_MOST_LIGHTS);
    for (size_t c = recede_tree_first(r->tree, list); c < end; c = recede_tree_next(r->tree, c)) {
        recede_text_status status = read_light(r, c, *count);
        if (status)
            return status;
        ++*count;
    }
    return RECEDE_TEXT_OK;
}

/* The whole: an object with "lights" alone. */
static recede_text_status read_tree(const reading *r, size_t *count)
{
    recede_place place = recede_tree_place(r->tree, 0)->value;
    size_t list = cJSON_IsObject(recede_tree_item(r->tree, 0))
                      ? recede_tree_member(r->tree, 0, "lights") : RECEDE_TREE_NONE;
    if (list == RECEDE_TREE_NONE || recede_tree_count(r->tree, 0) != 1)
        return recede_text_refuse(r->error, place.line, place.column,
                                  "expected an object with \"lights\" and nothing else");
    return read_list(r, list, count);
}

recede_text_status recede_lights_read(const char *bytes, size_t size, const recede_scene *scene,
                                      const recede_allocator *allocator,
                                      recede_sky_light *lights, size_t *count,
                                      recede_text_error *error)
{
    recede_tree tree;
    *count = 0;
    if (size > RECEDE_SCENE_MOST_BYTES)
        return recede_text_refuse(error, 0, 0, "the lights have %zu bytes; at most %zu are read",
                                  size, RECEDE_SCENE_MOST_BYTES);
    recede_scene *filled = recede_allocate_array(allocator, 1, sizeof *filled);
    if (!filled)
        return recede_text_no_memory(error);
    recede_text_status status = recede_tree_read(bytes, size, allocator, &tree, error);
    const reading r = {&tree, scene, filled, lights, error};
    if (!status)
        status = read_tree(&r, count);
    recede_tree_free(&tree);
    recede_release(allocator, filled);
    return status;
}
