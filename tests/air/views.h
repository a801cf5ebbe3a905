/* What the tests of air and light have in common: scenes in a line, and colours
 * as a picture would have them. */
#ifndef RECEDE_TESTS_AIR_VIEWS_H
#define RECEDE_TESTS_AIR_VIEWS_H

#include "recede.h"

#include "support/assert_near.h"

#define VIEW_PI 3.14159265358979323846

typedef struct view_scene {
    recede_atmosphere air;
    recede_light light;
} view_scene;

static inline view_scene view_of(const recede_air *air, const recede_sky *sky)
{
    view_scene scene;
    assert_int_equal(recede_atmosphere_of(air, &scene.air, NULL), RECEDE_OK);
    assert_int_equal(recede_light_of(&scene.air, sky, &scene.light, NULL), RECEDE_OK);
    return scene;
}

/* Clear sky, eye and haze at zero height, no mist. */
static inline view_scene view_clear(double visibility_km, double angstrom, double sun_height_deg,
                                    double sun_side_deg)
{
    recede_air air = {.visibility_km = visibility_km, .angstrom = angstrom};
    recede_sky sky = {.kind = RECEDE_SKY_CLEAR, .sun_height_deg = sun_height_deg,
                      .sun_side_deg = sun_side_deg};
    return view_of(&air, &sky);
}

/* A surface in the light given, radiance R E / pi. */
static inline recede_spectrum view_radiance(const recede_spectrum *reflectance,
                                            const recede_spectrum *irradiance)
{
    recede_spectrum radiance;
    for (int i = 0; i < RECEDE_BANDS; i++)
        radiance.at[i] = reflectance->at[i] * irradiance->at[i] / VIEW_PI;
    return radiance;
}

/* The same at a distance, level with the eye. */
static inline recede_spectrum view_at(const view_scene *scene, const recede_spectrum *reflectance,
                                      const recede_spectrum *irradiance, double distance_m)
{
    recede_path path = recede_path_to(&scene->air, scene->air.eye_m, distance_m);
    recede_spectrum radiance = view_radiance(reflectance, irradiance);
    return recede_look_through(&scene->light, &path, &radiance).seen;
}

/* XYZ adapted from the light on a sphere to the paper's white, by 0.8; relative
 * to a perfect reflector in that light. */
static inline recede_xyz view_adapted(const recede_spectrum *sphere,
                                      const recede_spectrum *radiance)
{
    recede_xyz white = recede_xyz_of_power(sphere), xyz = recede_xyz_of_power(radiance);
    double scale = VIEW_PI / white.y;
    white = (recede_xyz){white.x / white.y, 1.0, white.z / white.y};
    xyz = (recede_xyz){xyz.x * scale, xyz.y * scale, xyz.z * scale};
    return recede_cat16(xyz, white, recede_white(), 0.8);
}

/* Lab in a picture whose horizon has value 8.5. */
static inline recede_lab view_lab(const recede_spectrum *sphere, const recede_spectrum *horizon,
                                  const recede_spectrum *radiance)
{
    double scale = recede_y_of_value(8.5) / view_adapted(sphere, horizon).y;
    recede_xyz xyz = view_adapted(sphere, radiance);
    xyz = (recede_xyz){xyz.x * scale, xyz.y * scale, xyz.z * scale};
    return recede_lab_of_xyz(xyz, recede_white());
}

static inline recede_lab view_lab_in(const view_scene *scene, const recede_spectrum *radiance)
{
    recede_spectrum horizon = recede_horizon_radiance(&scene->air, &scene->light);
    return view_lab(&scene->light.sphere, &horizon, radiance);
}

static inline void assert_sound_at(const recede_spectrum *spectrum, const char *what,
                                   const char *file, int line)
{
    for (int i = 0; i < RECEDE_BANDS; i++) {
        if (!(isfinite(spectrum->at[i]) && spectrum->at[i] >= 0.0)) {
            print_error("%s: band %d is %g\n", what, i, spectrum->at[i]);
            _fail(file, line);
        }
    }
}

/* Finite and not negative in every band. */
#define assert_sound(spectrum) assert_sound_at((spectrum), #spectrum, __FILE__, __LINE__)

#endif
