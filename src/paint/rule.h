/* Which mix: the rule that picks a recipe, for every search there is. */
#ifndef RECEDE_PAINT_RULE_H
#define RECEDE_PAINT_RULE_H

#include "recede.h"

/* A mix that may be chosen, with whole millionths of CIEDE2000. */
typedef struct recede_candidate {
    recede_mix mix;
    double difference;
    double slip; /* below 0: not computed yet */
} recede_candidate;

/* Differences are compared rounded to 1e-6: as whole millionths, nearest, halves
 * up. The tie of the rules counts in millionths likewise. */
double recede_millionths(double difference);

/* How far a bare ground, or the palette's paper, is off, in millionths. In an opaque
 * medium every passage is painted: there it counts as farther off than any mix can be. */
double recede_difference_of_ground(const recede_palette *palette, const recede_spectrum *ground,
                                   recede_lab target);
double recede_ground_difference(const recede_palette *palette, recede_lab target);

/* Parts of all pigments together; 0 for the bare ground. */
int recede_mix_parts(const recede_mix *mix);

/* Below 0 when one has fewer pigments than other, or as many and fewer parts. */
int recede_compare_size(const recede_mix *one, const recede_mix *other);

/* Among mixes within the tie: below 0 when one is to be chosen before other. Fewest
 * pigments, fewest parts, smallest slip, most water, palette order (paint indices,
 * then parts). Needs both slips where the sizes are the same. */
int recede_compare_candidates(const recede_candidate *one, const recede_candidate *other);

#endif
