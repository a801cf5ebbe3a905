/*
 * Every mix that the rules allow, in the order of the rule that picks one: fewest
 * pigments, fewest parts, then palette order (paint indices, then parts, both
 * lexicographic). Parts are coprime, each 1 or more; a pigment alone has 1 part.
 *
 *     recede_mixes_start(&walk, paints, rules);
 *     while (recede_mixes_next(&walk)) ...
 */
#ifndef RECEDE_PAINT_MIXES_H
#define RECEDE_PAINT_MIXES_H

#include "recede.h"

typedef struct recede_mixes {
    int paints, most_pigments, most_parts;
    int one_set;      /* stay with the paints given */
    int started;
    recede_mix mix;   /* the mix just reached; water 0 */
    int parts;        /* its parts in all */
    size_t set;       /* its paints' number: 0 is the bare ground, see below */
    size_t first_set; /* of this many pigments */
} recede_mixes;

void recede_mixes_start(recede_mixes *walk, int paints, const recede_rules *rules);

/* The mixes of one set of paints alone, ascending; walk->set is left at 0. */
void recede_mixes_start_set(recede_mixes *walk, const int *paint, int count, int most_parts);

/* 1 when a mix was reached, 0 at the end. */
int recede_mixes_next(recede_mixes *walk);

/* Sets of paints are numbered by count, then palette order; the bare ground, the
 * empty set, is 0. */
size_t recede_set_count(int paints, int most_pigments);

/* The paints of a set, ascending; returns how many. */
int recede_set_paints(int paints, size_t set, int *paint);

/* Mixes of exactly so many pigments and parts, coprime, that a walk reaches. */
double recede_mixes_of_size(int paints, int pigments, int parts);

/* All mixes a walk reaches. */
double recede_mixes_count(int paints, const recede_rules *rules);

#endif
