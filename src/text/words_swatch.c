#include "text/words_swatch.h"

#include <math.h>
#include <string.h>

/* Differences in CIEDE2000 of the swatch farthest off; the scale is our own. */
static const double closely = 1.0, well = 3.0, roughly = 6.0;

static const double clipped_share = 0.01; /* below that, noise does it */

double recede_swatch_added(recede_medium medium, const recede_painted_swatch *swatch)
{
    return medium == RECEDE_WATERCOLOUR ? swatch->water : swatch->white;
}

void recede_words_thinning(recede_buffer *out, recede_medium medium, double added)
{
    if (added <= 0) {
        recede_buffer_text(out, "masstone");
        return;
    }
    recede_buffer_number(out, added, 2);
    recede_buffer_text(out, medium == RECEDE_WATERCOLOUR ? " water to 1 paint"
                                                         : " white to 1 paint");
}

/* ---- the fit */

int recede_is_learnt(const recede_paint_fit *fit)
{
    return fit->worst <= roughly;
}

static size_t farthest_off(const recede_learnt *learnt)
{
    size_t worst = 0;
    for (size_t i = 1; i < learnt->painted->count; i++)
        if (learnt->fit.delta_e[i] > learnt->fit.delta_e[worst])
            worst = i;
    return worst;
}

/* "3 water to 1 paint, 4.2 off" */
static void add_worst(recede_buffer *out, const recede_learnt *learnt)
{
    const recede_painted *painted = learnt->painted;
    size_t worst = farthest_off(learnt);
    recede_medium medium = painted->pigment.medium;
    recede_words_thinning(out, medium, recede_swatch_added(medium, &painted->swatches[worst]));
    recede_buffer_text(out, ", ");
    recede_buffer_fixed(out, learnt->fit.worst, 1);
    recede_buffer_text(out, " off");
}

/* The swatch with most water or white. */
static size_t most_thinned(const recede_learnt *learnt)
{
    const recede_painted *painted = learnt->painted;
    recede_medium medium = painted->pigment.medium;
    size_t thinnest = 0;
    for (size_t i = 1; i < painted->count; i++)
        if (recede_swatch_added(medium, &painted->swatches[i]) >
            recede_swatch_added(medium, &painted->swatches[thinnest]))
            thinnest = i;
    return thinnest;
}

/* A swatch that has not come a quarter of the way to the bare paper, or the white,
 * tells little of the strengths beyond it. The quarter is our own. */
static void add_reach(recede_buffer *out, const recede_learnt *learnt)
{
    static const double share = 0.25;
    const recede_painted *painted = learnt->painted;
    recede_medium medium = painted->pigment.medium;
    size_t thinnest = most_thinned(learnt), masstone = 0;
    while (masstone + 1 < painted->count &&
           recede_swatch_added(medium, &painted->swatches[masstone]) > 0)
        masstone++;
    recede_lab start = learnt->fitted[masstone];
    if (recede_delta_e(start, learnt->fitted[thinnest]) >=
        share * recede_delta_e(start, learnt->thinnest))
        return;
    recede_buffer_text(out, " Its palest swatch, ");
    recede_words_thinning(out, medium,
                          recede_swatch_added(medium, &painted->swatches[thinnest]));
    recede_buffer_format(out, ", is still near the masstone: paint out %s, or what lies beyond is "
                         "a guess.", medium == RECEDE_WATERCOLOUR ? "thinner washes with more water"
                                                                 : "tints with more white");
}

/* Glare in the masstone's patch, or more spread in it than an even swatch has, which is
 * below 1 (our own scale): how well the swatches fit one another says nothing then. */
static int photo_is_doubtful(const recede_learnt *learnt)
{
    static const double usual_spread = 3.0;
    const recede_painted *painted = learnt->painted;
    for (size_t i = 0; i < painted->count; i++) {
        const recede_metered *read = &learnt->read[i];
        if (recede_swatch_added(painted->pigment.medium, &painted->swatches[i]) <= 0 &&
            read->by_photo && (read->photo.glare || read->photo.spread > usual_spread))
            return 1;
    }
    return 0;
}

static void add_verdict(recede_buffer *out, const recede_learnt *learnt)
{
    if (photo_is_doubtful(learnt)) {
        recede_buffer_text(out, "The photograph makes this paint doubtful, however well it fits: "
                                "the masstone is mirroring or uneven in it. Turn the sheet, take "
                                "the photograph again, or choose another patch. ");
        if (learnt->fit.worst <= closely)
            return;
    }
    if (learnt->fit.worst <= closely) {
        recede_buffer_format(out, "Learnt closely: its %s will come out as planned, as far as the "
                             "swatches were read right.",
                             learnt->painted->pigment.medium == RECEDE_WATERCOLOUR ? "washes"
                                                                                   : "tints");
        return;
    }
    recede_buffer_text(out, learnt->fit.worst <= well ? "Learnt well enough to plan by"
                                                      : "Learnt roughly");
    recede_buffer_text(out, "; farthest off is ");
    add_worst(out, learnt);
    recede_buffer_text(out, learnt->fit.worst <= well
                                ? "."
                                : ". Paint that one out again, measure what you add with a "
                                  "dropper or a spoon, let it dry, and read it again.");
}

void recede_words_learnt(recede_buffer *out, const recede_learnt *learnt)
{
    add_verdict(out, learnt);
    add_reach(out, learnt);
}

static int any_spectrum(const recede_learnt *learnt)
{
    for (size_t i = 0; i < learnt->painted->count; i++)
        if (learnt->read[i].has_reflectance)
            return 1;
    return 0;
}

static const char *meter_of(const recede_learnt *learnt)
{
    if (learnt->read[0].by_photo)
        return "read off a photograph";
    return any_spectrum(learnt) ? "measured as spectra" : "measured as colours";
}

void recede_words_measured(recede_buffer *out, const recede_learnt *learnt)
{
    recede_buffer_format(out, "%zu swatches %s; fitted within ", learnt->painted->count,
                         meter_of(learnt));
    recede_buffer_fixed(out, learnt->fit.worst, 1);
    recede_buffer_text(out, " CIEDE2000 (root mean square ");
    recede_buffer_fixed(out, learnt->fit.rms, 1);
    recede_buffer_text(out, ")");
}

/* All are given as Lab, and none is farther than 2 from 0. */
static int is_share_of_lab(const recede_learnt *learnt)
{
    static const double most = 2.0;
    for (size_t i = 0; i < learnt->painted->count; i++) {
        const recede_lab *lab = &learnt->read[i].lab;
        if (learnt->painted->swatches[i].source.kind != RECEDE_SOURCE_LAB ||
            fabs(lab->l) > most || fabs(lab->a) > most || fabs(lab->b) > most)
            return 0;
    }
    return 1;
}

static double lightest_of(const recede_learnt *learnt)
{
    double lightest = 0;
    for (size_t i = 0; i < learnt->painted->count; i++)
        lightest = fmax(lightest, learnt->read[i].lab.l);
    return lightest;
}

recede_text_status recede_refuse_learnt(const recede_swatch_card *card,
                                        const recede_learnt *learnt, recede_text_error *error)
{
    const recede_painted *painted = learnt->painted;
    recede_place place = painted->swatches[farthest_off(learnt)].place;
    recede_buffer worst;
    if (is_share_of_lab(learnt))
        return recede_text_refuse(error, place.line, place.column,
                                  "no paint gives all swatches of \"%s\", and none of them is "
                                  "farther than 2 from 0; Lab runs from L* 0 to 100, a* and b* "
                                  "beside it: were they given as shares of 1?",
                                  painted->pigment.paint.name);
    if (painted->pigment.medium == RECEDE_WATERCOLOUR &&
        recede_paper_is_suspect(learnt->thinnest.l, lightest_of(learnt)))
        return recede_suspect_paper(card, learnt->thinnest.l, error);
    recede_buffer_start(&worst, NULL);
    add_worst(&worst, learnt);
    recede_text_refuse(error, place.line, place.column,
                       "the swatches of \"%s\" contradict one another: no paint gives all of "
                       "them; farthest off is %s: see whether its %s and its reading are right, "
                       "or paint it out again",
                       painted->pigment.paint.name, recede_buffer_string(&worst),
                       painted->pigment.medium == RECEDE_WATERCOLOUR ? "water" : "white");
    recede_buffer_free(&worst);
    return RECEDE_TEXT_REFUSED;
}

/* ---- photographs */

static int is_clipped(const recede_patch_reading *patch)
{
    return patch->clipped > clipped_share;
}

static void add_share(recede_buffer *out, double share)
{
    recede_buffer_number(out, 100 * share, share < 0.1 ? 1 : 0);
    recede_buffer_text(out, " %");
}

void recede_words_patch(recede_buffer *out, const recede_patch_reading *patch)
{
    recede_buffer_text(out, "spread ");
    recede_buffer_fixed(out, patch->spread, 1);
    if (is_clipped(patch)) {
        recede_buffer_text(out, "; clipped ");
        add_share(out, patch->clipped);
    }
    if (patch->glare)
        recede_buffer_text(out, "; glare");
}

static int is_glaring(const recede_patch_reading *patch)
{
    return patch->glare;
}

const recede_flaw *recede_patch_flaw(size_t which)
{
    static const recede_flaw flaws[] = {
        {is_clipped, "clipped, a channel being at the end of its scale: ",
         ". They read duller than they are. Expose less where they are pale; a paint too vivid or "
         "too dark for a photograph has to be measured."},
        {is_glaring, "mirrored light, an edge or streaks in the patch: ",
         ". Turn the sheet until the gloss is gone, or choose smaller and more even patches."},
    };
    return which < sizeof flaws / sizeof flaws[0] ? &flaws[which] : NULL;
}

void recede_words_card_warning(recede_buffer *out, const recede_patch_reading *patches,
                               size_t count, int uneven)
{
    for (size_t i = 0; i < count; i++)
        if (is_clipped(&patches[i])) {
            recede_buffer_text(out, "the card is clipped: take the photograph again, exposed "
                                    "less, so that the white card is just not pure white. ");
            break;
        }
    if (uneven)
        recede_buffer_text(out, "the card's patches disagree: the light is uneven, a patch is "
                                "not of the reflectance given, or the camera bends the tones. "
                                "Take the photograph in even daylight with plain settings and "
                                "the same card at all four corners.");
}
