#include "text/swatch_fields.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "text/paint_fields.h"

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))
#define MOST_SIDE 8192 /* of a photograph, in pixels */
#define LEAST_PIXELS 16

recede_text_status recede_list_check(recede_reader *reader, size_t value, const char *expected,
                                     size_t most)
{
    char why[60];
    if (!cJSON_IsArray(recede_tree_item(reader->tree, value)))
        return recede_refuse_value(reader, value, expected);
    size_t count = recede_tree_count(reader->tree, value);
    if (count > 0 && count <= most)
        return RECEDE_TEXT_OK;
    snprintf(why, sizeof why, count ? "it holds %zu, at most %zu are taken" : "it is empty",
             count, most);
    return recede_refuse_because(reader, value, why, expected);
}

/* ---- patches */

/* [left, top, width, height] */
static recede_text_status read_patch(recede_reader *reader, size_t value,
                                     const recede_field *field, void *at)
{
    static const double least[] = {0, 0, 1, 1};
    double side[4];
    recede_text_status status = recede_read_numbers(reader, value, field, side, 4);
    for (size_t i = 0; !status && i < 4; i++)
        if (!(side[i] >= least[i] && side[i] <= MOST_SIDE && side[i] == floor(side[i])))
            status = recede_refuse_value(reader, recede_tree_element(reader->tree, value, i),
                                         "whole pixels within a photograph, at most 8192");
    if (status)
        return status;
    if (side[2] * side[3] < LEAST_PIXELS)
        return recede_refuse_because(reader, value, "fewer than 16 pixels lie in it",
                                     "a rectangle well inside the swatch, the larger the better");
    *(recede_patch *)at = (recede_patch){(size_t)side[0], (size_t)side[1], (size_t)side[2],
                                         (size_t)side[3], 0};
    return RECEDE_TEXT_OK;
}

static const recede_form form_patch = {"four whole numbers [left, top, width, height] in pixels",
                                       "", read_patch, NULL};

/* ---- numbers with limits */

static recede_text_status read_within(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at, double least,
                                      double most)
{
    double number = 0;
    recede_text_status status = recede_form_number.read(reader, value, field, &number);
    if (!status && !(number >= least && number <= most))
        status = recede_refuse_value(reader, value, field->form->expected);
    *(double *)at = number;
    return status;
}

static recede_text_status read_water(recede_reader *reader, size_t value,
                                     const recede_field *field, void *at)
{
    return read_within(reader, value, field, at, 0, 1000);
}

static recede_text_status read_white_parts(recede_reader *reader, size_t value,
                                           const recede_field *field, void *at)
{
    return read_within(reader, value, field, at, 0, 100);
}

static recede_text_status read_card_reflectance(recede_reader *reader, size_t value,
                                                const recede_field *field, void *at)
{
    return read_within(reader, value, field, at, 0.02, 1);
}

static const recede_form form_water = {"so much water to 1 of paint, from 0 (masstone) to 1000",
                                       "", read_water, NULL};
static const recede_form form_white_parts = {
    "so much white to 1 of paint, from 0 (masstone) to 100", "", read_white_parts, NULL};
static const recede_form form_card_reflectance = {
    "the card's reflectance from 0.02 to 1, such as 0.18", "", read_card_reflectance, NULL};

/* ---- the white of opaque media */

static recede_text_status refuse_white(recede_reader *reader, size_t value, const char *name)
{
    recede_nearest nearest;
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        recede_paint paint;
        const char *known = recede_pigment_at(i)->name;
        if (recede_paint_named(known, &paint, NULL) == RECEDE_OK && paint.is_white)
            recede_nearest_offer(&nearest, known);
    }
    return recede_refuse_unknown(reader, value, "the white", &nearest);
}

static recede_text_status read_white(recede_reader *reader, size_t value,
                                     const recede_field *field, void *at)
{
    recede_paint *white = at;
    const cJSON *item = recede_tree_item(reader->tree, value);
    if (!cJSON_IsString(item))
        return recede_refuse_value(reader, value, field->form->expected);
    if (recede_paint_named(item->valuestring, white, NULL) != RECEDE_OK || !white->is_white)
        return refuse_white(reader, value, item->valuestring);
    return RECEDE_TEXT_OK;
}

const recede_form recede_form_white = {"the name of a white, such as \"titanium white\"", "",
                                       read_white, NULL};

/* ---- sources */

static const char *const source_keys[RECEDE_SOURCES] = {"reflectance", "lab", "colour", "sample",
                                                        "patch"};

const char *recede_source_key(recede_source_kind kind)
{
    return source_keys[kind];
}

static recede_text_status finish_source(recede_reader *reader, size_t value,
                                        recede_source *source, const char *owner)
{
    recede_text_status status = recede_fields_one_of(reader, value, source_keys, RECEDE_SOURCES,
                                                     owner, "reading");
    for (int kind = 0; !status && kind < RECEDE_SOURCES; kind++) {
        size_t given = recede_tree_member(reader->tree, value, source_keys[kind]);
        if (given == RECEDE_TREE_NONE)
            continue;
        source->kind = (recede_source_kind)kind;
        source->place = recede_tree_place(reader->tree, given)->value;
    }
    return status;
}

#define SOURCE_FIELDS(type, start)                                                               \
    {"reflectance", &recede_form_reflectance, .offset = offsetof(type, start own)},              \
    {"lab", &recede_form_lab, .offset = offsetof(type, start own)},                              \
    {"colour", &recede_form_colour, .offset = offsetof(type, start own)},                        \
    {"sample", &recede_form_name, .offset = offsetof(type, start sample)},                       \
    {"patch", &form_patch, .offset = offsetof(type, start patch)}

/* A colour that no surface has would teach a film nonsense. */
static recede_text_status finish_paper(recede_reader *reader, size_t value, void *base)
{
    recede_source *source = base;
    recede_text_status status = finish_source(reader, value, source, "the paper");
    if (status || source->kind != RECEDE_SOURCE_LAB)
        return status;
    if (recede_smooth_of_xyz(recede_xyz_of_lab(source->own.lab, recede_white())).reached)
        return RECEDE_TEXT_OK;
    return recede_refuse_because(reader, recede_tree_member(reader->tree, value, "lab"),
                                 "no surface has that colour", "a colour measured on the paper");
}

static const recede_field paper_list[] = {SOURCE_FIELDS(recede_source, )};
const recede_fields recede_paper_source_fields = {"the paper", paper_list, COUNT(paper_list),
                                                  finish_paper};

/* ---- the card */

static const recede_field card_list[] = {
    {"reflectance", &form_card_reflectance, .offset = offsetof(recede_card, reflectance),
     .required = 1},
    {"patch", &form_patch, .offset = offsetof(recede_card, patch), .required = 1},
};

static recede_text_status finish_card(recede_reader *reader, size_t value, void *base)
{
    recede_card *card = base;
    (void)reader;
    (void)value;
    card->patch.reflectance = card->reflectance;
    return RECEDE_TEXT_OK;
}

const recede_fields recede_card_fields = {"a patch of the card", card_list, COUNT(card_list),
                                          finish_card};

/* ---- swatches */

static recede_text_status finish_swatch(recede_reader *reader, size_t value, void *base)
{
    recede_painted_swatch *swatch = base;
    return finish_source(reader, value, &swatch->source, "a swatch");
}

static const recede_field swatch_list[] = {
    {"water", &form_water, .offset = offsetof(recede_painted_swatch, water)},
    {"white", &form_white_parts, .offset = offsetof(recede_painted_swatch, white)},
    SOURCE_FIELDS(recede_painted_swatch, source.),
};
static const recede_fields swatch_fields = {"a swatch", swatch_list, COUNT(swatch_list),
                                            finish_swatch};

static recede_text_status read_swatches(recede_reader *reader, size_t value,
                                        const recede_field *field, void *at)
{
    recede_painted *paint = at;
    const recede_tree *tree = reader->tree;
    recede_text_status status =
        recede_list_check(reader, value, field->form->expected, RECEDE_MOST_SWATCHES);
    size_t end = recede_tree_end(tree, value);
    for (size_t c = recede_tree_first(tree, value); !status && c < end;
         c = recede_tree_next(tree, c)) {
        recede_painted_swatch *swatch = &paint->swatches[paint->count++];
        swatch->place = recede_tree_place(tree, c)->value;
        swatch->water = swatch->white = NAN;
        status = recede_fields_read(reader, c, &swatch_fields, swatch);
    }
    return status;
}

static const recede_form form_swatches = {
    "a list of up to 24 swatches: the masstone and two or more thinner ones", "", read_swatches,
    NULL};

/* ---- a paint: as in a pigment file, but with swatches for K and S */

static recede_text_status finish_painted(recede_reader *reader, size_t value, void *base)
{
    recede_painted *paint = base;
    return recede_pigment_fields.finish(reader, value, &paint->pigment);
}

#define PIGMENT(member) offsetof(recede_painted, pigment.member)
static const recede_field painted_list[] = {
    {"name", &recede_form_name, .offset = PIGMENT(paint.name), .required = 1},
    {"colour_index", &recede_form_title, .offset = PIGMENT(paint.colour_index)},
    {"transparency", &recede_form_title, .offset = PIGMENT(transparency)},
    {"permanence", &recede_form_title, .offset = PIGMENT(permanence)},
    {"caution", &recede_form_title, .offset = PIGMENT(paint.caution)},
    {"source", &recede_form_title, .offset = PIGMENT(source)},
    {"is_white", &recede_form_truth, .offset = PIGMENT(paint.is_white)},
    {"swatches", &form_swatches, .offset = 0, .required = 1},
};
const recede_fields recede_painted_fields = {"a paint", painted_list, COUNT(painted_list),
                                             finish_painted};
