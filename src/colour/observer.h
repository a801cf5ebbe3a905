/* The CIE 1931 observer on the library's bands. */
#ifndef RECEDE_COLOUR_OBSERVER_H
#define RECEDE_COLOUR_OBSERVER_H

#include "recede.h"

/* x, y and z of the colour matching functions in one band. */
recede_xyz recede_observer_at(int band);

/* What each band of a reflectance adds to X, Y and Z under D65: the sum of
 * reflectance times weight is recede_xyz_of_reflectance but for rounding. */
void recede_reflectance_weights(recede_spectrum *x, recede_spectrum *y, recede_spectrum *z);

#endif
