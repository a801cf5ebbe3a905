/* Which pairs of paints promise to come near a target over a ground: a guess, to have a
 * good mix early. */
#ifndef RECEDE_PAINT_OVER_LIKELY_H
#define RECEDE_PAINT_OVER_LIKELY_H

#include "paint/over_visit.h"

typedef struct recede_over_pair {
    int paint[2]; /* ascending */
    float off;    /* by how much the guess misses, squared */
} recede_over_pair;

/* At most so many, the likeliest first; returns how many. */
int recede_over_likely(const recede_over_visit *visit, recede_over_pair *out, int most);

#endif
