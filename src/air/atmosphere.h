/* What the air is at heights other than the eye's. */
#ifndef RECEDE_AIR_ATMOSPHERE_H
#define RECEDE_AIR_ATMOSPHERE_H

#include "recede.h"

/* exp(-rise / scale), how much of a constituent is left after a rise. Deep below
 * the eye the growth stops before it overflows: nothing is seen through that. */
double recede_thinning(double rise_km, double scale_km);

/* Whether the eye is inside the mist; at the very top it is above it. */
int recede_eye_in_mist(const recede_atmosphere *air);

/* Haze at the eye, with the mist where the eye is in it, per km. */
double recede_haze_at_eye(const recede_atmosphere *air, int band);

#endif
