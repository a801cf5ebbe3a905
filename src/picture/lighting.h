/* Where the light comes from in the picture. */
#ifndef RECEDE_PICTURE_LIGHTING_H
#define RECEDE_PICTURE_LIGHTING_H

#include "recede.h"

/* The direction to the light as the painter sees it, length 1: x right, y up,
 * z toward the painter; and how the light divides each plane. */
typedef struct recede_lighting {
    double x, y, z;
    double lit_part;  /* of each plane's area that the lit wash takes */
    double softness;  /* of the passage from lit to shadow */
} recede_lighting;

recede_lighting recede_lighting_of(const recede_sky *sky);

#endif
