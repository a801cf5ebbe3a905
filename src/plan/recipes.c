/*
 * Recipes for every wash of a plan, in the order they are painted: the sky and the lit
 * sides on bare paper, then the shadow sides, over their own dried lit wash or beside it.
 */
#include "plan/plan.h"

#include "colour/error.h"
#include "colour/memory.h"
#include "plan/stage.h"

typedef struct {
    size_t count;
    recede_side *side[RECEDE_MOST_WASHES];
    recede_wash_target target[RECEDE_MOST_WASHES];
    recede_wash_recipe found[RECEDE_MOST_WASHES];
} paper_washes;

typedef struct {
    size_t count;
    recede_side *side[RECEDE_MOST_PLANES];
    recede_over_target target[RECEDE_MOST_PLANES];
    recede_wash_recipe found[RECEDE_MOST_PLANES];
} over_washes;

/* Large: kept off the stack. */
typedef struct {
    paper_washes paper;
    over_washes over;
} work;

static void take_recipe(recede_side *side, recede_ground ground, const recede_wash_recipe *found)
{
    side->crest.ground = side->base.ground = ground;
    side->crest.recipe = found->from;
    side->base.recipe = side->graded ? found->to : found->from;
    side->half_delta_e = found->half_delta_e;
    side->two_washes = found->two_washes;
}

/* ---- on bare paper */

static void take_on_paper(struct recede_plan *plan, recede_side *side,
                          const recede_wash_target *target, const recede_wash_recipe *found)
{
    recede_know_on_paper(&plan->known, target, found);
    take_recipe(side, RECEDE_ON_PAPER, found);
}

/* To be sought, unless the plan before has found it. */
static void add_on_paper(struct recede_plan *plan, paper_washes *paper, recede_side *side,
                         const recede_wash_target *target)
{
    const recede_wash_recipe *found =
        plan->before ? recede_known_on_paper(&plan->before->known, target) : NULL;
    if (found) {
        take_on_paper(plan, side, target, found);
        return;
    }
    paper->side[paper->count] = side;
    paper->target[paper->count++] = *target;
}

static recede_code search_on_paper(struct recede_plan *plan, const recede_index *index,
                                   paper_washes *paper, const recede_progress *progress,
                                   recede_error *error)
{
    recede_code code = RECEDE_OK;
    if (paper->count)
        code = recede_search(index, paper->target, paper->count, paper->found, &plan->allocator,
                             progress, error);
    for (size_t i = 0; !code && i < paper->count; i++)
        take_on_paper(plan, paper->side[i], &paper->target[i], &paper->found[i]);
    return code;
}

/* ---- over the lit wash */

/* A wash darkens what it lies on. A shadow that should be paler than its lit wash, by
 * more than a tie forgives, cannot be laid over it. */
static int darkens(const struct recede_plan *plan, const recede_wash *lit,
                   const recede_wash *shadow)
{
    return shadow->target.xyz.y <= lit->recipe.colour.xyz.y ||
           recede_delta_e(shadow->target.lab, lit->recipe.colour.lab) <= plan->scene.rules.tie;
}

/* Bare paper is no wash to lie on. */
static int lies_over(const struct recede_plan *plan, const recede_planned *planned)
{
    const recede_side *lit = &planned->lit, *shadow = &planned->shadow;
    return lit->crest.recipe.mix.count && darkens(plan, &lit->crest, &shadow->crest) &&
           darkens(plan, recede_side_foot(lit), recede_side_foot(shadow));
}

static void take_over(struct recede_plan *plan, recede_side *side,
                      const recede_over_target *target, const recede_wash_recipe *found)
{
    recede_know_on_lit(&plan->known, target, found);
    take_recipe(side, RECEDE_ON_LIT, found);
}

/* The shadow over a graded wash is graded too, though it may want one colour. A plane
 * that stood in the same place before most likely wants much the same mix. */
static void add_over(struct recede_plan *plan, over_washes *over, recede_planned *planned,
                     const recede_wash_target *target)
{
    const struct recede_plan *before = plan->before;
    const recede_palette *palette = plan->palette;
    const recede_mix none = {0}, *crest = &planned->lit.crest.recipe.mix;
    const recede_mix *base = &recede_side_foot(&planned->lit)->recipe.mix;
    recede_over_target *to = &over->target[over->count];
    planned->shadow.graded |= planned->lit.graded;
    to->wash = *target;
    to->wash.graded = planned->shadow.graded;
    to->from_ground = recede_mix_reflectance(palette, crest, NULL);
    to->to_ground = recede_mix_reflectance(palette, base, NULL);
    to->half_ground = recede_half_and_half(palette, crest, base, NULL);
    to->guess = before ? before->planes[planned - plan->planes].shadow.crest.recipe.mix : none;
    const recede_wash_recipe *found =
        before ? recede_known_on_lit(&before->known, to) : NULL;
    if (found)
        take_over(plan, &planned->shadow, to, found);
    else
        over->side[over->count++] = &planned->shadow;
}

static recede_code search_over(struct recede_plan *plan, over_washes *over,
                               const recede_progress *progress, recede_error *error)
{
    recede_code code = recede_search_over(plan->palette, &plan->scene.rules, over->target,
                                          over->count, over->found, &plan->allocator, progress,
                                          error);
    for (size_t i = 0; !code && i < over->count; i++)
        take_over(plan, over->side[i], &over->target[i], &over->found[i]);
    return code;
}

/* ---- all */

/* Shadows beside the lit sides are sought with them. */
static double first_share(const struct recede_plan *plan)
{
    return plan->scene.shadows_over ? 0.5 : 1.0;
}

static recede_code paint_first(struct recede_plan *plan, const recede_index *index,
                               const recede_wash_target *targets, work *w,
                               const recede_progress *progress, recede_error *error)
{
    recede_stage stage;
    add_on_paper(plan, &w->paper, &plan->sky, &targets[0]);
    for (size_t i = 0; i < plan->scene.plane_count; i++) {
        add_on_paper(plan, &w->paper, &plan->planes[i].lit, &targets[1 + 2 * i]);
        if (!plan->scene.shadows_over)
            add_on_paper(plan, &w->paper, &plan->planes[i].shadow, &targets[2 + 2 * i]);
    }
    return search_on_paper(plan, index, &w->paper,
                           recede_stage_start(&stage, progress, 0.0, first_share(plan)), error);
}

static recede_code paint_shadows(struct recede_plan *plan, const recede_index *index,
                                 const recede_wash_target *targets, work *w,
                                 const recede_progress *progress, recede_error *error)
{
    recede_stage stage;
    w->paper.count = 0;
    for (size_t i = 0; i < plan->scene.plane_count; i++) {
        recede_planned *planned = &plan->planes[i];
        const recede_wash_target *target = &targets[2 + 2 * i];
        if (lies_over(plan, planned))
            add_over(plan, &w->over, planned, target);
        else
            add_on_paper(plan, &w->paper, &planned->shadow, target);
    }
    double first = first_share(plan), over = (double)w->over.count;
    double from = first + (1.0 - first) * over / (double)plan->scene.plane_count;
    recede_code code = RECEDE_OK;
    if (w->over.count)
        code = search_over(plan, &w->over, recede_stage_start(&stage, progress, first, from),
                           error);
    if (!code && w->paper.count)
        code = search_on_paper(plan, index, &w->paper,
                               recede_stage_start(&stage, progress, from, 1.0), error);
    return code;
}

recede_code recede_plan_recipes(struct recede_plan *plan, const recede_index *index,
                                const recede_wash_target *targets,
                                const recede_progress *progress, recede_error *error)
{
    work *w = recede_allocate_array(&plan->allocator, 1, sizeof *w);
    if (!w)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    w->paper.count = w->over.count = 0;
    recede_code code = paint_first(plan, index, targets, w, progress, error);
    if (!code && plan->scene.shadows_over)
        code = paint_shadows(plan, index, targets, w, progress, error);
    recede_release(&plan->allocator, w);
    return code;
}
