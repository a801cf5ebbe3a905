#include "air/solar.h"

#include "air/constants.h"

#include <math.h>

/* Constants as in the authors' own program, whose output is the worked example:
 * 1.3366 in eq. 2-4 and 118.3 in eq. 2-11, where the report prints 1.335 and
 * 118.93. */
#define OZONE_HEIGHT_KM 22.0
#define OZONE_EARTH_RADIUS_KM 6370.0
#define AIR_MASS_OF_SKYLIGHT 1.8

typedef struct transmittance {
    double rayleigh, haze_scatter, haze_absorb, mixed_gas;
} transmittance;

double recede_air_mass(double sun_height_deg)
{
    return 1.0 / (sin(sun_height_deg * RECEDE_DEGREE)
                  + 0.50572 * pow(sun_height_deg + 6.07995, -1.6364));
}

static double between(double a, double b, double share)
{
    return a + (b - a) * share;
}

recede_solar_band recede_solar_band_at(double wavelength_nm)
{
    size_t last = recede_table_solar_count - 1, at = 0;
    while (at + 2 <= last && recede_table_solar[at + 1].wavelength_nm <= wavelength_nm)
        at++;
    const recede_solar_band *low = &recede_table_solar[at], *high = low + 1;
    double share = (wavelength_nm - low->wavelength_nm)
                   / (high->wavelength_nm - low->wavelength_nm);
    return (recede_solar_band){
        .wavelength_nm = wavelength_nm,
        .extraterrestrial_w_m2_nm = between(low->extraterrestrial_w_m2_nm,
                                            high->extraterrestrial_w_m2_nm, share),
        .water_per_cm = between(low->water_per_cm, high->water_per_cm, share),
        .ozone_per_atm_cm = between(low->ozone_per_atm_cm, high->ozone_per_atm_cm, share),
        .mixed_gas = between(low->mixed_gas, high->mixed_gas, share),
    };
}

/* The ozone layer is high up, so its air mass is its own. */
static double ozone_mass(double sun_height_deg)
{
    double sine = sin(sun_height_deg * RECEDE_DEGREE);
    return (1.0 + OZONE_HEIGHT_KM / OZONE_EARTH_RADIUS_KM)
           / sqrt(sine * sine + 2.0 * OZONE_HEIGHT_KM / OZONE_EARTH_RADIUS_KM);
}

static double water_at(const recede_solar_air *air, const recede_solar_band *band, double mass)
{
    double water = band->water_per_cm * air->water_cm * mass;
    return exp(-0.2385 * water / pow(1.0 + 20.07 * water, 0.45));
}

/* The share of what haze scatters that goes on downward. */
static double forward_share(double asymmetry, double cosine)
{
    double log_back = log(1.0 - asymmetry);
    double a = log_back * (1.459 + log_back * (0.1595 + log_back * 0.4129));
    double b = log_back * (0.0783 + log_back * (-0.3824 - log_back * 0.5874));
    return 1.0 - 0.5 * exp((a + b * cosine) * cosine);
}

/* Below 450 nm the diffuse part has the model's own correction. */
recede_solar_still recede_solar_still_of(const recede_solar_air *air,
                                         const recede_solar_band *band)
{
    double um = band->wavelength_nm / 1000.0;
    return (recede_solar_still){
        .ozone = exp(-band->ozone_per_atm_cm * air->ozone_atm_cm
                     * ozone_mass(air->sun_height_deg)),
        .water = water_at(air, band, air->air_mass),
        .water_of_skylight = water_at(air, band, AIR_MASS_OF_SKYLIGHT),
        .forward = forward_share(air->asymmetry, air->diffuse_cosine),
        .forward_of_skylight = forward_share(air->asymmetry, 1.0 / AIR_MASS_OF_SKYLIGHT),
        .correction = um <= 0.45 ? pow(um + 0.55, 1.8) : 1.0,
    };
}

/* Haze is split into what it scatters and what it absorbs. */
static transmittance transmittance_at(const recede_solar_air *air, const recede_solar_band *band,
                                      recede_solar_haze haze, double mass)
{
    double um = band->wavelength_nm / 1000.0, um2 = um * um;
    double rayleigh = air->pressure * mass / (um2 * um2 * (115.6406 - 1.3366 / um2));
    double gas = band->mixed_gas * air->pressure * mass;
    return (transmittance){
        .rayleigh = exp(-rayleigh),
        .haze_scatter = exp(-haze.albedo * haze.depth * mass),
        .haze_absorb = exp(-(1.0 - haze.albedo) * haze.depth * mass),
        .mixed_gas = gas == 0.0 ? 1.0 : exp(-1.41 * gas / pow(1.0 + 118.3 * gas, 0.45)),
    };
}

/* Eq. 3-8 with Tu', as in the authors' program: how much of the light going up
 * the air sends down again. */
static double sky_reflectance(const recede_solar_air *air, const recede_solar_band *band,
                              const recede_solar_still *still, recede_solar_haze haze)
{
    transmittance t = transmittance_at(air, band, haze, AIR_MASS_OF_SKYLIGHT);
    double forward = still->forward_of_skylight;
    return t.mixed_gas * still->water_of_skylight * t.haze_absorb
           * (0.5 * (1.0 - t.rayleigh) + (1.0 - forward) * t.rayleigh * (1.0 - t.haze_scatter));
}

/* The diffuse part: light scattered by the air, by haze, and light off the ground
 * sent down again. */
recede_solar_irradiance recede_solar_with(const recede_solar_air *air,
                                          const recede_solar_band *band,
                                          const recede_solar_still *still,
                                          recede_solar_haze haze)
{
    transmittance t = transmittance_at(air, band, haze, air->air_mass);
    double above = band->extraterrestrial_w_m2_nm * air->sun_distance;
    double sun = above * t.rayleigh * t.haze_scatter * t.haze_absorb * still->water
                 * still->ozone * t.mixed_gas;

    double level = above * air->diffuse_cosine * still->ozone * t.mixed_gas * still->water
                   * t.haze_absorb;
    double by_air = level * 0.5 * (1.0 - pow(t.rayleigh, 0.95));
    double by_haze = level * pow(t.rayleigh, 1.5) * (1.0 - t.haze_scatter) * still->forward;
    double returned = sky_reflectance(air, band, still, haze) * air->ground_reflectance;
    double by_ground = (sun * air->diffuse_cosine + by_air + by_haze) * returned
                       / (1.0 - returned);
    return (recede_solar_irradiance){sun, (by_air + by_haze + by_ground) * still->correction};
}

recede_solar_irradiance recede_solar(const recede_solar_air *air, const recede_solar_band *band,
                                     recede_solar_haze haze)
{
    recede_solar_still still = recede_solar_still_of(air, band);
    return recede_solar_with(air, band, &still, haze);
}
