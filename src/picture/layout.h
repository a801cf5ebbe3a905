/* How much of the sheet each plane takes. */
#ifndef RECEDE_PICTURE_LAYOUT_H
#define RECEDE_PICTURE_LAYOUT_H

#include "recede.h"

/* Shares of the planes, far to near as in recede_plan_at, then the sky's: all
 * above 0, sum 1. Shares that the scene gives are kept where they fit. */
void recede_layout_shares(const recede_plan *plan, double shares[RECEDE_MOST_PLANES + 1]);

#endif
