/* A plane's own colour as a mix of the scene's paints. */
#include <math.h>
#include <string.h>

#include "text/nearest.h"
#include "text/paint_name.h"
#include "text/scene_fields.h"

static const char water[] = "water";
static const double most_water = 1000.0;

static int is_water(const recede_tree *tree, size_t value)
{
    return strcmp(recede_tree_item(tree, value)->string, water) == 0;
}

/* ---- what can be told without the palette */

static recede_text_status check_number(recede_reader *reader, size_t value, int *parts,
                                       int *paints)
{
    int numeric = cJSON_IsNumber(recede_tree_item(reader->tree, value));
    double number = numeric ? recede_tree_number(reader->tree, value) : -1.0;
    if (is_water(reader->tree, value))
        return number >= 0.0 && number <= most_water
                   ? RECEDE_TEXT_OK
                   : recede_refuse_value(reader, value, "parts of water to one of paint, 0 to "
                                                        "1000");
    if (!(number >= 1.0 && number <= RECEDE_MOST_PARTS && number == floor(number)))
        return recede_refuse_value(reader, value, "whole parts, 1 to 12");
    *parts += (int)number;
    ++*paints;
    if (*parts > RECEDE_MOST_PARTS)
        return recede_refuse_because(reader, value, "that makes over 12 parts of paint in all",
                                     "1 to 12 in all");
    if (*paints > RECEDE_MOST_IN_MIX)
        return recede_refuse_because(reader, value, "this is the fifth paint",
                                     "1 to 4 paints in a mix");
    return RECEDE_TEXT_OK;
}

static recede_text_status read_mix(recede_reader *reader, size_t value, const recede_field *field,
                                   void *at)
{
    const recede_tree *tree = reader->tree;
    size_t end = recede_tree_end(tree, value);
    int parts = 0, paints = 0;
    recede_own *own = at;
    if (!cJSON_IsObject(recede_tree_item(tree, value)))
        return recede_refuse_value(reader, value, field->form->expected);
    for (size_t c = recede_tree_first(tree, value); c < end; c = recede_tree_next(tree, c)) {
        recede_text_status status = check_number(reader, c, &parts, &paints);
        if (status)
            return status;
    }
    if (paints == 0)
        return recede_refuse_because(reader, value, "no paint stands in it",
                                     field->form->expected);
    own->kind = RECEDE_OWN_MIX;
    return RECEDE_TEXT_OK;
}

/* Never called: recede_own_mix_write knows the paints. */
const recede_form recede_form_mix = {
    "whole parts of the scene's paints, such as {\"hansa yellow\": 3, \"ultramarine blue\": 1}",
    "", read_mix, NULL};

/* ---- its paints */

static recede_text_status refuse_paint(recede_reader *reader, size_t value, int found)
{
    char offer[3 * RECEDE_NAME_SIZE];
    const recede_scene *scene = reader->scene;
    const char *name = recede_tree_item(reader->tree, value)->string;
    recede_place place = recede_tree_place(reader->tree, value)->key;
    recede_nearest nearest;
    if (found == RECEDE_PAINT_MANY)
        return recede_text_refuse(reader->error, place.line, place.column,
                                  "several paints of the scene's palette answer to \"%s\"; give "
                                  "one by its own name", name);
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < scene->paint_count; i++)
        recede_nearest_offer(&nearest, scene->paints[i].name);
    recede_nearest_say(&nearest, offer, sizeof offer);
    return recede_text_refuse(reader->error, place.line, place.column,
                              "the scene's palette has no paint \"%s\"; %s", name, offer);
}

/* The mix lists its paints in the palette's order. */
static recede_text_status add_paint(recede_reader *reader, size_t value, recede_mix *mix)
{
    const recede_scene *scene = reader->scene;
    const char *name = recede_tree_item(reader->tree, value)->string;
    int found = recede_paint_meant(scene->paints, scene->paint_count, name), at = mix->count;
    recede_place place = recede_tree_place(reader->tree, value)->key;
    if (found < 0)
        return refuse_paint(reader, value, found);
    for (int i = 0; i < mix->count; i++)
        if (mix->paint[i] == found)
            return recede_text_refuse(reader->error, place.line, place.column,
                                      "\"%s\" is the paint \"%s\", which stands before; add the "
                                      "parts up", name, scene->paints[found].name);
    for (; at > 0 && mix->paint[at - 1] > found; at--) {
        mix->paint[at] = mix->paint[at - 1];
        mix->parts[at] = mix->parts[at - 1];
    }
    mix->paint[at] = found;
    mix->parts[at] = (int)recede_tree_number(reader->tree, value);
    mix->count++;
    return RECEDE_TEXT_OK;
}

static recede_text_status take_water(recede_reader *reader, size_t value, recede_mix *mix)
{
    recede_place place = recede_tree_place(reader->tree, value)->key;
    if (reader->scene->medium != RECEDE_WATERCOLOUR)
        return recede_text_refuse(reader->error, place.line, place.column,
                                  "found \"water\", which only watercolour takes; leave it out, "
                                  "or lighten with white");
    mix->water = recede_tree_number(reader->tree, value);
    return RECEDE_TEXT_OK;
}

recede_text_status recede_mix_find(recede_reader *reader, size_t value, recede_own *own)
{
    const recede_tree *tree = reader->tree;
    size_t end = recede_tree_end(tree, value);
    recede_text_status status = RECEDE_TEXT_OK;
    memset(&own->mix, 0, sizeof own->mix);
    for (size_t c = recede_tree_first(tree, value); !status && c < end;
         c = recede_tree_next(tree, c))
        status = is_water(tree, c) ? take_water(reader, c, &own->mix)
                                   : add_paint(reader, c, &own->mix);
    return status;
}

void recede_own_mix_write(recede_json *json, const recede_scene *scene, const recede_own *own)
{
    const recede_mix *mix = &own->mix;
    recede_json_object(json, "mix");
    for (int i = 0; i < mix->count; i++)
        recede_json_whole(json, scene->paints[mix->paint[i]].name, mix->parts[i]);
    if (mix->water > 0.0)
        recede_json_number(json, water, mix->water);
    recede_json_end_object(json);
}
