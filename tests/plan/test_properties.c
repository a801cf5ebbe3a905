/* What holds for every plan, tried on scenes by chance (invented data): numbers are
 * numbers, clearer air lets more through, and what ought not to matter does not. Each
 * test was seen to fail with the code broken once, as tools/mutations.txt lists. */
#include <stdlib.h>

#include "plan/made_scenes.h"
#include "support/assert_near.h"
#include "text/buffer.h"
#include "text/plan_write.h"

static recede_plan *planned(const recede_scene *scene)
{
    recede_error error;
    recede_plan *plan = NULL;
    if (recede_plan_new(scene, NULL, NULL, &plan, &error))
        fail_msg("refused: %s", error.path);
    return plan;
}

static recede_scene *room(void)
{
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    return scene;
}

/* The writer says null of what is not finite; nothing else in a plan is null. */
static void no_number_is_lost(void **state)
{
    (void)state;
    chance c = {1};
    recede_scene *scene = room();
    enum { SCENES = 2000 };
    size_t bytes = 0;
    for (int i = 0; i < SCENES; i++) {
        recede_buffer text;
        made_scene(&c, scene, 0);
        recede_plan *plan = planned(scene);
        recede_buffer_start(&text, NULL);
        recede_plan_write(plan, &text);
        assert_false(text.failed);
        assert_null(strstr(recede_buffer_string(&text), "null"));
        bytes += text.size;
        recede_buffer_free(&text);
        recede_plan_free(plan);
    }
    print_message("%d plans, %zu bytes of JSON, every number finite\n", SCENES, bytes);
    free(scene);
}

/* Of one plane's light, what is its own: by band it can only grow, and so does the share
 * of Y where the light stays as it is (a painted sky: haze does not dim it). */
static void clearer_air_lets_more_through(void **state)
{
    (void)state;
    chance c = {2};
    enum { PAIRS = 3000 };
    for (int i = 0; i < PAIRS; i++) {
        double visibility = made_scale(&c, 0.2, 120), clearer = visibility * chance_between(&c, 1.01, 2);
        double angstrom = chance_between(&c, 0, 1.6), eye = chance_between(&c, 0, 500);
        double height = chance_between(&c, 0, 2000), distance = made_scale(&c, 5, 80000);
        recede_air air[] = {{visibility, angstrom, eye, 0, 0}, {clearer, angstrom, eye, 0, 0}};
        recede_spectrum through[2];
        for (int k = 0; k < 2; k++) {
            recede_atmosphere atmosphere;
            assert_int_equal(recede_atmosphere_of(&air[k], &atmosphere, NULL), RECEDE_OK);
            double far = eye == height ? distance : fmax(distance, fabs(height - eye));
            recede_path path = recede_path_to(&atmosphere, eye == height ? eye : height, far);
            through[k] = recede_path_transmission(&path);
        }
        for (int band = 0; band < RECEDE_BANDS; band++) {
            assert_true(through[0].at[band] >= 0 && through[1].at[band] <= 1);
            /* the last digits of an exponent of hundreds */
            assert_true(through[1].at[band] >= through[0].at[band] * (1 - 1e-12));
        }
    }
    print_message("%d pairs of airs by %d bands\n", PAIRS, RECEDE_BANDS);
}

static double own_share_of(const recede_plan *plan, size_t index)
{
    return recede_plan_at(plan, index)->lit.crest.own_share;
}

static void clearer_air_leaves_planes_more_of_their_own(void **state)
{
    (void)state;
    chance c = {3};
    recede_scene *scene = room();
    enum { SCENES = 600 };
    int planes = 0;
    for (int i = 0; i < SCENES; i++) {
        made_scene(&c, scene, 1);
        scene->sky.kind = i % 2 ? RECEDE_SKY_PAINTED : RECEDE_SKY_OVERCAST;
        scene->air.visibility_km = made_scale(&c, 0.5, 120);
        recede_plan *thick = planned(scene);
        scene->air.visibility_km *= chance_between(&c, 1.01, 2);
        recede_plan *clear = planned(scene);
        for (size_t p = 0; p < recede_plan_count(thick); p++, planes++)
            assert_true(own_share_of(clear, p) >= own_share_of(thick, p) - 1e-12);
        recede_plan_free(thick);
        recede_plan_free(clear);
    }
    print_message("%d planes in %d scenes\n", planes, SCENES);
    free(scene);
}

/* Koschmieder 1924 at the wavelength that defines visibility: ln 20 distances over
 * visibility, whatever the haze is made of. */
static void at_550_nm_only_distance_over_visibility_counts(void **state)
{
    (void)state;
    chance c = {4};
    enum { AIRS = 3000, BAND_550 = 17 };
    for (int i = 0; i < AIRS; i++) {
        recede_air air = {made_scale(&c, 0.1, 250), chance_between(&c, 0, 2.5),
                          chance_between(&c, -400, 4000), 0, 0};
        double share = chance_between(&c, 0, 4);
        recede_atmosphere atmosphere;
        assert_int_equal(recede_atmosphere_of(&air, &atmosphere, NULL), RECEDE_OK);
        recede_path path = recede_path_to(&atmosphere, air.eye_m, 1000 * share * air.visibility_km);
        assert_near(recede_path_transmission(&path).at[BAND_550], pow(20, -share), 1e-12);
    }
    print_message("%d airs\n", AIRS);
}

static void shuffle_planes(chance *c, recede_scene *scene)
{
    for (size_t i = scene->plane_count; i > 1; i--) {
        size_t other = (size_t)chance_below(c, (int)i);
        recede_plane moved = scene->planes[i - 1];
        scene->planes[i - 1] = scene->planes[other];
        scene->planes[other] = moved;
    }
}

static void the_order_of_planes_does_not_matter(void **state)
{
    (void)state;
    chance c = {5};
    recede_scene *scene = room();
    enum { SCENES = 500 };
    for (int i = 0; i < SCENES; i++) {
        recede_buffer text[2];
        made_scene(&c, scene, 0);
        for (int k = 0; k < 2; k++) {
            recede_plan *plan = planned(scene);
            recede_buffer_start(&text[k], NULL);
            recede_plan_write(plan, &text[k]);
            recede_plan_free(plan);
            shuffle_planes(&c, scene);
        }
        assert_string_equal(recede_buffer_string(&text[0]), recede_buffer_string(&text[1]));
        recede_buffer_free(&text[0]);
        recede_buffer_free(&text[1]);
    }
    print_message("%d scenes, the same bytes\n", SCENES);
    free(scene);
}

/* With no tie the closest mix wins, and that is the closest in any order of the box. */
static void the_order_of_the_box_does_not_matter(void **state)
{
    (void)state;
    static recede_wash_place places[2][RECEDE_MOST_WASH_PLACES];
    chance c = {6};
    recede_scene *scene = room();
    enum { SCENES = 500 };
    size_t washes = 0;
    for (int i = 0; i < SCENES; i++) {
        recede_plan *plan[2];
        size_t count = 0;
        made_scene(&c, scene, 0);
        scene->rules.tie = 0;
        scene->shadows_over = 0; /* what lies under a wash is then always the paper */
        for (int k = 0; k < 2; k++) {
            plan[k] = planned(scene);
            count = recede_plan_washes(plan[k], places[k]);
            recede_paint first = scene->paints[0];
            memmove(&scene->paints[0], &scene->paints[1], 5 * sizeof first);
            scene->paints[5] = first;
            scene->palette[0] = '\0';
        }
        for (size_t w = 0; w < count; w++, washes++)
            assert_near(places[1][w].wash->recipe.delta_e, places[0][w].wash->recipe.delta_e, 1.5e-6);
        recede_plan_free(plan[0]);
        recede_plan_free(plan[1]);
    }
    print_message("%zu washes\n", washes);
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_number_is_lost),
        cmocka_unit_test(clearer_air_lets_more_through),
        cmocka_unit_test(clearer_air_leaves_planes_more_of_their_own),
        cmocka_unit_test(at_550_nm_only_distance_over_visibility_counts),
        cmocka_unit_test(the_order_of_planes_does_not_matter),
        cmocka_unit_test(the_order_of_the_box_does_not_matter),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
