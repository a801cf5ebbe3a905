/* How dark and how pale mixes go, while they go by. */
#ifndef RECEDE_PAINT_RANGE_H
#define RECEDE_PAINT_RANGE_H

#include "paint/sweep.h"

typedef struct recede_extremes {
    recede_sweep sweep;
    double darkest_y, palest_y;
    double dark_l, pale_l; /* no mix whose L* lies between can be either */
} recede_extremes;

/* Begins with the bare ground, in watercolour. */
void recede_extremes_start(recede_extremes *extremes, const recede_palette *palette);

/* A mix without water, whose L* as a curve has it may tell that it is neither. */
void recede_extremes_take(recede_extremes *extremes, const recede_mix *mix, float curve_l);

#endif
