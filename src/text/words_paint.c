#include "text/words_paint.h"

#include <math.h>
#include <string.h>

#include "paint/names.h"
#include "paint/strength.h"
#include "text/words.h"

static const char *const trait_names[RECEDE_TRAITS] = {
    "transparency", "permanence", "staining", "granulation", "measured", "source"};

const char *recede_words_trait_name(recede_trait trait)
{
    return trait_names[trait];
}

const char *recede_pigment_trait(const recede_pigment *pigment, recede_trait trait)
{
    const char *const words[RECEDE_TRAITS] = {pigment->transparency, pigment->permanence,
                                              pigment->staining,     pigment->granulation,
                                              pigment->measured,     pigment->source};
    return words[trait];
}

const char *recede_own_trait(const recede_pigment_file *own, recede_trait trait)
{
    const char *const words[RECEDE_TRAITS] = {own->transparency, own->permanence, "", "",
                                              own->measured,     own->source};
    return words[trait];
}

/* What a medium binds pigments with (common practice, no source). */
static const char *const binders[] = {[RECEDE_WATERCOLOUR] = "in gum arabic",
                                      [RECEDE_GOUACHE] = "in gum arabic",
                                      [RECEDE_ACRYLIC] = "in an acrylic binder",
                                      [RECEDE_OIL] = "in oil"};

/* Nothing is assumed of a binder in the medium that was measured. */
void recede_words_figures(recede_buffer *out, const recede_pigment *pigment,
                          recede_medium medium)
{
    const char *of_binder = strstr(pigment->measured, "; that another binder");
    size_t size = strlen(pigment->measured);
    if (of_binder && strstr(pigment->measured, binders[medium]))
        size = (size_t)(of_binder - pigment->measured);
    recede_buffer_add(out, pigment->measured, size);
}

/* ---- of a paint */

static const char *trait_of(const recede_paint *paint, int ingredient, recede_trait trait)
{
    return recede_pigment_trait(paint->of[ingredient].pigment, trait);
}

static int all_alike(const recede_paint *paint, recede_trait trait)
{
    for (int i = 1; i < paint->ingredients; i++)
        if (strcmp(trait_of(paint, i, trait), trait_of(paint, 0, trait)) != 0)
            return 0;
    return 1;
}

void recede_words_trait(recede_buffer *out, const recede_paints_told *told, size_t index,
                        recede_trait trait)
{
    const recede_paint *paint = recede_palette_paint(told->palette, index);
    const char *between = "";
    if (paint->ingredients == 0) {
        recede_buffer_text(out, told->own ? recede_own_trait(&told->own[index], trait) : "");
        return;
    }
    if (all_alike(paint, trait)) {
        recede_buffer_text(out, trait_of(paint, 0, trait));
        return;
    }
    for (int i = 0; i < paint->ingredients; i++) {
        const char *word = trait_of(paint, i, trait);
        if (!*word)
            continue;
        recede_buffer_format(out, "%s%s (%s)", between, word, paint->of[i].pigment->name);
        between = ", ";
    }
}

/* Whether an earlier pigment of the paint has the same word. */
static int is_said(const recede_paint *paint, int ingredient, recede_trait trait)
{
    for (int i = 0; i < ingredient; i++)
        if (strcmp(trait_of(paint, i, trait), trait_of(paint, ingredient, trait)) == 0)
            return 1;
    return 0;
}

void recede_words_trait_short(recede_buffer *out, const recede_paints_told *told, size_t index,
                              recede_trait trait)
{
    const recede_paint *paint = recede_palette_paint(told->palette, index);
    const char *between = "";
    if (paint->ingredients == 0)
        recede_words_trait(out, told, index, trait);
    for (int i = 0; i < paint->ingredients; i++) {
        if (!*trait_of(paint, i, trait) || is_said(paint, i, trait))
            continue;
        recede_buffer_format(out, "%s%s", between, trait_of(paint, i, trait));
        between = ", ";
    }
}

static size_t add_caution(const char *caution, const char **cautions, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(cautions[i], caution) == 0)
            return count;
    if (*caution)
        cautions[count++] = caution;
    return count;
}

size_t recede_paint_cautions(const recede_paints_told *told, size_t index,
                             const char *cautions[RECEDE_MOST_IN_MIX])
{
    const recede_paint *paint = recede_palette_paint(told->palette, index);
    size_t count = 0;
    if (paint->ingredients == 0)
        return add_caution(paint->caution, cautions, count);
    for (int i = 0; i < paint->ingredients; i++)
        count = add_caution(paint->of[i].pigment->caution, cautions, count);
    return count;
}

int recede_is_taken_for(const recede_paint *paint)
{
    return paint->ingredients > 1 ||
           (paint->ingredients == 1 &&
            !recede_same_paint_name(paint->name, paint->of[0].pigment->name));
}

void recede_words_taken_for(recede_buffer *out, const recede_paint *paint)
{
    for (int i = 0; i < paint->ingredients; i++) {
        if (i)
            recede_buffer_text(out, " + ");
        if (paint->ingredients > 1)
            recede_buffer_format(out, "%d ", paint->of[i].parts);
        recede_buffer_text(out, paint->of[i].pigment->name);
    }
}

/* ---- figures */

void recede_words_lch(recede_buffer *out, const recede_colour *colour)
{
    recede_buffer_text(out, "L* ");
    recede_buffer_fixed(out, colour->lch.l, 0);
    recede_buffer_text(out, ", C* ");
    recede_buffer_fixed(out, colour->lch.c, 0);
    recede_buffer_text(out, ", h ");
    recede_buffer_fixed(out, colour->lch.h_deg, 0);
    recede_buffer_text(out, "; value ");
    recede_buffer_fixed(out, colour->value, 1);
}

/* How much lighter the paint is on the ink than the ink (L*), and which share that is of
 * the way from the ink to the paint on bare paper. Thresholds: a choice of our own. */
typedef struct {
    double above, share; /* below either: these words */
    const char *words;
} covering;

void recede_words_covering(recede_buffer *out, const recede_palette *palette, size_t paint)
{
    static const covering words[] = {
        {0.5, -1, "does not show on black ink"},
        {3, 0.5, "shows faintly on black ink"},
        {0, 0.88, "half hides black ink"},
        {0, INFINITY, "hides black ink well"},
    };
    double ink = recede_strength_ink().lch.l;
    double above = recede_strength_on_ink(palette, (int)paint, 0).lch.l - ink;
    double share = above / fmax(recede_strength_colour(palette, (int)paint, 0).lch.l - ink, 0.5);
    size_t i = 0;
    while (above >= words[i].above && share >= words[i].share)
        i++;
    recede_buffer_text(out, words[i].words);
}

void recede_words_strengths(recede_buffer *out, recede_medium medium)
{
    for (int step = 0; step < RECEDE_STRENGTHS; step++) {
        if (step)
            recede_buffer_text(out, step + 1 < RECEDE_STRENGTHS ? ", " : " and ");
        recede_buffer_number(out, recede_strength_at(step), 0);
    }
    recede_buffer_format(out, " %s to 1 of paint",
                         recede_medium_takes_water(medium) ? "water" : "white");
}
