/* Why a paint cannot be learnt, or a photograph not be read, with what to do next. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text/numbers.h"
#include "text/words_swatch.h"

static recede_text_status say(recede_text_error *error, recede_place place, const char *what)
{
    return recede_text_refuse(error, place.line, place.column, "%s", what);
}

/* Memory and cancelling, which are no fault of the description. */
static recede_text_status refuse_other(const recede_error *core, recede_text_error *error)
{
    if (core->code == RECEDE_NO_MEMORY)
        return recede_text_no_memory(error);
    return recede_text_refuse(error, 0, 0, "stopped before the end; start again");
}

/* The index in "swatches[2].water"; 0 where there is none. */
static size_t index_in(const char *path)
{
    const char *bracket = strchr(path, '[');
    return bracket ? (size_t)strtoul(bracket + 1, NULL, 10) : 0;
}

/* ---- learning */

typedef struct learning {
    const recede_swatch_card *card;
    const recede_metered *paper;
    const recede_painted *paint;
    const recede_error *core;
    recede_text_error *error;
} learning;

static const char *added(const learning *l)
{
    return l->card->medium == RECEDE_WATERCOLOUR ? "water" : "white";
}

static recede_text_status too_few(const learning *l)
{
    const char *name = l->paint->pigment.paint.name;
    recede_place place = l->paint->place;
    int water = l->card->medium == RECEDE_WATERCOLOUR;
    if (strcmp(l->core->path, "swatches.masstone") == 0)
        return recede_text_refuse(l->error, place.line, place.column,
                                  "\"%s\" has no masstone; paint it out as it comes from the tube, "
                                  "read it, and add it with \"%s\": 0", name, added(l));
    return recede_text_refuse(l->error, place.line, place.column,
                              "\"%s\" has %.0f swatch%s, and needs %.0f; next, paint out %s, let "
                              "them dry, read them and add them", name, l->core->number,
                              l->core->number > 1 ? "es" : "", l->core->least,
                              water ? "thinner washes, such as 3 and 8 water to 1 of paint"
                                    : "tints, such as 2 and 8 white to 1 of paint");
}

static recede_text_status duplicate(const learning *l)
{
    return recede_text_refuse(l->error, l->error->line, l->error->column,
                              "an earlier swatch of \"%s\" has as much %s; keep the better one, "
                              "and read one of another strength in its place",
                              l->paint->pigment.paint.name, added(l));
}

static const double least_of_paper = 70.0, noise = 2.0; /* in L*; both are our own */

int recede_paper_is_suspect(double paper, double lightest)
{
    return paper < least_of_paper || paper + noise < lightest;
}

recede_text_status recede_suspect_paper(const recede_swatch_card *card, double paper,
                                        recede_text_error *error)
{
    char found[RECEDE_NUMBER_SIZE];
    recede_place place = card->paper.place;
    recede_number_fixed(found, paper, 1);
    return recede_text_refuse(error, place.line, place.column,
                              "the paper reads L* %s, darker than %s, and the swatches do not "
                              "fit it; before you doubt a wash, read the bare paper beside the "
                              "swatches again", found,
                              paper < least_of_paper ? "paper for washes is"
                                                     : "a swatch that lies on it");
}

static recede_text_status darker(const learning *l)
{
    char wash[RECEDE_NUMBER_SIZE], masstone[RECEDE_NUMBER_SIZE];
    if (l->paper && recede_paper_is_suspect(l->paper->lab.l, l->core->most))
        return recede_suspect_paper(l->card, l->paper->lab.l, l->error);
    recede_number_fixed(wash, l->core->number, 1);
    recede_number_fixed(masstone, l->core->most, 1);
    return recede_text_refuse(l->error, l->error->line, l->error->column,
                              "this swatch of \"%s\" reads L* %s, darker than its masstone with L* "
                              "%s; %s does not darken a paint: see whether the two are exchanged, "
                              "or paint the masstone thicker and read both dry",
                              l->paint->pigment.paint.name, wash, masstone, added(l));
}

static recede_text_status dark_paper(const learning *l)
{
    char found[RECEDE_NUMBER_SIZE];
    recede_place place = l->card->paper.place;
    recede_number_fixed(found, l->core->number, 1);
    return recede_text_refuse(l->error, place.line, place.column,
                              "the paper reads L* %s; washes are learnt on white or pale paper, L* "
                              "50 and more: read the bare paper beside the swatches%s", found,
                              l->card->paper.kind == RECEDE_SOURCE_LAB && l->core->number <= 2
                                  ? ", and mind that Lab runs from L* 0 to 100, not to 1" : "");
}

static recede_text_status beyond(const learning *l, const char *owner)
{
    char found[RECEDE_NUMBER_SIZE], least[RECEDE_NUMBER_SIZE], most[RECEDE_NUMBER_SIZE];
    const char *dot = strrchr(l->core->path, '.');
    recede_number_fixed(found, l->core->number, 3);
    recede_number_trimmed(least, l->core->least, 3);
    recede_number_trimmed(most, l->core->most, 3);
    return recede_text_refuse(l->error, l->error->line, l->error->column,
                              "%s has a %s of %s; expected %s to %s: read it again", owner,
                              dot && strcmp(dot, ".lab") == 0 ? "Lab value" : "reflectance", found,
                              least, most);
}

recede_text_status recede_explain_learning(const recede_swatch_card *card,
                                           const recede_metered *paper_read, size_t paint,
                                           const recede_error *core, recede_text_error *error)
{
    const learning l = {card, paper_read, &card->paints[paint], core, error};
    size_t index = index_in(core->path);
    int paper = strcmp(core->path, "swatches.paper") == 0;
    recede_place place = index < l.paint->count ? l.paint->swatches[index].place : l.paint->place;
    if (paper)
        place = card->paper.place;
    error->line = place.line;
    error->column = place.column;
    switch (core->code) {
    case RECEDE_TOO_FEW:
        return too_few(&l);
    case RECEDE_DUPLICATE:
        return duplicate(&l);
    case RECEDE_CONFLICT:
        return paper ? dark_paper(&l) : darker(&l);
    case RECEDE_OUT_OF_RANGE:
    case RECEDE_NOT_FINITE:
        return beyond(&l, paper ? "the paper" : "this swatch");
    default:
        return refuse_other(core, error);
    }
}

/* ---- photographs */

typedef struct gathering {
    recede_patch *out;
    recede_place *places; /* either may be NULL */
    size_t count;
} gathering;

static recede_text_status gather(void *context, const recede_source *source)
{
    gathering *g = context;
    if (source->kind != RECEDE_SOURCE_PATCH)
        return RECEDE_TEXT_OK;
    if (g->out)
        g->out[g->count] = source->patch;
    if (g->places)
        g->places[g->count] = source->place;
    g->count++;
    return RECEDE_TEXT_OK;
}

static size_t gather_all(const recede_swatch_card *card, recede_patch *out, recede_place *places)
{
    gathering g = {out, places, card->card_count};
    for (size_t i = 0; i < card->card_count; i++) {
        if (out)
            out[i] = card->card[i].patch;
        if (places)
            places[i] = card->card[i].place;
    }
    recede_sources_visit(card, gather, &g);
    return g.count;
}

size_t recede_card_patches(const recede_swatch_card *card, recede_patch *out)
{
    return gather_all(card, out, NULL);
}

static recede_text_status card_conflict(const recede_swatch_card *card, const recede_error *core,
                                        recede_text_error *error)
{
    char darker_one[RECEDE_NUMBER_SIZE], other[RECEDE_NUMBER_SIZE];
    recede_place place = card->card[0].place;
    if (core->number <= 0)
        return say(error, place, "the card's patches are black in the photograph; see whether "
                   "the rectangles lie on the card, or expose longer");
    recede_number_trimmed(darker_one, core->number, 3);
    recede_number_trimmed(other, core->most, 3);
    return recede_text_refuse(error, place.line, place.column,
                              "the card of reflectance %s reads lighter than that of %s; see "
                              "whether the two are exchanged", darker_one, other);
}

static recede_text_status outside(const recede_photo *photo, const recede_error *core,
                                  recede_place place, recede_text_error *error)
{
    int across = strstr(core->path, ".left") != NULL;
    return recede_text_refuse(error, place.line, place.column,
                              "this patch ends at pixel %.0f %s, but the photograph is %zu wide "
                              "and %zu high; patches are [left, top, width, height] in its pixels",
                              core->number, across ? "across" : "down", photo->width,
                              photo->height);
}

recede_text_status recede_explain_photo(const recede_swatch_card *card,
                                        const recede_photo *photo, const recede_error *core,
                                        recede_text_error *error)
{
    recede_place places[RECEDE_MOST_PATCHES];
    size_t count = gather_all(card, NULL, places), index = index_in(core->path);
    if (core->code == RECEDE_CONFLICT)
        return card_conflict(card, core, error);
    if (core->code == RECEDE_OUT_OF_RANGE && index < count)
        return outside(photo, core, places[index], error);
    return refuse_other(core, error);
}

recede_text_status recede_refuse_paper(const recede_swatch_card *card,
                                       const recede_metered *paper, recede_text_error *error)
{
    char found[RECEDE_NUMBER_SIZE];
    recede_place place = card->paper.place;
    recede_number_fixed(found, paper->lab.l, 1);
    return recede_text_refuse(error, place.line, place.column,
                              "the paper reads L* %s, with a colour that no paper has; %s", found,
                              paper->by_photo ? "see whether the card's reflectances are right, or "
                                                "take the photograph again in even light"
                                              : "measure it again");
}
