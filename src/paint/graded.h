/*
 * Graded washes: both ends from the same paints.
 *
 * While all mixes go by, the closest difference of each end is kept for each set of
 * paints; the bare ground is the empty set. A set scores the larger of its two.
 * Among sets within the tie of the smallest score: fewest paints, smallest score,
 * palette order. Within the set chosen each end takes its mix by the ordinary rule,
 * with every paint of the set in it.
 */
#ifndef RECEDE_PAINT_GRADED_H
#define RECEDE_PAINT_GRADED_H

#include "paint/candidates.h"

typedef struct recede_graded {
    const recede_palette *palette;
    const recede_rules *rules;
    const recede_allocator *allocator;
    size_t washes, sets;
    double *closest;    /* by set, wash, end; millionths */
    double *best_score; /* by wash */
} recede_graded;

/* With no washes nothing is allocated. RECEDE_NO_MEMORY leaves nothing behind. */
recede_code recede_graded_start(recede_graded *graded, const recede_palette *palette,
                                const recede_rules *rules, size_t washes,
                                const recede_allocator *allocator);
void recede_graded_end(recede_graded *graded);

/* Millionths above which a mix of the set does not matter to an end (0 from, 1 to). */
double recede_graded_limit(const recede_graded *graded, size_t set, size_t wash, int end);

/* A mix of the set with this difference for an end, in millionths. */
void recede_graded_offer(recede_graded *graded, size_t set, size_t wash, int end,
                         double difference);

/* Says that a mix of the set has been offered with all its water. */
void recede_graded_score(recede_graded *graded, size_t set);

/* The closest offered, in millionths; INFINITY where none was. */
double recede_graded_closest(const recede_graded *graded, size_t set, size_t wash, int end);

/* The set that the rule chooses, once all that matter were offered. */
size_t recede_graded_choose_set(const recede_graded *graded, size_t wash);

/* Holds half of one end's mix and half of the other's, on the palette's paper, against
 * the colour wanted halfway. */
void recede_graded_halfway(const recede_palette *halfway, const recede_wash_target *target,
                           recede_wash_recipe *out);

/* The recipe from the mixes of that set offered for either end. Each end lies on
 * its list's palette's paper, half-and-half on that of halfway. */
void recede_graded_finish(const recede_palette *halfway, const recede_wash_target *target,
                          recede_candidates *ends, recede_wash_recipe *out);

/* The recipe with exactly the paints of a set, from all its mixes; nothing need
 * have been offered. */
recede_code recede_graded_of_set(const recede_graded *graded, size_t set,
                                 const recede_wash_target *target, recede_wash_recipe *out);

/* The recipe, once all mixes were offered. */
recede_code recede_graded_choose(const recede_graded *graded, size_t wash,
                                 const recede_wash_target *target, recede_wash_recipe *out);

#endif
