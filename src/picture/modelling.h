/* Light and shade on a band: how much each place is turned to the light, on a
 * grid coarser than the pixels (the shapes are soft, the grid is quick). */
#ifndef RECEDE_PICTURE_MODELLING_H
#define RECEDE_PICTURE_MODELLING_H

#include "picture/lighting.h"
#include "picture/terrain.h"

typedef struct recede_grid {
    size_t columns, rows, step; /* a cell each `step` pixels */
    double top;                 /* y of row 0 */
    float *light;               /* columns * rows; below -1 shadow, above 1 lit */
    float *ground;              /* y of the ground line, by column */
    size_t *first, *end;        /* the rows of each column that can be seen */
} recede_grid;

recede_code recede_modelling(const recede_terrain *terrain, const recede_band *band,
                             const recede_lighting *lighting, recede_grid *out);
void recede_grid_clear(const recede_terrain *terrain, recede_grid *grid);

#endif
