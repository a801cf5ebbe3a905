#include "plan/apart.h"
#include "plan/plan.h"

/* With less of its own light than this a plane's edge has gone into the air. */
static const double LOST_OWN_SHARE = 0.05;
/* With more than this the air has not yet touched the edge: hard. */
static const double HARD_OWN_SHARE = 0.75;

const recede_wash *recede_side_foot(const recede_side *side)
{
    return side->graded ? &side->base : &side->crest;
}

static recede_edge edge_of(const recede_planned *planned)
{
    double own_share = planned->lit.crest.own_share;
    if (planned->apart == RECEDE_NOT_APART || own_share < LOST_OWN_SHARE)
        return RECEDE_EDGE_LOST;
    return own_share > HARD_OWN_SHARE ? RECEDE_EDGE_HARD : RECEDE_EDGE_SOFT;
}

static void meet(recede_planned *planned, const recede_wash *lit_behind,
                 const recede_wash *shadow_behind)
{
    recede_step lit = recede_step_between(&lit_behind->recipe.colour,
                                          &planned->lit.crest.recipe.colour);
    recede_step shadow = recede_step_between(&shadow_behind->recipe.colour,
                                             &planned->shadow.crest.recipe.colour);
    planned->value_step = lit.value;
    planned->value_step_shadow = shadow.value;
    planned->colour_step = lit.colour;
    planned->colour_step_shadow = shadow.colour;
    planned->hue_step = lit.hue;
    planned->hue_step_shadow = shadow.hue;
    planned->apart = lit.apart;
    planned->apart_shadow = shadow.apart;
    planned->edge = edge_of(planned);
}

void recede_plan_neighbours(struct recede_plan *plan)
{
    const recede_wash *lit = recede_side_foot(&plan->sky), *shadow = lit;
    for (size_t i = 0; i < plan->scene.plane_count; i++) {
        recede_planned *planned = &plan->planes[i];
        meet(planned, lit, shadow);
        lit = recede_side_foot(&planned->lit);
        shadow = recede_side_foot(&planned->shadow);
    }
}
