/* Trees as heaps of round clumps: what the skyline follows and what the light
 * models. All lengths in pixels, y downward. */
#ifndef RECEDE_PICTURE_CROWNS_H
#define RECEDE_PICTURE_CROWNS_H

#include "picture/landform.h"

typedef struct recede_clump {
    float x, y, r;                 /* centre and radius of a clump of leaves */
    float crown_x, crown_y, crown_rx, crown_ry; /* the crown it belongs to */
} recede_clump;

typedef struct recede_crowns {
    recede_clump *clumps;          /* back to front */
    size_t count, room;
} recede_crowns;

/* How much room the trees of a band can need. */
size_t recede_crowns_room(double width, double growth, double depth);

/* How far below the band's base the foremost row stands. */
double recede_crowns_depth(double growth, double depth);

/* Rows of trees, the hindmost along `foot` (y of the ground by column, relative
 * to the band's base), the others below it down to `depth`. Stops when the room
 * is full. */
void recede_crowns_grow(recede_crowns *crowns, const recede_look *look, const float *foot,
                        size_t width, double growth, double depth);

#endif
