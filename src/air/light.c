#include "air/airlight.h"
#include "air/constants.h"
#include "colour/error.h"

#include <math.h>

#define PAINTED_SUN_SINE 0.5 /* sides of a crown as under a sun 30 degrees high */

static recede_code check_colours(const recede_sky *sky, recede_error *error)
{
    recede_code code = RECEDE_OK;
    for (int i = 0; !code && i < RECEDE_BANDS; i++) {
        code = recede_check_range(error, "light.horizon", sky->horizon_colour.at[i], 0.0, 1.0);
        if (!code)
            code = recede_check_range(error, "light.light", sky->light_colour.at[i], 0.0, 1.0);
    }
    return code;
}

static recede_code check_sky(const recede_sky *sky, recede_error *error)
{
    if (sky->kind == RECEDE_SKY_PAINTED)
        return check_colours(sky, error);
    if (sky->kind != RECEDE_SKY_CLEAR)
        return RECEDE_OK;
    recede_code code = recede_check_range(error, "light.sun_height", sky->sun_height_deg, 0.5,
                                          90.0);
    if (code != RECEDE_OK)
        return code;
    return recede_check_range(error, "light.sun_side", sky->sun_side_deg, 0.0, 180.0);
}

/* The half of a sphere away from the sun sees 0.5 - 0.25 sin h of the sky and
 * the rest of its half of the ground; the lit half the other way round. */
static double shaded_side(double sun_sine, double sky, double ground)
{
    return (0.5 - 0.25 * sun_sine) * sky + (0.5 + 0.25 * sun_sine) * ground;
}

static double lit_side(double sun_sine, double sun, double sky, double ground)
{
    return 0.5 * sun + (0.5 + 0.25 * sun_sine) * sky + (0.5 - 0.25 * sun_sine) * ground;
}

static void light_clear(const recede_atmosphere *air, const recede_sky *sky, recede_light *out)
{
    recede_sun sun = recede_sun_at(sky->sun_height_deg);
    recede_phases phases =
        recede_phases_at(recede_scattering_cosine(&sun, sky->sun_side_deg, 0.0));
    for (int i = 0; i < RECEDE_BANDS; i++) {
        recede_sunlight sunlight = recede_sunlight_of(&sun, recede_band_nm(i));
        recede_lit_air here = {
            .tau_rayleigh = air->rayleigh_per_km.at[i] * air->rayleigh_scale_km,
            .tau_haze = air->haze_per_km.at[i] * air->haze_scale_km,
            .albedo = air->albedo.at[i],
        };
        here.from_above = recede_clear_irradiance(&sunlight, 1.0, here.tau_haze, here.albedo);
        double from_sun = here.from_above.sun, from_sky = here.from_above.sky;
        double global = from_sun * sun.sine + from_sky;
        here.from_below = RECEDE_GROUND_REFLECTANCE * global;

        out->sun.at[i] = from_sun;
        out->sky.at[i] = from_sky;
        out->global.at[i] = global;
        out->lit.at[i] = lit_side(sun.sine, from_sun, from_sky, here.from_below);
        out->shadow.at[i] = shaded_side(sun.sine, from_sky, here.from_below);
        out->sphere.at[i] = from_sun / 4.0 + (from_sky + here.from_below) / 2.0;
        recede_sources sources = recede_clear_sources(recede_clear_glow(&sun, &here), here.albedo,
                                                      phases);
        out->rayleigh_source.at[i] = sources.rayleigh;
        out->haze_source.at[i] = sources.haze;
    }
}

/* P. Moon and D. Spencer, Illuminating Engineering 37 (1942): E = 7 pi / 9 of
 * the zenith's radiance, the horizon a third of that. The brightest side of a
 * sphere has 0.68 of the sky's light, the darkest 0.18. */
static void light_overcast(recede_light *out)
{
    recede_spectrum power = recede_illuminant_power(RECEDE_D65);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double e = power.at[i], ground = RECEDE_GROUND_REFLECTANCE * e;
        out->sky.at[i] = out->global.at[i] = e;
        out->lit.at[i] = 0.68 * e + 0.25 * ground;
        out->shadow.at[i] = 0.18 * e + 0.75 * ground;
        out->sphere.at[i] = (e + ground) / 2.0;
        out->rayleigh_source.at[i] = out->haze_source.at[i] = 3.0 * e / (7.0 * RECEDE_PI);
    }
}

/* Colours as an eye that has adapted to the scene sees them: the adapting white
 * is D65 itself, so that no adaptation changes them. */
static void light_painted(const recede_sky *sky, recede_light *out)
{
    recede_spectrum power = recede_illuminant_power(RECEDE_D65);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double horizon = sky->horizon_colour.at[i] * power.at[i];
        double full = sky->light_colour.at[i] * power.at[i] * RECEDE_PI;
        out->sky.at[i] = horizon * RECEDE_PI;
        out->global.at[i] = out->lit.at[i] = full;
        out->shadow.at[i] = shaded_side(PAINTED_SUN_SINE, horizon * RECEDE_PI,
                                        RECEDE_GROUND_REFLECTANCE * full);
        out->sphere.at[i] = power.at[i] * RECEDE_PI;
        out->rayleigh_source.at[i] = out->haze_source.at[i] = horizon;
    }
}

recede_code recede_light_of(const recede_atmosphere *air, const recede_sky *sky,
                            recede_light *out, recede_error *error)
{
    recede_code code = check_sky(sky, error);
    if (code != RECEDE_OK)
        return code;
    *out = (recede_light){.kind = sky->kind, .sun_height_deg = sky->sun_height_deg,
                          .sun_side_deg = sky->sun_side_deg};
    if (sky->kind == RECEDE_SKY_CLEAR)
        light_clear(air, sky, out);
    else if (sky->kind == RECEDE_SKY_OVERCAST)
        light_overcast(out);
    else
        light_painted(sky, out);
    return RECEDE_OK;
}
