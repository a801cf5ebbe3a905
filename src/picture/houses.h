/* Houses along the ground: what their roofs add to the skyline, and how light
 * falls on their sides. Lengths in pixels, y downward. */
#ifndef RECEDE_PICTURE_HOUSES_H
#define RECEDE_PICTURE_HOUSES_H

#include "picture/modelling.h"

/* Raises the heights of a band's ground by its houses. */
void recede_houses_raise(const recede_terrain *terrain, const recede_band *band, float *height);

/* Sets the light of the cells that houses cover. */
void recede_houses_model(const recede_terrain *terrain, const recede_band *band,
                         const recede_lighting *light, recede_grid *grid);

#endif
