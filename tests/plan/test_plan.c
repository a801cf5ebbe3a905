/* The plan as a whole, and its steps one by one. Scenes here are invented. Seen to fail with
 * the name of a surface not looked up: tools/mutations.txt. */
#include <stdlib.h>
#include <string.h>

#include "plan/plan.h"
#include "plan/same_plan.h"
#include "plan/tone.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

static void add_plane(recede_scene *scene, const char *name, double distance_m,
                      const recede_own_entry *own)
{
    recede_plane *plane = &scene->planes[scene->plane_count++];
    memset(plane, 0, sizeof *plane);
    strcpy(plane->name, name);
    plane->distance_m = distance_m;
    plane->base_m = plane->crest_m = NAN;
    plane->own.kind = RECEDE_OWN_FOLIAGE;
    strcpy(plane->own.name, own->name);
    plane->own.reflectance = own->reflectance;
}

/* Few pigments and parts: a plan in a blink. */
static recede_scene *new_scene(void)
{
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 4;
    return scene;
}

static recede_scene *three_planes(void)
{
    recede_scene *scene = new_scene();
    add_plane(scene, "far", 9000.0, recede_foliage_named("heather"));
    add_plane(scene, "near", 30.0, recede_foliage_named("meadow grass"));
    add_plane(scene, "middle", 900.0, recede_foliage_named("summer oak"));
    return scene;
}

static recede_plan *planned(const recede_scene *scene)
{
    recede_plan *plan;
    recede_error error;
    recede_code code = recede_plan_new(scene, NULL, NULL, &plan, &error);
    if (code)
        print_error("code %d at %s, found '%s' %g\n", code, error.path, error.found, error.number);
    assert_int_equal(code, RECEDE_OK);
    return plan;
}

static void planes_come_far_to_near(void **state)
{
    (void)state;
    recede_scene *scene = three_planes();
    recede_plan *plan = planned(scene);
    static const char *const order[] = {"far", "middle", "near"};
    assert_int_equal(recede_plan_count(plan), 3);
    for (size_t i = 0; i < 3; i++) {
        const recede_planned *at = recede_plan_at(plan, i);
        assert_string_equal(recede_plan_scene(plan)->planes[at->plane].name, order[i]);
    }
    recede_plan_free(plan);
    free(scene);
}

static void the_order_in_the_file_does_not_matter(void **state)
{
    (void)state;
    recede_scene *scene = three_planes(), *turned = three_planes();
    recede_plane first = turned->planes[0];
    turned->planes[0] = turned->planes[2];
    turned->planes[2] = first;
    recede_plan *one = planned(scene), *other = planned(turned);
    for (size_t i = 0; i < 3; i++)
        assert_same_planned(recede_plan_at(one, i), recede_plan_at(other, i));
    recede_plan_free(one);
    recede_plan_free(other);
    free(scene);
    free(turned);
}

/* The design's step 1 and 2 by hand: with full adaptation the horizon keeps its
 * place between the planes, and its value is the one asked for. */
static void the_horizon_has_the_value_asked_for(void **state)
{
    (void)state;
    recede_scene *scene = three_planes();
    scene->sky_value = 7.5;
    recede_plan *plan = planned(scene);
    assert_near(recede_plan_sky(plan)->base.value_as_seen, 7.5, 1e-9);
    recede_plan_free(plan);
    free(scene);
}

/* Step 3: the darkest wash lands on the palette's darkest, the lightest stays,
 * the order of values is kept, chromaticity too. */
static void darks_are_fitted_and_order_is_kept(void **state)
{
    (void)state;
    recede_tone tone = recede_tone_for(0.5, 0.6, 0.85, 0.55, 0.002, 0.02, 1);
    assert_near(tone.scale, 1.2, 1e-12);
    double previous = -1.0;
    for (double y = 0.002; y <= 0.55; y += 0.01) {
        recede_xyz in = {0.8 * y, y, 1.1 * y};
        recede_xyz out = recede_toned_as_painted(&tone, in);
        assert_true(out.y > previous);
        assert_near(out.x / out.y, 0.8, 1e-12);
        assert_near(out.z / out.y, 1.1, 1e-12);
        previous = out.y;
    }
    recede_xyz darkest = recede_toned_as_painted(&tone, (recede_xyz){0.002, 0.002, 0.002});
    recede_xyz lightest = recede_toned_as_painted(&tone, (recede_xyz){0.55, 0.55, 0.55});
    assert_near(darkest.y, 0.02, 1e-12);
    assert_near(lightest.y, 0.66, 1e-12);
}

static void what_fits_is_left_alone(void **state)
{
    (void)state;
    recede_tone tone = recede_tone_for(0.5, 0.5, 0.85, 0.55, 0.05, 0.02, 1);
    assert_near(tone.gamma, 1.0, 0.0);
    tone = recede_tone_for(0.5, 0.5, 0.85, 0.55, 0.002, 0.02, 0);
    assert_near(tone.gamma, 1.0, 0.0);
}

static void nothing_is_lighter_than_the_paper(void **state)
{
    (void)state;
    recede_tone tone = recede_tone_for(0.3, 0.6, 0.85, 0.9, 0.05, 0.02, 1);
    assert_near(tone.scale * 0.9, 0.85, 1e-12);
}

/* Common practice, no source: far edges are softer than near ones. */
static void far_edges_are_softer(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    static const double distances_m[] = {20, 400, 2500, 9000, 60000};
    static const char *const names[] = {"a", "b", "c", "d", "e"};
    for (int i = 0; i < 5; i++)
        add_plane(scene, names[i], distances_m[i], recede_foliage_named("summer oak"));
    recede_plan *plan = planned(scene);
    int previous = RECEDE_EDGE_LOST;
    for (size_t i = 0; i < 5; i++) {
        int edge = recede_plan_at(plan, i)->edge;
        assert_true(edge <= previous);
        previous = edge;
    }
    assert_int_equal(recede_plan_at(plan, 4)->edge, RECEDE_EDGE_HARD);
    assert_int_equal(recede_plan_at(plan, 0)->edge, RECEDE_EDGE_LOST);
    recede_plan_free(plan);
    free(scene);
}

/* In mist (visibility 300 m) a plane at 1 km has gone; in very clear air
 * (100 km) a ridge at 30 km is still a ridge. Common practice, no source. */
static void mist_hides_and_clear_air_does_not(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    scene->air.visibility_km = 0.3;
    scene->air.angstrom = 0.0;
    add_plane(scene, "wood", 1000.0, recede_foliage_named("dark conifer"));
    recede_plan *plan = planned(scene);
    int gone = 0;
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++)
        gone |= recede_plan_warning(plan, i)->kind == RECEDE_WARN_GONE;
    assert_true(gone);
    assert_below(recede_plan_at(plan, 0)->colour_step, 1.0);
    recede_plan_free(plan);

    scene->air.visibility_km = 100.0;
    scene->air.angstrom = 1.0;
    scene->planes[0].distance_m = 30000.0;
    plan = planned(scene);
    assert_true(recede_plan_at(plan, 0)->colour_step > 4.0);
    recede_plan_free(plan);
    free(scene);
}

static void heights_left_open_are_level_with_the_eye(void **state)
{
    (void)state;
    recede_scene *scene = three_planes();
    scene->air.eye_m = 120.0;
    scene->planes[0].crest_m = 400.0;
    assert_int_equal(recede_scene_check(scene, NULL), RECEDE_OK);
    assert_near(scene->planes[0].base_m, 120.0, 0.0);
    assert_near(scene->planes[2].base_m, 120.0, 0.0);
    assert_near(scene->planes[2].crest_m, 400.0, 0.0);
    free(scene);
}

static void refusals_name_the_field(void **state)
{
    (void)state;
    struct {
        size_t offset;
        double value;
        recede_code code;
        const char *path;
    } cases[] = {
        {offsetof(recede_scene, planes[1].distance_m), -4.0, RECEDE_OUT_OF_RANGE,
         "planes[1].distance"},
        {offsetof(recede_scene, planes[2].distance_m), NAN, RECEDE_NOT_FINITE,
         "planes[2].distance"},
        {offsetof(recede_scene, planes[0].share), 2.0, RECEDE_OUT_OF_RANGE, "planes[0].share"},
        {offsetof(recede_scene, air.visibility_km), 300.0, RECEDE_OUT_OF_RANGE,
         "air.visibility"},
        {offsetof(recede_scene, air.eye_m), 1e6, RECEDE_OUT_OF_RANGE, "air.eye"},
        {offsetof(recede_scene, sky.sun_height_deg), -3.0, RECEDE_OUT_OF_RANGE,
         "light.sun_height"},
        {offsetof(recede_scene, sky_value), 11.0, RECEDE_OUT_OF_RANGE, "picture.sky_value"},
        {offsetof(recede_scene, adaptation), INFINITY, RECEDE_NOT_FINITE, "picture.adaptation"},
        {offsetof(recede_scene, planes[1].own.reflectance.at[17]), 1.01, RECEDE_OUT_OF_RANGE,
         "planes[1].reflectance"},
        {offsetof(recede_scene, rules.tie), -1.0, RECEDE_OUT_OF_RANGE, "paint.tie"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_scene *scene = three_planes();
        recede_error error;
        recede_plan *plan;
        scene->planes[1].own.kind = RECEDE_OWN_REFLECTANCE; /* taken as it is given */
        memcpy((char *)scene + cases[i].offset, &cases[i].value, sizeof(double));
        assert_int_equal(recede_plan_new(scene, NULL, NULL, &plan, &error), cases[i].code);
        assert_null(plan);
        assert_string_equal(error.path, cases[i].path);
        free(scene);
    }
}

static void too_few_and_twice(void **state)
{
    (void)state;
    recede_error error;
    recede_scene *scene = new_scene();
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_TOO_FEW);
    assert_string_equal(error.path, "planes");
    scene->plane_count = RECEDE_MOST_PLANES + 1;
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_TOO_MANY);
    scene->plane_count = 0;
    add_plane(scene, "wood", 10.0, recede_foliage_named("willow"));
    add_plane(scene, "wood", 20.0, recede_foliage_named("willow"));
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_DUPLICATE);
    assert_string_equal(error.path, "planes[1].name");
    assert_string_equal(error.found, "wood");
    free(scene);
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_scene *scene = three_planes();
    size_t failures = 0;
    for (size_t nth = 1;; nth++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, nth);
        recede_plan *plan;
        recede_error error;
        recede_code code = recede_plan_new(scene, &allocator, NULL, &plan, &error);
        if (!code) {
            recede_plan_free(plan);
            assert_int_equal(memory.live, 0);
            break;
        }
        assert_int_equal(code, RECEDE_NO_MEMORY);
        assert_null(plan);
        assert_int_equal(memory.live, 0);
        failures++;
    }
    assert_true(failures >= 3);
    free(scene);
}

static int stop_at_once(void *context, double share_done)
{
    (void)share_done;
    ++*(int *)context;
    return 1;
}

static void it_can_be_stopped(void **state)
{
    (void)state;
    recede_scene *scene = three_planes();
    int calls = 0;
    recede_progress progress = {stop_at_once, &calls};
    recede_plan *plan;
    recede_error error;
    assert_int_equal(recede_plan_new(scene, NULL, &progress, &plan, &error), RECEDE_CANCELLED);
    assert_null(plan);
    assert_int_equal(calls, 1);
    free(scene);
}

/* A painted sky is taken as seen: its horizon keeps the colour given. */
static void a_painted_horizon_keeps_its_colour(void **state)
{
    (void)state;
    recede_scene *scene = three_planes();
    recede_xyz orange = recede_xyz_of_srgb((recede_srgb){0.91, 0.72, 0.48});
    recede_xyz light = recede_xyz_of_srgb((recede_srgb){1.0, 0.93, 0.82});
    scene->sky.kind = RECEDE_SKY_PAINTED;
    scene->sky.horizon_colour = recede_smooth_of_xyz(orange).reflectance;
    scene->sky.light_colour = recede_smooth_of_xyz(light).reflectance;
    recede_plan *plan = planned(scene);
    recede_lab wanted = recede_lab_of_xyz(orange, recede_white());
    assert_below(recede_delta_e(recede_plan_sky(plan)->base.target.lab, wanted), 0.1);
    recede_plan_free(plan);
    free(scene);
}

/* A name is enough; one that is not known is refused, not painted black. */
static void own_colours_are_looked_up(void **state)
{
    (void)state;
    recede_error error;
    recede_scene *scene = three_planes();
    memset(&scene->planes[0].own.reflectance, 0, sizeof scene->planes[0].own.reflectance);
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_OK);
    const recede_own_entry *heather = recede_foliage_named("heather");
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(scene->planes[2].own.reflectance.at[band], heather->reflectance.at[band], 0);
    strcpy(scene->planes[1].own.name, "blue heather");
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_UNKNOWN_NAME);
    assert_string_equal(error.path, "planes[1].foliage");
    assert_string_equal(error.found, "blue heather");
    scene->planes[1].own.kind = RECEDE_OWN_SURFACE;
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_UNKNOWN_NAME);
    assert_string_equal(error.path, "planes[1].surface");
    free(scene);
}

/* A colour beside a reflectance that has another: what is painted is the reflectance's. */
static void an_own_colour_that_is_not_had_is_told(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    add_plane(scene, "wood", 100.0, recede_foliage_named("willow"));
    recede_own *own = &scene->planes[0].own;
    recede_xyz xyz = recede_xyz_of_reflectance(&own->reflectance);
    own->kind = RECEDE_OWN_LAB;
    for (int off = 0; off < 2; off++) {
        own->lab = recede_lab_of_xyz(xyz, recede_white());
        own->lab.l += 5 * off;
        double told = 0;
        recede_plan *plan = planned(scene);
        for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
            const recede_warning *warning = recede_plan_warning(plan, i);
            if (warning->kind != RECEDE_WARN_OWN_COLOUR)
                continue;
            assert_int_equal(warning->plane, 0);
            told = warning->number[0];
        }
        recede_lab had = recede_lab_of_xyz(xyz, recede_white());
        assert_near(told, off ? recede_delta_e(own->lab, had) : 0, 1e-12);
        recede_plan_free(plan);
    }
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(planes_come_far_to_near),
        cmocka_unit_test(the_order_in_the_file_does_not_matter),
        cmocka_unit_test(the_horizon_has_the_value_asked_for),
        cmocka_unit_test(darks_are_fitted_and_order_is_kept),
        cmocka_unit_test(what_fits_is_left_alone),
        cmocka_unit_test(nothing_is_lighter_than_the_paper),
        cmocka_unit_test(far_edges_are_softer),
        cmocka_unit_test(mist_hides_and_clear_air_does_not),
        cmocka_unit_test(heights_left_open_are_level_with_the_eye),
        cmocka_unit_test(refusals_name_the_field),
        cmocka_unit_test(too_few_and_twice),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(it_can_be_stopped),
        cmocka_unit_test(a_painted_horizon_keeps_its_colour),
        cmocka_unit_test(own_colours_are_looked_up),
        cmocka_unit_test(an_own_colour_that_is_not_had_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
