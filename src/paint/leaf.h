/* A leaf on its own: the box around a stretch of one mix's curve. */
#ifndef RECEDE_PAINT_LEAF_H
#define RECEDE_PAINT_LEAF_H

#include "paint/index.h"

/* Lab in 1/128, rounded outward. */
typedef struct recede_leaf {
    int16_t low[3], high[3];
    uint16_t arc;
} recede_leaf;

/* The leaves of one mix, a stretch each, from its curve. */
void recede_leaves_of_curve(const recede_stretches *stretches, const recede_curve *curve,
                            recede_leaf *out);

/* One place of a block, and back. */
void recede_put_leaf(recede_boxes *boxes, int lane, const recede_leaf *leaf);

/* The box around the first count of a block. */
recede_leaf recede_leaf_around(const recede_boxes *boxes, int count);

#endif
