#include "text/skies_write.h"

#include <string.h>

#include "text/columns.h"
#include "text/plan_write.h"
#include "text/scene_write.h"
#include "text/words.h"
#include "text/words_skies.h"

/* ---- which washes are told */

static const recede_wash *base_of(const recede_side *side)
{
    return side->graded ? &side->base : &side->crest;
}

static const char top_of_sky[] = "top of the sky";

/* labels: of the whole, of its crest, of its base */
static size_t add_side(recede_told *told, const char *plane, const char *const labels[3],
                       const recede_side *from, const recede_side *to)
{
    int graded = from->graded || to->graded;
    told[0] = (recede_told){plane, labels[graded ? 1 : 0], &from->crest, &to->crest};
    if (graded)
        told[1] = (recede_told){plane, labels[2], base_of(from), base_of(to)};
    return graded ? 2 : 1;
}

size_t recede_skies_told(const recede_skies *skies, size_t light, size_t plane,
                         recede_told told[RECEDE_MOST_TOLD])
{
    static const char *const sky[] = {"all over", top_of_sky, "horizon"};
    static const char *const lit[] = {"lit", "lit crest", "lit foot"};
    static const char *const shadow[] = {"shadow", "shadow crest", "shadow foot"};
    const recede_plan *before = skies->plan[0], *after = skies->plan[1 + light];
    if (plane == 0)
        return add_side(told, "sky", sky, recede_plan_sky(before), recede_plan_sky(after));
    const recede_planned *from = recede_plan_at(before, plane - 1);
    const recede_planned *to = recede_plan_at(after, plane - 1);
    const char *name = recede_plan_scene(before)->planes[from->plane].name;
    size_t count = add_side(told, name, lit, &from->lit, &to->lit);
    return count + add_side(told + count, name, shadow, &from->shadow, &to->shadow);
}

/* ---- JSON */

static void write_words(recede_json *json, const char *key, recede_buffer *words)
{
    recede_json_string(json, key, recede_buffer_string(words));
    json->out->failed |= words->failed;
    recede_buffer_free(words);
}

static void write_names(recede_json *json, const char *key, const recede_palette *palette,
                        const int *paints, int count)
{
    recede_json_array(json, key);
    for (int i = 0; i < count; i++)
        recede_json_string(json, NULL, recede_palette_paint(palette, (size_t)paints[i])->name);
    recede_json_end_array(json);
}

static void write_told(recede_json *json, const recede_palette *palette, const recede_told *told)
{
    const recede_change change = recede_change_of_wash(told->from, told->to);
    recede_buffer words;
    recede_json_object(json, NULL);
    recede_json_string(json, "plane", told->plane);
    recede_json_string(json, "side", told->label);
    recede_buffer_start(&words, json->out->allocator);
    recede_words_change(&words, palette, told->from, told->to);
    write_words(json, "words", &words);
    recede_json_bool(json, "same", change.same);
    write_names(json, "coming", palette, change.coming, change.coming_count);
    write_names(json, "going", palette, change.going, change.going_count);
    if (change.water_ratio > 0.0)
        recede_json_number(json, "water_ratio", change.water_ratio);
    recede_json_number(json, "value_step", change.value_step);
    recede_json_number(json, "delta_e", change.delta_e);
    recede_wash_write_members(json, palette, told->to, NULL);
    recede_json_end_object(json);
}

static void write_light(recede_json *json, const recede_skies *skies, size_t light)
{
    const recede_plan *plan = skies->plan[1 + light];
    const recede_scene *scene = recede_plan_scene(plan);
    recede_told told[RECEDE_MOST_TOLD];
    recede_buffer words;
    recede_json_object(json, NULL);
    recede_json_string(json, "name", skies->light[light].name);
    recede_buffer_start(&words, json->out->allocator);
    recede_words_air_and_light(&words, scene);
    write_words(json, "air_and_light", &words);
    recede_json_array(json, "changes");
    for (size_t plane = 0; plane <= recede_plan_count(plan); plane++) {
        size_t count = recede_skies_told(skies, light, plane, told);
        for (size_t i = 0; i < count; i++)
            write_told(json, recede_plan_palette(plan), &told[i]);
    }
    recede_json_end_array(json);
    recede_json_end_object(json);
}

void recede_skies_write(const recede_skies *skies, recede_buffer *out)
{
    recede_json json;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    recede_json_object(&json, "scene");
    recede_scene_write_members(recede_plan_scene(skies->plan[0]), &json);
    recede_json_end_object(&json);
    recede_json_array(&json, "lights");
    for (size_t i = 0; i < skies->count; i++)
        write_light(&json, skies, i);
    recede_json_end_array(&json);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}

/* ---- text */

enum { WIDTH = 100, INDENT = 2 };

static void tell(recede_buffer *out, recede_buffer *words, size_t indent)
{
    recede_columns_text(out, recede_buffer_string(words), WIDTH, indent);
    out->failed |= words->failed;
    recede_buffer_free(words);
}

static void tell_light(const recede_skies *skies, size_t light, recede_buffer *words,
                       recede_buffer *out)
{
    const recede_plan *plan = skies->plan[1 + light];
    recede_told told[RECEDE_MOST_TOLD];
    recede_buffer_format(words, "%s: ", skies->light[light].name);
    recede_words_light_line(words, &skies->light[light].air, &skies->light[light].sky);
    recede_buffer_text(out, "\n");
    tell(out, words, 0);
    for (size_t plane = 0; plane <= recede_plan_count(plan); plane++) {
        size_t count = recede_skies_told(skies, light, plane, told);
        for (size_t i = 0; i < count; i++) {
            recede_buffer_text(words, "- ");
            if (told[i].label != top_of_sky)
                recede_buffer_format(words, "%s, ", told[i].plane);
            recede_buffer_format(words, "%s: ", told[i].label);
            recede_words_change(words, recede_plan_palette(plan), told[i].from, told[i].to);
            tell(out, words, INDENT);
        }
    }
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
        const recede_warning *warning = recede_plan_warning(plan, i);
        if (warning->kind != RECEDE_WARN_INTO_SUN && warning->kind != RECEDE_WARN_LOW_SUN)
            continue;
        recede_buffer_text(words, "! ");
        recede_words_warning(words, recede_plan_scene(plan), warning);
        tell(out, words, INDENT);
    }
}

void recede_skies_tell(const recede_skies *skies, recede_buffer *out)
{
    const recede_scene *scene = recede_plan_scene(skies->plan[0]);
    recede_buffer words;
    recede_buffer_start(&words, out->allocator);
    if (scene->title[0])
        recede_columns_text(out, scene->title, WIDTH, 0);
    recede_buffer_text(&words, "changed against the scene as planned: ");
    recede_words_air_and_light(&words, scene);
    tell(out, &words, 0);
    for (size_t i = 0; i < skies->count; i++)
        tell_light(skies, i, &words, out);
}
