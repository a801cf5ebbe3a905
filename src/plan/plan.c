#include "plan/plan.h"

#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/index.h"
#include "plan/fits.h"
#include "plan/stage.h"

/* Shares of the progress: the index, then the washes. */
#define INDEX_SHARE 0.8

static recede_code prepare(struct recede_plan *plan, recede_error *error)
{
    recede_scene *scene = &plan->scene;
    recede_code code = recede_scene_check(scene, error);
    if (!code)
        code = recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper,
                                  &plan->allocator, &plan->palette, error);
    if (code)
        return code;
    for (size_t i = 0; i < scene->plane_count; i++)
        plan->planes[i].plane = scene->plane_count - 1 - i;
    return RECEDE_OK;
}

/* All of recede_plan_start but the paints' range. */
static recede_code begin(const recede_scene *scene, const recede_allocator *allocator,
                         struct recede_plan **out, recede_error *error)
{
    allocator = recede_allocator_or_default(allocator);
    *out = NULL;
    struct recede_plan *plan = recede_allocate_array(allocator, 1, sizeof *plan);
    if (!plan) {
        recede_fail(error, RECEDE_NO_MEMORY, "");
        return RECEDE_NO_MEMORY;
    }
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

recede_code recede_plan_start(const recede_scene *scene, const recede_allocator *allocator,
                              struct recede_plan **out, recede_error *error)
{
    recede_code code = begin(scene, allocator, out, error);
    if (!code)
        recede_palette_range((*out)->palette, &(*out)->scene.rules, &(*out)->darkest_paint_y,
                             &(*out)->palest_paint_y);
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

static recede_code fill(struct recede_plan *plan, const recede_index *index,
                        const recede_progress *progress, recede_error *error)
{
    recede_wash_target targets[RECEDE_MOST_WASHES];
    recede_code code = recede_plan_look(plan, targets, error);
    if (!code)
        code = recede_plan_recipes(plan, index, targets, progress, error);
    if (code)
        return code;
    recede_plan_neighbours(plan);
    recede_plan_warnings(plan);
    return RECEDE_OK;
}

/* Fills a plan that was started, or gives it back. */
static recede_code finish(struct recede_plan *plan, const recede_index *index,
                          const recede_progress *progress, recede_plan **out,
                          recede_error *error)
{
    recede_index_range(index, &plan->darkest_paint_y, &plan->palest_paint_y);
    recede_code code = fill(plan, index, progress, error);
    if (code)
        recede_plan_free(plan);
    else
        *out = plan;
    return code;
}

recede_code recede_plan_new(const recede_scene *scene, const recede_allocator *allocator,
                            const recede_progress *progress, recede_plan **out,
                            recede_error *error)
{
    struct recede_plan *plan;
    recede_index *index;
    recede_stage stage;
    *out = NULL;
    recede_code code = begin(scene, allocator, &plan, error);
    if (code)
        return code;
    code = recede_index_new(plan->palette, &plan->scene.rules, 0, allocator,
                            recede_stage_start(&stage, progress, 0.0, INDEX_SHARE), &index, error);
    if (code) {
        recede_plan_free(plan);
        return code;
    }
    code = finish(plan, index, recede_stage_start(&stage, progress, INDEX_SHARE, 1.0), out, error);
    recede_index_free(index);
    return code;
}

recede_code recede_plan_after(const recede_plan *before, const recede_scene *scene,
                              const recede_index *index, const recede_allocator *allocator,
                              const recede_progress *progress, recede_plan **out,
                              recede_error *error)
{
    struct recede_plan *plan;
    *out = NULL;
    recede_code code = begin(scene, allocator, &plan, error);
    if (code)
        return code;
    if (!recede_index_fits(index, plan->palette, &plan->scene.rules)) {
        recede_plan_free(plan);
        return recede_fail(error, RECEDE_CONFLICT, "paint");
    }
    if (before && recede_index_fits(index, before->palette, &before->scene.rules))
        plan->before = before;
    code = finish(plan, index, progress, out, error);
    if (!code)
        (*out)->before = NULL;
    return code;
}

recede_code recede_plan_with_index(const recede_scene *scene, const recede_index *index,
                                   const recede_allocator *allocator,
                                   const recede_progress *progress, recede_plan **out,
                                   recede_error *error)
{
    return recede_plan_after(NULL, scene, index, allocator, progress, out, error);
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
