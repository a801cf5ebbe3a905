#include <math.h>

#include "plan/plan.h"

/* Differences above this show as a graded wash, in CIEDE2000. */
static const double GRADED_DELTA_E = 1.0;

/* The sky first, then each plane far to near, lit and shadow. */
typedef struct {
    recede_sights sky, lit[RECEDE_MOST_PLANES], shadow[RECEDE_MOST_PLANES];
    double lightest_y, darkest_y;
} all_sights;

static void widen(all_sights *all, const recede_sights *sights)
{
    const recede_sight *three[] = {&sights->crest, &sights->half, &sights->base};
    for (int i = 0; i < 3; i++) {
        all->lightest_y = fmax(all->lightest_y, three[i]->adapted.y);
        all->darkest_y = fmin(all->darkest_y, three[i]->adapted.y);
    }
}

/* The dearest of all that is seen, and untouched by what happens on the ground. */
static void look_up(struct recede_plan *plan, const recede_view_point *from)
{
    const struct recede_plan *before = plan->before;
    if (before && recede_same_weather(&before->scene, &plan->scene)) {
        plan->sky_sights = before->sky_sights;
        plan->lightest_sky_y = before->lightest_sky_y;
    } else {
        plan->sky_sights = recede_survey_of_sky(from, &plan->lightest_sky_y);
    }
}

static void look(struct recede_plan *plan, all_sights *all)
{
    recede_view_point from = {&plan->air, &plan->light, &plan->adaptation};
    look_up(plan, &from);
    all->sky = plan->sky_sights;
    all->lightest_y = all->darkest_y = plan->lightest_sky_y;
    widen(all, &all->sky);
    for (size_t i = 0; i < plan->scene.plane_count; i++) {
        const recede_plane *plane = &plan->scene.planes[plan->planes[i].plane];
        all->lit[i] = recede_sights_of_plane(&from, plane, &plan->light.lit);
        all->shadow[i] = recede_sights_of_plane(&from, plane, &plan->light.shadow);
        widen(all, &all->lit[i]);
        widen(all, &all->shadow[i]);
    }
}

static void set_tone(struct recede_plan *plan, const all_sights *all)
{
    plan->tone = recede_tone_for(all->sky.base.adapted.y,
                                 recede_y_of_value(plan->scene.sky_value), plan->palest_paint_y,
                                 all->lightest_y, all->darkest_y, plan->darkest_paint_y,
                                 plan->scene.darks_fitted);
}

void recede_wash_aim(const recede_tone *tone, const recede_sight *sight, recede_wash *wash)
{
    wash->target = recede_colour_of_xyz(recede_toned_as_painted(tone, sight->adapted));
    wash->value_as_seen = recede_value_of_y(recede_toned_as_seen(tone, sight->adapted).y);
    wash->own_share = sight->own_share;
    wash->ground = RECEDE_ON_PAPER;
}

static recede_wash_target set_side(const recede_tone *tone, const recede_sights *sights,
                                   recede_side *side)
{
    recede_wash_aim(tone, &sights->crest, &side->crest);
    recede_wash_aim(tone, &sights->base, &side->base);
    side->graded =
        recede_delta_e(side->crest.target.lab, side->base.target.lab) > GRADED_DELTA_E;
    recede_colour half = recede_colour_of_xyz(recede_toned_as_painted(tone, sights->half.adapted));
    return (recede_wash_target){side->crest.target.lab, side->base.target.lab, half.lab,
                                side->graded};
}

void recede_plan_targets(struct recede_plan *plan, recede_wash_target *targets)
{
    all_sights all;
    look(plan, &all);
    set_tone(plan, &all);
    *targets++ = set_side(&plan->tone, &all.sky, &plan->sky);
    for (size_t i = 0; i < plan->scene.plane_count; i++) {
        *targets++ = set_side(&plan->tone, &all.lit[i], &plan->planes[i].lit);
        *targets++ = set_side(&plan->tone, &all.shadow[i], &plan->planes[i].shadow);
    }
}
