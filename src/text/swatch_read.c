#include "text/swatch_read.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "paint/names.h"
#include "text/swatch_fields.h"

/* ---- the paints */

static recede_text_status refuse_twin(recede_reader *reader, const recede_painted *paint)
{
    return recede_text_refuse(reader->error, paint->place.line, paint->place.column,
                              "the paint \"%s\" stands twice; name them apart, or put their "
                              "swatches together", paint->pigment.paint.name);
}

static recede_text_status read_paints(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    recede_swatch_card *card = at;
    const recede_tree *tree = reader->tree;
    recede_text_status status =
        recede_list_check(reader, value, field->form->expected, RECEDE_MOST_PAINTS);
    size_t end = recede_tree_end(tree, value);
    for (size_t c = recede_tree_first(tree, value); !status && c < end;
         c = recede_tree_next(tree, c)) {
        recede_painted *paint = &card->paints[card->count++];
        paint->place = recede_tree_place(tree, c)->value;
        status = recede_fields_read(reader, c, &recede_painted_fields, paint);
        for (size_t i = 0; !status && i + 1 < card->count; i++)
            if (recede_same_paint_name(card->paints[i].pigment.paint.name,
                                       paint->pigment.paint.name))
                status = refuse_twin(reader, paint);
    }
    return status;
}

static const recede_form form_paints = {"a list of 1 to 24 paints", "", read_paints, NULL};

/* ---- the card */

static recede_text_status read_card(recede_reader *reader, size_t value,
                                    const recede_field *field, void *at)
{
    recede_swatch_card *card = at;
    const recede_tree *tree = reader->tree;
    recede_text_status status =
        recede_list_check(reader, value, field->form->expected, RECEDE_MOST_PATCHES);
    size_t end = recede_tree_end(tree, value);
    for (size_t c = recede_tree_first(tree, value); !status && c < end;
         c = recede_tree_next(tree, c)) {
        recede_card *patch = &card->card[card->card_count++];
        patch->place = recede_tree_place(tree, c)->value;
        status = recede_fields_read(reader, c, &recede_card_fields, patch);
    }
    return status;
}

static const recede_form form_card = {
    "a list of patches of the grey or white card, such as [{\"reflectance\": 0.18, \"patch\": "
    "[40, 40, 80, 80]}]", "", read_card, NULL};

/* ---- what holds between the fields */

static recede_text_status refuse_at(recede_reader *reader, size_t value, const char *what)
{
    recede_place place = recede_tree_place(reader->tree, value)->value;
    return recede_text_refuse(reader->error, place.line, place.column, "%s", what);
}

/* A paper to be read as the first swatch was. */
static recede_text_status refuse_without_paper(recede_reader *reader, size_t value,
                                               const recede_swatch_card *card)
{
    static const char *const such_as[RECEDE_SOURCES] = {
        [RECEDE_SOURCE_REFLECTANCE] = "{\"reflectance\": [36 numbers]}",
        [RECEDE_SOURCE_LAB] = "{\"lab\": [95, 0, 3]}",
        [RECEDE_SOURCE_COLOUR] = "{\"colour\": \"#f4f0e8\"}",
        [RECEDE_SOURCE_SAMPLE] = "{\"sample\": \"paper\"}",
        [RECEDE_SOURCE_PATCH] = "{\"patch\": [left, top, width, height]}"};
    recede_place place = recede_tree_place(reader->tree, value)->value;
    return recede_text_refuse(reader->error, place.line, place.column,
                              "there is no \"paper\"; a wash cannot be told from what it lies "
                              "on: read the bare paper beside the swatches and add it, such as "
                              "\"paper\": %s", such_as[card->paints[0].swatches[0].source.kind]);
}

/* The paper of watercolour, the white of opaque media: what is added to the paint
 * shows it. */
static recede_text_status check_ground(recede_reader *reader, size_t value,
                                       recede_swatch_card *card)
{
    size_t paper = recede_tree_member(reader->tree, value, "paper");
    size_t white = recede_tree_member(reader->tree, value, "white");
    recede_error unknown;
    if (card->medium == RECEDE_WATERCOLOUR && paper == RECEDE_TREE_NONE)
        return refuse_without_paper(reader, value, card);
    if (card->medium == RECEDE_WATERCOLOUR && white != RECEDE_TREE_NONE)
        return refuse_at(reader, white, "a \"white\" is for opaque media; leave it out, or give "
                         "the \"medium\": gouache, acrylic or oil");
    if (card->medium == RECEDE_WATERCOLOUR)
        return RECEDE_TEXT_OK;
    if (paper != RECEDE_TREE_NONE)
        return refuse_at(reader, paper, "swatches of an opaque medium hide what they lie on; "
                         "leave \"paper\" out");
    if (white == RECEDE_TREE_NONE)
        recede_paint_named("titanium white", &card->white, &unknown);
    return RECEDE_TEXT_OK;
}

/* Water for watercolour, white for opaque media. */
static recede_text_status check_strengths(recede_reader *reader, const recede_swatch_card *card)
{
    int opaque = card->medium != RECEDE_WATERCOLOUR;
    const char *right = opaque ? "white" : "water", *wrong = opaque ? "water" : "white";
    for (size_t i = 0; i < card->count; i++)
        for (size_t j = 0; j < card->paints[i].count; j++) {
            const recede_painted_swatch *swatch = &card->paints[i].swatches[j];
            double given = opaque ? swatch->white : swatch->water;
            double other = opaque ? swatch->water : swatch->white;
            if (!isnan(other))
                return recede_text_refuse(reader->error, swatch->place.line, swatch->place.column,
                                          "this swatch has \"%s\"; %s is %s: give \"%s\", so "
                                          "much to 1 of paint", wrong,
                                          opaque ? "an opaque medium" : "watercolour",
                                          opaque ? "let down with white" : "thinned with water",
                                          right);
            if (isnan(given))
                return recede_text_refuse(reader->error, swatch->place.line, swatch->place.column,
                                          "this swatch has no \"%s\"; add how much %s to 1 of "
                                          "paint, 0 for the masstone", right, right);
        }
    return RECEDE_TEXT_OK;
}

/* A probe that leaves the surface out is one for spectra: all are to be its own. */
static recede_text_status check_excluded(void *context, const recede_source *source)
{
    recede_reader *reader = context;
    if (source->kind == RECEDE_SOURCE_REFLECTANCE || source->kind == RECEDE_SOURCE_SAMPLE)
        return RECEDE_TEXT_OK;
    return recede_text_refuse(reader->error, source->place.line, source->place.column,
                              "\"surface\" is \"excluded\", which only spectra can be; give this "
                              "as \"reflectance\" or \"sample\", or leave \"surface\" out");
}

typedef struct counting {
    recede_reader *reader;
    size_t count;
} counting;

static recede_text_status count_patch(void *context, const recede_source *source)
{
    counting *c = context;
    if (source->kind != RECEDE_SOURCE_PATCH || ++c->count <= RECEDE_MOST_PATCHES)
        return RECEDE_TEXT_OK;
    return recede_text_refuse(c->reader->error, source->place.line, source->place.column,
                              "found one patch too many; %d are read off one photograph, the "
                              "card's included: take two", RECEDE_MOST_PATCHES);
}

static recede_text_status finish(recede_reader *reader, size_t value, void *base)
{
    recede_swatch_card *card = base;
    counting c = {reader, card->card_count};
    recede_text_status status = check_ground(reader, value, card);
    if (!status)
        status = check_strengths(reader, card);
    if (!status && card->surface_excluded)
        status = recede_sources_visit(card, check_excluded, reader);
    if (!status)
        status = recede_sources_visit(card, count_patch, &c);
    for (size_t i = 0; i < card->count; i++) {
        card->paints[i].pigment.medium = card->medium;
        card->paints[i].pigment.has_medium = 1;
    }
    return status;
}

/* ---- the fields */

#define CARD(member) offsetof(recede_swatch_card, member)
static const recede_word surface_words[] = {{"included", 0}, {"excluded", 1}, {NULL, 0.0}};
static const recede_field list[] = {
    {"medium", &recede_form_medium, .offset = CARD(medium), .words = recede_medium_words},
    {"surface", &recede_form_choice, .offset = CARD(surface_excluded), .words = surface_words},
    {"paper", &recede_form_object, .offset = CARD(paper), .inside = &recede_paper_source_fields},
    {"white", &recede_form_white, .offset = CARD(white)},
    {"card", &form_card, .offset = 0},
    {"paints", &form_paints, .offset = 0, .required = 1},
};
static const recede_fields fields = {"a swatch description", list, sizeof list / sizeof list[0],
                                     finish};

recede_text_status recede_swatch_card_read(const char *bytes, size_t size,
                                           const recede_allocator *allocator,
                                           recede_swatch_card *out, recede_text_error *error)
{
    recede_tree tree;
    recede_text_status status = recede_tree_read(bytes, size, allocator, &tree, error);
    recede_reader reader = {.tree = &tree, .error = error, .name = ""};
    memset(out, 0, sizeof *out);
    if (!status)
        status = recede_fields_read(&reader, 0, &fields, out);
    recede_tree_free(&tree);
    return status;
}

recede_text_status recede_sources_visit(const recede_swatch_card *card,
                                        recede_source_visit *visit, void *context)
{
    recede_text_status status = RECEDE_TEXT_OK;
    if (card->medium == RECEDE_WATERCOLOUR)
        status = visit(context, &card->paper);
    for (size_t i = 0; i < card->count; i++)
        for (size_t j = 0; !status && j < card->paints[i].count; j++)
            status = visit(context, &card->paints[i].swatches[j].source);
    return status;
}
