/* A plan that takes over what the one before it found is the plan made from nothing,
 * whatever changed in between. Scenes here are invented. */
#include <stdlib.h>
#include <string.h>

#include "plan/plan.h"
#include "plan/same_plan.h"
#include "recede.h"
#include "support/assert_near.h"

typedef struct {
    recede_scene scene;
    recede_palette *palette;
    recede_index *index;
    recede_plan *before;
} hand;

static void add_plane(recede_scene *scene, const char *name, double distance_m,
                      const char *foliage, double crest_m)
{
    recede_plane *plane = &scene->planes[scene->plane_count++];
    memset(plane, 0, sizeof *plane);
    strcpy(plane->name, name);
    plane->distance_m = distance_m;
    plane->base_m = crest_m > 0.0 ? 0.0 : NAN;
    plane->crest_m = crest_m > 0.0 ? crest_m : NAN;
    plane->own.kind = RECEDE_OWN_FOLIAGE;
    strcpy(plane->own.name, foliage);
    plane->own.reflectance = recede_foliage_named(foliage)->reflectance;
}

static hand *take_up(void)
{
    hand *h = calloc(1, sizeof *h);
    assert_non_null(h);
    recede_scene *scene = &h->scene;
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_parts = 4;
    add_plane(scene, "grass", 40.0, "meadow grass", 0.0);
    add_plane(scene, "oaks", 900.0, "summer oak", 0.0);
    add_plane(scene, "hill", 6000.0, "heather", 700.0);
    assert_int_equal(recede_palette_new(scene->paints, scene->paint_count, scene->medium,
                                        &scene->paper, NULL, &h->palette, NULL), RECEDE_OK);
    assert_int_equal(recede_index_new(h->palette, &scene->rules, 0, NULL, NULL, &h->index, NULL),
                     RECEDE_OK);
    return h;
}

/* Plans the scene as it stands both ways; the one becomes the plan before the next. */
static void plan_both_ways(hand *h)
{
    recede_plan *after, *anew;
    assert_int_equal(recede_plan_after(h->before, &h->scene, h->index, NULL, NULL, &after, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_plan_with_index(&h->scene, h->index, NULL, NULL, &anew, NULL),
                     RECEDE_OK);
    assert_same_side(recede_plan_sky(after), recede_plan_sky(anew));
    assert_int_equal(recede_plan_count(after), recede_plan_count(anew));
    for (size_t i = 0; i < recede_plan_count(anew); i++)
        assert_same_planned(recede_plan_at(after, i), recede_plan_at(anew, i));
    assert_int_equal(recede_plan_warning_count(after), recede_plan_warning_count(anew));
    recede_plan_free(anew);
    recede_plan_free(h->before);
    h->before = after;
}

static void put_down(hand *h)
{
    recede_plan_free(h->before);
    recede_index_free(h->index);
    recede_palette_free(h->palette);
    free(h);
}

static void whatever_changes_the_plan_is_the_same(void **state)
{
    (void)state;
    hand *h = take_up();
    recede_scene *scene = &h->scene;
    plan_both_ways(h);
    plan_both_ways(h);
    scene->planes[1].distance_m = 1500.0;
    plan_both_ways(h);
    scene->air.visibility_km = 8.0;
    plan_both_ways(h);
    scene->air.angstrom = 0.5;
    plan_both_ways(h);
    scene->air.mist_visibility_km = 0.8;
    scene->air.mist_top_m = 60.0;
    plan_both_ways(h);
    scene->air.eye_m = 20.0;
    plan_both_ways(h);
    scene->sky.sun_height_deg = 12.0;
    plan_both_ways(h);
    scene->sky.sun_side_deg = 30.0;
    plan_both_ways(h);
    scene->adaptation = 0.4;
    plan_both_ways(h);
    scene->sky_value = 7.0;
    plan_both_ways(h);
    scene->shadows_over = !scene->shadows_over;
    plan_both_ways(h);
    scene->sky.kind = RECEDE_SKY_OVERCAST;
    plan_both_ways(h);
    scene->plane_count--;
    plan_both_ways(h);
    put_down(h);
}

/* A plan of other rules has nothing to give. */
static void other_paints_are_left_alone(void **state)
{
    (void)state;
    hand *h = take_up(), *other = take_up();
    recede_index_free(other->index);
    other->scene.rules.most_parts = 2;
    other->scene.rules.tie = 3.0;
    assert_int_equal(recede_index_new(other->palette, &other->scene.rules, 0, NULL, NULL,
                                      &other->index, NULL), RECEDE_OK);
    plan_both_ways(other);
    h->before = other->before;
    other->before = NULL;
    plan_both_ways(h);
    put_down(other);
    put_down(h);
}

static void a_scene_that_is_refused_makes_no_plan(void **state)
{
    (void)state;
    hand *h = take_up();
    recede_plan *after = h->before;
    recede_error error;
    plan_both_ways(h);
    h->scene.planes[0].distance_m = -1.0;
    assert_int_equal(recede_plan_after(h->before, &h->scene, h->index, NULL, NULL, &after, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "planes[0].distance");
    assert_null(after);
    put_down(h);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(whatever_changes_the_plan_is_the_same),
        cmocka_unit_test(other_paints_are_left_alone),
        cmocka_unit_test(a_scene_that_is_refused_makes_no_plan),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
