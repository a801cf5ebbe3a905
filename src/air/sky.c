#include "air/sky.h"

#include "air/airlight.h"
#include "air/atmosphere.h"
#include "air/constants.h"
#include "air/integrals.h"
#include "air/slant.h"

#include <math.h>

#define LAYERS 48
#define TOP_KM 80.0
#define LOWEST_LAYER 0.02 /* of the haze's scale height */
#define LEVEL_WITHIN_DEG 1.0
#define PAINTED_BAND 0.25 /* sine of the elevation by which a painted sky has gone
                             most of the way from the horizon's colour */

/* The air above the eye in layers, each with its light: what every line of sight
 * has in common. The mist's top may cut one in two. */
typedef struct layer {
    double low_km, high_km;
    recede_glow glow[RECEDE_BANDS];
} layer;
typedef struct lit_layers {
    const recede_atmosphere *air;
    const recede_light *light;
    recede_sun sun;
    recede_sunlight sunlight[RECEDE_BANDS];
    int count;
    layer at[LAYERS + 1];
} lit_layers;

/* A line of sight into a clear sky, and how far its sum has come: the radiance
 * so far and the share of what lies behind that still gets through. */
typedef struct sight {
    double sine, scattering_cosine;
    recede_spectrum seen, open;
} sight;

/* The glow at a height above the eye: thinner air lies above it, so it is lit
 * by more of the sun and by less of a sky. From below comes what the ground and
 * the air beneath send up. Air that absorbs nothing lets as much net light
 * through at every height, so that is what global light has gained on the way up
 * and the ground's share of it. */
static recede_glow glow_at(const lit_layers *sky, int band, double rise_km)
{
    const recede_atmosphere *air = sky->air;
    double pressure = recede_thinning(rise_km, air->rayleigh_scale_km);
    recede_lit_air there = {
        .tau_rayleigh = air->rayleigh_per_km.at[band] * air->rayleigh_scale_km * pressure,
        .tau_haze = air->haze_per_km.at[band] * air->haze_scale_km
                    * recede_thinning(rise_km, air->haze_scale_km),
        .albedo = air->albedo.at[band],
    };
    there.from_above = recede_clear_irradiance(&sky->sunlight[band], pressure, there.tau_haze,
                                               there.albedo);
    double below = sky->light->global.at[band];
    double global = there.from_above.sun * sky->sun.sine + there.from_above.sky;
    there.from_below = RECEDE_GROUND_REFLECTANCE * below + fmax(0.0, global - below);
    return recede_clear_glow(&sky->sun, &there);
}

static void add_layer(lit_layers *sky, double low_km, double high_km)
{
    layer *l = &sky->at[sky->count++];
    l->low_km = low_km;
    l->high_km = high_km;
    for (int i = 0; i < RECEDE_BANDS; i++)
        l->glow[i] = glow_at(sky, i, (low_km + high_km) / 2.0);
}

static void light_layers(const recede_atmosphere *air, const recede_light *light, lit_layers *sky)
{
    sky->air = air;
    sky->light = light;
    sky->sun = recede_sun_at(light->sun_height_deg);
    sky->count = 0;
    for (int i = 0; i < RECEDE_BANDS; i++)
        sky->sunlight[i] = recede_sunlight_of(&sky->sun, recede_band_nm(i));
    double mist_km = recede_eye_in_mist(air) ? (air->mist_top_m - air->eye_m) / 1000.0 : 0.0;
    double low_km = 0.0, high_km = LOWEST_LAYER * air->haze_scale_km;
    double growth = pow(TOP_KM / high_km, 1.0 / (LAYERS - 1));
    for (int i = 0; i < LAYERS; i++) {
        double cut_km = low_km < mist_km && mist_km < high_km ? mist_km : high_km;
        add_layer(sky, low_km, cut_km);
        if (cut_km < high_km)
            add_layer(sky, cut_km, high_km);
        low_km = high_km;
        high_km *= growth;
    }
}

static void cross_layer(sight *line, const recede_atmosphere *air, const layer *l)
{
    double rayleigh_km = recede_slant_length_km(l->low_km, l->high_km, line->sine,
                                                air->rayleigh_scale_km);
    double haze_km = recede_slant_length_km(l->low_km, l->high_km, line->sine,
                                            air->haze_scale_km);
    int in_mist = air->has_mist && air->eye_m + 1000.0 * l->low_km < air->mist_top_m;
    double mist_km = in_mist ? recede_slant_distance_km(l->low_km, l->high_km, line->sine) : 0.0;
    recede_phases phases = recede_phases_at(line->scattering_cosine);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double rayleigh = air->rayleigh_per_km.at[i] * rayleigh_km;
        double haze = air->haze_per_km.at[i] * haze_km + air->mist_per_km.at[i] * mist_km;
        recede_sources source = recede_clear_sources(l->glow[i], air->albedo.at[i], phases);
        line->seen.at[i] += line->open.at[i]
                            * (rayleigh * source.rayleigh + haze * source.haze)
                            * recede_mean_decay(rayleigh + haze);
        line->open.at[i] *= exp(-(rayleigh + haze));
    }
}

static recede_spectrum look_up(const lit_layers *sky, double elevation_sine)
{
    sight line = {.sine = elevation_sine};
    line.scattering_cosine = recede_scattering_cosine(&sky->sun, sky->light->sun_side_deg,
                                                      elevation_sine);
    for (int i = 0; i < RECEDE_BANDS; i++)
        line.open.at[i] = 1.0;
    for (int i = 0; i < sky->count; i++)
        cross_layer(&line, sky->air, &sky->at[i]);
    return line.seen;
}

recede_spectrum recede_sky_along_line(const recede_atmosphere *air, const recede_light *light,
                                      double elevation_sine)
{
    lit_layers sky;
    light_layers(air, light, &sky);
    return look_up(&sky, elevation_sine);
}

static double inside(double elevation_deg)
{
    return fmax(0.0, fmin(90.0, elevation_deg));
}

/* Planes are seen along level lines and fade into a level line's airlight, while
 * on a round earth even the line at elevation 0 leaves the haze in the end. In
 * very clear air the two differ visibly. Sky and planes have to meet, so within
 * a degree or so of the horizon the sky is drawn toward the level airlight. */
static void clear_sky(const recede_atmosphere *air, const recede_light *light,
                      const double *elevations_deg, size_t count, recede_spectrum *out)
{
    lit_layers sky;
    light_layers(air, light, &sky);
    recede_spectrum lowest = look_up(&sky, 0.0);
    recede_spectrum level = recede_horizon_radiance(air, light);
    for (size_t n = 0; n < count; n++) {
        double elevation_deg = inside(elevations_deg[n]);
        double share = exp(-elevation_deg / LEVEL_WITHIN_DEG);
        out[n] = elevation_deg > 0.0 ? look_up(&sky, sin(elevation_deg * RECEDE_DEGREE)) : lowest;
        for (int i = 0; i < RECEDE_BANDS; i++) {
            if (lowest.at[i] > 0.0)
                out[n].at[i] *= pow(level.at[i] / lowest.at[i], share);
        }
    }
}

/* Moon and Spencer 1942. */
static recede_spectrum overcast_sky(const recede_light *light, double sine)
{
    recede_spectrum sky;
    for (int i = 0; i < RECEDE_BANDS; i++)
        sky.at[i] = light->haze_source.at[i] * (1.0 + 2.0 * sine);
    return sky;
}

/* From the horizon's colour to that of a white in full light, fastest near the
 * horizon as in a real sky: half of the way at 10 degrees, all of it overhead. */
static recede_spectrum painted_sky(const recede_light *light, double sine)
{
    double share = expm1(-sine / PAINTED_BAND) / expm1(-1.0 / PAINTED_BAND);
    recede_spectrum sky;
    for (int i = 0; i < RECEDE_BANDS; i++)
        sky.at[i] = light->haze_source.at[i] * (1.0 - share)
                    + light->lit.at[i] / RECEDE_PI * share;
    return sky;
}

void recede_sky_radiances(const recede_atmosphere *air, const recede_light *light,
                          const double *elevations_deg, size_t count, recede_spectrum *out)
{
    if (light->kind == RECEDE_SKY_CLEAR) {
        clear_sky(air, light, elevations_deg, count, out);
        return;
    }
    for (size_t n = 0; n < count; n++) {
        double sine = sin(inside(elevations_deg[n]) * RECEDE_DEGREE);
        out[n] = light->kind == RECEDE_SKY_OVERCAST ? overcast_sky(light, sine)
                                                    : painted_sky(light, sine);
    }
}

recede_spectrum recede_sky_radiance(const recede_atmosphere *air, const recede_light *light,
                                    double elevation_deg)
{
    recede_spectrum sky;
    recede_sky_radiances(air, light, &elevation_deg, 1, &sky);
    return sky;
}
