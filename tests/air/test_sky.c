/* The clear sky by elevation, and a painted one. */
#include "air/sky.h"

#include "air/views.h"

static recede_lch sky_lch(const view_scene *scene, double elevation_deg)
{
    recede_spectrum sky = recede_sky_radiance(&scene->air, &scene->light, elevation_deg);
    return recede_lch_of_lab(view_lab_in(scene, &sky));
}

static recede_lab sky_lab(const view_scene *scene, double elevation_deg)
{
    recede_spectrum sky = recede_sky_radiance(&scene->air, &scene->light, elevation_deg);
    return view_lab_in(scene, &sky);
}

/* Planes fade into the airlight and stand against the sky at its foot, which is
 * drawn toward it to make sure of this. */
static void sky_meets_the_airlight_at_the_horizon(void **state)
{
    (void)state;
    const double visibilities_km[] = {0.2, 2.0, 20.0, 60.0, 100.0}, haze[] = {1.3, 1.0, 0.5, 0.0};
    const double heights_deg[] = {1.0, 5.0, 20.0, 60.0};
    for (int k = 0; k < 80; k++) {
        for (double side = 0.0; side <= 180.0; side += 60.0) {
            view_scene scene = view_clear(visibilities_km[k / 16], haze[k % 4],
                                          heights_deg[k / 4 % 4], side);
            recede_spectrum airlight = recede_horizon_radiance(&scene.air, &scene.light);
            double delta = recede_delta_e(view_lab_in(&scene, &airlight), sky_lab(&scene, 0.0));
            assert_below(delta, 2.0);
        }
    }
}

/* How far it has to be drawn there: not to be seen in ordinary air, plainly in
 * very clear air, where the round earth takes the line out of the haze. */
static void round_earth_moves_the_horizon_in_very_clear_air_only(void **state)
{
    (void)state;
    const double visibilities_km[] = {20.0, 40.0, 60.0, 80.0, 100.0};
    const double heights_deg[] = {1.0, 5.0, 10.0, 20.0, 40.0, 60.0};
    print_message("scattering alone at elevation 0 against the level airlight, CIEDE2000\n"
                  "sun                   1     5    10    20    40    60 deg\n");
    for (int v = 0; v < 5; v++) {
        print_message("visibility %3.0f km", visibilities_km[v]);
        for (int h = 0; h < 6; h++) {
            double worst = 0.0;
            for (double side = 0.0; side <= 180.0; side += 30.0) {
                view_scene scene = view_clear(visibilities_km[v], 1.0, heights_deg[h], side);
                recede_spectrum level = recede_horizon_radiance(&scene.air, &scene.light);
                recede_spectrum line = recede_sky_along_line(&scene.air, &scene.light, 0.0);
                worst = fmax(worst, recede_delta_e(view_lab_in(&scene, &level),
                                                   view_lab_in(&scene, &line)));
            }
            print_message("  %4.1f", worst);
            if (visibilities_km[v] <= 40.0)
                assert_below(worst, 2.0);
        }
        print_message("\n");
    }
}

static void sky_meets_the_airlight_in_mist_too(void **state)
{
    (void)state;
    recede_air air = {20.0, 1.0, 10.0, 0.5, 60.0};
    recede_sky sky = {.kind = RECEDE_SKY_CLEAR, .sun_height_deg = 30.0, .sun_side_deg = 90.0};
    view_scene mist = view_of(&air, &sky);
    recede_spectrum airlight = recede_horizon_radiance(&mist.air, &mist.light);
    assert_below(recede_delta_e(view_lab_in(&mist, &airlight), sky_lab(&mist, 0.0)), 2.0);
    /* overhead the mist is thin: the blue comes through, paler than without it */
    air.mist_visibility_km = 0.0;
    view_scene clear = view_of(&air, &sky);
    assert_true(sky_lch(&mist, 90.0).c > 5.0);
    assert_true(sky_lch(&mist, 90.0).c < sky_lch(&clear, 90.0).c);
}

/* Common practice, no source: away from the sun, and by day. */
static void overhead_is_bluer_and_darker_than_the_horizon_by_day(void **state)
{
    (void)state;
    for (double height = 30.0; height <= 60.0; height += 10.0) {
        for (double visibility = 10.0; visibility <= 160.0; visibility *= 2.0) {
            for (double side = 90.0; side <= 180.0; side += 30.0) {
                view_scene scene = view_clear(visibility, 1.0, height, side);
                recede_lch horizon = sky_lch(&scene, 0.0), top = sky_lch(&scene, 30.0);
                assert_true(top.l < horizon.l);
                assert_true(top.c > horizon.c + 5.0);
                assert_true(top.h_deg > 250.0 && top.h_deg < 285.0);
            }
        }
    }
}

/* Common practice, no source: looking towards a low sun in ordinary air. */
static void low_sun_warms_the_sky_near_the_horizon(void **state)
{
    (void)state;
    for (double height = 1.0; height <= 5.0; height += 1.0) {
        for (double side = 0.0; side <= 30.0; side += 15.0) {
            view_scene scene = view_clear(30.0, 1.0, height, side);
            for (double elevation = 0.0; elevation <= 4.0; elevation += 1.0) {
                recede_lch near = sky_lch(&scene, elevation);
                assert_true(near.h_deg > 25.0 && near.h_deg < 105.0 && near.c > 10.0);
            }
        }
    }
}

/* Green runs from yellow-green to cyan, violet from purple-blue to pink. */
static void no_fog_is_violet_or_green(void **state)
{
    (void)state;
    double green = 0.0, violet = 0.0;
    for (int k = 0; k < 32; k++) {
        const double visibilities_km[] = {0.2, 2.0, 10.0, 20.0, 40.0, 60.0, 100.0, 250.0};
        const double haze[] = {1.3, 1.0, 0.5, 0.0};
        for (double height = 1.0; height <= 60.0; height *= 1.3) {
            for (double side = 0.0; side <= 180.0; side += 30.0) {
                view_scene scene = view_clear(visibilities_km[k / 4], haze[k % 4], height, side);
                recede_spectrum fog = recede_horizon_radiance(&scene.air, &scene.light);
                recede_lch lch = recede_lch_of_lab(view_lab_in(&scene, &fog));
                if (lch.h_deg > 100.0 && lch.h_deg < 200.0)
                    green = fmax(green, lch.c);
                if (lch.h_deg > 285.0)
                    violet = fmax(violet, lch.c);
            }
        }
    }
    print_message("chroma of a green fog at most %.1f, of a violet one %.1f\n", green, violet);
    assert_below(green, 6.0);
    assert_below(violet, 6.0);
}

/* No source: half a degree in the sky or in the sun's height must not jump. The
 * limits are what was measured, and a little room; steepest is the foot of the
 * sky opposite a sun just up, which is as steep when scattered exactly (see
 * test_sky_by_chance.c). */
static void sky_is_smooth(void **state)
{
    (void)state;
    double by_elevation = 0.0, by_sun = 0.0;
    for (double side = 45.0; side <= 180.0; side += 45.0) {
        for (double height = 1.0; height < 20.0; height += 0.5) {
            view_scene scene = view_clear(20.0, 1.0, height, side);
            view_scene next = view_clear(20.0, 1.0, height + 0.5, side);
            by_sun = fmax(by_sun, recede_delta_e(sky_lab(&scene, 0.0), sky_lab(&next, 0.0)));
        }
        for (double height = 1.0; height < 60.0; height *= 3.0) {
            view_scene scene = view_clear(60.0, 1.0, height, side);
            for (double elevation = 0.0; elevation < 30.0; elevation += 0.5)
                by_elevation = fmax(by_elevation, recede_delta_e(sky_lab(&scene, elevation),
                                                                 sky_lab(&scene, elevation + 0.5)));
        }
    }
    print_message("half a degree of elevation: at most %.2f CIEDE2000; of the sun's height: %.2f\n",
                  by_elevation, by_sun);
    assert_below(by_elevation, 9.0);
    assert_below(by_sun, 3.5);
}

static void elevations_beyond_the_sky_are_its_ends(void **state)
{
    (void)state;
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    assert_near(sky_lab(&scene, -5.0).l, sky_lab(&scene, 0.0).l, 0.0);
    assert_near(sky_lab(&scene, 95.0).l, sky_lab(&scene, 90.0).l, 0.0);
}

/* Between the two colours all the way, and never back. */
static void painted_sky_goes_gently_from_the_horizons_colour_to_the_lights(void **state)
{
    (void)state;
    recede_sky sky = {.kind = RECEDE_SKY_PAINTED};
    recede_air air = {.visibility_km = 20.0, .angstrom = 1.0};
    for (int i = 0; i < RECEDE_BANDS; i++) {
        sky.horizon_colour.at[i] = 0.2 + 0.02 * i; /* orange; invented */
        sky.light_colour.at[i] = 0.9;
    }
    view_scene scene = view_of(&air, &sky);
    double before = 0.0;
    for (double elevation = 0.0; elevation <= 90.0; elevation += 1.0) {
        recede_spectrum at = recede_sky_radiance(&scene.air, &scene.light, elevation);
        recede_spectrum foot = recede_sky_radiance(&scene.air, &scene.light, 0.0);
        recede_spectrum top = recede_sky_radiance(&scene.air, &scene.light, 90.0);
        double share = (at.at[0] - foot.at[0]) / (top.at[0] - foot.at[0]);
        for (int i = 1; i < RECEDE_BANDS; i++)
            assert_near(at.at[i], foot.at[i] + share * (top.at[i] - foot.at[i]), 1e-9 * top.at[i]);
        assert_true(elevation == 0.0 || share > before);
        if (elevation == 10.0)
            assert_near(share, 0.5, 0.02);
        before = share;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sky_meets_the_airlight_at_the_horizon),
        cmocka_unit_test(round_earth_moves_the_horizon_in_very_clear_air_only),
        cmocka_unit_test(sky_meets_the_airlight_in_mist_too),
        cmocka_unit_test(overhead_is_bluer_and_darker_than_the_horizon_by_day),
        cmocka_unit_test(low_sun_warms_the_sky_near_the_horizon),
        cmocka_unit_test(no_fog_is_violet_or_green),
        cmocka_unit_test(sky_is_smooth),
        cmocka_unit_test(elevations_beyond_the_sky_are_its_ends),
        cmocka_unit_test(painted_sky_goes_gently_from_the_horizons_colour_to_the_lights),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
