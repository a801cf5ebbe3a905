/* The ladder: one colour at many distances. Scenes here are invented. */
#include <stdlib.h>
#include <string.h>

#include "plan/ladder.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

static const double pi = 3.14159265358979323846;
static const double usual_m[] = {10, 30, 100, 300, 1000, 2000, 5000, 10000, 20000};

static recede_own foliage(const char *name)
{
    recede_own own = {.kind = RECEDE_OWN_FOLIAGE};
    strcpy(own.name, name);
    own.reflectance = recede_foliage_named(name)->reflectance;
    return own;
}

static recede_own surface(const char *name)
{
    recede_own own = {.kind = RECEDE_OWN_SURFACE};
    strcpy(own.name, name);
    own.reflectance = recede_surface_named(name)->reflectance;
    return own;
}

static recede_ladder_wish usual_wish(size_t airs)
{
    recede_ladder_wish wish = {.own = foliage("summer oak"), .white = surface("whitewash"),
                               .air_count = airs, .visibility_km = {60, 8}};
    wish.rung_count = sizeof usual_m / sizeof usual_m[0];
    memcpy(wish.distance_m, usual_m, sizeof usual_m);
    return wish;
}

/* Few pigments and parts: a ladder in a blink. */
static recede_scene *new_scene(void)
{
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 4;
    scene->sky.sun_height_deg = 30;
    scene->sky.sun_side_deg = 60;
    return scene;
}

static recede_ladder *ladder_of(const recede_ladder_wish *wish)
{
    recede_ladder *ladder;
    recede_error error;
    recede_scene *scene = new_scene();
    recede_code code = recede_ladder_new(scene, wish, NULL, NULL, &ladder, &error);
    if (code)
        print_error("code %d at %s\n", code, error.path);
    assert_int_equal(code, RECEDE_OK);
    free(scene);
    return ladder;
}

static const recede_wash *wash_at(const recede_ladder *ladder, size_t air, size_t rung, int row)
{
    return &ladder->air[air].rung[rung].row[row];
}

static const recede_colour *target_at(const recede_ladder *ladder, size_t air, size_t rung, int row)
{
    return &wash_at(ladder, air, rung, row)->target;
}

/* ---- the numbers */

/* What the header promises: with one air the ladder is the plan of its scene. */
static void numbers_are_those_of_the_plan(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(1);
    recede_ladder *ladder = ladder_of(&wish);
    recede_plan *plan;
    assert_int_equal(recede_plan_new(ladder->scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    assert_int_equal(recede_plan_count(plan), 2 * wish.rung_count);
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *planned = recede_plan_at(plan, i);
        const recede_plane *plane = &recede_plan_scene(plan)->planes[planned->plane];
        size_t rung = planned->plane / 2;
        int white = strncmp(plane->name, "white", 5) == 0;
        const recede_wash *lit = wash_at(ladder, 0, rung, white ? RECEDE_ROW_WHITE : RECEDE_ROW_LIT);
        assert_near(plane->distance_m, usual_m[rung], 0);
        assert_memory_equal(&lit->target, &planned->lit.crest.target, sizeof lit->target);
        assert_memory_equal(&lit->recipe.mix, &planned->lit.crest.recipe.mix, sizeof lit->recipe.mix);
        assert_near(lit->own_share, planned->lit.crest.own_share, 0);
        assert_near(lit->value_as_seen, planned->lit.crest.value_as_seen, 0);
        if (!white)
            assert_memory_equal(&wash_at(ladder, 0, rung, RECEDE_ROW_SHADOW)->target,
                                &planned->shadow.crest.target, sizeof lit->target);
    }
    recede_plan_free(plan);
    recede_ladder_free(ladder);
}

/* A palm's breadth away in the clearest air: radiance R E / pi in every band, no
 * air, and a colour of that radiance's chromaticity. */
static void without_air_it_is_the_colour_itself(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(1);
    recede_atmosphere air;
    recede_light light;
    wish.visibility_km[0] = 250;
    wish.distance_m[0] = 0.1;
    recede_ladder *ladder = ladder_of(&wish);
    assert_int_equal(recede_atmosphere_of(&ladder->scene->air, &air, NULL), RECEDE_OK);
    assert_int_equal(recede_light_of(&air, &ladder->scene->sky, &light, NULL), RECEDE_OK);
    const recede_spectrum *irradiance[] = {&light.lit, &light.shadow, &light.lit};
    for (int row = 0; row < RECEDE_LADDER_ROWS; row++) {
        const recede_own *own = row == RECEDE_ROW_WHITE ? &wish.white : &wish.own;
        const recede_rung *rung = &ladder->air[0].rung[0];
        recede_spectrum radiance;
        for (int i = 0; i < RECEDE_BANDS; i++) {
            radiance.at[i] = own->reflectance.at[i] * irradiance[row]->at[i] / pi;
            assert_near(rung->own[row].at[i] / radiance.at[i], 1, 1e-5);
            assert_below(rung->air[row].at[i], 1e-3 * radiance.at[i]);
        }
        recede_xyz white = recede_xyz_of_power(&light.sphere), xyz = recede_xyz_of_power(&radiance);
        recede_xyz seen = recede_cat16((recede_xyz){xyz.x / xyz.y, 1, xyz.z / xyz.y},
                                       (recede_xyz){white.x / white.y, 1, white.z / white.y},
                                       recede_white(), ladder->scene->adaptation);
        const recede_xyz *target = &rung->row[row].target.xyz;
        assert_near(target->x / target->y, seen.x / seen.y, 1e-4);
        assert_near(target->z / target->y, seen.z / seen.y, 1e-3);
        assert_near(rung->row[row].own_share, 1, 1e-4);
    }
    recede_ladder_free(ladder);
}

/* Koschmieder 1924 on the level: own light falls by exp(-beta d), and what the
 * air adds is the horizon times the rest. */
static void own_light_and_air_follow_koschmieder(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(2);
    recede_ladder *ladder = ladder_of(&wish);
    for (size_t a = 0; a < 2; a++) {
        recede_air described = ladder->scene->air;
        recede_atmosphere air;
        recede_light light;
        described.visibility_km = wish.visibility_km[a];
        assert_int_equal(recede_atmosphere_of(&described, &air, NULL), RECEDE_OK);
        assert_int_equal(recede_light_of(&air, &ladder->scene->sky, &light, NULL), RECEDE_OK);
        recede_spectrum horizon = recede_horizon_radiance(&air, &light);
        for (size_t r = 0; r < wish.rung_count; r++) {
            const recede_rung *rung = &ladder->air[a].rung[r];
            for (int i = 0; i < RECEDE_BANDS; i++) {
                double beta = air.rayleigh_per_km.at[i] + air.haze_per_km.at[i];
                double t = exp(-beta * rung->distance_m / 1000);
                double near = wish.own.reflectance.at[i] * light.lit.at[i] / pi;
                assert_near(rung->own[RECEDE_ROW_LIT].at[i], near * t, 1e-9 * near);
                assert_near(rung->air[RECEDE_ROW_LIT].at[i], horizon.at[i] * (1 - t),
                            1e-9 * horizon.at[i]);
                assert_near(rung->air[RECEDE_ROW_SHADOW].at[i], rung->air[RECEDE_ROW_LIT].at[i],
                            1e-9 * horizon.at[i]);
            }
        }
    }
    recede_ladder_free(ladder);
}

/* The scale of values is one for both airs: luminance in the adapted eye to
 * value as seen, worked out here from the spectra. */
static void both_airs_share_one_scale(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(2);
    recede_ladder *ladder = ladder_of(&wish);
    double scale[2];
    for (size_t a = 0; a < 2; a++) {
        recede_air described = ladder->scene->air;
        recede_atmosphere air;
        recede_light light;
        described.visibility_km = wish.visibility_km[a];
        assert_int_equal(recede_atmosphere_of(&described, &air, NULL), RECEDE_OK);
        assert_int_equal(recede_light_of(&air, &ladder->scene->sky, &light, NULL), RECEDE_OK);
        recede_xyz white = recede_xyz_of_power(&light.sphere);
        const recede_rung *rung = &ladder->air[a].rung[4];
        recede_spectrum seen;
        for (int i = 0; i < RECEDE_BANDS; i++)
            seen.at[i] = rung->own[0].at[i] + rung->air[0].at[i];
        recede_xyz xyz = recede_xyz_of_power(&seen);
        recede_xyz adapted = recede_cat16(
            (recede_xyz){pi * xyz.x / white.y, pi * xyz.y / white.y, pi * xyz.z / white.y},
            (recede_xyz){white.x / white.y, 1, white.z / white.y}, recede_white(),
            ladder->scene->adaptation);
        scale[a] = recede_y_of_value(rung->row[0].value_as_seen) / adapted.y;
    }
    assert_near(scale[0], scale[1], 1e-6 * scale[0]);
    recede_ladder_free(ladder);
}

/* Without a white to hold, the brighter of the two horizons takes the sky's value
 * and nothing goes beyond it. */
static void the_brighter_horizon_sets_the_scale(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(2);
    recede_scene *scene = new_scene();
    recede_ladder *ladder;
    scene->darks_fitted = 0;
    scene->sky.sun_side_deg = 140; /* where the two horizons differ */
    wish.white = surface("slate");
    assert_int_equal(recede_ladder_new(scene, &wish, NULL, NULL, &ladder, NULL), RECEDE_OK);
    double one = ladder->air[0].horizon.value, other = ladder->air[1].horizon.value;
    assert_near(fmax(one, other), ladder->scene->sky_value, 1e-6);
    assert_true(fabs(one - other) > 0.1);
    recede_ladder_free(ladder);
    free(scene);
}

/* ---- what happens along it */

static void own_share_falls_with_distance(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(2);
    recede_ladder *ladder = ladder_of(&wish);
    for (size_t a = 0; a < 2; a++)
        for (int row = 0; row < RECEDE_LADDER_ROWS; row++)
            for (size_t r = 1; r < wish.rung_count; r++)
                assert_true(wash_at(ladder, a, r, row)->own_share
                            < wash_at(ladder, a, r - 1, row)->own_share);
    /* and sooner in the haze */
    for (size_t r = 1; r < wish.rung_count; r++)
        assert_true(wash_at(ladder, 1, r, 0)->own_share < wash_at(ladder, 0, r, 0)->own_share);
    recede_ladder_free(ladder);
}

/* Common practice, no source: with distance a lit green grows lighter, then
 * greyer, then bluer. */
static void a_green_grows_lighter_then_greyer_then_bluer(void **state)
{
    static const char *const greens[] = {"summer oak", "meadow grass", "willow", "spring beech"};
    (void)state;
    for (size_t g = 0; g < sizeof greens / sizeof greens[0]; g++) {
        recede_ladder_wish wish = usual_wish(2);
        wish.own = foliage(greens[g]);
        recede_ladder *ladder = ladder_of(&wish);
        for (size_t a = 0; a < 2; a++) {
            int lighter = recede_ladder_reaches(ladder, a, RECEDE_ROW_LIT, RECEDE_STAGE_MOVED);
            int greyer = recede_ladder_reaches(ladder, a, RECEDE_ROW_LIT, RECEDE_STAGE_GREYER);
            int bluer = recede_ladder_reaches(ladder, a, RECEDE_ROW_LIT, RECEDE_STAGE_TURNED);
            assert_true(lighter > 0 && lighter < greyer && greyer < bluer);
            const recede_colour *near = target_at(ladder, a, 0, RECEDE_ROW_LIT);
            const recede_colour *at_greyer = target_at(ladder, a, (size_t)greyer, RECEDE_ROW_LIT);
            const recede_colour *at_bluer = target_at(ladder, a, (size_t)bluer, RECEDE_ROW_LIT);
            assert_true(near->lch.h_deg > 90 && near->lch.h_deg < 180);
            assert_true(at_greyer->lch.c < 0.7 * near->lch.c && at_greyer->lab.b > 0);
            assert_true(at_bluer->lab.b < 0);
            for (size_t r = 1; r < wish.rung_count; r++)
                assert_true(target_at(ladder, a, r, RECEDE_ROW_LIT)->value
                            > target_at(ladder, a, r - 1, RECEDE_ROW_LIT)->value);
        }
        recede_ladder_free(ladder);
    }
}

/* Common practice, no source. */
static void the_shadow_side_goes_first(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(2);
    recede_ladder *ladder = ladder_of(&wish);
    for (size_t a = 0; a < 2; a++) {
        for (int stage = RECEDE_STAGE_MOVED; stage <= RECEDE_STAGE_TURNED; stage++)
            assert_true(recede_ladder_reaches(ladder, a, RECEDE_ROW_SHADOW, (recede_stage)stage)
                        <= recede_ladder_reaches(ladder, a, RECEDE_ROW_LIT, (recede_stage)stage));
        assert_true(recede_ladder_reaches(ladder, a, RECEDE_ROW_SHADOW, RECEDE_STAGE_TURNED)
                    < recede_ladder_reaches(ladder, a, RECEDE_ROW_LIT, RECEDE_STAGE_TURNED));
        for (size_t r = 1; r < wish.rung_count; r++)
            assert_true(wash_at(ladder, a, r, RECEDE_ROW_SHADOW)->own_share
                        < wash_at(ladder, a, r, RECEDE_ROW_LIT)->own_share);
    }
    recede_ladder_free(ladder);
}

/* Common practice, no source: a sunlit white grows warmer, as far as it is
 * seen. */
static void a_sunlit_white_grows_warmer(void **state)
{
    static const char *const whites[] = {"whitewash", "snow"};
    (void)state;
    for (size_t w = 0; w < 2; w++) {
        recede_ladder_wish wish = usual_wish(1);
        wish.white = surface(whites[w]);
        recede_ladder *ladder = ladder_of(&wish);
        for (size_t r = 1; r < wish.rung_count; r++) {
            const recede_colour *near = target_at(ladder, 0, r - 1, RECEDE_ROW_WHITE);
            const recede_colour *far = target_at(ladder, 0, r, RECEDE_ROW_WHITE);
            assert_true(far->lab.a > near->lab.a);
            assert_true(far->lch.h_deg < near->lch.h_deg && far->lch.h_deg > 45);
            assert_true(far->value < near->value);
        }
        recede_ladder_free(ladder);
    }
}

/* The stages by their own definition, on rungs made up for it. */
static void stages_are_what_they_say(void **state)
{
    static const struct {
        double value, a, b, own_share;
        recede_stage stage;
    } made[] = {
        {4.00, -20, 20, 1.00, RECEDE_STAGE_OWN},    {4.09, -19, 19, 0.99, RECEDE_STAGE_OWN},
        {4.11, -18, 18, 0.90, RECEDE_STAGE_MOVED},  {3.89, -18, 18, 0.90, RECEDE_STAGE_MOVED},
        {4.50, -13, 13, 0.80, RECEDE_STAGE_GREYER}, {4.00, -13, 13, 0.80, RECEDE_STAGE_GREYER},
        {5.00, -6, -6, 0.50, RECEDE_STAGE_TURNED},  {7.00, -1, -10, 0.019, RECEDE_STAGE_GONE},
    };
    recede_ladder ladder;
    (void)state;
    memset(&ladder, 0, sizeof ladder);
    ladder.wish.rung_count = sizeof made / sizeof made[0];
    ladder.air[0].horizon.lch = (recede_lch){70, 12, 270};
    for (size_t i = 0; i < ladder.wish.rung_count; i++) {
        recede_wash *wash = &ladder.air[0].rung[i].row[RECEDE_ROW_LIT];
        wash->own_share = made[i].own_share;
        wash->target.value = made[i].value;
        wash->target.lch = recede_lch_of_lab((recede_lab){50, made[i].a, made[i].b});
    }
    for (size_t i = 0; i < ladder.wish.rung_count; i++)
        assert_int_equal(recede_ladder_stage(&ladder, 0, i, RECEDE_ROW_LIT), made[i].stage);
    assert_int_equal(recede_ladder_reaches(&ladder, 0, RECEDE_ROW_LIT, RECEDE_STAGE_GREYER), 4);
    ladder.wish.rung_count = 4;
    assert_int_equal(recede_ladder_reaches(&ladder, 0, RECEDE_ROW_LIT, RECEDE_STAGE_GREYER), -1);
}

/* Hues are angles: 350 and 20 degrees are near each other, so nothing turns. */
static void hues_near_each_other_do_not_turn(void **state)
{
    recede_ladder ladder;
    (void)state;
    memset(&ladder, 0, sizeof ladder);
    ladder.wish.rung_count = 2;
    ladder.air[0].horizon.lch = (recede_lch){70, 12, 20};
    for (size_t i = 0; i < 2; i++) {
        recede_wash *wash = &ladder.air[0].rung[i].row[RECEDE_ROW_LIT];
        wash->own_share = i ? 0.3 : 1;
        wash->target.lch = (recede_lch){50, 20, i ? 15 : 350};
    }
    assert_int_equal(recede_ladder_stage(&ladder, 0, 1, RECEDE_ROW_LIT), RECEDE_STAGE_OWN);
    ladder.air[0].horizon.lch.h_deg = 80;
    ladder.air[0].rung[1].row[RECEDE_ROW_LIT].target.lch.h_deg = 70;
    assert_int_equal(recede_ladder_stage(&ladder, 0, 1, RECEDE_ROW_LIT), RECEDE_STAGE_TURNED);
    ladder.air[0].horizon.lch.c = 1; /* grey air has no hue to turn to */
    assert_int_equal(recede_ladder_stage(&ladder, 0, 1, RECEDE_ROW_LIT), RECEDE_STAGE_OWN);
}

static void the_telling_rungs_are_near_middle_and_far(void **state)
{
    static const struct {
        size_t rungs, count, at[3];
    } cases[] = {{2, 2, {0, 1, 0}}, {3, 3, {0, 1, 2}}, {9, 3, {0, 4, 7}}, {12, 3, {0, 6, 10}}};
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_ladder ladder;
        size_t rungs[3];
        memset(&ladder, 0, sizeof ladder);
        ladder.wish.rung_count = cases[i].rungs;
        assert_int_equal(recede_ladder_telling_rungs(&ladder, rungs), cases[i].count);
        for (size_t k = 0; k < cases[i].count; k++)
            assert_int_equal(rungs[k], cases[i].at[k]);
    }
}

/* ---- what it refuses */

static recede_error refused(const recede_ladder_wish *wish)
{
    recede_scene *scene = new_scene();
    recede_ladder *ladder = (recede_ladder *)1;
    recede_error error;
    recede_code code = recede_ladder_new(scene, wish, NULL, NULL, &ladder, &error);
    assert_int_not_equal(code, RECEDE_OK);
    assert_int_equal(code, error.code);
    assert_null(ladder);
    free(scene);
    return error;
}

static void wrong_wishes_are_refused(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(2);
    wish.rung_count = 1;
    assert_int_equal(refused(&wish).code, RECEDE_TOO_FEW);
    wish.rung_count = RECEDE_MOST_RUNGS + 1;
    assert_string_equal(refused(&wish).path, "rungs");
    assert_int_equal(refused(&wish).code, RECEDE_TOO_MANY);
    wish = usual_wish(3);
    assert_string_equal(refused(&wish).path, "airs");
    wish = usual_wish(2);
    wish.distance_m[0] = wish.distance_m[5];
    assert_int_equal(refused(&wish).code, RECEDE_DUPLICATE);
    wish = usual_wish(2);
    wish.visibility_km[1] = 251;
    assert_string_equal(refused(&wish).path, "air.visibility");
    wish = usual_wish(2);
    wish.distance_m[3] = NAN;
    assert_int_equal(refused(&wish).code, RECEDE_NOT_FINITE);
    wish = usual_wish(2);
    wish.distance_m[0] = -1;
    assert_int_equal(refused(&wish).code, RECEDE_OUT_OF_RANGE);
}

static void the_order_of_distances_does_not_matter(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(1), turned = wish;
    for (size_t i = 0; i < wish.rung_count; i++)
        turned.distance_m[i] = wish.distance_m[wish.rung_count - 1 - i];
    recede_ladder *one = ladder_of(&wish), *other = ladder_of(&turned);
    assert_memory_equal(&one->air, &other->air, sizeof one->air[0]);
    recede_ladder_free(one);
    recede_ladder_free(other);
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_ladder_wish wish = usual_wish(2);
    recede_scene *scene = new_scene();
    scene->rules.most_pigments = 1;
    for (size_t fail_at = 1;; fail_at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, fail_at);
        recede_ladder *ladder;
        recede_error error;
        recede_code code = recede_ladder_new(scene, &wish, &allocator, NULL, &ladder, &error);
        if (!code)
            recede_ladder_free(ladder);
        assert_int_equal(memory.live, 0);
        if (!code) {
            assert_true(fail_at > 3);
            break;
        }
        assert_int_equal(code, RECEDE_NO_MEMORY);
    }
    free(scene);
}

static int stop_at_once(void *context, double share_done)
{
    (void)context;
    (void)share_done;
    return 1;
}

static void it_can_be_cancelled(void **state)
{
    (void)state;
    const recede_progress progress = {stop_at_once, NULL};
    recede_ladder_wish wish = usual_wish(2);
    recede_scene *scene = new_scene();
    recede_ladder *ladder;
    assert_int_equal(recede_ladder_new(scene, &wish, NULL, &progress, &ladder, NULL),
                     RECEDE_CANCELLED);
    assert_null(ladder);
    recede_ladder_free(ladder);
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_those_of_the_plan),
        cmocka_unit_test(without_air_it_is_the_colour_itself),
        cmocka_unit_test(own_light_and_air_follow_koschmieder),
        cmocka_unit_test(both_airs_share_one_scale),
        cmocka_unit_test(the_brighter_horizon_sets_the_scale),
        cmocka_unit_test(own_share_falls_with_distance),
        cmocka_unit_test(a_green_grows_lighter_then_greyer_then_bluer),
        cmocka_unit_test(the_shadow_side_goes_first),
        cmocka_unit_test(a_sunlit_white_grows_warmer),
        cmocka_unit_test(stages_are_what_they_say),
        cmocka_unit_test(hues_near_each_other_do_not_turn),
        cmocka_unit_test(the_telling_rungs_are_near_middle_and_far),
        cmocka_unit_test(wrong_wishes_are_refused),
        cmocka_unit_test(the_order_of_distances_does_not_matter),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(it_can_be_cancelled),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
