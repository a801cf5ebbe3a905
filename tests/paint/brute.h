/*
 * The search once more, as plainly as it can be written: every mix is stored, every
 * rule applied to all of them in turn. Shares with the library only the reflectance
 * of a mix and the colour and difference that come of it.
 */
#ifndef RECEDE_TESTS_BRUTE_H
#define RECEDE_TESTS_BRUTE_H

#include "paint/paints.h"

#include <math.h>
#include <stdlib.h>

typedef struct brute_mix {
    recede_mix mix;
    int set;        /* bit n: paint n is in it */
    int parts;      /* in all */
    recede_lab lab; /* on the paper */
    double difference, slip; /* in whole millionths, from the target at hand */
} brute_mix;

typedef struct brute {
    const recede_palette *palette;
    recede_rules rules;
    size_t count, room;
    brute_mix *all;
} brute;

static inline double brute_millionths(double difference)
{
    return nearbyint(difference * 1e6);
}

static inline void brute_keep(brute *b, const recede_mix *mix)
{
    if (b->count == b->room) {
        b->room = b->room ? 2 * b->room : 1024;
        b->all = realloc(b->all, b->room * sizeof b->all[0]);
        assert_non_null(b->all);
    }
    brute_mix *kept = &b->all[b->count++];
    memset(kept, 0, sizeof *kept);
    kept->mix = *mix;
    for (int i = 0; i < mix->count; i++) {
        kept->set |= 1 << mix->paint[i];
        kept->parts += mix->parts[i];
    }
    kept->lab = colour_of_mix(b->palette, mix).lab;
}

static inline int brute_has_common_divisor(const int *parts, int paints)
{
    for (int divisor = 2; divisor <= RECEDE_MOST_PARTS; divisor++) {
        int divides = 1;
        for (int i = 0; i < paints; i++)
            divides &= parts[i] % divisor == 0;
        if (divides)
            return 1;
    }
    return 0;
}

/* parts of every paint of the palette, most of them 0 */
static inline void brute_take(brute *b, const int *parts, int paints)
{
    recede_mix mix = {0};
    for (int i = 0; i < paints; i++) {
        if (!parts[i])
            continue;
        if (mix.count == b->rules.most_pigments)
            return;
        mix.paint[mix.count] = i;
        mix.parts[mix.count++] = parts[i];
    }
    int watercolour = recede_palette_medium(b->palette) == RECEDE_WATERCOLOUR;
    if (mix.count ? brute_has_common_divisor(parts, paints) : !watercolour)
        return;
    for (size_t level = 0; level < (watercolour && mix.count > 0 ? recede_water_count() : 1); level++) {
        mix.water = recede_water_at(level);
        brute_keep(b, &mix);
    }
}

static inline void brute_count_up(brute *b, int *parts, int paint, int left)
{
    int paints = (int)recede_palette_count(b->palette);
    if (paint == paints) {
        brute_take(b, parts, paints);
        return;
    }
    for (parts[paint] = 0; parts[paint] <= left; parts[paint]++)
        brute_count_up(b, parts, paint + 1, left - parts[paint]);
    parts[paint] = 0;
}

static inline brute brute_start(const recede_palette *palette, const recede_rules *rules)
{
    brute b = {.palette = palette, .rules = *rules};
    int parts[RECEDE_MOST_PAINTS] = {0};
    brute_count_up(&b, parts, 0, rules->most_parts);
    return b;
}

static inline void brute_end(brute *b)
{
    free(b->all);
}

static inline recede_lab brute_slipped_lab(const brute *b, recede_mix mix, int quarters)
{
    if (recede_palette_medium(b->palette) == RECEDE_WATERCOLOUR) {
        mix.water = mix.water * quarters / 4;
    } else {
        for (int i = 0; i < mix.count; i++)
            mix.parts[i] *= recede_palette_paint(b->palette, (size_t)mix.paint[i])->is_white
                                ? quarters : 4;
    }
    return colour_of_mix(b->palette, &mix).lab;
}

static inline double brute_slip(const brute *b, const brute_mix *m, recede_lab target)
{
    if (m->mix.count == 0)
        return 0;
    double less = recede_delta_e(brute_slipped_lab(b, m->mix, 3), target);
    double more = recede_delta_e(brute_slipped_lab(b, m->mix, 5), target);
    return less > more ? less : more;
}

/* Fewest pigments, fewest parts, smallest slip, most water, palette order: the first
 * of these figures that differs decides, smaller first. */
static inline int brute_before(const brute_mix *one, const brute_mix *other)
{
    double figures[2][4 + 2 * RECEDE_MOST_IN_MIX];
    const brute_mix *both[2] = {one, other};
    for (int n = 0; n < 2; n++) {
        figures[n][0] = both[n]->mix.count;
        figures[n][1] = both[n]->parts;
        figures[n][2] = both[n]->slip;
        figures[n][3] = -both[n]->mix.water;
        for (int i = 0; i < RECEDE_MOST_IN_MIX; i++) {
            int there = i < both[n]->mix.count;
            figures[n][4 + i] = there ? both[n]->mix.paint[i] : 0;
            figures[n][4 + RECEDE_MOST_IN_MIX + i] = there ? both[n]->mix.parts[i] : 0;
        }
    }
    for (int i = 0; i < 4 + 2 * RECEDE_MOST_IN_MIX; i++)
        if (figures[0][i] != figures[1][i])
            return figures[0][i] < figures[1][i];
    return 0;
}

/* The mix for one target, of all (set -1) or of one set of paints alone. */
static inline const brute_mix *brute_choose(brute *b, recede_lab target, int set, double *closest)
{
    const brute_mix *chosen = NULL;
    *closest = INFINITY;
    for (size_t i = 0; i < b->count; i++) {
        brute_mix *m = &b->all[i];
        m->difference = brute_millionths(recede_delta_e(m->lab, target));
        if ((set < 0 || m->set == set) && m->difference < *closest)
            *closest = m->difference;
    }
    for (size_t i = 0; i < b->count; i++) {
        brute_mix *m = &b->all[i];
        if ((set >= 0 && m->set != set)
            || m->difference > *closest + brute_millionths(b->rules.tie))
            continue;
        m->slip = brute_millionths(brute_slip(b, m, target));
        if (!chosen || brute_before(m, chosen))
            chosen = m;
    }
    return chosen;
}

static inline void assert_same_mix(const recede_mix *found, const recede_mix *expected)
{
    assert_int_equal(found->count, expected->count);
    for (int i = 0; i < found->count; i++) {
        assert_int_equal(found->paint[i], expected->paint[i]);
        assert_int_equal(found->parts[i], expected->parts[i]);
    }
    assert_near(found->water, expected->water, 0);
}

#endif
