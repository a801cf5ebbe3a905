/* Invented washes over washes: a lit wash of the palette's own, and what is wanted
 * over it. */
#ifndef RECEDE_TESTS_OVER_TARGETS_H
#define RECEDE_TESTS_OVER_TARGETS_H

#include "paint/two_films.h"
#include "paint/wash_targets.h"

static inline recede_mix any_mix(const recede_palette *palette, dice *d, int most_paints,
                                 double least_water)
{
    int paints = (int)recede_palette_count(palette), paint = throw_below(d, paints);
    recede_mix mix = {0};
    for (; mix.count < most_paints && paint < paints; paint += 1 + throw_below(d, paints)) {
        mix.paint[mix.count] = paint;
        mix.parts[mix.count++] = 1 + throw_below(d, 4);
    }
    mix.water = least_water * exp(between(d, 0, 4));
    return mix;
}

/* Of four kinds: over a wash, what another gives over that, or nearly; over a wash,
 * anything; over any reflectance at all; and hardly different from the ground. */
static inline recede_over_target flat_over(const recede_palette *palette, dice *d, int kind)
{
    recede_over_target target = {.wash.graded = 0};
    recede_spectrum paper = recede_paper_white();
    recede_mix lit = any_mix(palette, d, 3, 1), shadow = any_mix(palette, d, 3, 0.3);
    target.from_ground = plain_mix(palette, &lit, &paper);
    recede_spectrum seen = plain_mix(palette, &shadow, &target.from_ground);
    recede_lab *from = &target.wash.from;
    *from = lab_of_spectrum(&seen);
    from->l += between(d, -0.6, 0.6), from->a += between(d, -0.6, 0.6);
    if (kind % 4 == 1)
        *from = colour_anywhere(d);
    if (kind % 4 == 2)
        for (int band = 0; band < RECEDE_BANDS; band++)
            target.from_ground.at[band] = between(d, 0.03, 1);
    if (kind % 4 == 3) {
        *from = lab_of_spectrum(&target.from_ground);
        from->l -= between(d, 0, 4), from->b -= between(d, -1, 3);
    }
    return target;
}

/* Over a wash graded from one mix to another, of the same paints. */
static inline recede_over_target graded_over(const recede_palette *palette, dice *d, int kind)
{
    recede_over_target target = flat_over(palette, d, kind % 4 == 2 ? 0 : kind);
    recede_spectrum paper = recede_paper_white();
    recede_mix crest = any_mix(palette, d, 2, 3), base = crest;
    base.water *= between(d, 1, 3);
    base.parts[0]++;
    target.from_ground = plain_mix(palette, &crest, &paper);
    target.to_ground = plain_mix(palette, &base, &paper);
    target.half_ground = plain_halves(palette, &crest, &base, &paper);
    recede_lab from = lab_of_spectrum(&target.from_ground);
    recede_lab to = lab_of_spectrum(&target.to_ground);
    if (kind % 4 != 1) {
        double down = between(d, 0.5, 25), bluer = between(d, -2, 12);
        from.l -= down, from.b -= bluer;
        to.l -= down * between(d, 0.6, 1), to.b -= bluer;
    } else {
        from = colour_anywhere(d);
    }
    target.wash = graded_between(from, to);
    return target;
}

#endif
