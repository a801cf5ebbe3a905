/*
 * The films of one mix over a ground, thick to thin, as far as they may come near a
 * target: whole stretches of water are passed over where nothing in them can.
 */
#ifndef RECEDE_PAINT_OVER_VISIT_H
#define RECEDE_PAINT_OVER_VISIT_H

#include "paint/shade.h"
#include "paint/sweep.h"

/* A mix with one water. */
typedef struct recede_over_film {
    int level; /* -1: so thick that the ground is hidden; beyond the last: none */
    recede_shade shade;
} recede_over_film;

typedef struct recede_over_visit {
    const recede_palette *palette; /* its paper is the ground */
    recede_aim aim;
    recede_curve_maker maker;
    recede_sweep sweep;
    recede_over_film ground;

    /* A film within the limit, its difference in millionths; returns the limit
     * from there on. */
    double (*film)(void *context, const recede_mix *mix, double difference);
    void *context;

    /* Where to look first: how strong each paint is, as one over the thickness of the
     * film that alone is as dark as the target, and a* and b* about there; how much thicker than by strengths the
     * film was for each pair of paints when last seen; and how fast lightness changes
     * there from level to level. */
    float strength[RECEDE_MOST_PAINTS], alone[RECEDE_MOST_PAINTS][2];
    float thicker[RECEDE_MOST_PAINTS][RECEDE_MOST_PAINTS];
    float slope;

    /* The mix at hand. */
    recede_mix mix;
    recede_curve_films films;
    int darkens; /* see recede_shade_darkens */
    int swept;
    double limit;

    unsigned long shades, betweens, doubles; /* what it cost */
} recede_over_visit;

void recede_over_visit_start(recede_over_visit *visit, const recede_palette *ground,
                             recede_lab target);

/* Offers every film of the mix, of at most two paints, within the limit, in
 * millionths. */
void recede_over_visit_mix(recede_over_visit *visit, const recede_mix *mix, double limit);

#endif
