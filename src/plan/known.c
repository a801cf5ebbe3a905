#include "plan/known.h"

#include "plan/fits.h"

static int same_lab(recede_lab one, recede_lab other)
{
    return one.l == other.l && one.a == other.a && one.b == other.b;
}

static int same_target(const recede_wash_target *one, const recede_wash_target *other)
{
    return one->graded == other->graded && same_lab(one->from, other->from) &&
           same_lab(one->to, other->to) && same_lab(one->half, other->half);
}

static int same_over(const recede_over_target *one, const recede_over_target *other)
{
    return same_target(&one->wash, &other->wash) &&
           recede_same_spectrum(&one->from_ground, &other->from_ground) &&
           recede_same_spectrum(&one->to_ground, &other->to_ground) &&
           recede_same_spectrum(&one->half_ground, &other->half_ground);
}

const recede_wash_recipe *recede_known_on_paper(const recede_known *known,
                                                const recede_wash_target *target)
{
    for (size_t i = 0; i < known->papers; i++)
        if (same_target(&known->paper[i], target))
            return &known->on_paper[i];
    return NULL;
}

const recede_wash_recipe *recede_known_on_lit(const recede_known *known,
                                              const recede_over_target *target)
{
    for (size_t i = 0; i < known->overs; i++)
        if (same_over(&known->over[i], target))
            return &known->on_lit[i];
    return NULL;
}

void recede_know_on_paper(recede_known *known, const recede_wash_target *target,
                          const recede_wash_recipe *found)
{
    known->paper[known->papers] = *target;
    known->on_paper[known->papers++] = *found;
}

void recede_know_on_lit(recede_known *known, const recede_over_target *target,
                        const recede_wash_recipe *found)
{
    known->over[known->overs] = *target;
    known->on_lit[known->overs++] = *found;
}

static int same_air(const recede_air *one, const recede_air *other)
{
    return one->visibility_km == other->visibility_km && one->angstrom == other->angstrom &&
           one->eye_m == other->eye_m && one->mist_visibility_km == other->mist_visibility_km &&
           one->mist_top_m == other->mist_top_m;
}

static int same_sky(const recede_sky *one, const recede_sky *other)
{
    return one->kind == other->kind && one->sun_height_deg == other->sun_height_deg &&
           one->sun_side_deg == other->sun_side_deg &&
           recede_same_spectrum(&one->horizon_colour, &other->horizon_colour) &&
           recede_same_spectrum(&one->light_colour, &other->light_colour);
}

int recede_same_weather(const recede_scene *one, const recede_scene *other)
{
    return one->adaptation == other->adaptation && same_air(&one->air, &other->air) &&
           same_sky(&one->sky, &other->sky);
}
