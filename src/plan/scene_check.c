#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "plan/own_mix.h"
#include "recede.h"

/* Heights left open (NaN) are filled in: a plane without heights stands level
 * with the eye; one with a crest alone rises from there, as far as it does. */
static void fill_heights(recede_plane *plane, double eye_m)
{
    if (isnan(plane->base_m) && isnan(plane->crest_m))
        plane->base_m = plane->crest_m = eye_m;
    else if (isnan(plane->base_m))
        plane->base_m = fmin(eye_m, plane->crest_m);
    else if (isnan(plane->crest_m))
        plane->crest_m = fmax(eye_m, plane->base_m);
}

typedef struct {
    const char *field;
    double number, least, most;
} bound;

static recede_code check_bounds(const bound *bounds, size_t count, recede_error *error)
{
    for (size_t i = 0; i < count; i++) {
        const bound *b = &bounds[i];
        recede_code code = recede_check_range(error, b->field, b->number, b->least, b->most);
        if (code)
            return code;
    }
    return RECEDE_OK;
}

static recede_code check_spectrum(const recede_spectrum *spectrum, const char *path,
                                  recede_error *error)
{
    for (int i = 0; i < RECEDE_BANDS; i++) {
        recede_code code = recede_check_range(error, path, spectrum->at[i], 0.0, 1.0);
        if (code)
            return code;
    }
    return RECEDE_OK;
}

/* A foliage or surface that is named is what the name says, whatever reflectance came
 * with it. */
static recede_code look_up_own(recede_scene *scene, size_t index, recede_error *error)
{
    recede_own *own = &scene->planes[index].own;
    char path[sizeof error->path];
    int foliage = own->kind == RECEDE_OWN_FOLIAGE;
    if ((!foliage && own->kind != RECEDE_OWN_SURFACE) || !own->name[0])
        return RECEDE_OK;
    const recede_own_entry *entry = foliage ? recede_foliage_named(own->name)
                                            : recede_surface_named(own->name);
    if (!entry) {
        recede_path_index(path, sizeof path, "planes", index, foliage ? "foliage" : "surface");
        return recede_fail_name(error, RECEDE_UNKNOWN_NAME, path, own->name);
    }
    own->reflectance = entry->reflectance;
    return RECEDE_OK;
}

static recede_code check_plane(const recede_scene *scene, size_t index, recede_error *error)
{
    const recede_plane *plane = &scene->planes[index];
    char path[sizeof error->path];
    const bound bounds[] = {
        {"distance", plane->distance_m, 0.1, 300000.0},
        {"base", plane->base_m, -500.0, 9000.0},
        {"crest", plane->crest_m, plane->base_m, 9000.0},
        {"share", plane->share, 0.0, 1.0},
    };
    for (size_t i = 0; i < sizeof bounds / sizeof bounds[0]; i++) {
        recede_path_index(path, sizeof path, "planes", index, bounds[i].field);
        recede_code code = recede_check_range(error, path, bounds[i].number, bounds[i].least,
                                              bounds[i].most);
        if (code)
            return code;
    }
    for (size_t i = 0; i < index; i++) {
        if (strcmp(scene->planes[i].name, plane->name) == 0) {
            recede_path_index(path, sizeof path, "planes", index, "name");
            return recede_fail_name(error, RECEDE_DUPLICATE, path, plane->name);
        }
    }
    recede_path_index(path, sizeof path, "planes", index, "reflectance");
    return check_spectrum(&plane->own.reflectance, path, error);
}

static recede_code check_count(size_t count, size_t most, const char *path, recede_error *error)
{
    if (count >= 1 && count <= most)
        return RECEDE_OK;
    return recede_fail_count(error, count ? RECEDE_TOO_MANY : RECEDE_TOO_FEW, path, count, 1,
                             most);
}

/* By distance; planes at one distance by name, so that the order in which a
 * file lists them never matters. */
static int comes_before(const recede_plane *a, const recede_plane *b)
{
    if (a->distance_m != b->distance_m)
        return a->distance_m < b->distance_m;
    return strcmp(a->name, b->name) < 0;
}

/* By insertion: qsort may allocate behind the caller's back. */
static void sort_planes(recede_scene *scene)
{
    for (size_t i = 1; i < scene->plane_count; i++) {
        recede_plane moving = scene->planes[i];
        size_t place = i;
        for (; place > 0 && comes_before(&moving, &scene->planes[place - 1]); place--)
            scene->planes[place] = scene->planes[place - 1];
        scene->planes[place] = moving;
    }
}

static recede_code check_air_and_light(const recede_scene *scene, recede_error *error)
{
    recede_atmosphere air;
    recede_light light;
    recede_code code = recede_atmosphere_of(&scene->air, &air, error);
    return code ? code : recede_light_of(&air, &scene->sky, &light, error);
}

static recede_code check_numbers(const recede_scene *scene, recede_error *error)
{
    const bound bounds[] = {
        {"light.sun_height", scene->sky.sun_height_deg, 0.5, 90.0}, /* whatever the sky */
        {"light.sun_side", scene->sky.sun_side_deg, 0.0, 180.0},
        {"paint.most_pigments", scene->rules.most_pigments, 1, RECEDE_MOST_IN_MIX},
        {"paint.most_parts", scene->rules.most_parts, 1, RECEDE_MOST_PARTS},
        {"paint.tie", scene->rules.tie, 0.0, 10.0},
        {"paint.most_tubes", scene->most_tubes, 0, RECEDE_MOST_PAINTS},
        {"paper.width", scene->paper_width_m, 0.01, 10.0},
        {"paper.height", scene->paper_height_m, 0.01, 10.0},
        {"picture.sky_value", scene->sky_value, 1.0, 10.0},
        {"picture.adaptation", scene->adaptation, 0.0, 1.0},
    };
    return check_bounds(bounds, sizeof bounds / sizeof bounds[0], error);
}

static void fill_sky_value(recede_scene *scene)
{
    if (!isnan(scene->sky_value))
        return;
    scene->sky_value = 8.5;
    if (scene->sky.kind == RECEDE_SKY_PAINTED)
        scene->sky_value =
            recede_value_of_y(recede_xyz_of_reflectance(&scene->sky.horizon_colour).y);
}

/* Air and light go before the planes, whose heights may come from the eye's. */
/* Opaque paint hides what it is laid over. */
static recede_code fill_shadows(recede_scene *scene, recede_error *error)
{
    static const char path[] = "paint.shadows";
    if (scene->shadows_over == -1)
        scene->shadows_over = scene->medium == RECEDE_WATERCOLOUR;
    if (scene->shadows_over == 1 && scene->medium != RECEDE_WATERCOLOUR)
        return recede_fail_name(error, RECEDE_CONFLICT, path, "over");
    return recede_check_range(error, path, scene->shadows_over, 0, 1);
}

recede_code recede_scene_check(recede_scene *scene, recede_error *error)
{
    recede_code code = check_count(scene->plane_count, RECEDE_MOST_PLANES, "planes", error);
    if (!code)
        code = check_count(scene->paint_count, RECEDE_MOST_PAINTS, "paint.palette", error);
    if (!code)
        code = check_air_and_light(scene, error);
    if (code)
        return code;
    fill_sky_value(scene);
    code = check_numbers(scene, error);
    if (!code)
        code = fill_shadows(scene, error);
    for (size_t i = 0; !code && i < scene->plane_count; i++) {
        fill_heights(&scene->planes[i], scene->air.eye_m);
        code = look_up_own(scene, i, error);
        if (!code)
            code = recede_own_mix_check(scene, i, error);
        if (!code)
            code = check_plane(scene, i, error);
    }
    if (!code)
        sort_planes(scene);
    return code;
}
