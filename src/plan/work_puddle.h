/* What a puddle is made of, and how one puddle becomes another when nothing may be
 * taken out of it. */
#ifndef RECEDE_PLAN_WORK_PUDDLE_H
#define RECEDE_PLAN_WORK_PUDDLE_H

#include <stdint.h>

#include "recede.h"

/* The share of each paint, and of water, in a puddle's volume. A mix of no paints
 * has none. */
typedef struct recede_puddle {
    int count;
    int paint[RECEDE_MOST_IN_MIX];
    double share[RECEDE_MOST_IN_MIX];
    double water;
    uint32_t paints; /* bit i: paint i of the palette */
} recede_puddle;

recede_puddle recede_puddle_of_mix(const recede_mix *mix);

/* Paints in it, and water where there is some. */
int recede_puddle_parts(const recede_puddle *puddle);

/* growth: the least volume of the second mix that holds a volume 1 of the first;
 * INFINITY where additions cannot lead there. additions: what must then be poured
 * in, paints and water; at least one part of the second mix needs none. */
typedef struct recede_pour {
    double growth;
    int additions;
} recede_pour;
recede_pour recede_pour_between(const recede_puddle *from, const recede_puddle *to);

/* The share of one paint of the palette; 0 where it is not in. */
double recede_puddle_share(const recede_puddle *puddle, int paint);

#endif
