/* Fuzz target for plans: whatever numbers stand in a scene, planning it ends in a plan
 * whose every number is finite, or in an error that says which field is wrong; and what
 * a plan says of shares, values and steps stays within its bounds. */
#include <math.h>
#include <string.h>

#include "fuzz/insist.h"
#include "recede.h"
#include "text/buffer.h"
#include "text/plan_write.h"

static recede_spectrum spectrum(stream *s)
{
    recede_spectrum out;
    double from = number(s, 240, 0, 1), to = number(s, 240, 0, 1);
    for (int band = 0; band < RECEDE_BANDS; band++)
        out.at[band] = from + (to - from) * band / (RECEDE_BANDS - 1);
    return out;
}

static void take_air_and_light(stream *s, recede_scene *scene)
{
    scene->air = (recede_air){number(s, 240, 0.02, 250), number(s, 240, 0, 2.5), number(s, 240, -500, 9000),
                              0, 0};
    if (byte(s) & 1) {
        scene->air.mist_visibility_km = number(s, 240, 0.02, 20);
        scene->air.mist_top_m = number(s, 240, -500, 9000);
    }
    scene->sky.kind = (recede_sky_kind)(byte(s) % 3);
    scene->sky.sun_height_deg = number(s, 240, 0.5, 90);
    scene->sky.sun_side_deg = number(s, 240, 0, 180);
    scene->sky.horizon_colour = scene->sky_horizon.reflectance = spectrum(s);
    scene->sky.light_colour = scene->sky_light.reflectance = spectrum(s);
}

static void take_paint(stream *s, recede_scene *scene)
{
    scene->medium = (recede_medium)(byte(s) % 4);
    recede_scene_use_palette(scene, "landscape-six", NULL);
    if (scene->medium != RECEDE_WATERCOLOUR || byte(s) & 1)
        recede_paint_named("titanium white", &scene->paints[byte(s) % 6], NULL);
    scene->rules = (recede_rules){1 + (int)byte(s) % 2, 1 + (int)byte(s) % 4, number(s, 240, 0, 10)};
    scene->shadows_over = (int)byte(s) % 3 - 1;
    scene->sky_value = number(s, 240, 1, 10);
    scene->adaptation = number(s, 240, 0, 1);
    scene->darks_fitted = (int)byte(s) & 1;
    if (byte(s) & 1)
        scene->paper = spectrum(s);
}

static void take_planes(stream *s, recede_scene *scene)
{
    scene->plane_count = byte(s) % 5;
    for (size_t i = 0; i < scene->plane_count; i++) {
        recede_plane *plane = &scene->planes[i];
        memset(plane, 0, sizeof *plane);
        plane->name[0] = (char)('a' + i);
        plane->distance_m = exp(number(s, 240, -2.3, 12.6));
        int level = (int)byte(s) & 1;
        plane->base_m = level ? NAN : number(s, 240, -500, 4000);
        plane->crest_m = level ? NAN : plane->base_m + number(s, 240, 0, 4000);
        plane->share = byte(s) & 1 ? 0 : number(s, 240, 0, 1);
        plane->own.kind = RECEDE_OWN_REFLECTANCE;
        plane->own.reflectance = spectrum(s);
    }
}

static void check_wash(const recede_wash *wash)
{
    insist(isfinite(wash->target.lab.l) && isfinite(wash->target.lab.a));
    insist(wash->target.value >= 0 && wash->own_share >= 0 && wash->own_share <= 1 + 1e-9);
    insist(isfinite(wash->recipe.delta_e) && wash->recipe.delta_e >= 0);
    insist(isfinite(wash->recipe.slip) && wash->recipe.slip >= 0);
    insist(wash->recipe.mix.count >= 0 && wash->recipe.mix.count <= RECEDE_MOST_IN_MIX);
}

/* The writer says null of what is not finite, which no plan may hold. */
static void check_text(const recede_plan *plan)
{
    recede_buffer text;
    recede_buffer_start(&text, NULL);
    recede_plan_write(plan, &text);
    insist(!text.failed);
    insist(!strstr(recede_buffer_string(&text), "null"));
    recede_buffer_free(&text);
}

static void check_plan(const recede_plan *plan)
{
    static recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    unsigned char rgb[3 * 12 * 9];
    recede_error error;
    size_t count = recede_plan_washes(plan, places);
    for (size_t i = 0; i < count; i++)
        check_wash(places[i].wash);
    check_text(plan);
    const recede_picture_options options = {12, 9, 0, 0, NULL};
    insist(recede_picture_paint(plan, &options, rgb, 36, NULL, &error) == RECEDE_OK);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static recede_scene scene;
    stream s = {data, size};
    recede_error error;
    recede_plan *plan = NULL;
    recede_scene_default(&scene);
    take_air_and_light(&s, &scene);
    take_paint(&s, &scene);
    take_planes(&s, &scene);
    memset(&error, 0, sizeof error);
    if (recede_plan_new(&scene, NULL, NULL, &plan, &error)) {
        insist(error.code != RECEDE_OK && error.path[0] != '\0');
        return 0;
    }
    check_plan(plan);
    recede_plan_free(plan);
    return 0;
}
