/* The sheet that shows what a palette reaches. */
#include "draw/range.h"

#include "draw/sheet_log.h"
#include "support/allocator.h"

#include <stdio.h>
#include <string.h>

/* Planes of one meadow, farther and farther off, some with heights enough to be
 * graded. */
static recede_plan *plan_of(size_t planes, const char *name, recede_rules rules)
{
    static recede_scene scene;
    recede_plan *plan;
    recede_scene_default(&scene);
    assert_int_equal(recede_scene_use_palette(&scene, "landscape-six", NULL), RECEDE_OK);
    scene.rules = rules;
    snprintf(scene.title, sizeof scene.title, "%s", name);
    scene.plane_count = planes;
    for (size_t i = 0; i < planes; i++) {
        recede_plane *plane = &scene.planes[i];
        memset(plane, 0, sizeof *plane);
        snprintf(plane->name, sizeof plane->name, "%zu %.170s", i + 1, name);
        plane->distance_m = 20 * pow(1.12, (double)i);
        plane->base_m = 0;
        plane->crest_m = 5 + 15.0 * (double)(i % 4) * (double)i;
        plane->own.kind = RECEDE_OWN_FOLIAGE;
        plane->own.reflectance = recede_foliage_at(i % recede_foliage_count())->reflectance;
    }
    assert_int_equal(recede_plan_new(&scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    return plan;
}

static size_t check_drawn(recede_plan *plan, recede_range_drawing *drawing)
{
    recede_type_log log = {0};
    recede_sheet_pixels pixels;
    recede_sheet_options options = {.log = &log};
    assert_int_equal(recede_range_start(drawing, plan, NULL, NULL, NULL), RECEDE_OK);
    recede_sheet sheet = recede_range_sheet(drawing);
    assert_int_equal(recede_sheet_to_pixels(&sheet, &options, &pixels), RECEDE_SHEET_OK);
    size_t pages = pixels.pages;
    assert_int_equal(sheet_log_check(&log), pages);
    recede_range_end(drawing);
    sheet_log_free(&log);
    free(pixels.rgb);
    return pages;
}

static void a_usual_plan_is_one_clear_page(void **state)
{
    (void)state;
    static recede_range_drawing drawing;
    recede_plan *plan = plan_of(6, "meadow", (recede_rules){2, 6, 1});
    assert_int_equal(recede_plan_advise(plan, NULL, NULL), RECEDE_OK);
    assert_int_equal(check_drawn(plan, &drawing), 1);
    for (int field = 1; field < RECEDE_RANGE_FIELDS; field++)
        assert_true(drawing.value[field] > drawing.value[field - 1]);
    for (size_t i = 0; i < drawing.count; i++) { /* each stands on the field nearest in value */
        const recede_range_mark *mark = &drawing.marks[i];
        double value = mark->place.wash->target.value;
        for (int field = 0; field < RECEDE_RANGE_FIELDS; field++)
            assert_true(fabs(drawing.value[mark->field] - value)
                        <= fabs(drawing.value[field] - value));
        assert_true((mark->warning != NULL)
                    == (mark->place.wash->recipe.reach != RECEDE_REACHABLE));
    }
    recede_plan_free(plan);
}

static void the_most_planes_fill_clear_pages(void **state)
{
    (void)state;
    static recede_range_drawing drawing;
    char name[180];
    memset(name, 'm', sizeof name - 1);
    name[sizeof name - 1] = '\0';
    for (int i = 0; i < 2; i++) {
        recede_plan *plan = plan_of(RECEDE_MOST_PLANES, i ? name : "the far meadow beyond the mill",
                                    (recede_rules){1, 1, 1});
        assert_true(check_drawn(plan, &drawing) > 1);
        recede_plan_free(plan);
    }
}

static void one_plane_will_do(void **state)
{
    (void)state;
    static recede_range_drawing drawing;
    recede_plan *plan = plan_of(1, "", (recede_rules){1, 1, 1});
    assert_int_equal(check_drawn(plan, &drawing), 1);
    recede_plan_free(plan);
}

static int stop(void *context, double share_done)
{
    (void)context;
    (void)share_done;
    return 1;
}

static void a_start_that_fails_leaves_nothing(void **state)
{
    (void)state;
    static recede_range_drawing drawing;
    recede_plan *plan = plan_of(3, "meadow", (recede_rules){2, 3, 1});
    recede_progress progress = {stop, NULL};
    test_memory memory;
    for (size_t fail_at = 1;; fail_at++) {
        recede_allocator allocator = test_allocator(&memory, fail_at);
        recede_code code = recede_range_start(&drawing, plan, &allocator, NULL, NULL);
        if (code == RECEDE_OK) {
            recede_range_end(&drawing);
            assert_int_equal(memory.live, 0);
            break;
        }
        assert_int_equal(code, RECEDE_NO_MEMORY);
        assert_int_equal(memory.live, 0);
    }
    recede_allocator allocator = test_allocator(&memory, 0);
    assert_int_equal(recede_range_start(&drawing, plan, &allocator, &progress, NULL),
                     RECEDE_CANCELLED);
    assert_int_equal(memory.live, 0);
    recede_plan_free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_usual_plan_is_one_clear_page),
        cmocka_unit_test(the_most_planes_fill_clear_pages),
        cmocka_unit_test(one_plane_will_do),
        cmocka_unit_test(a_start_that_fails_leaves_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
