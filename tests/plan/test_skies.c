/* One scene in several lights, and what they change. Recipes and scenes here are
 * invented. */
#include <stdlib.h>
#include <string.h>

#include "plan/same_plan.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

static recede_wash painted(recede_mix mix, double value, recede_lab lab)
{
    recede_wash wash;
    memset(&wash, 0, sizeof wash);
    wash.recipe.mix = mix;
    wash.recipe.colour.value = value;
    wash.recipe.colour.lab = lab;
    return wash;
}

/* ---- two recipes */

static void paints_come_and_go(void **state)
{
    (void)state;
    recede_wash from = painted((recede_mix){3, {0, 2, 5}, {1, 2, 1}, 4.0}, 5.0, (recede_lab){50, 0, 0});
    recede_wash to = painted((recede_mix){3, {1, 2, 7}, {1, 1, 1}, 8.0}, 6.5, (recede_lab){65, 0, 0});
    recede_change change = recede_change_of_wash(&from, &to);
    assert_false(change.same);
    assert_int_equal(change.coming_count, 2);
    assert_int_equal(change.coming[0], 1);
    assert_int_equal(change.coming[1], 7);
    assert_int_equal(change.going_count, 2);
    assert_int_equal(change.going[0], 0);
    assert_int_equal(change.going[1], 5);
    assert_int_equal(change.more, -1); /* of paint 2 there was half, now a third */
    assert_near(change.water_ratio, 2, 1e-12);
    assert_near(change.value_step, 1.5, 1e-12);
    assert_near(change.delta_e, recede_delta_e((recede_lab){50, 0, 0}, (recede_lab){65, 0, 0}), 0);
    recede_change back = recede_change_of_wash(&to, &from);
    assert_int_equal(back.coming_count, 2);
    assert_int_equal(back.coming[1], 5);
    assert_near(back.water_ratio, 0.5, 1e-12);
    assert_near(back.value_step, -1.5, 1e-12);
}

static void the_same_recipe_changes_nothing(void **state)
{
    (void)state;
    recede_wash one = painted((recede_mix){2, {3, 4}, {2, 5}, 10.0}, 5.0, (recede_lab){50, 9, 9});
    recede_change change = recede_change_of_wash(&one, &one);
    assert_true(change.same);
    assert_int_equal(change.coming_count + change.going_count, 0);
    assert_int_equal(change.more, -1);
    assert_near(change.water_ratio, 1, 0);
    assert_near(change.value_step, 0, 0);
    assert_near(change.delta_e, 0, 0);
}

static void parts_and_water_count_too(void **state)
{
    (void)state;
    recede_wash from = painted((recede_mix){2, {3, 4}, {2, 2}, 10.0}, 5.0, (recede_lab){50, 0, 0});
    recede_wash parts = from, water = from;
    parts.recipe.mix.parts[1] = 6;
    water.recipe.mix.water = 11.2;
    recede_change change = recede_change_of_wash(&from, &parts);
    assert_false(change.same);
    assert_int_equal(change.more, 4);
    assert_near(change.more_by, 0.25, 1e-12); /* from a half to three quarters */
    assert_false(recede_change_of_wash(&from, &water).same);
    assert_near(recede_change_of_wash(&from, &water).water_ratio, 1.12, 1e-12);
}

/* The same mix over the dried lit wash is another wash. */
static void the_ground_counts(void **state)
{
    (void)state;
    recede_wash on_paper = painted((recede_mix){1, {3}, {1}, 10.0}, 5.0, (recede_lab){50, 0, 0});
    recede_wash over = on_paper;
    over.ground = RECEDE_ON_LIT;
    assert_true(recede_change_of_wash(&on_paper, &over).other_ground);
    assert_false(recede_change_of_wash(&on_paper, &over).same);
    assert_true(recede_change_of_wash(&over, &over).same);
}

/* Bare paper has no water; masstone has none either. */
static void water_is_only_compared_where_both_have_some(void **state)
{
    (void)state;
    recede_wash bare = painted((recede_mix){0}, 9.0, (recede_lab){93, 0, 0});
    recede_wash thin = painted((recede_mix){1, {3}, {1}, 100.0}, 8.5, (recede_lab){88, 0, 0});
    recede_wash thick = painted((recede_mix){1, {3}, {1}, 0.0}, 3.0, (recede_lab){30, 0, 0});
    assert_near(recede_change_of_wash(&bare, &thin).water_ratio, 0, 0);
    assert_near(recede_change_of_wash(&thin, &bare).water_ratio, 0, 0);
    assert_near(recede_change_of_wash(&thin, &thick).water_ratio, 0, 0);
    assert_int_equal(recede_change_of_wash(&bare, &thin).coming_count, 1);
    assert_int_equal(recede_change_of_wash(&thin, &bare).going_count, 1);
    bare.recipe.mix.water = 5; /* means nothing */
    assert_true(recede_change_of_wash(&bare, &bare).same);
}

static void graded_sides_are_told_at_both_ends(void **state)
{
    (void)state;
    recede_side flat, graded;
    memset(&flat, 0, sizeof flat);
    flat.crest = painted((recede_mix){1, {1}, {1}, 5.0}, 5.0, (recede_lab){50, 0, 0});
    flat.base = painted((recede_mix){1, {9}, {1}, 5.0}, 1.0, (recede_lab){10, 0, 0});
    graded = flat;
    graded.graded = 1;
    graded.base = painted((recede_mix){1, {2}, {1}, 5.0}, 7.0, (recede_lab){70, 0, 0});
    recede_side_change change = recede_change_of_side(&flat, &graded);
    assert_true(change.graded);
    assert_true(change.crest.same);
    assert_near(change.base.value_step, 2.0, 1e-12); /* against the flat wash's one colour */
    assert_int_equal(change.base.going[0], 1);
    assert_false(recede_change_of_side(&flat, &flat).graded);
}

/* ---- whole scenes */

static recede_scene *new_scene(void)
{
    static const struct {
        const char *name, *foliage;
        double distance_m;
    } planes[] = {{"far", "heather", 9000}, {"wood", "summer oak", 1600}, {"bank", "meadow grass", 25}};
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 4;
    for (size_t i = 0; i < 3; i++) {
        recede_plane *plane = &scene->planes[scene->plane_count++];
        memset(plane, 0, sizeof *plane);
        strcpy(plane->name, planes[i].name);
        plane->distance_m = planes[i].distance_m;
        plane->base_m = plane->crest_m = NAN;
        plane->own.kind = RECEDE_OWN_FOLIAGE;
        plane->own.reflectance = recede_foliage_named(planes[i].foliage)->reflectance;
    }
    return scene;
}

static void the_same_light_changes_nothing(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_sky_light same = {.air = scene->air, .sky = scene->sky};
    recede_skies *skies;
    assert_int_equal(recede_skies_new(scene, &same, 1, NULL, NULL, &skies, NULL, NULL), RECEDE_OK);
    for (size_t i = 0; i < recede_plan_count(skies->plan[0]); i++) {
        const recede_planned *from = recede_plan_at(skies->plan[0], i);
        const recede_planned *to = recede_plan_at(skies->plan[1], i);
        assert_true(recede_change_of_side(&from->lit, &to->lit).crest.same);
        assert_true(recede_change_of_side(&from->shadow, &to->shadow).crest.same);
    }
    recede_side_change sky = recede_change_of_side(recede_plan_sky(skies->plan[0]),
                                                recede_plan_sky(skies->plan[1]));
    assert_true(sky.crest.same && sky.base.same);
    recede_skies_free(skies);
    free(scene);
}

/* Each plan is the one that the scene has in that light. */
static void plans_are_those_of_the_scene_in_each_light(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(), *there = new_scene();
    recede_sky_light lights[RECEDE_USUAL_LIGHTS];
    recede_skies *skies;
    recede_usual_lights(scene, lights);
    assert_int_equal(recede_skies_new(scene, lights, RECEDE_USUAL_LIGHTS, NULL, NULL, &skies, NULL,
                                      NULL),
                     RECEDE_OK);
    for (size_t l = 0; l < RECEDE_USUAL_LIGHTS; l++) {
        recede_plan *plan;
        there->air = lights[l].air;
        there->sky = lights[l].sky;
        assert_int_equal(recede_plan_new(there, NULL, NULL, &plan, NULL), RECEDE_OK);
        for (size_t i = 0; i < 3; i++)
            assert_same_planned(recede_plan_at(plan, i), recede_plan_at(skies->plan[1 + l], i));
        recede_plan_free(plan);
    }
    recede_skies_free(skies);
    free(scene);
    free(there);
}

/* Common practice, no source: in haze the far wood is lighter and its two sides
 * draw together; under an even sky too they differ less than in sun. */
static void haze_lightens_the_wood(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_sky_light lights[RECEDE_USUAL_LIGHTS];
    recede_skies *skies;
    recede_usual_lights(scene, lights);
    assert_string_equal(lights[0].name, "morning haze");
    assert_string_equal(lights[1].name, "clear noon");
    assert_int_equal(recede_skies_new(scene, lights, 3, NULL, NULL, &skies, NULL, NULL), RECEDE_OK);
    const recede_planned *haze = recede_plan_at(skies->plan[1], 1);
    const recede_planned *noon = recede_plan_at(skies->plan[2], 1);
    const recede_planned *grey = recede_plan_at(skies->plan[3], 1);
    assert_true(recede_change_of_side(&noon->lit, &haze->lit).crest.value_step > 0.5);
    double in_noon = noon->lit.crest.target.value - noon->shadow.crest.target.value;
    assert_true(haze->lit.crest.target.value - haze->shadow.crest.target.value < 0.5 * in_noon);
    assert_true(grey->lit.crest.target.value - grey->shadow.crest.target.value < in_noon);
    recede_skies_free(skies);
    free(scene);
}

static void wrong_lights_are_refused(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_sky_light lights[RECEDE_MOST_LIGHTS + 1];
    recede_skies *skies;
    recede_error error;
    size_t at = 99;
    recede_usual_lights(scene, lights);
    assert_int_equal(recede_skies_new(scene, lights, 0, NULL, NULL, &skies, NULL, &error),
                     RECEDE_TOO_FEW);
    assert_string_equal(error.path, "lights");
    assert_int_equal(recede_skies_new(scene, lights, RECEDE_MOST_LIGHTS + 1, NULL, NULL, &skies,
                                      NULL, &error),
                     RECEDE_TOO_MANY);
    lights[1].sky.sun_height_deg = 91;
    assert_int_equal(recede_skies_new(scene, lights, 2, NULL, NULL, &skies, &at, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_int_equal(at, 2);
    assert_null(skies);
    free(scene);
}

typedef struct {
    double last;
    int calls, falls;
} watch;

static int note(void *context, double share_done)
{
    watch *w = context;
    w->calls++;
    w->falls += share_done < w->last || share_done > 1.0;
    w->last = share_done;
    return 0;
}

/* One run from 0 to 1 over all plans. */
static void progress_never_falls_back(void **state)
{
    (void)state;
    watch w = {0};
    const recede_progress progress = {note, &w};
    recede_scene *scene = new_scene();
    recede_sky_light lights[RECEDE_USUAL_LIGHTS];
    recede_skies *skies;
    recede_usual_lights(scene, lights);
    assert_int_equal(recede_skies_new(scene, lights, 3, NULL, &progress, &skies, NULL, NULL),
                     RECEDE_OK);
    assert_true(w.calls >= 4);
    assert_int_equal(w.falls, 0);
    assert_true(w.last > 0.75);
    recede_skies_free(skies);
    free(scene);
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_sky_light lights[RECEDE_USUAL_LIGHTS];
    scene->rules.most_pigments = 1;
    recede_usual_lights(scene, lights);
    for (size_t fail_at = 1;; fail_at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, fail_at);
        recede_skies *skies;
        recede_code code = recede_skies_new(scene, lights, 2, &allocator, NULL, &skies, NULL, NULL);
        if (!code)
            recede_skies_free(skies);
        assert_int_equal(memory.live, 0);
        if (!code) {
            assert_true(fail_at > 3);
            break;
        }
        assert_int_equal(code, RECEDE_NO_MEMORY);
    }
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(paints_come_and_go),
        cmocka_unit_test(the_same_recipe_changes_nothing),
        cmocka_unit_test(parts_and_water_count_too),
        cmocka_unit_test(the_ground_counts),
        cmocka_unit_test(water_is_only_compared_where_both_have_some),
        cmocka_unit_test(graded_sides_are_told_at_both_ends),
        cmocka_unit_test(the_same_light_changes_nothing),
        cmocka_unit_test(plans_are_those_of_the_scene_in_each_light),
        cmocka_unit_test(haze_lightens_the_wood),
        cmocka_unit_test(wrong_lights_are_refused),
        cmocka_unit_test(progress_never_falls_back),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
