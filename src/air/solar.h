/* The simple solar spectral model: R. Bird and C. Riordan, "Simple Solar Spectral
 * Model for Direct and Diffuse Irradiance on Horizontal and Tilted Planes at the
 * Earth's Surface for Cloudless Atmospheres", SERI/TR-215-2436 (1984).
 * Equation numbers in solar.c are that report's. */
#ifndef RECEDE_AIR_SOLAR_H
#define RECEDE_AIR_SOLAR_H

#include "data/tables.h"

/* What the model knows besides wavelength. diffuse_cosine stands in the diffuse
 * terms where the report has the cosine of the sun's zenith angle. */
typedef struct recede_solar_air {
    double sun_height_deg, air_mass;
    double pressure;          /* relative to sea level */
    double ozone_atm_cm, water_cm;
    double asymmetry, ground_reflectance;
    double diffuse_cosine;
    double sun_distance;      /* factor on the spectrum, 1 at the mean distance */
} recede_solar_air;

/* The haze in one band: vertical optical depth, single scattering albedo. */
typedef struct recede_solar_haze { double depth, albedo; } recede_solar_haze;

/* W m-2 nm-1: direct on a plane facing the sun, diffuse on a level one. */
typedef struct recede_solar_irradiance { double sun, sky; } recede_solar_irradiance;

/* F. Kasten and A. Young, Applied Optics 28 (1989) 4735. */
double recede_air_mass(double sun_height_deg);

/* The table's coefficients at any wavelength from 370 to 752.5 nm, straight
 * lines between its bands. */
recede_solar_band recede_solar_band_at(double wavelength_nm);

/* What neither pressure nor haze changes in one band: the same at every height. */
typedef struct recede_solar_still {
    double ozone, water, water_of_skylight; /* transmittances */
    double forward, forward_of_skylight;    /* shares of what haze scatters */
    double correction;
} recede_solar_still;
recede_solar_still recede_solar_still_of(const recede_solar_air *air,
                                         const recede_solar_band *band);

recede_solar_irradiance recede_solar_with(const recede_solar_air *air,
                                          const recede_solar_band *band,
                                          const recede_solar_still *still,
                                          recede_solar_haze haze);
recede_solar_irradiance recede_solar(const recede_solar_air *air, const recede_solar_band *band,
                                     recede_solar_haze haze);

#endif
