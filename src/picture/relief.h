/* The small ups and downs of a plane, before light falls on them: numbers of
 * about -1 to 1 for every place of a band. */
#ifndef RECEDE_PICTURE_RELIEF_H
#define RECEDE_PICTURE_RELIEF_H

#include "picture/terrain.h"

/* A place in the picture: pixels, and how far below its band's ground line. */
typedef struct recede_spot {
    double x, y, below;
} recede_spot;

typedef double recede_relief(const recede_terrain *terrain, const recede_band *band,
                             recede_spot place);

/* Heights, whose slope takes the light. */
recede_relief recede_relief_hill;

/* Light and dark as they lie; the shade under trees is the same everywhere. */
#define RECEDE_UNDER_TREES (-0.625)
recede_relief recede_relief_ground, recede_relief_wood_floor, recede_relief_water;

/* What breaks the edges of leafy masses. */
recede_relief recede_relief_leaves;

#endif
