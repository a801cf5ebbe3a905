/* Leaves in the order of a space-filling curve through Lab (Morton 1966), so that
 * neighbours in memory are neighbours in colour. */
#ifndef RECEDE_PAINT_MORTON_H
#define RECEDE_PAINT_MORTON_H

#include "paint/leaf.h"

typedef struct recede_place { uint32_t key, leaf; } recede_place;

/* The leaves' numbers, sorted, in one or other of two arrays for as many. */
const recede_place *recede_sort_leaves(const recede_leaf *leaves, size_t count,
                                       recede_place *places, recede_place *others);

#endif
