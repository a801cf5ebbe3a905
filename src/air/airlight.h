/* The light that a clear sky's air sends into a line of sight. */
#ifndef RECEDE_AIR_AIRLIGHT_H
#define RECEDE_AIR_AIRLIGHT_H

#include "air/solar.h"

/* Where the sun stands: constants of one scene. */
typedef struct recede_sun {
    double height_deg, air_mass;
    double sine;            /* of its height */
    double diffuse_cosine;  /* 1 / air mass, in the model's diffuse terms */
} recede_sun;
recede_sun recede_sun_at(double height_deg);

/* Cosine of the angle between the way to the sun and the line of sight: the sun's
 * side is measured along the horizon, the elevation (as its sine) above it. */
double recede_scattering_cosine(const recede_sun *sun, double side_deg, double elevation_sine);

/* One band of clear air seen from some height: vertical optical depths of what
 * lies above, the haze's albedo, and the light that arrives. */
typedef struct recede_lit_air {
    double tau_rayleigh, tau_haze, albedo;
    recede_solar_irradiance from_above;
    double from_below; /* horizontal irradiance from the ground */
} recede_lit_air;

/* The sunlight of one band on its way down, and what of it is the same at every
 * height. */
typedef struct recede_sunlight {
    recede_solar_band band;
    recede_solar_air air;
    recede_solar_still still;
} recede_sunlight;
recede_sunlight recede_sunlight_of(const recede_sun *sun, double wavelength_nm);

/* Irradiances under the haze given; pressure relative to the eye's. */
recede_solar_irradiance recede_clear_irradiance(const recede_sunlight *light, double pressure,
                                                double tau_haze, double albedo);

/* The light that it scatters, whichever way one looks: the sun's beam and what
 * comes from all around. */
typedef struct recede_glow { double beam, around; } recede_glow;
recede_glow recede_clear_glow(const recede_sun *sun, const recede_lit_air *air);

/* How much of the beam goes into the line of sight, 1 on the mean over all
 * directions. */
typedef struct recede_phases { double rayleigh, haze; } recede_phases;
recede_phases recede_phases_at(double scattering_cosine);

/* Radiance that an endless stretch of it would have, were it Rayleigh's air
 * alone or haze alone. */
typedef struct recede_sources { double rayleigh, haze; } recede_sources;
recede_sources recede_clear_sources(recede_glow glow, double albedo, recede_phases phases);

#endif
