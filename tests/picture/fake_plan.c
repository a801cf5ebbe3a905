#include "picture/fake_plan.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* All invented: own colour, the light on it, the air between. */
typedef struct fake_air {
    recede_lab horizon, overhead, warm;
    double lit, shadow, visibility_km, sun_height_deg, sun_side_deg;
    recede_sky_kind sky;
} fake_air;

static const fake_air fake_airs[] = {
    {{85, -3, -7}, {70, -8, -26}, {0, 0, 4}, 1.0, 0.42, 18, 48, 100, RECEDE_SKY_CLEAR},
    {{80, 9, 32}, {66, 4, 4}, {0, 9, 16}, 0.9, 0.34, 22, 8, 60, RECEDE_SKY_CLEAR},
    {{82, -1, -2}, {88, -1, -1}, {0, 0, 0}, 0.85, 0.48, 12, 40, 90, RECEDE_SKY_OVERCAST},
    {{84, -1, -1}, {86, -1, -2}, {0, 0, 1}, 0.8, 0.5, 0.5, 30, 150, RECEDE_SKY_CLEAR},
};

static const struct {
    const char *name;
    recede_lab own;
} fake_owns[] = {
    {"bracken bank", {50, -9, 36}}, {"alder line", {40, -17, 26}}, {"hay meadow", {62, -8, 38}},
    {"oak wood", {36, -15, 24}},    {"spruce wood", {29, -9, 13}}, {"sheep pasture", {52, -18, 30}},
    {"birch copse", {46, -13, 30}}, {"heather moor", {40, 4, 8}},  {"beech hill", {42, -16, 28}},
    {"far ridge", {38, -6, 14}},
};

recede_wash fake_wash(double l, double a, double b)
{
    recede_wash wash;
    memset(&wash, 0, sizeof wash);
    wash.target = recede_colour_of_xyz(recede_xyz_of_lab((recede_lab){l, a, b}, recede_white()));
    wash.value_as_seen = wash.target.value;
    wash.recipe.colour = wash.target;
    wash.recipe.delta_e = 0.8;
    wash.recipe.slip = 1.9;
    wash.recipe.mix.count = 2;
    wash.recipe.mix.paint[0] = 0;
    wash.recipe.mix.paint[1] = 2;
    wash.recipe.mix.parts[0] = 3;
    wash.recipe.mix.parts[1] = 1;
    wash.recipe.mix.water = recede_water_at(40);
    wash.own_share = 0.5;
    return wash;
}

/* Lab mixed through XYZ, as air mixes light. */
static recede_wash through_air(recede_lab own, double light, const fake_air *air, double own_part)
{
    recede_lab lit = {own.l, own.a + air->warm.a, own.b + air->warm.b};
    recede_xyz near = recede_xyz_of_lab(lit, recede_white());
    recede_xyz far = recede_xyz_of_lab(air->horizon, recede_white());
    recede_xyz seen = {near.x * light * own_part + far.x * (1 - own_part),
                       near.y * light * own_part + far.y * (1 - own_part),
                       near.z * light * own_part + far.z * (1 - own_part)};
    recede_lab lab = recede_lab_of_xyz(seen, recede_white());
    recede_wash wash = fake_wash(lab.l, lab.a, lab.b);
    wash.own_share = own_part;
    return wash;
}

static void make_plane(recede_plan *plan, size_t i, const fake_air *air)
{
    size_t from_near = plan->count - 1 - i;
    double part = plan->count > 1 ? (double)from_near / (double)(plan->count - 1) : 0.3;
    recede_plane *plane = &plan->scene.planes[from_near];
    size_t own = (size_t)(part * 9 + 0.5);
    double distance = 30 * pow(12000.0 / 30, part);
    memset(plane, 0, sizeof *plane);
    if (plan->count <= 10)
        snprintf(plane->name, sizeof plane->name, "%s", fake_owns[own].name);
    else
        snprintf(plane->name, sizeof plane->name, "%zu %s", from_near + 1, fake_owns[own].name);
    plane->distance_m = distance;
    plane->own.kind = RECEDE_OWN_LAB;
    plane->own.lab = fake_owns[own].own;
    double through = exp(-2.996 * distance / 1000 / air->visibility_km);
    recede_planned *planned = &plan->planned[i];
    memset(planned, 0, sizeof *planned);
    planned->plane = from_near;
    planned->lit.crest = planned->lit.base =
        through_air(fake_owns[own].own, air->lit, air, through);
    planned->shadow.crest = planned->shadow.base =
        through_air(fake_owns[own].own, air->shadow * 0.55, air, through);
    planned->edge = distance > 5000  ? RECEDE_EDGE_LOST
                    : distance > 700 ? RECEDE_EDGE_SOFT
                                     : RECEDE_EDGE_HARD;
    planned->value_step = 0.6;
    planned->value_step_shadow = 0.8;
    planned->colour_step = 6;
}

static recede_wash wash_of(recede_lab lab)
{
    return fake_wash(lab.l, lab.a, lab.b);
}

void fake_plan_make(recede_plan *plan, size_t count, fake_light light)
{
    const fake_air *air = &fake_airs[light];
    memset(plan, 0, sizeof *plan);
    plan->count = plan->scene.plane_count = count;
    snprintf(plan->scene.title, sizeof plan->scene.title,
             "Tarn Hollow from the quarry path, late June");
    plan->scene.air.visibility_km = air->visibility_km;
    plan->scene.air.angstrom = 1;
    plan->scene.air.eye_m = 40;
    plan->scene.sky.kind = air->sky;
    plan->scene.sky.sun_height_deg = air->sun_height_deg;
    plan->scene.sky.sun_side_deg = air->sun_side_deg;
    plan->scene.paper_width_m = 0.38;
    plan->scene.paper_height_m = 0.28;
    plan->sky.graded = 1;
    plan->sky.crest = wash_of(air->overhead);
    plan->sky.base = wash_of(air->horizon);
    for (size_t i = 0; i < count; i++)
        make_plane(plan, i, air);
}

const recede_scene *recede_plan_scene(const recede_plan *plan)
{
    return &plan->scene;
}

const recede_palette *recede_plan_palette(const recede_plan *plan)
{
    return plan->palette;
}

size_t recede_plan_count(const recede_plan *plan)
{
    return plan->count;
}

const recede_planned *recede_plan_at(const recede_plan *plan, size_t index)
{
    return &plan->planned[index];
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
