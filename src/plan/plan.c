#include "plan/plan.h"

#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"

static void take_recipe(recede_side *side, const recede_wash_recipe *found)
{
    side->crest.recipe = found->from;
    side->base.recipe = side->graded ? found->to : found->from;
    side->half_delta_e = found->half_delta_e;
    side->two_washes = found->two_washes;
}

static recede_code find_recipes(struct recede_plan *plan, const recede_wash_target *targets,
                                const recede_progress *progress, recede_error *error)
{
    size_t count = 1 + 2 * plan->scene.plane_count;
    recede_wash_recipe *found = recede_allocate_array(&plan->allocator, count, sizeof *found);
    if (!found)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    recede_code code = recede_search_all(plan->palette, &plan->scene.rules, targets, count, found,
                                         &plan->allocator, progress, error);
    if (!code) {
        take_recipe(&plan->sky, &found[0]);
        for (size_t i = 0; i < plan->scene.plane_count; i++) {
            take_recipe(&plan->planes[i].lit, &found[1 + 2 * i]);
            take_recipe(&plan->planes[i].shadow, &found[2 + 2 * i]);
        }
    }
    recede_release(&plan->allocator, found);
    return code;
}

static recede_code prepare(struct recede_plan *plan, recede_error *error)
{
    recede_scene *scene = &plan->scene;
    recede_code code = recede_scene_check(scene, error);
    if (!code)
        code = recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper,
                                  &plan->allocator, &plan->palette, error);
    if (code)
        return code;
    recede_palette_range(plan->palette, &scene->rules, &plan->darkest_paint_y,
                         &plan->palest_paint_y);
    for (size_t i = 0; i < scene->plane_count; i++)
        plan->planes[i].plane = scene->plane_count - 1 - i;
    return RECEDE_OK;
}

recede_code recede_plan_start(const recede_scene *scene, const recede_allocator *allocator,
                              struct recede_plan **out, recede_error *error)
{
    allocator = recede_allocator_or_default(allocator);
    *out = NULL;
    struct recede_plan *plan = recede_allocate_array(allocator, 1, sizeof *plan);
    if (!plan)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    memset(plan, 0, sizeof *plan);
    plan->allocator = *allocator;
    plan->scene = *scene;
    recede_code code = prepare(plan, error);
    if (code)
        recede_plan_free(plan);
    else
        *out = plan;
    return code;
}

recede_code recede_plan_look(struct recede_plan *plan, recede_wash_target *targets,
                             recede_error *error)
{
    recede_code code = recede_atmosphere_of(&plan->scene.air, &plan->air, error);
    if (!code)
        code = recede_light_of(&plan->air, &plan->scene.sky, &plan->light, error);
    if (code)
        return code;
    plan->adaptation = recede_adaptation_to(&plan->light, plan->scene.adaptation);
    recede_plan_targets(plan, targets);
    return RECEDE_OK;
}

static recede_code fill(struct recede_plan *plan, const recede_progress *progress,
                        recede_error *error)
{
    recede_wash_target targets[RECEDE_MOST_WASHES];
    recede_code code = recede_plan_look(plan, targets, error);
    if (!code)
        code = find_recipes(plan, targets, progress, error);
    if (code)
        return code;
    recede_plan_neighbours(plan);
    recede_plan_warnings(plan);
    return RECEDE_OK;
}

recede_code recede_plan_new(const recede_scene *scene, const recede_allocator *allocator,
                            const recede_progress *progress, recede_plan **out,
                            recede_error *error)
{
    struct recede_plan *plan;
    *out = NULL;
    recede_code code = recede_plan_start(scene, allocator, &plan, error);
    if (code)
        return code;
    code = fill(plan, progress, error);
    if (code)
        recede_plan_free(plan);
    else
        *out = plan;
    return code;
}

void recede_plan_free(recede_plan *plan)
{
    if (!plan)
        return;
    recede_allocator allocator = plan->allocator;
    recede_palette_free(plan->palette);
    recede_release(&allocator, plan);
}

const recede_scene *recede_plan_scene(const recede_plan *plan)
{
    return &plan->scene;
}

const recede_palette *recede_plan_palette(const recede_plan *plan)
{
    return plan->palette;
}

const recede_atmosphere *recede_plan_atmosphere(const recede_plan *plan)
{
    return &plan->air;
}

const recede_light *recede_plan_light(const recede_plan *plan)
{
    return &plan->light;
}

size_t recede_plan_count(const recede_plan *plan)
{
    return plan->scene.plane_count;
}

const recede_planned *recede_plan_at(const recede_plan *plan, size_t index)
{
    return &plan->planes[index];
}

const recede_side *recede_plan_sky(const recede_plan *plan)
{
    return &plan->sky;
}

size_t recede_plan_warning_count(const recede_plan *plan)
{
    return plan->warning_count;
}

const recede_warning *recede_plan_warning(const recede_plan *plan, size_t index)
{
    return &plan->warnings[index];
}
