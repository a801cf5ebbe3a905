/* One mix at every level of its water. */
#ifndef RECEDE_PAINT_SWEEP_H
#define RECEDE_PAINT_SWEEP_H

#include "paint/film.h"
#include "paint/palette.h"

typedef struct recede_sweep {
    const recede_palette *palette;
    size_t levels;
    recede_layer layer;
} recede_sweep;

void recede_sweep_start(recede_sweep *sweep, const recede_palette *palette);

/* Takes up a mix; its water does not matter. */
void recede_sweep_take(recede_sweep *sweep, const recede_mix *mix);

/* Its colour on the paper with the water of that level. */
recede_xyz recede_sweep_xyz(const recede_sweep *sweep, size_t level);

#endif
