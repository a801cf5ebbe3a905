#ifndef RECEDE_PAINT_SEARCH_H
#define RECEDE_PAINT_SEARCH_H

#include "paint/visit.h"
#include "paint/wider.h"

/* One wash among the mixes that an index holds; adds to cost. Returns 1 in open
 * where the others may matter as well. */
recede_code recede_search_one(const recede_index *index, const recede_wash_target *target,
                              const recede_allocator *allocator, recede_cost *cost,
                              recede_wash_recipe *out, recede_open_wash *left, int *open);

#endif
