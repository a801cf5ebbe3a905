/* What a best-first search has yet to open, the nearest at the top: a binary
 * heap on the caller's allocator. */
#ifndef RECEDE_PAINT_FRONTIER_H
#define RECEDE_PAINT_FRONTIER_H

#include <stdint.h>

#include "recede.h"

/* A box of the index: level 0 a leaf, else the block below it of level - 1; at
 * counts the boxes of that level in their class. */
typedef struct recede_place_ahead {
    float bound;
    uint32_t at;
    uint8_t class, level;
} recede_place_ahead;

typedef struct recede_frontier {
    const recede_allocator *allocator;
    recede_place_ahead *items;
    size_t count, room;
} recede_frontier;

void recede_frontier_start(recede_frontier *frontier, const recede_allocator *allocator);
recede_code recede_frontier_add(recede_frontier *frontier, recede_place_ahead place);

/* Takes the nearest; 0 when there is none. */
int recede_frontier_take(recede_frontier *frontier, recede_place_ahead *nearest);

/* The bound of the nearest; INFINITY when there is none. */
float recede_frontier_least(const recede_frontier *frontier);
void recede_frontier_end(recede_frontier *frontier);

#endif
