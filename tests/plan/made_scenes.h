/* Scenes by chance, all numbers within what a scene file may hold: invented data. */
#ifndef RECEDE_TESTS_MADE_SCENES_H
#define RECEDE_TESTS_MADE_SCENES_H

#include <math.h>
#include <string.h>

#include "recede.h"
#include "support/chance.h"

/* Evenly over the logarithm. */
static inline double made_scale(chance *c, double least, double most)
{
    return least * exp(chance_between(c, 0, log(most / least)));
}

static inline recede_spectrum made_reflectance(chance *c)
{
    recede_spectrum out;
    double base = chance_between(c, 0.02, 0.5), rise = chance_between(c, 0, 0.45);
    double from_nm = chance_between(c, 420, 680), width_nm = chance_between(c, 15, 80);
    for (int band = 0; band < RECEDE_BANDS; band++)
        out.at[band] = base + rise / (1 + exp((from_nm - 380 - 10 * band) / width_nm));
    return out;
}

static inline void made_planes(chance *c, recede_scene *scene, int level)
{
    scene->plane_count = 1 + (size_t)chance_below(c, 6);
    for (size_t i = 0; i < scene->plane_count; i++) {
        recede_plane *plane = &scene->planes[i];
        memset(plane, 0, sizeof *plane);
        plane->name[0] = (char)('a' + i);
        plane->distance_m = made_scale(c, 5, 80000);
        plane->base_m = level ? NAN : chance_between(c, -100, 1500);
        plane->crest_m = level ? NAN : plane->base_m + chance_between(c, 0, 800);
        plane->own.kind = RECEDE_OWN_REFLECTANCE;
        plane->own.reflectance = made_reflectance(c);
    }
}

/* A small palette and few parts, so that thousands are planned in seconds. */
static inline void made_scene(chance *c, recede_scene *scene, int level)
{
    recede_scene_default(scene);
    recede_scene_use_palette(scene, "landscape-six", NULL);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 3;
    scene->air.visibility_km = made_scale(c, 0.2, 250);
    scene->air.angstrom = chance_between(c, 0, 1.6);
    scene->air.eye_m = level ? 0 : chance_between(c, 0, 900);
    scene->sky.kind = (recede_sky_kind)chance_below(c, 3);
    scene->sky.sun_height_deg = chance_between(c, 0.5, 90);
    scene->sky.sun_side_deg = chance_between(c, 0, 180);
    scene->sky.horizon_colour = scene->sky_horizon.reflectance = made_reflectance(c);
    scene->sky.light_colour = scene->sky_light.reflectance = made_reflectance(c);
    scene->sky_horizon.kind = scene->sky_light.kind = RECEDE_OWN_REFLECTANCE;
    scene->sky_value = chance_between(c, 4, 9.5);
    scene->adaptation = chance_between(c, 0, 1);
    scene->darks_fitted = chance_below(c, 2);
    scene->shadows_over = chance_below(c, 2);
    if (!level && chance_below(c, 3) == 0) {
        scene->air.mist_visibility_km = made_scale(c, 0.05, fmin(3, 0.9 * scene->air.visibility_km));
        scene->air.mist_top_m = chance_between(c, 0, 400);
        recede_atmosphere atmosphere;
        if (recede_atmosphere_of(&scene->air, &atmosphere, NULL)) /* clearer than the air there */
            scene->air.mist_visibility_km = 0;
    }
    made_planes(c, scene, level);
}

#endif
