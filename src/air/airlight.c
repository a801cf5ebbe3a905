#include "air/airlight.h"

#include "air/constants.h"
#include "air/integrals.h"

#include <math.h>

recede_sun recede_sun_at(double height_deg)
{
    double mass = recede_air_mass(height_deg);
    return (recede_sun){height_deg, mass, sin(height_deg * RECEDE_DEGREE), 1.0 / mass};
}

double recede_scattering_cosine(const recede_sun *sun, double side_deg, double elevation_sine)
{
    double level = sqrt((1.0 - sun->sine * sun->sine) * (1.0 - elevation_sine * elevation_sine));
    return level * cos(side_deg * RECEDE_DEGREE) + sun->sine * elevation_sine;
}

recede_sunlight recede_sunlight_of(const recede_sun *sun, double wavelength_nm)
{
    recede_sunlight light = {
        .band = recede_solar_band_at(wavelength_nm),
        .air = {
            .sun_height_deg = sun->height_deg,
            .air_mass = sun->air_mass,
            .pressure = 1.0,
            .ozone_atm_cm = RECEDE_OZONE_ATM_CM,
            .water_cm = RECEDE_WATER_CM,
            .asymmetry = RECEDE_HAZE_ASYMMETRY,
            .ground_reflectance = RECEDE_GROUND_REFLECTANCE,
            .diffuse_cosine = sun->diffuse_cosine,
            .sun_distance = 1.0,
        },
    };
    light.still = recede_solar_still_of(&light.air, &light.band);
    return light;
}

recede_solar_irradiance recede_clear_irradiance(const recede_sunlight *light, double pressure,
                                                double tau_haze, double albedo)
{
    recede_solar_air air = light->air;
    air.pressure = pressure;
    return recede_solar_with(&air, &light->band, &light->still,
                             (recede_solar_haze){tau_haze, albedo});
}

/* Phase functions with a mean of 1 over all directions. */
static double rayleigh_phase(double cosine)
{
    return 0.75 * (1.0 + cosine * cosine);
}

/* L. Henyey and J. Greenstein, Astrophysical Journal 93 (1941) 70. */
static double haze_phase(double cosine)
{
    const double g = RECEDE_HAZE_ASYMMETRY;
    return (1.0 - g * g) / pow(1.0 + g * g - 2.0 * g * cosine, 1.5);
}

/* Sunlight that haze has thrown barely off its course counts as sunlight still:
 * it is taken out of the sky's light and put back into the sun's. */
static double forward_peak(const recede_sun *sun, const recede_lit_air *air)
{
    double g2 = RECEDE_HAZE_ASYMMETRY * RECEDE_HAZE_ASYMMETRY;
    double slant = air->albedo * air->tau_haze * sun->air_mass;
    return fmin(air->from_above.sun * expm1(g2 * slant),
                air->from_above.sky / sun->diffuse_cosine);
}

/* How much brighter than its mean the sky is as air sees it, which sees the
 * bright band along the horizon edge on. Its limit at no depth at all never
 * matters, since no light comes from there. */
static double horizon_band(double depth)
{
    if (depth <= 0.0)
        return 1.0;
    recede_exponential_integrals e = recede_exponential_integrals_at(depth);
    return (1.0 - e.e2) / (1.0 - 2.0 * e.e3);
}

recede_glow recede_clear_glow(const recede_sun *sun, const recede_lit_air *air)
{
    double peak = forward_peak(sun, air);
    double sky = fmax(0.0, air->from_above.sky - sun->diffuse_cosine * peak);
    return (recede_glow){
        .beam = (air->from_above.sun + peak) / (4.0 * RECEDE_PI),
        .around = (horizon_band(air->tau_rayleigh + air->tau_haze) * sky + air->from_below)
                  / (2.0 * RECEDE_PI),
    };
}

recede_phases recede_phases_at(double scattering_cosine)
{
    return (recede_phases){rayleigh_phase(scattering_cosine), haze_phase(scattering_cosine)};
}

recede_sources recede_clear_sources(recede_glow glow, double albedo, recede_phases phases)
{
    return (recede_sources){
        phases.rayleigh * glow.beam + glow.around,
        albedo * (phases.haze * glow.beam + glow.around),
    };
}
