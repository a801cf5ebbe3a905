#ifndef RECEDE_PAINT_REACH_H
#define RECEDE_PAINT_REACH_H

#include "recede.h"

/* CIEDE2000 in millionths: on a sheet seen alone this passes for the colour wanted,
 * and paints of one name differ by more. Chosen for this work. */
#define RECEDE_REACHED_MILLIONTHS 3e6

/* Whether the paints reach a target: closest is the difference of the closest mix,
 * mix and delta_e the colour and difference of the one chosen. Out of reach, the
 * larger of its two terms, lightness or chroma and hue together, says which way. */
recede_reach recede_reach_of(double closest, recede_lab target, recede_lab mix, double delta_e);

#endif
