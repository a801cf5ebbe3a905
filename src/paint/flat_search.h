/* A flat wash by index, by the rule of paint/rule.h. */
#ifndef RECEDE_PAINT_FLAT_SEARCH_H
#define RECEDE_PAINT_FLAT_SEARCH_H

#include "paint/reach.h"
#include "paint/rule.h"
#include "paint/visit.h"

/* closest: in millionths, no less than the closest difference; where it is above
 * RECEDE_REACHED_MILLIONTHS, so is that. */
typedef struct recede_flat_answer {
    int found;  /* 0: nothing the index holds is within the tie of what was known */
    recede_candidate chosen;
    double closest;
} recede_flat_answer;

/* The choice among what the index holds, where a mix elsewhere is known to have
 * so many millionths of difference; INFINITY where none is. Adds to cost. */
recede_code recede_flat_find(const recede_index *index, recede_lab target, double known,
                             const recede_allocator *allocator, recede_cost *cost,
                             recede_flat_answer *out);

#endif
