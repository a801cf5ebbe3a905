/* Wishes, against sweeps over the air. Scenes here are invented: by a linear
 * congruential generator (Numerical Recipes' constants, from memory). */
#include <stdlib.h>
#include <string.h>

#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

static double next_random(uint32_t *state)
{
    *state = *state * 1664525u + 1013904223u;
    return (double)(*state >> 8) / 16777216.0;
}

static double between(uint32_t *state, double low, double high)
{
    return low * pow(high / low, next_random(state));
}

static void make_plane(recede_scene *scene, uint32_t *random, size_t at, double distance_m)
{
    recede_plane *plane = &scene->planes[at];
    const recede_own_entry *own;
    memset(plane, 0, sizeof *plane);
    plane->name[0] = (char)('a' + at);
    plane->distance_m = distance_m;
    plane->base_m = plane->crest_m = NAN;
    if (next_random(random) < 0.3) {
        plane->base_m = scene->air.eye_m - 20;
        plane->crest_m = scene->air.eye_m + between(random, 5, 900);
    }
    if (next_random(random) < 0.7) {
        plane->own.kind = RECEDE_OWN_FOLIAGE;
        own = recede_foliage_at((size_t)(next_random(random) * (double)recede_foliage_count()));
    } else {
        plane->own.kind = RECEDE_OWN_SURFACE;
        own = recede_surface_at((size_t)(next_random(random) * (double)recede_surface_count()));
    }
    strcpy(plane->own.name, own->name);
    plane->own.reflectance = own->reflectance;
}

/* Every fifth scene has a mist below the eye, every fourth is overcast. Few
 * pigments and parts, so that plans are quick. */
static void make_scene(recede_scene *scene, int number)
{
    static const double hazes[] = {1.3, 1.0, 0.5, 0.0};
    uint32_t random = 1000u + 77u * (uint32_t)number;
    next_random(&random);
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 3;
    scene->air.visibility_km = between(&random, 2, 90);
    scene->air.angstrom = hazes[number % 4];
    scene->air.eye_m = between(&random, 1, 400);
    scene->sky.sun_height_deg = floor(between(&random, 3, 60));
    scene->sky.sun_side_deg = 180 * next_random(&random);
    if (number % 4 == 3)
        scene->sky.kind = RECEDE_SKY_OVERCAST;
    if (number % 5 == 4) {
        scene->air.mist_visibility_km = scene->air.visibility_km / 6;
        scene->air.mist_top_m = scene->air.eye_m - 8;
    }
    scene->plane_count = 2 + (size_t)(4 * next_random(&random));
    double distance_m = between(&random, 10, 80);
    for (size_t i = 0; i < scene->plane_count; i++) {
        make_plane(scene, &random, i, distance_m);
        distance_m *= between(&random, 2, 9);
    }
    assert_int_equal(recede_scene_check(scene, NULL), RECEDE_OK);
}

static recede_wish wish_for(int number, const recede_scene *scene)
{
    uint32_t random = 5u + 31u * (uint32_t)number;
    recede_wish wish = {.kind = RECEDE_WISH_STEPS};
    next_random(&random);
    wish.value = 0.2 + 0.05 * floor(14 * next_random(&random));
    wish.shadows = number % 3 == 1;
    wish.without_sky = number % 2;
    if (number % 3 == 0) {
        size_t plane = (size_t)(next_random(&random) * (double)scene->plane_count);
        wish.kind = RECEDE_WISH_VALUE;
        wish.value = 3.5 + 0.1 * floor(50 * next_random(&random));
        strcpy(wish.plane, scene->planes[plane].name);
    }
    return wish;
}

/* What the wish asks about, from steps and values: the plane's value or the
 * least step. */
static double reached(const recede_values *values, const recede_wish *wish,
                      const recede_scene *scene)
{
    double least = INFINITY;
    for (size_t i = 0; i < values->count; i++) {
        const recede_plane_values *v = &values->at[i];
        if (wish->kind == RECEDE_WISH_VALUE) {
            if (strcmp(scene->planes[v->plane].name, wish->plane) == 0)
                return v->lit;
            continue;
        }
        if (i == 0 && wish->without_sky)
            continue;
        least = fmin(least, fabs(v->value_step));
        if (wish->shadows)
            least = fmin(least, fabs(v->value_step_shadow));
    }
    return least;
}

/* The same from the whole plan's targets. */
static double reached_in_plan(const recede_scene *scene, const recede_wish *wish)
{
    recede_plan *plan;
    assert_int_equal(recede_plan_new(scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    const recede_side *sky = recede_plan_sky(plan);
    const recede_wash *lit = sky->graded ? &sky->base : &sky->crest, *shadow = lit;
    double least = INFINITY, value = NAN;
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *p = recede_plan_at(plan, i);
        if (strcmp(recede_plan_scene(plan)->planes[p->plane].name, wish->plane) == 0)
            value = p->lit.crest.target.value;
        if (i > 0 || !wish->without_sky) {
            least = fmin(least, fabs(lit->target.value - p->lit.crest.target.value));
            if (wish->shadows)
                least = fmin(least, fabs(shadow->target.value - p->shadow.crest.target.value));
        }
        lit = p->lit.graded ? &p->lit.base : &p->lit.crest;
        shadow = p->shadow.graded ? &p->shadow.base : &p->shadow.crest;
    }
    recede_plan_free(plan);
    return wish->kind == RECEDE_WISH_VALUE ? value : least;
}

/* How far the wish is missed (0: granted) with another air and light; NaN where
 * the scene cannot have them. side: from where a value has to be met, so that
 * passing it between two tries counts. */
static double missed(recede_scene *scene, const recede_wish *wish, double visibility_km,
                     double sun_deg, double side)
{
    recede_values values;
    scene->air.visibility_km = visibility_km;
    scene->sky.sun_height_deg = sun_deg;
    if (recede_plan_values(scene, NULL, &values, NULL))
        return NAN;
    double lack = wish->value - reached(&values, wish, scene);
    return wish->kind == RECEDE_WISH_VALUE ? fmax(0.0, side * lack) : fmax(0.0, lack);
}

static double side_of(const recede_scene *scene, const recede_wish *wish, double sun_deg)
{
    recede_scene *copy = malloc(sizeof *copy);
    recede_values values;
    assert_non_null(copy);
    *copy = *scene;
    copy->sky.sun_height_deg = sun_deg;
    assert_int_equal(recede_plan_values(copy, NULL, &values, NULL), RECEDE_OK);
    double side = reached(&values, wish, copy) <= wish->value ? 1.0 : -1.0;
    free(copy);
    return side;
}

/* The least miss within a change of visibility (in its logarithm), at so many
 * places each way, under one sun. */
static double least_missed(const recede_scene *scene, const recede_wish *wish, double sun_deg,
                           double most_change, int places)
{
    recede_scene *copy = malloc(sizeof *copy);
    double side = side_of(scene, wish, sun_deg), least = INFINITY;
    double low = -fmin(most_change, log(scene->air.visibility_km / 0.2));
    double high = fmin(most_change, log(250.0 / scene->air.visibility_km));
    assert_non_null(copy);
    *copy = *scene;
    for (int i = 0; i <= 2 * places; i++) {
        double change = i < places ? low * (places - i) / places : high * (i - places) / places;
        double km = fmin(250.0, scene->air.visibility_km * exp(change));
        double miss = missed(copy, wish, km, sun_deg, side);
        if (miss < least)
            least = miss;
    }
    free(copy);
    return least;
}

static void check_state(const recede_scene *scene, const recede_wish *wish,
                        const recede_wish_state *state)
{
    recede_scene *changed = malloc(sizeof *changed);
    assert_non_null(changed);
    *changed = *scene;
    changed->air.visibility_km = state->visibility_km;
    changed->sky.sun_height_deg = state->sun_height_deg;
    assert_near(reached_in_plan(changed, wish), state->reached, 1e-9);
    assert_near(reached(&state->values, wish, scene), state->reached, 0.0);
    const recede_plane_values *at = &state->values.at[state->at];
    double there = wish->kind == RECEDE_WISH_VALUE ? at->lit
                   : state->shadow                 ? fabs(at->value_step_shadow)
                                                   : fabs(at->value_step);
    assert_near(there, state->reached, 0.0);
    free(changed);
}

static double lacking(const recede_wish *wish, double value)
{
    double lack = wish->value - value;
    return wish->kind == RECEDE_WISH_VALUE ? fabs(lack) : fmax(lack, 0.0);
}

static void check_answer(const recede_scene *scene, const recede_wish *wish,
                         const recede_wish_answer *answer, int places)
{
    static const double tolerance = 0.01;
    const recede_wish_state *found = &answer->found;
    check_state(scene, wish, &answer->given);
    check_state(scene, wish, found);
    double change = fabs(log(found->visibility_km / scene->air.visibility_km)) +
                    fabs(found->sun_height_deg - scene->sky.sun_height_deg) / 10;
    assert_near(answer->change, change, 1e-9);
    double lack = lacking(wish, found->reached), sun_deg = scene->sky.sun_height_deg;
    switch (answer->outcome) {
    case RECEDE_WISH_HOLDS:
        assert_near(answer->change, 0.0, 0.0);
        assert_below(lacking(wish, answer->given.reached), tolerance);
        break;
    case RECEDE_WISH_GRANTED:
        assert_below(lack, tolerance);
        assert_true(lacking(wish, answer->given.reached) > tolerance);
        if (!wish->move_sun) /* a hair less does not do */
            assert_true(least_missed(scene, wish, sun_deg, answer->change - 1e-6, places) > 0);
        break;
    default:
        assert_true(lack > tolerance);
        if (!wish->move_sun) {
            double least = least_missed(scene, wish, sun_deg, INFINITY, places);
            assert_true(least > tolerance);
            assert_true(lack <= least + 1e-9); /* nothing tried is nearer */
            assert_below(least - lack, 0.05);  /* and something comes about as near */
        }
    }
}

static recede_wish_answer granted(const recede_scene *scene, const recede_wish *wish)
{
    recede_wish_answer answer;
    recede_error error;
    recede_code code = recede_wish_grant(scene, wish, NULL, NULL, &answer, &error);
    if (code)
        print_error("code %d at %s\n", code, error.path);
    assert_int_equal(code, RECEDE_OK);
    return answer;
}

enum { SCENES = 36 };

static void sweeps_over_the_air_agree(void **state)
{
    (void)state;
    recede_scene *scene = malloc(sizeof *scene);
    int seen[3] = {0}, values_granted = 0, steps_granted = 0;
    assert_non_null(scene);
    for (int i = 0; i < SCENES; i++) {
        make_scene(scene, i);
        recede_wish wish = wish_for(i, scene);
        recede_wish_answer answer = granted(scene, &wish);
        check_answer(scene, &wish, &answer, 120);
        seen[answer.outcome]++;
        values_granted += answer.outcome == RECEDE_WISH_GRANTED && wish.kind == RECEDE_WISH_VALUE;
        steps_granted += answer.outcome == RECEDE_WISH_GRANTED && wish.kind == RECEDE_WISH_STEPS;
    }
    printf("of %d wishes %d hold, %d are granted (%d values, %d steps), %d denied\n", SCENES,
           seen[RECEDE_WISH_HOLDS], seen[RECEDE_WISH_GRANTED], values_granted, steps_granted,
           seen[RECEDE_WISH_DENIED]);
    assert_true(values_granted >= 4 && steps_granted >= 4);
    assert_true(seen[RECEDE_WISH_HOLDS] >= 2 && seen[RECEDE_WISH_DENIED] >= 4);
    free(scene);
}

/* With the sun free too: no pair with less change does, over every height that
 * is tried. Scenes chosen so that the sun rises, sinks and stays. */
static void sweeps_over_air_and_sun_agree(void **state)
{
    (void)state;
    static const struct { int scene; recede_wish_kind kind; double more; } cases[] = {
        {0, RECEDE_WISH_STEPS, 0.15},  {6, RECEDE_WISH_STEPS, 0.15},
        {24, RECEDE_WISH_STEPS, 0.15}, {26, RECEDE_WISH_STEPS, 0.15},
        {30, RECEDE_WISH_STEPS, 0.15}, {16, RECEDE_WISH_VALUE, 0.15},
        {12, RECEDE_WISH_VALUE, -0.15}};
    enum { CASES = sizeof cases / sizeof cases[0] };
    recede_scene *scene = malloc(sizeof *scene);
    int risen = 0, sunk = 0;
    assert_non_null(scene);
    for (int i = 0; i < CASES; i++) {
        recede_values values;
        make_scene(scene, cases[i].scene);
        recede_wish wish = {.kind = cases[i].kind, .without_sky = 1, .move_sun = 1};
        strcpy(wish.plane, scene->planes[i % 2].name);
        assert_int_equal(recede_plan_values(scene, NULL, &values, NULL), RECEDE_OK);
        wish.value = reached(&values, &wish, scene) + cases[i].more;
        recede_wish_answer answer = granted(scene, &wish);
        assert_int_equal(answer.outcome, RECEDE_WISH_GRANTED);
        check_answer(scene, &wish, &answer, 0);
        double given_deg = scene->sky.sun_height_deg;
        for (int deg = 1; deg <= 90; deg++) {
            double left = answer.change - fabs(deg - given_deg) / 10 - 1e-6;
            if (left > 0)
                assert_true(least_missed(scene, &wish, deg, left, 12) > 0);
        }
        risen += answer.found.sun_height_deg > given_deg;
        sunk += answer.found.sun_height_deg < given_deg;
    }
    printf("of %d granted with the sun free it rises in %d and sinks in %d\n", CASES, risen, sunk);
    assert_true(risen >= 2 && sunk >= 1 && risen + sunk < CASES);
    free(scene);
}

static void a_denied_wish_for_the_sun_comes_nearest_of_all(void **state)
{
    (void)state;
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    make_scene(scene, 0);
    scene->plane_count = 2;
    recede_wish wish = {.kind = RECEDE_WISH_STEPS, .value = 4, .move_sun = 1};
    recede_wish_answer answer = granted(scene, &wish);
    assert_int_equal(answer.outcome, RECEDE_WISH_DENIED);
    check_answer(scene, &wish, &answer, 0);
    for (int deg = 2; deg <= 90; deg += 8)
        assert_true(least_missed(scene, &wish, deg, INFINITY, 12) >=
                    lacking(&wish, answer.found.reached) - 1e-9);
    free(scene);
}

/* A scene changed as the answer says grants the wish as it stands. */
static void asked_again_it_holds(void **state)
{
    (void)state;
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    for (int i = 0, done = 0; done < 6; i++) {
        make_scene(scene, i);
        recede_wish wish = wish_for(i, scene);
        recede_wish_answer answer = granted(scene, &wish);
        if (answer.outcome != RECEDE_WISH_GRANTED)
            continue;
        scene->air.visibility_km = answer.found.visibility_km;
        answer = granted(scene, &wish);
        assert_int_equal(answer.outcome, RECEDE_WISH_HOLDS);
        done++;
    }
    free(scene);
}

static void wrong_wishes_are_refused(void **state)
{
    (void)state;
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    make_scene(scene, 1);
    static const struct { recede_wish wish; recede_code code; const char *path; } cases[] = {
        {{.kind = RECEDE_WISH_STEPS, .value = 0.05}, RECEDE_OUT_OF_RANGE, "wish.value"},
        {{.kind = RECEDE_WISH_STEPS, .value = NAN}, RECEDE_NOT_FINITE, "wish.value"},
        {{.kind = RECEDE_WISH_VALUE, .value = 10.5, .plane = "a"}, RECEDE_OUT_OF_RANGE,
         "wish.value"},
        {{.kind = RECEDE_WISH_VALUE, .value = 5, .plane = "zz"}, RECEDE_UNKNOWN_NAME,
         "wish.plane"},
    };
    recede_wish_answer answer;
    recede_error error;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_int_equal(recede_wish_grant(scene, &cases[i].wish, NULL, NULL, &answer, &error),
                         cases[i].code);
        assert_string_equal(error.path, cases[i].path);
    }
    recede_wish wish = {.kind = RECEDE_WISH_STEPS, .value = 0.5, .move_sun = 1};
    scene->sky.kind = RECEDE_SKY_OVERCAST;
    assert_int_equal(recede_wish_grant(scene, &wish, NULL, NULL, &answer, &error),
                     RECEDE_CONFLICT);
    assert_string_equal(error.path, "wish.sun");
    wish = (recede_wish){.kind = RECEDE_WISH_STEPS, .value = 0.5, .without_sky = 1};
    scene->plane_count = 1;
    assert_int_equal(recede_wish_grant(scene, &wish, NULL, NULL, &answer, &error),
                     RECEDE_TOO_FEW);
    assert_string_equal(error.path, "planes");
    scene->air.visibility_km = 300;
    wish.without_sky = 0;
    assert_int_equal(recede_wish_grant(scene, &wish, NULL, NULL, &answer, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "air.visibility");
    free(scene);
}

static int stop_at_once(void *context, double share_done)
{
    (void)share_done;
    ++*(int *)context;
    return 1;
}

static int stop_when_the_sun_moves(void *context, double share_done)
{
    ++*(int *)context;
    return share_done > 0.0;
}

static void it_can_be_stopped_as_the_sun_moves(void **state)
{
    (void)state;
    recede_scene *scene = malloc(sizeof *scene);
    recede_wish_answer answer;
    recede_error error;
    int calls = 0;
    recede_progress progress = {stop_when_the_sun_moves, &calls};
    assert_non_null(scene);
    make_scene(scene, 0);
    recede_wish wish = {.kind = RECEDE_WISH_STEPS, .value = 4, .move_sun = 1};
    assert_int_equal(recede_wish_grant(scene, &wish, NULL, &progress, &answer, &error),
                     RECEDE_CANCELLED);
    assert_int_equal(calls, 2);
    free(scene);
}

static void it_can_be_stopped_and_may_lack_memory(void **state)
{
    (void)state;
    recede_scene *scene = malloc(sizeof *scene);
    recede_wish_answer answer;
    recede_error error;
    int calls = 0;
    recede_progress progress = {stop_at_once, &calls};
    assert_non_null(scene);
    make_scene(scene, 0);
    recede_wish wish = {.kind = RECEDE_WISH_STEPS, .value = 4};
    assert_int_equal(recede_wish_grant(scene, &wish, NULL, &progress, &answer, &error),
                     RECEDE_CANCELLED);
    assert_int_equal(calls, 1);
    size_t failures = 0;
    for (size_t nth = 1;; nth++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, nth);
        recede_code code = recede_wish_grant(scene, &wish, &allocator, NULL, &answer, &error);
        assert_int_equal(memory.live, 0);
        if (!code)
            break;
        assert_int_equal(code, RECEDE_NO_MEMORY);
        failures++;
    }
    assert_true(failures >= 2);
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sweeps_over_the_air_agree),
        cmocka_unit_test(sweeps_over_air_and_sun_agree),
        cmocka_unit_test(a_denied_wish_for_the_sun_comes_nearest_of_all),
        cmocka_unit_test(asked_again_it_holds),
        cmocka_unit_test(wrong_wishes_are_refused),
        cmocka_unit_test(it_can_be_stopped_as_the_sun_moves),
        cmocka_unit_test(it_can_be_stopped_and_may_lack_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
