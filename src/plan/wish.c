/* The painter's backward question: which air, which light would give these
 * values. */
#include "plan/wish.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "plan/values.h"

/* What counts as granted, in value: less than any eye sees. */
static const double NEAR_ENOUGH = 0.01;
static const double LEAST_KM = 0.2, MOST_KM = 250.0;

static void consider(recede_wish_state *state, size_t at, int shadow, double step)
{
    if (fabs(step) >= state->reached)
        return;
    state->reached = fabs(step);
    state->at = at;
    state->shadow = shadow;
}

recede_wish_state recede_wish_state_of(const recede_wish_search *search)
{
    const recede_wish *wish = search->wish;
    recede_wish_state state = {.visibility_km = search->plan->scene.air.visibility_km,
                               .sun_height_deg = search->plan->scene.sky.sun_height_deg};
    recede_values_of(search->plan, &state.values);
    if (wish->kind == RECEDE_WISH_VALUE) {
        state.at = search->plane;
        state.reached = state.values.at[state.at].lit;
        return state;
    }
    state.reached = INFINITY;
    for (size_t i = wish->without_sky ? 1 : 0; i < state.values.count; i++) {
        consider(&state, i, 0, state.values.at[i].value_step);
        if (wish->shadows)
            consider(&state, i, 1, state.values.at[i].value_step_shadow);
    }
    return state;
}

recede_code recede_wish_look(recede_wish_search *search, double log_km, double sun_deg,
                             recede_error *error)
{
    recede_wash_target targets[RECEDE_MOST_WASHES];
    recede_scene *scene = &search->plan->scene;
    /* the scene's own number, not what its logarithm makes of it */
    scene->air.visibility_km =
        log_km == search->given_log_km ? search->given_km : fmin(exp(log_km), MOST_KM);
    scene->sky.sun_height_deg = sun_deg;
    return recede_plan_look(search->plan, targets, error);
}

static recede_code find_plane(recede_wish_search *search, recede_error *error)
{
    const struct recede_plan *plan = search->plan;
    for (size_t i = 0; i < plan->scene.plane_count; i++) {
        if (strcmp(plan->scene.planes[plan->planes[i].plane].name, search->wish->plane) == 0) {
            search->plane = i;
            return RECEDE_OK;
        }
    }
    return recede_fail_name(error, RECEDE_UNKNOWN_NAME, "wish.plane", search->wish->plane);
}

static recede_code check(recede_wish_search *search, recede_error *error)
{
    const recede_wish *wish = search->wish;
    const recede_scene *scene = &search->plan->scene;
    int steps = wish->kind == RECEDE_WISH_STEPS;
    recede_code code = recede_check_range(error, "wish.value", wish->value, steps ? 0.1 : 0.0,
                                          steps ? 9.0 : 10.0);
    if (code)
        return code;
    if (wish->move_sun && scene->sky.kind != RECEDE_SKY_CLEAR)
        return recede_fail(error, RECEDE_CONFLICT, "wish.sun");
    if (!steps)
        return find_plane(search, error);
    if (wish->without_sky && scene->plane_count < 2)
        return recede_fail_count(error, RECEDE_TOO_FEW, "planes", scene->plane_count, 2,
                                 RECEDE_MOST_PLANES);
    return RECEDE_OK;
}

static void start_search(recede_wish_search *search)
{
    const recede_scene *scene = &search->plan->scene;
    search->given_km = scene->air.visibility_km;
    search->given_log_km = log(search->given_km);
    search->given_sun_deg = scene->sky.sun_height_deg;
    search->least_log_km = fmin(log(LEAST_KM), search->given_log_km);
    search->most_log_km = log(MOST_KM);
    search->best.change = INFINITY;
    search->nearest.excess = -INFINITY;
}

/* How far from the wish, whichever way; steps may be larger than wished. */
static double lacking(const recede_wish *wish, const recede_wish_state *state)
{
    double lack = wish->value - state->reached;
    return wish->kind == RECEDE_WISH_VALUE ? fabs(lack) : fmax(lack, 0.0);
}

static recede_code answer(recede_wish_search *search, const recede_progress *progress,
                          recede_wish_answer *out, recede_error *error)
{
    recede_code code = recede_wish_look(search, search->given_log_km, search->given_sun_deg,
                                        error);
    if (code)
        return code;
    out->given = out->found = recede_wish_state_of(search);
    out->change = 0.0;
    out->outcome = RECEDE_WISH_HOLDS;
    if (lacking(search->wish, &out->given) <= NEAR_ENOUGH)
        return RECEDE_OK;
    code = recede_wish_seek(search, progress, error);
    if (code)
        return code;
    const recede_wish_spot *spot = isinf(search->best.change) ? &search->nearest : &search->best;
    code = recede_wish_look(search, spot->log_km, spot->sun_deg, error);
    if (code)
        return code;
    out->found = recede_wish_state_of(search);
    out->change = spot->change;
    out->outcome = lacking(search->wish, &out->found) <= NEAR_ENOUGH ? RECEDE_WISH_GRANTED
                                                                     : RECEDE_WISH_DENIED;
    return RECEDE_OK;
}

recede_code recede_wish_grant(const recede_scene *scene, const recede_wish *wish,
                              const recede_allocator *allocator,
                              const recede_progress *progress, recede_wish_answer *out,
                              recede_error *error)
{
    recede_wish_search search = {.wish = wish};
    recede_code code = recede_plan_start(scene, allocator, &search.plan, error);
    if (code)
        return code;
    code = check(&search, error);
    if (!code) {
        start_search(&search);
        code = answer(&search, progress, out, error);
    }
    recede_plan_free(search.plan);
    return code;
}
