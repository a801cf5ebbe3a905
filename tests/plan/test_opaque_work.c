/* The order of work in opaque media: amounts of a coat, and dark to light. */
#include "recede.h"
#include "support/assert_near.h"

#include <stdlib.h>
#include <string.h>

static recede_work *work_of(recede_medium medium)
{
    static const struct { const char *name, *foliage; double distance_m; } planes[] = {
        {"bank", "meadow grass", 40}, {"copse", "summer oak", 900}, {"moor", "heather", 6000},
    };
    static recede_scene scene;
    recede_plan *plan;
    recede_work *work = malloc(sizeof *work);
    double shares[4] = {0.25, 0.2, 0.15, 0.4};
    recede_work_wish wish = {3, 0};
    recede_scene_default(&scene);
    scene.medium = medium;
    scene.rules.most_parts = 5;
    if (medium != RECEDE_WATERCOLOUR)
        assert_int_equal(recede_scene_use_palette(&scene, "opaque-sixteen", NULL), RECEDE_OK);
    scene.plane_count = 3;
    for (size_t i = 0; i < 3; i++) {
        recede_plane *plane = &scene.planes[i];
        *plane = (recede_plane){.distance_m = planes[i].distance_m, .base_m = NAN,
                                .crest_m = NAN, .own = {.kind = RECEDE_OWN_FOLIAGE}};
        strcpy(plane->name, planes[i].name);
        strcpy(plane->own.name, planes[i].foliage);
        plane->own.reflectance = recede_foliage_named(planes[i].foliage)->reflectance;
    }
    assert_non_null(work);
    assert_int_equal(recede_plan_new(&scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    assert_int_equal(recede_work_of(plan, shares, &wish, NULL, NULL, NULL, work, NULL),
                     RECEDE_OK);
    recede_plan_free(plan);
    return work;
}

/* The default sheet is 38 by 28 cm: 0.2 mm of paint on it is 21.28 ml (the thickness is
 * common practice, no source). Nothing is laid twice over. */
static void a_coat_covers_the_sheet(void **state)
{
    (void)state;
    static const recede_medium media[] = {RECEDE_GOUACHE, RECEDE_ACRYLIC, RECEDE_OIL};
    for (int i = 0; i < 3; i++) {
        recede_work *work = work_of(media[i]);
        double need_ml = 0;
        for (size_t j = 0; j < work->count; j++)
            need_ml += work->steps[j].need_ml;
        assert_near(recede_work_film_mm(media[i]), 0.2, 0);
        assert_near(need_ml, 21.28, 1e-9);
        free(work);
    }
    assert_near(recede_work_film_mm(RECEDE_WATERCOLOUR), 0.15, 0);
}

/* 1: the shadow of every plane comes before its lit side; -1: after; 0: mixed. */
static int darks_first(const recede_work *work)
{
    int first = 0, last = 0, at_lit[3] = {-1, -1, -1}, at_shadow[3] = {-1, -1, -1};
    for (int i = 0; i < (int)work->count; i++)
        if (work->steps[i].plane >= 0)
            (work->steps[i].shadow ? at_shadow : at_lit)[work->steps[i].plane] = i;
    for (int p = 0; p < 3; p++) {
        assert_true(at_lit[p] >= 0 && at_shadow[p] >= 0);
        first += at_shadow[p] < at_lit[p];
        last += at_shadow[p] > at_lit[p];
    }
    return first == 3 ? 1 : last == 3 ? -1 : 0;
}

/* Common practice, no source; far to near in either. */
static void opaque_paint_goes_dark_to_light(void **state)
{
    (void)state;
    recede_work *oil = work_of(RECEDE_OIL), *water = work_of(RECEDE_WATERCOLOUR);
    assert_int_equal(darks_first(oil), 1);
    assert_int_equal(darks_first(water), -1);
    for (size_t i = 1; i < oil->count; i++)
        assert_true(oil->steps[i - 1].plane < 0 ||
                    oil->steps[i].plane <= oil->steps[i - 1].plane);
    free(oil);
    free(water);
}

static void parts_are_as_usual_in_the_medium(void **state)
{
    (void)state;
    assert_int_equal(recede_usual_parts(RECEDE_WATERCOLOUR), 8);
    assert_int_equal(recede_usual_parts(RECEDE_GOUACHE), RECEDE_MOST_PARTS);
    assert_int_equal(recede_usual_parts(RECEDE_ACRYLIC), RECEDE_MOST_PARTS);
    assert_int_equal(recede_usual_parts(RECEDE_OIL), RECEDE_MOST_PARTS);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_coat_covers_the_sheet),
        cmocka_unit_test(opaque_paint_goes_dark_to_light),
        cmocka_unit_test(parts_are_as_usual_in_the_medium),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
