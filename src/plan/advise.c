/* For the washes that a palette does not reach: which pigment it lacks, and in opaque
 * media which of its paints would help let down. */
#include "plan/plan.h"

#include "colour/error.h"
#include "colour/memory.h"

/* Washes that share a ground are sought together: all those on the paper at once,
 * each of the others by itself. */
typedef struct {
    recede_plan *plan;
    const recede_progress *progress;
    recede_error *error;
    recede_wash_place washes[RECEDE_MOST_WASH_PLACES];
    size_t count;
    recede_lab targets[RECEDE_MOST_WASH_PLACES];
    size_t wanted[RECEDE_MOST_WASH_PLACES]; /* which wash each target is of */
    recede_addition found[RECEDE_MOST_WASH_PLACES];
    recede_addition of[RECEDE_MOST_WASH_PLACES]; /* by wash */
} advice;

static recede_code seek(advice *a, const recede_spectrum *ground, const recede_rules *rules,
                        size_t count)
{
    recede_code code = recede_best_additions(a->plan->palette, rules, ground, a->targets, count,
                                             a->found, &a->plan->allocator, a->progress,
                                             a->error);
    for (size_t i = 0; !code && i < count; i++)
        a->of[a->wanted[i]] = a->found[i];
    return code;
}

static int wanting(const recede_wash_place *place)
{
    return place->wash->recipe.reach != RECEDE_REACHABLE;
}

static recede_code seek_on_paper(advice *a)
{
    size_t count = 0;
    for (size_t i = 0; i < a->count; i++)
        if (wanting(&a->washes[i]) && !a->washes[i].under) {
            a->wanted[count] = i;
            a->targets[count++] = a->washes[i].wash->target.lab;
        }
    return seek(a, NULL, &a->plan->scene.rules, count);
}

static recede_code seek_over(advice *a, size_t wash)
{
    const recede_wash_place *place = &a->washes[wash];
    recede_rules rules = a->plan->scene.rules;
    recede_spectrum ground =
        recede_mix_reflectance(a->plan->palette, &place->under->recipe.mix, NULL);
    if (rules.most_pigments > RECEDE_MOST_LAID_OVER)
        rules.most_pigments = RECEDE_MOST_LAID_OVER;
    a->wanted[0] = wash;
    a->targets[0] = place->wash->target.lab;
    return seek(a, &ground, &rules, 1);
}

static recede_code seek_all(advice *a)
{
    recede_code code = seek_on_paper(a);
    for (size_t i = 0; !code && i < a->count; i++)
        if (wanting(&a->washes[i]) && a->washes[i].under)
            code = seek_over(a, i);
    return code;
}

static void tell(advice *a)
{
    for (size_t i = 0; i < a->plan->warning_count; i++) {
        recede_warning *warning = &a->plan->warnings[i];
        if (warning->kind != RECEDE_WARN_NOT_REACHED)
            continue;
        for (size_t j = 0; j < a->count; j++) {
            const recede_wash_place *place = &a->washes[j];
            if (place->plane == warning->plane && place->shadow == warning->shadow &&
                place->base == warning->base) {
                warning->pigment = a->of[j].pigment;
                warning->number[1] = a->of[j].delta_e;
                warning->let_down = a->of[j].let_down;
                warning->number[2] = a->of[j].let_down_delta_e;
            }
        }
    }
}

recede_code recede_plan_advise(recede_plan *plan, const recede_progress *progress,
                               recede_error *error)
{
    recede_allocator allocator = plan->allocator;
    advice *a = recede_allocate_array(&allocator, 1, sizeof *a);
    if (!a)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    a->plan = plan;
    a->progress = progress;
    a->error = error;
    a->count = recede_plan_washes(plan, a->washes);
    recede_code code = seek_all(a);
    if (!code)
        tell(a);
    recede_release(&allocator, a);
    return code;
}
