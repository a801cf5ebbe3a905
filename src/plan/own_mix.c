#include "plan/own_mix.h"

#include <math.h>

#include "colour/error.h"

static const double most_water = 1000.0; /* as recede_water_at ends */

static recede_code check_paint(const recede_scene *scene, const recede_mix *mix, int index,
                               const char *path, recede_error *error)
{
    recede_code code = recede_check_range(error, path, mix->paint[index], 0,
                                          (double)scene->paint_count - 1);
    if (!code)
        code = recede_check_range(error, path, mix->parts[index], 1, RECEDE_MOST_PARTS);
    for (int i = 0; !code && i < index; i++)
        if (mix->paint[i] == mix->paint[index])
            code = recede_fail_name(error, RECEDE_DUPLICATE, path,
                                    scene->paints[mix->paint[index]].name);
    return code;
}

static recede_code check_mix(const recede_scene *scene, const recede_mix *mix, const char *path,
                             recede_error *error)
{
    int parts = 0;
    recede_code code = recede_check_range(error, path, mix->count, 1, RECEDE_MOST_IN_MIX);
    for (int i = 0; !code && i < mix->count; i++) {
        code = check_paint(scene, mix, i, path, error);
        parts += mix->parts[i];
    }
    if (!code)
        code = recede_check_range(error, path, parts, 1, RECEDE_MOST_PARTS);
    if (!code)
        code = recede_check_range(error, path, mix->water, 0, most_water);
    if (!code && mix->water > 0 && scene->medium != RECEDE_WATERCOLOUR)
        code = recede_fail_name(error, RECEDE_CONFLICT, path, "water");
    return code;
}

/* K and S are the parts' weighted means (Duncan 1940), as in recede_mix_reflectance. */
static recede_spectrum reflectance_of(const recede_scene *scene, const recede_mix *mix)
{
    recede_spectrum k = {{0}}, s = {{0}};
    double total = 0;
    for (int i = 0; i < mix->count; i++)
        total += mix->parts[i];
    for (int i = 0; i < mix->count; i++) {
        const recede_paint *paint = &scene->paints[mix->paint[i]];
        double share = mix->parts[i] / total;
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k.at[band] += share * paint->k.at[band];
            s.at[band] += share * paint->s.at[band];
        }
    }
    double film = scene->medium == RECEDE_WATERCOLOUR ? recede_film_of_water(mix->water) : INFINITY;
    return recede_film(&k, &s, film, &scene->paper);
}

recede_code recede_own_mix_check(recede_scene *scene, size_t index, recede_error *error)
{
    char path[sizeof error->path];
    recede_own *own = &scene->planes[index].own;
    if (own->kind != RECEDE_OWN_MIX)
        return RECEDE_OK;
    recede_path_index(path, sizeof path, "planes", index, "mix");
    recede_code code = check_mix(scene, &own->mix, path, error);
    if (!code)
        own->reflectance = reflectance_of(scene, &own->mix);
    return code;
}
