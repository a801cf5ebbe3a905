/* CIEDE2000 in its parts. */
#ifndef RECEDE_COLOUR_DIFFERENCE_H
#define RECEDE_COLOUR_DIFFERENCE_H

#include "recede.h"

/* Differences in lightness, chroma and hue, each over its S, and R_T: CIEDE2000
 * is the root of l^2 + c^2 + h^2 + turn c h. */
typedef struct recede_difference { double l, c, h, turn; } recede_difference;
recede_difference recede_difference_of(recede_lab one, recede_lab other);

#endif
