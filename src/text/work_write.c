#include "text/work_write.h"

#include "plan/work_needed.h"
#include "text/words.h"
#include "text/words_work.h"

/* Adds up to 1 from the library's 0; -1, none, is left out. */
static void write_number(recede_json *json, const char *key, int from_0)
{
    if (from_0 >= 0)
        recede_json_whole(json, key, from_0 + 1);
}

static void write_words(recede_json *json, const char *key, recede_buffer *words)
{
    recede_json_string(json, key, recede_buffer_string(words));
    json->out->failed |= words->failed;
    recede_buffer_free(words);
}

static void write_place(recede_json *json, const recede_scene *scene,
                        const recede_work_step *step)
{
    if (step->plane >= 0) {
        recede_json_string(json, "plane", scene->planes[step->plane].name);
        recede_json_string(json, "side", step->shadow ? "shadow" : "lit");
    }
    if (step->graded)
        recede_json_string(json, "end", step->base ? "base" : "crest");
}

static void write_recipe(recede_json *json, const recede_palette *palette,
                         const recede_work_step *step)
{
    recede_json_array(json, "pigments");
    for (int i = 0; i < step->mix.count; i++) {
        recede_json_object(json, NULL);
        recede_json_string(json, "name",
                           recede_palette_paint(palette, (size_t)step->mix.paint[i])->name);
        recede_json_whole(json, "parts", step->mix.parts[i]);
        recede_json_number(json, "added_ml", step->paint_ml[i]);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
    if (step->mix.count && recede_medium_takes_water(recede_palette_medium(palette))) {
        recede_json_number(json, "water_per_paint", step->mix.water);
        recede_json_number(json, "water_added_ml", step->water_ml);
    }
}

static void write_colour(recede_json *json, const recede_colour *colour)
{
    const double lab[] = {colour->lab.l, colour->lab.a, colour->lab.b};
    const double srgb[] = {colour->srgb.r, colour->srgb.g, colour->srgb.b};
    recede_json_object(json, "mix");
    recede_json_numbers(json, "lab", lab, 3);
    recede_json_numbers(json, "srgb", srgb, 3);
    recede_json_number(json, "value", colour->value);
    recede_json_end_object(json);
}

static void write_step(recede_json *json, const recede_work_told *told, size_t index)
{
    const recede_work_step *step = &told->work->steps[index];
    recede_buffer sentence;
    recede_json_object(json, NULL);
    write_place(json, recede_plan_scene(told->plan), step);
    recede_json_string(json, "kind", recede_words_step_kind(step->kind));
    recede_json_string(json, "ground", recede_words_ground(step->ground));
    write_number(json, "well", step->well);
    write_number(json, "before", step->before);
    recede_json_number(json, "left_ml", step->left_ml);
    write_recipe(json, recede_plan_palette(told->plan), step);
    recede_json_number(json, "mixed_ml", step->mixed_ml);
    recede_json_number(json, "need_ml", step->need_ml);
    write_colour(json, &step->colour);
    recede_json_number(json, "delta_e", step->delta_e);
    recede_json_number(json, "planned_delta_e", step->planned_delta_e);
    recede_json_string(json, "paper", recede_words_paper_state(step->paper));
    write_number(json, "after", step->after);
    recede_buffer_start(&sentence, json->out->allocator);
    recede_words_step(&sentence, told->plan, told->work, index);
    write_words(json, "sentence", &sentence);
    recede_json_end_object(json);
}

static void write_costs(recede_json *json)
{
    recede_json_object(json, "costs");
    recede_json_number(json, "addition", RECEDE_ADDITION_COST);
    recede_json_number(json, "washing", RECEDE_WASHING_COST);
    recede_json_number(json, "excess", RECEDE_EXCESS_COST);
    recede_json_end_object(json);
}

/* Tubes that no mix names, but from which others are let down. */
static void write_for_let_down(recede_json *json, const recede_palette *palette,
                               unsigned long in_use)
{
    unsigned long only = recede_work_needed(palette, in_use) & ~in_use;
    if (!only)
        return;
    recede_json_array(json, "for_let_down");
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (only >> i & 1)
            recede_json_string(json, NULL, recede_palette_paint(palette, i)->name);
    recede_json_end_array(json);
}

static void write_choice(recede_json *json, const recede_palette *palette,
                         const recede_work_choice *choice)
{
    recede_json_object(json, NULL);
    recede_json_whole(json, "wells", choice->wells);
    recede_json_array(json, "tubes");
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (choice->paints >> i & 1)
            recede_json_string(json, NULL, recede_palette_paint(palette, i)->name);
    recede_json_end_array(json);
    write_for_let_down(json, palette, choice->paints);
    recede_json_number(json, "sum", choice->sum);
    recede_json_number(json, "difference", choice->difference);
    recede_json_whole(json, "additions", choice->additions);
    recede_json_whole(json, "washings", choice->washings);
    recede_json_end_object(json);
}

static void write_choices(recede_json *json, const recede_work_told *told)
{
    if (!told->choice_count)
        return;
    recede_json_array(json, "choices");
    for (size_t i = 0; i < told->choice_count; i++)
        write_choice(json, recede_plan_palette(told->plan), &told->choices[i]);
    recede_json_end_array(json);
}

void recede_work_write(const recede_work_told *told, recede_json *json)
{
    const recede_work *work = told->work;
    recede_json_object(json, "work");
    recede_json_whole(json, "wells", work->wells);
    recede_json_whole(json, "most_tubes", work->most_tubes);
    recede_json_whole(json, "tubes", work->tubes);
    recede_json_bool(json, "exact", work->exact);
    recede_json_number(json, "film_mm",
                       recede_work_film_mm(recede_plan_scene(told->plan)->medium));
    write_costs(json);
    recede_json_number(json, "sum", work->sum);
    recede_json_number(json, "difference", work->difference);
    recede_json_number(json, "planned_difference", work->planned_difference);
    recede_json_whole(json, "additions", work->additions);
    recede_json_whole(json, "washings", work->washings);
    recede_json_array(json, "steps");
    for (size_t i = 0; i < work->count; i++)
        write_step(json, told, i);
    recede_json_end_array(json);
    write_choices(json, told);
    recede_json_end_object(json);
}
