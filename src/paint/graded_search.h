/* A graded wash by index, by the rule of paint/graded.h. */
#ifndef RECEDE_PAINT_GRADED_SEARCH_H
#define RECEDE_PAINT_GRADED_SEARCH_H

#include "paint/visit.h"

/* The recipe from the sets that the index holds, where a set elsewhere is known to
 * score so many millionths; INFINITY where none is. score: the chosen set's, in
 * millionths; INFINITY where none held is within the tie of what was known, and then
 * out is left alone. Adds to cost. */
recede_code recede_search_graded(const recede_index *index, const recede_wash_target *target,
                                 double known, const recede_allocator *allocator,
                                 recede_cost *cost, recede_wash_recipe *out, double *score);

#endif
