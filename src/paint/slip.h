/* How far off a mix is when the hand slips. */
#ifndef RECEDE_PAINT_SLIP_H
#define RECEDE_PAINT_SLIP_H

#include "paint/palette.h"

/* The larger difference from target with 0.75 and with 1.25 times the water, or in
 * an opaque medium the white. No water to slip leaves the mix's own difference;
 * the bare ground has nothing to slip: 0. */
double recede_slip(const recede_palette *palette, const recede_mix *mix, recede_lab target);

#endif
