#ifndef RECEDE_PAINT_RECIPE_H
#define RECEDE_PAINT_RECIPE_H

#include "paint/palette.h"

/* The recipe that a chosen mix makes: its colour, difference, slip and reach.
 * closest is the difference of the closest mix. */
recede_recipe recede_recipe_of(const recede_palette *palette, const recede_mix *mix,
                               recede_lab target, double closest);

#endif
