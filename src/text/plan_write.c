#include "text/plan_write.h"

#include <string.h>

#include "text/scene_write.h"
#include "text/words.h"
#include "text/words_values.h"

static void write_lab(recede_json *json, const recede_colour *colour)
{
    const double lab[] = {colour->lab.l, colour->lab.a, colour->lab.b};
    recede_json_numbers(json, "lab", lab, 3);
}

static void write_srgb(recede_json *json, const recede_colour *colour)
{
    const double srgb[] = {colour->srgb.r, colour->srgb.g, colour->srgb.b};
    recede_json_numbers(json, "srgb", srgb, 3);
}

static void write_colour(recede_json *json, const recede_colour *colour)
{
    const double lch[] = {colour->lch.l, colour->lch.c, colour->lch.h_deg};
    write_lab(json, colour);
    recede_json_numbers(json, "lch", lch, 3);
    write_srgb(json, colour);
    recede_json_number(json, "value", colour->value);
}

void recede_mix_colour_write(recede_json *json, const recede_colour *colour,
                             const recede_wet_look *wet)
{
    recede_json_object(json, "mix");
    write_colour(json, colour);
    if (wet) {
        recede_json_object(json, "wet");
        write_lab(json, &wet->colour);
        write_srgb(json, &wet->colour);
        recede_json_end_object(json);
    }
    recede_json_end_object(json);
}

void recede_colour_write(recede_json *json, const char *key, const recede_colour *colour,
                         const double *value_as_seen)
{
    recede_json_object(json, key);
    write_colour(json, colour);
    if (value_as_seen)
        recede_json_number(json, "value_as_seen", *value_as_seen);
    recede_json_end_object(json);
}

/* What a tube holds, where it is not one pigment under its own name. */
static void write_made_of(recede_json *json, const recede_paint *paint)
{
    if (paint->ingredients == 0 ||
        (paint->ingredients == 1 && strcmp(paint->of[0].pigment->name, paint->name) == 0))
        return;
    recede_json_array(json, "made_of");
    for (int i = 0; i < paint->ingredients; i++) {
        recede_json_object(json, NULL);
        recede_json_string(json, "name", paint->of[i].pigment->name);
        recede_json_string(json, "colour_index", paint->of[i].pigment->colour_index);
        recede_json_whole(json, "parts", paint->of[i].parts);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

void recede_mix_write(recede_json *json, const recede_palette *palette, const recede_mix *mix)
{
    recede_json_object(json, "recipe");
    recede_json_array(json, "pigments");
    for (int i = 0; i < mix->count; i++) {
        const recede_paint *paint = recede_palette_paint(palette, (size_t)mix->paint[i]);
        recede_json_object(json, NULL);
        recede_json_string(json, "name", paint->name);
        recede_json_string(json, "colour_index", paint->colour_index);
        recede_json_whole(json, "parts", mix->parts[i]);
        write_made_of(json, paint);
        if (paint->let_down)
            recede_json_bool(json, "let_down", 1);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
    if (recede_medium_takes_water(recede_palette_medium(palette))) {
        int bare = mix->count == 0;
        if (!bare)
            recede_json_number(json, "water_per_paint", mix->water);
        recede_json_number(json, "paint_fraction", bare ? 0.0 : 1.0 / (1.0 + mix->water));
        recede_json_number(json, "film", bare ? 0.0 : recede_film_of_water(mix->water));
    }
    recede_json_end_object(json);
}

/* The members of one wash. */
void recede_wash_write_members(recede_json *json, const recede_palette *palette,
                               const recede_wash *wash, const recede_wet_look *wet)
{
    recede_colour_write(json, "target", &wash->target, &wash->value_as_seen);
    recede_mix_colour_write(json, &wash->recipe.colour, wet);
    recede_json_number(json, "own_share", wash->own_share);
    recede_json_string(json, "ground", recede_words_ground(wash->ground));
    recede_mix_write(json, palette, &wash->recipe.mix);
    recede_json_number(json, "delta_e", wash->recipe.delta_e);
    recede_json_number(json, "slip", wash->recipe.slip);
    recede_json_string(json, "reachable", recede_words_reach(wash->recipe.reach));
}

static void write_members(recede_json *json, const recede_plan *plan, const recede_wash *wash)
{
    const recede_palette *palette = recede_plan_palette(plan);
    recede_wet_look wet = recede_wet_look_in(plan, wash);
    int water = recede_medium_takes_water(recede_palette_medium(palette));
    recede_wash_write_members(json, palette, wash, water ? &wet : NULL);
}

static void write_wash(recede_json *json, const char *key, const recede_plan *plan,
                       const recede_wash *wash)
{
    recede_json_object(json, key);
    write_members(json, plan, wash);
    recede_json_end_object(json);
}

static void write_grading(recede_json *json, const recede_side *side)
{
    recede_json_number(json, "half_delta_e", side->half_delta_e);
    recede_json_bool(json, "two_washes", side->two_washes);
}

static void write_side(recede_json *json, const char *key, const recede_plan *plan,
                       const recede_side *side)
{
    recede_json_object(json, key);
    if (side->graded) {
        write_wash(json, "crest", plan, &side->crest);
        write_wash(json, "base", plan, &side->base);
        write_grading(json, side);
    } else {
        write_members(json, plan, &side->crest);
    }
    recede_json_end_object(json);
}

static void write_air(recede_json *json, const recede_plan *plan)
{
    const recede_air *air = &recede_plan_scene(plan)->air;
    const recede_atmosphere *bands = recede_plan_atmosphere(plan);
    recede_json_object(json, "air");
    recede_json_number(json, "visibility_km", air->visibility_km);
    recede_json_number(json, "angstrom", air->angstrom);
    recede_json_number(json, "eye_m", air->eye_m);
    recede_json_numbers(json, "rayleigh_per_km", bands->rayleigh_per_km.at, RECEDE_BANDS);
    recede_json_numbers(json, "haze_per_km", bands->haze_per_km.at, RECEDE_BANDS);
    if (bands->has_mist) {
        recede_json_number(json, "mist_top_m", bands->mist_top_m);
        recede_json_numbers(json, "mist_per_km", bands->mist_per_km.at, RECEDE_BANDS);
    }
    recede_json_end_object(json);
}

static void write_light(recede_json *json, const recede_plan *plan)
{
    const recede_light *light = recede_plan_light(plan);
    recede_buffer words;
    recede_buffer_start(&words, json->out->allocator);
    recede_words_air_and_light(&words, recede_plan_scene(plan));
    json->out->failed |= words.failed;
    recede_json_object(json, "light");
    recede_json_string(json, "sky", recede_words_sky(light->kind));
    if (light->kind == RECEDE_SKY_CLEAR) {
        recede_json_number(json, "sun_height_deg", light->sun_height_deg);
        recede_json_number(json, "sun_side_deg", light->sun_side_deg);
    }
    recede_json_string(json, "air_and_light", recede_buffer_string(&words));
    recede_json_numbers(json, "lit", light->lit.at, RECEDE_BANDS);
    recede_json_numbers(json, "shadow", light->shadow.at, RECEDE_BANDS);
    recede_json_end_object(json);
    recede_buffer_free(&words);
}

static void write_paint(recede_json *json, const recede_palette *palette)
{
    recede_json_object(json, "paint");
    recede_json_string(json, "medium", recede_words_medium(recede_palette_medium(palette)));
    recede_json_numbers(json, "paper", recede_palette_paper(palette)->at, RECEDE_BANDS);
    recede_json_array(json, "palette");
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        recede_json_string(json, NULL, recede_palette_paint(palette, i)->name);
    recede_json_end_array(json);
    recede_json_end_object(json);
}

static void write_sky(recede_json *json, const recede_plan *plan)
{
    const recede_side *sky = recede_plan_sky(plan);
    recede_json_array(json, "sky");
    write_wash(json, NULL, plan, sky->graded ? &sky->base : &sky->crest);
    write_wash(json, NULL, plan, &sky->crest);
    recede_json_end_array(json);
    recede_json_object(json, "sky_grading");
    recede_json_bool(json, "graded", sky->graded);
    if (sky->graded)
        write_grading(json, sky);
    recede_json_end_object(json);
}

static void write_plane(recede_json *json, const recede_plan *plan, const recede_planned *planned)
{
    const recede_plane *plane = &recede_plan_scene(plan)->planes[planned->plane];
    recede_json_object(json, NULL);
    recede_json_string(json, "name", plane->name);
    recede_json_number(json, "distance_m", plane->distance_m);
    write_side(json, "lit", plan, &planned->lit);
    write_side(json, "shadow", plan, &planned->shadow);
    recede_json_string(json, "edge", recede_words_edge(planned->edge));
    recede_json_number(json, "value_step", planned->value_step);
    recede_json_number(json, "value_step_shadow", planned->value_step_shadow);
    recede_json_number(json, "colour_step", planned->colour_step);
    recede_json_number(json, "colour_step_shadow", planned->colour_step_shadow);
    recede_json_number(json, "hue_step", planned->hue_step);
    recede_json_number(json, "hue_step_shadow", planned->hue_step_shadow);
    recede_json_string(json, "apart", recede_words_apart(planned->apart));
    recede_json_string(json, "apart_shadow", recede_words_apart(planned->apart_shadow));
    recede_json_end_object(json);
}

static void write_about(recede_json *json, const char *key, const recede_scene *scene, int plane)
{
    if (plane >= 0)
        recede_json_string(json, key, scene->planes[plane].name);
}

static void write_addition(recede_json *json, const recede_warning *warning)
{
    recede_json_object(json, "addition");
    recede_json_string(json, "pigment", warning->pigment->name);
    recede_json_string(json, "colour_index", warning->pigment->colour_index);
    recede_json_number(json, "delta_e", warning->number[1]);
    recede_json_end_object(json);
}

static void write_let_down(recede_json *json, const recede_warning *warning)
{
    recede_json_object(json, "let_down");
    recede_json_string(json, "paint", warning->let_down->name);
    recede_json_number(json, "delta_e", warning->number[2]);
    recede_json_end_object(json);
}

static void write_warning(recede_json *json, const recede_scene *scene,
                          const recede_warning *warning)
{
    recede_buffer sentence;
    recede_buffer_start(&sentence, json->out->allocator);
    recede_words_warning(&sentence, scene, warning);
    json->out->failed |= sentence.failed;
    recede_json_object(json, NULL);
    recede_json_string(json, "kind", recede_words_warning_kind(warning->kind));
    write_about(json, "plane", scene, warning->plane);
    write_about(json, "other", scene, warning->other);
    if (warning->plane >= 0 && (warning->kind == RECEDE_WARN_NOT_REACHED ||
                                warning->kind == RECEDE_WARN_TWO_WASHES))
        recede_json_string(json, "side", warning->shadow ? "shadow" : "lit");
    if (warning->pigment)
        write_addition(json, warning);
    if (warning->let_down)
        write_let_down(json, warning);
    recede_json_string(json, "sentence", recede_buffer_string(&sentence));
    recede_json_end_object(json);
    recede_buffer_free(&sentence);
}

/* told NULL: without an order of work. */
static void write_plan(const recede_plan *plan, const recede_work_told *told, recede_buffer *out)
{
    const recede_scene *scene = recede_plan_scene(plan);
    recede_json json;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    recede_json_object(&json, "scene");
    recede_scene_write_members(scene, &json);
    recede_json_end_object(&json);
    write_air(&json, plan);
    write_light(&json, plan);
    write_paint(&json, recede_plan_palette(plan));
    write_sky(&json, plan);
    recede_json_array(&json, "planes");
    for (size_t i = 0; i < recede_plan_count(plan); i++)
        write_plane(&json, plan, recede_plan_at(plan, i));
    recede_json_end_array(&json);
    recede_json_array(&json, "warnings");
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++)
        write_warning(&json, scene, recede_plan_warning(plan, i));
    recede_json_end_array(&json);
    if (told)
        recede_work_write(told, &json);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}

void recede_plan_write(const recede_plan *plan, recede_buffer *out)
{
    write_plan(plan, NULL, out);
}

void recede_plan_write_with_work(const recede_work_told *told, recede_buffer *out)
{
    write_plan(told->plan, told, out);
}
