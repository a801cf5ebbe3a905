/* What every landscape painter knows of air. All of it is common practice, with
 * no source. Ordinary haze of 20 km and a clear sky, lit from the side, unless
 * another air is named. */
#include "air/views.h"

static const char *const greens[] = {"dark conifer", "summer oak"};

static const recede_spectrum *own_colour(const char *name)
{
    const recede_own_entry *entry = recede_foliage_named(name);
    if (!entry)
        entry = recede_surface_named(name);
    assert_non_null(entry);
    return &entry->reflectance;
}

static recede_lab lab_at(const view_scene *scene, const char *name, int shadow, double distance_m)
{
    const recede_spectrum *light = shadow ? &scene->light.shadow : &scene->light.lit;
    recede_spectrum seen = view_at(scene, own_colour(name), light, distance_m);
    return view_lab_in(scene, &seen);
}

static recede_lch lch_at(const view_scene *scene, const char *name, int shadow, double distance_m)
{
    return recede_lch_of_lab(lab_at(scene, name, shadow, distance_m));
}

/* The distance at which it is greyest; before that green, after that blue. */
static double greyest_m(const view_scene *scene, const char *name, int shadow)
{
    double least = 1e9, at = 0.0;
    for (double distance_m = 10.0; distance_m < 8000.0; distance_m *= 1.05) {
        double chroma = lch_at(scene, name, shadow, distance_m).c;
        if (chroma < least) {
            least = chroma;
            at = distance_m;
        }
    }
    return at;
}

static void green_grows_lighter_with_distance(void **state)
{
    (void)state;
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    for (int k = 0; k < 4; k++) {
        double before = 0.0;
        for (double distance_m = 10.0; distance_m < 20000.0; distance_m *= 1.3) {
            double lightness = lab_at(&scene, greens[k / 2], k % 2, distance_m).l;
            assert_true(lightness > before);
            before = lightness;
        }
    }
}

static void green_grows_greyer_then_bluer(void **state)
{
    (void)state;
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    for (int k = 0; k < 4; k++) {
        const char *name = greens[k / 2];
        double turn_m = greyest_m(&scene, name, k % 2);
        recede_lch near = lch_at(&scene, name, k % 2, 10.0);
        recede_lch grey = lch_at(&scene, name, k % 2, turn_m);
        recede_lch far = lch_at(&scene, name, k % 2, fmin(3.0 * turn_m, 8000.0));
        print_message("%s, %s side: greyest at %.0f m\n", name, k % 2 ? "shadow" : "lit", turn_m);
        assert_true(near.h_deg > 90.0 && near.h_deg < 180.0);
        assert_true(grey.c < near.c - 2.0); /* dark shadows are near grey already */
        assert_true(far.c > grey.c && far.h_deg > 220.0 && far.h_deg < 290.0);
        double before = near.c;
        for (double distance_m = 10.0; distance_m < turn_m; distance_m *= 1.2) {
            double chroma = lch_at(&scene, name, k % 2, distance_m).c;
            assert_true(chroma <= before);
            before = chroma;
        }
    }
}

static void shadow_sides_go_first(void **state)
{
    (void)state;
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    for (int k = 0; k < 2; k++) {
        assert_true(greyest_m(&scene, greens[k], 1) < 0.6 * greyest_m(&scene, greens[k], 0));
        double lit = lab_at(&scene, greens[k], 0, 2000.0).l - lab_at(&scene, greens[k], 0, 30.0).l;
        double shadow = lab_at(&scene, greens[k], 1, 2000.0).l
                        - lab_at(&scene, greens[k], 1, 30.0).l;
        assert_true(shadow > lit);
    }
}

static void a_tree_at_400_yards_differs_from_one_at_30_metres(void **state)
{
    (void)state;
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    for (int k = 0; k < 4; k++) {
        double delta = recede_delta_e(lab_at(&scene, greens[k / 2], k % 2, 30.0),
                                      lab_at(&scene, greens[k / 2], k % 2, 400.0 * 0.9144));
        print_message("%s, %s side: %.1f CIEDE2000 from 30 m to 400 yards\n", greens[k / 2],
                      k % 2 ? "shadow" : "lit", delta);
        assert_true(delta > 1.0);
    }
}

static void greens_take_some_orange_under_an_orange_sky(void **state)
{
    (void)state;
    recede_srgb orange = {0.94, 0.60, 0.30}, pale = {1.0, 0.93, 0.82}; /* invented */
    recede_sky sky = {.kind = RECEDE_SKY_PAINTED};
    sky.horizon_colour = recede_smooth_of_xyz(recede_xyz_of_srgb(orange)).reflectance;
    sky.light_colour = recede_smooth_of_xyz(recede_xyz_of_srgb(pale)).reflectance;
    recede_air air = {.visibility_km = 20.0, .angstrom = 1.0};
    view_scene scene = view_of(&air, &sky);
    for (int k = 0; k < 4; k++) {
        double before = -100.0;
        for (double distance_m = 30.0; distance_m < 10000.0; distance_m *= 1.5) {
            recede_lab lab = lab_at(&scene, greens[k / 2], k % 2, distance_m);
            assert_true(lab.a > before);
            before = lab.a;
        }
        recede_lch far = lch_at(&scene, greens[k / 2], k % 2, 10000.0);
        assert_true(far.h_deg > 40.0 && far.h_deg < 90.0 && far.c > 15.0);
    }
}

static void sunlit_white_grows_warmer_with_distance(void **state)
{
    (void)state;
    const char *const whites[] = {"snow", "whitewash"};
    for (int k = 0; k < 4; k++) {
        view_scene scene = view_clear(k % 2 ? 60.0 : 20.0, 1.0, 40.0, 90.0);
        double before = -100.0;
        for (double distance_m = 30.0; distance_m < 5000.0; distance_m *= 1.5) {
            recede_lab lab = lab_at(&scene, whites[k / 2], 0, distance_m);
            assert_true(lab.a > before); /* toward red */
            before = lab.a;
        }
        recede_lch near = lch_at(&scene, whites[k / 2], 0, 30.0);
        recede_lch far = lch_at(&scene, whites[k / 2], 0, 5000.0);
        assert_true(far.h_deg < near.h_deg && far.h_deg > 45.0); /* from yellow toward orange */
        assert_true(far.l < near.l);
    }
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    assert_true(lab_at(&scene, "snow", 0, 3000.0).b > lab_at(&scene, "snow", 0, 30.0).b + 1.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(green_grows_lighter_with_distance),
        cmocka_unit_test(green_grows_greyer_then_bluer),
        cmocka_unit_test(shadow_sides_go_first),
        cmocka_unit_test(a_tree_at_400_yards_differs_from_one_at_30_metres),
        cmocka_unit_test(greens_take_some_orange_under_an_orange_sky),
        cmocka_unit_test(sunlit_white_grows_warmer_with_distance),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
