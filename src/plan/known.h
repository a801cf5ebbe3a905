/*
 * What a plan's searches found, for the next plan with the same paints: while a hand
 * moves one thing in a scene, most colours that are sought are those of before.
 */
#ifndef RECEDE_PLAN_KNOWN_H
#define RECEDE_PLAN_KNOWN_H

#include "recede.h"

/* The sky, and two sides of each plane. */
enum { RECEDE_MOST_WASHES = 1 + 2 * RECEDE_MOST_PLANES };

typedef struct recede_known {
    size_t papers, overs;
    recede_wash_target paper[RECEDE_MOST_WASHES];
    recede_wash_recipe on_paper[RECEDE_MOST_WASHES];
    recede_over_target over[RECEDE_MOST_PLANES];
    recede_wash_recipe on_lit[RECEDE_MOST_PLANES];
} recede_known;

/* NULL where nothing is known of the very same target. */
const recede_wash_recipe *recede_known_on_paper(const recede_known *known,
                                                const recede_wash_target *target);
const recede_wash_recipe *recede_known_on_lit(const recede_known *known,
                                              const recede_over_target *target);

void recede_know_on_paper(recede_known *known, const recede_wash_target *target,
                          const recede_wash_recipe *found);
void recede_know_on_lit(recede_known *known, const recede_over_target *target,
                        const recede_wash_recipe *found);

/* 1 where two scenes' skies look alike to one eye. */
int recede_same_weather(const recede_scene *one, const recede_scene *other);

#endif
