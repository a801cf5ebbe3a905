#include <math.h>

#include "plan/plan.h"

static recede_warning *warn(struct recede_plan *plan, recede_warning_kind kind)
{
    recede_warning *warning = &plan->warnings[plan->warning_count++];
    *warning = (recede_warning){.kind = kind, .plane = -1, .other = -1};
    return warning;
}

static void warn_of_sun(struct recede_plan *plan)
{
    const recede_sky *sky = &plan->scene.sky;
    if (sky->kind != RECEDE_SKY_CLEAR)
        return;
    /* Within a hand's breadth either way the sun stands in the painter's view. */
    if (sky->sun_side_deg <= 40.0)
        warn(plan, RECEDE_WARN_INTO_SUN)->number[0] = sky->sun_side_deg;
    if (sky->sun_side_deg < 90.0 && sky->sun_height_deg < 5.0)
        warn(plan, RECEDE_WARN_LOW_SUN)->number[0] = sky->sun_height_deg;
}

static void warn_of_darks(struct recede_plan *plan)
{
    if (plan->tone.gamma == 1.0)
        return;
    recede_warning *warning = warn(plan, RECEDE_WARN_DARKS_FITTED);
    recede_xyz darkest = {0.0, plan->tone.darkest_y, 0.0};
    double painted = plan->tone.lightest_y *
                     pow(darkest.y / plan->tone.lightest_y, plan->tone.gamma);
    warning->number[0] = plan->tone.gamma;
    warning->number[1] = recede_value_of_y(darkest.y);
    warning->number[2] = recede_value_of_y(painted);
}

static void warn_of_wash(struct recede_plan *plan, const recede_side *side, int plane, int shadow,
                         int base)
{
    const recede_wash *wash = base ? &side->base : &side->crest;
    if (wash->recipe.reach == RECEDE_REACHABLE)
        return;
    recede_warning *warning = warn(plan, RECEDE_WARN_NOT_REACHED);
    warning->plane = plane;
    warning->shadow = shadow;
    warning->graded = side->graded;
    warning->base = base;
    warning->reach = wash->recipe.reach;
    warning->number[0] = wash->recipe.delta_e;
}

static void warn_of_side(struct recede_plan *plan, const recede_side *side, int plane, int shadow)
{
    warn_of_wash(plan, side, plane, shadow, 0);
    if (side->graded)
        warn_of_wash(plan, side, plane, shadow, 1);
    if (side->graded && side->two_washes) {
        recede_warning *warning = warn(plan, RECEDE_WARN_TWO_WASHES);
        warning->plane = plane;
        warning->shadow = shadow;
        warning->number[0] = side->half_delta_e;
    }
}

/* A colour given as such may lie where no reflectance can have it. */
static void warn_of_own_colour(struct recede_plan *plan, const recede_own *own, int plane)
{
    recede_lab wanted;
    if (own->kind == RECEDE_OWN_COLOUR)
        wanted = recede_lab_of_xyz(recede_xyz_of_srgb(own->srgb), recede_white());
    else if (own->kind == RECEDE_OWN_LAB)
        wanted = own->lab;
    else
        return;
    recede_xyz xyz = recede_xyz_of_reflectance(&own->reflectance);
    double delta_e = recede_delta_e(wanted, recede_lab_of_xyz(xyz, recede_white()));
    if (delta_e <= 0.1)
        return;
    recede_warning *warning = warn(plan, RECEDE_WARN_OWN_COLOUR);
    warning->plane = plane;
    warning->number[0] = delta_e;
}

/* Shadow sides that run together are left unsaid where the lit sides read apart. */
static void warn_of_merging(struct recede_plan *plan, size_t index)
{
    const recede_planned *planned = &plan->planes[index];
    if (planned->apart != RECEDE_NOT_APART)
        return;
    recede_warning *warning = warn(plan, RECEDE_WARN_MERGE);
    warning->plane = (int)planned->plane;
    warning->other = index ? (int)plan->planes[index - 1].plane : -1;
    warning->number[0] = fabs(planned->value_step);
    warning->number[1] = planned->hue_step;
    warning->number[2] = planned->apart_shadow != RECEDE_NOT_APART;
}

static void warn_of_plane(struct recede_plan *plan, size_t index)
{
    const recede_planned *planned = &plan->planes[index];
    int plane = (int)planned->plane;
    warn_of_own_colour(plan, &plan->scene.planes[plane].own, plane);
    if (planned->lit.crest.own_share < 0.02) {
        recede_warning *warning = warn(plan, RECEDE_WARN_GONE);
        warning->plane = plane;
        warning->number[0] = planned->lit.crest.own_share;
    } else {
        warn_of_merging(plan, index);
    }
    warn_of_side(plan, &planned->lit, plane, 0);
    warn_of_side(plan, &planned->shadow, plane, 1);
}

void recede_plan_warnings(struct recede_plan *plan)
{
    plan->warning_count = 0;
    warn_of_sun(plan);
    warn_of_darks(plan);
    warn_of_side(plan, &plan->sky, -1, 0);
    for (size_t i = 0; i < plan->scene.plane_count; i++)
        warn_of_plane(plan, i);
}
