/* The grid of a band's light, from laying it out to sharing it between the lit
 * and the shadow wash. */
#ifndef RECEDE_PICTURE_GRID_H
#define RECEDE_PICTURE_GRID_H

#include "picture/modelling.h"
#include "picture/relief.h"

/* Light all 0, ground and rows found. Cleared again on failure. */
recede_code recede_grid_lay(const recede_terrain *terrain, const recede_band *band,
                            recede_grid *out);

recede_spot recede_grid_spot(const recede_grid *grid, size_t column, size_t row);

/* Shifts and scales the light so that the lit wash takes its part of what is
 * seen of the band, and the passage to the shadow has its width. */
recede_code recede_grid_divide(const recede_terrain *terrain, const recede_band *band,
                               const recede_lighting *lighting, recede_grid *grid);

#endif
