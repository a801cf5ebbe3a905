#include "plan/values.h"

#include "plan/apart.h"

static void meet(const recede_planned *planned, const recede_wash *lit_behind,
                 const recede_wash *shadow_behind, recede_plane_values *out)
{
    recede_step lit = recede_step_between(&lit_behind->target, &planned->lit.crest.target);
    recede_step shadow = recede_step_between(&shadow_behind->target,
                                             &planned->shadow.crest.target);
    out->plane = planned->plane;
    out->lit = planned->lit.crest.target.value;
    out->shadow = planned->shadow.crest.target.value;
    out->own_share = planned->lit.crest.own_share;
    out->value_step = lit.value;
    out->value_step_shadow = shadow.value;
    out->hue_step = lit.hue;
    out->hue_step_shadow = shadow.hue;
    out->apart = lit.apart;
    out->apart_shadow = shadow.apart;
}

void recede_values_of(const struct recede_plan *plan, recede_values *out)
{
    const recede_wash *lit = recede_side_foot(&plan->sky), *shadow = lit;
    out->horizon = lit->target.value;
    out->count = plan->scene.plane_count;
    for (size_t i = 0; i < out->count; i++) {
        const recede_planned *planned = &plan->planes[i];
        meet(planned, lit, shadow, &out->at[i]);
        lit = recede_side_foot(&planned->lit);
        shadow = recede_side_foot(&planned->shadow);
    }
}

recede_code recede_plan_values(const recede_scene *scene, const recede_allocator *allocator,
                               recede_values *out, recede_error *error)
{
    struct recede_plan *plan;
    recede_wash_target targets[RECEDE_MOST_WASHES];
    recede_code code = recede_plan_start(scene, allocator, &plan, error);
    if (code)
        return code;
    code = recede_plan_look(plan, targets, error);
    if (!code)
        recede_values_of(plan, out);
    recede_plan_free(plan);
    return code;
}
