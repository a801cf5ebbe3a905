/* Invented targets for searches: in range, out of it, and graded. */
#ifndef RECEDE_TESTS_WASH_TARGETS_H
#define RECEDE_TESTS_WASH_TARGETS_H

#include "paint/paints.h"

static inline double between(dice *d, double low, double high)
{
    return low + (high - low) * throw_dice(d);
}

static inline recede_lab lab_of_lch(double l, double c, double h_deg)
{
    double h = h_deg / 57.29577951308232;
    return (recede_lab){l, c * cos(h), c * sin(h)};
}

/* A colour that the palette mixes, or one close by. */
static inline recede_lab colour_in_range(const recede_palette *palette, dice *d, double off)
{
    int paints = (int)recede_palette_count(palette), paint = throw_below(d, paints);
    recede_mix mix = {0};
    for (; mix.count < 3 && paint < paints; paint += 1 + throw_below(d, paints / 2)) {
        mix.paint[mix.count] = paint;
        mix.parts[mix.count++] = 1 + throw_below(d, 4);
    }
    if (recede_palette_medium(palette) == RECEDE_WATERCOLOUR)
        mix.water = exp(between(d, -2, 5));
    recede_lab lab = colour_of_mix(palette, &mix).lab;
    lab.l += between(d, -off, off);
    lab.a += between(d, -off, off);
    lab.b += between(d, -off, off);
    return lab;
}

static inline recede_lab colour_anywhere(dice *d)
{
    return lab_of_lch(between(d, 2, 100), between(d, 0, 90), between(d, 0, 360));
}

static inline recede_wash_target flat_in_range(const recede_palette *palette, dice *d)
{
    return (recede_wash_target){.from = colour_in_range(palette, d, 0.6)};
}

static inline recede_wash_target flat_anywhere(dice *d)
{
    return (recede_wash_target){.from = colour_anywhere(d)};
}

static inline recede_wash_target graded_between(recede_lab from, recede_lab to)
{
    recede_lab half = {(from.l + to.l) / 2, (from.a + to.a) / 2, (from.b + to.b) / 2};
    return (recede_wash_target){from, to, half, 1};
}

/* Blue overhead to a pale, warm horizon. */
static inline recede_wash_target graded_sky(dice *d)
{
    return graded_between(
        lab_of_lch(between(d, 55, 80), between(d, 8, 32), between(d, 240, 275)),
        lab_of_lch(between(d, 84, 93), between(d, 2, 14), between(d, 50, 110)));
}

/* A wooded hillside, crest to base, lighter and greyer below. */
static inline recede_wash_target graded_hillside(dice *d)
{
    double l = between(d, 40, 80), c = between(d, 6, 32), h = between(d, 85, 160);
    return graded_between(lab_of_lch(l, c, h),
                          lab_of_lch(l + between(d, 1, 7), c * between(d, 0.5, 1),
                                     h + between(d, 0, 25)));
}

static inline recede_wash_target graded_anyhow(const recede_palette *palette, dice *d)
{
    return graded_between(colour_in_range(palette, d, 1), colour_anywhere(d));
}

/* Six kinds in turn. */
static inline recede_wash_target wash_target(const recede_palette *palette, dice *d, int kind)
{
    switch (kind % 6) {
    case 0: return flat_anywhere(d);
    case 1: return graded_sky(d);
    case 2: return graded_hillside(d);
    case 3: return graded_anyhow(palette, d);
    default: return flat_in_range(palette, d);
    }
}

#endif
