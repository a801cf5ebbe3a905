/* The clear sky as scattering alone has it. */
#ifndef RECEDE_AIR_SKY_H
#define RECEDE_AIR_SKY_H

#include "recede.h"

/* Radiance along the slant line at an elevation (its sine), on a round earth. The
 * sky that the library shows, recede_sky_radiance, is this drawn toward the level
 * airlight near the horizon. */
recede_spectrum recede_sky_along_line(const recede_atmosphere *air, const recede_light *light,
                                      double elevation_sine);

/* As recede_sky_radiance at each of many elevations, in about the time of one. */
void recede_sky_radiances(const recede_atmosphere *air, const recede_light *light,
                          const double *elevations_deg, size_t count, recede_spectrum *out);

#endif
