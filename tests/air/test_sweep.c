/* Every light and air a painter may ask for: nothing may come out absurd. */
#include "air/views.h"

static const double haze[] = {1.3, 1.0, 0.5, 0.0};
static const double visibilities_km[] = {0.02, 0.2, 1.0, 5.0, 20.0, 60.0, 100.0, 250.0};
static const double sun_heights_deg[] = {0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 40.0, 60.0, 90.0};

enum { HAZES = 4, VISIBILITIES = 8, SUN_HEIGHTS = 9 };

static void assert_light_sound(const view_scene *scene)
{
    const recede_light *light = &scene->light;
    recede_spectrum horizon = recede_horizon_radiance(&scene->air, light);
    assert_sound(&light->sun);
    assert_sound(&light->sky);
    assert_sound(&light->global);
    assert_sound(&light->lit);
    assert_sound(&light->shadow);
    assert_sound(&light->sphere);
    assert_sound(&light->rayleigh_source);
    assert_sound(&light->haze_source);
    assert_sound(&horizon);
    assert_true(recede_xyz_of_power(&horizon).y > 0.0);
    assert_true(recede_xyz_of_power(&light->sphere).y > 0.0);
}

/* Band by band between its own colour and the horizon's, which is the airlight
 * of a level path; and its own share is part of what is seen. */
static void assert_planes_between(const view_scene *scene)
{
    recede_spectrum horizon = recede_horizon_radiance(&scene->air, &scene->light);
    const recede_spectrum *sides[] = {&scene->light.lit, &scene->light.shadow};
    for (double distance_m = 0.0; distance_m < 300001.0; distance_m = distance_m * 8.0 + 1.0) {
        recede_path path = recede_path_to(&scene->air, scene->air.eye_m, distance_m);
        for (int side = 0; side < 2; side++) {
            for (double reflectance = 0.0; reflectance <= 1.0; reflectance += 0.25) {
                recede_spectrum own = *sides[side];
                for (int i = 0; i < RECEDE_BANDS; i++)
                    own.at[i] *= reflectance / VIEW_PI;
                recede_view view = recede_look_through(&scene->light, &path, &own);
                for (int i = 0; i < RECEDE_BANDS; i++) {
                    double low = fmin(own.at[i], horizon.at[i]);
                    double high = fmax(own.at[i], horizon.at[i]), slack = 1e-12 * high;
                    assert_true(view.seen.at[i] >= low - slack && view.seen.at[i] <= high + slack);
                    assert_true(view.own.at[i] >= 0.0 && view.own.at[i] <= view.seen.at[i] + slack);
                }
            }
        }
    }
}

static void clear_sky_is_sound_everywhere(void **state)
{
    (void)state;
    for (int k = 0; k < HAZES * VISIBILITIES * SUN_HEIGHTS; k++) {
        double exponent = haze[k % HAZES], visibility = visibilities_km[k / HAZES % VISIBILITIES];
        double height = sun_heights_deg[k / HAZES / VISIBILITIES];
        for (double side = 0.0; side <= 180.0; side += 45.0) {
            view_scene scene = view_clear(visibility, exponent, height, side);
            assert_light_sound(&scene);
            assert_planes_between(&scene);
        }
    }
}

static void sky_is_sound_at_every_elevation(void **state)
{
    (void)state;
    for (int k = 0; k < VISIBILITIES * SUN_HEIGHTS; k++) {
        for (double side = 0.0; side <= 180.0; side += 90.0) {
            view_scene scene = view_clear(visibilities_km[k % VISIBILITIES], haze[k % HAZES],
                                          sun_heights_deg[k / VISIBILITIES], side);
            const double elevations_deg[] = {0.0, 1e-6, 0.3, 3.0, 30.0, 90.0};
            for (int e = 0; e < 6; e++) {
                recede_spectrum sky = recede_sky_radiance(&scene.air, &scene.light,
                                                          elevations_deg[e]);
                assert_sound(&sky);
                assert_true(recede_xyz_of_power(&sky).y > 0.0);
            }
        }
    }
}

static void mist_and_heights_are_sound(void **state)
{
    (void)state;
    const double eyes_m[] = {-500.0, 0.0, 50.0, 9000.0}, tops_m[] = {-500.0, 20.0, 50.0, 800.0};
    recede_sky sky = {.kind = RECEDE_SKY_CLEAR, .sun_height_deg = 15.0, .sun_side_deg = 120.0};
    recede_spectrum white = {{0.0}};
    for (int i = 0; i < RECEDE_BANDS; i++)
        white.at[i] = 0.2;
    for (int k = 0; k < 16; k++) {
        recede_air air = {10.0, 1.0, eyes_m[k / 4], 0.1, tops_m[k % 4]};
        recede_atmosphere probe;
        if (recede_atmosphere_of(&air, &probe, NULL) != RECEDE_OK)
            continue; /* so far down the air itself is thicker than the mist */
        view_scene scene = view_of(&air, &sky);
        assert_light_sound(&scene);
        for (double height = -500.0; height <= 9000.0; height += 475.0) {
            recede_path path = recede_path_to(&scene.air, height, 20000.0);
            recede_spectrum seen = recede_look_through(&scene.light, &path, &white).seen;
            assert_sound(&path.segment[0].tau_haze);
            assert_sound(&seen);
        }
        recede_spectrum top = recede_sky_radiance(&scene.air, &scene.light, 30.0);
        assert_sound(&top);
    }
}

static void other_skies_are_sound(void **state)
{
    (void)state;
    for (int k = 0; k < HAZES * VISIBILITIES; k++) {
        recede_air air = {.visibility_km = visibilities_km[k / HAZES], .angstrom = haze[k % HAZES]};
        recede_sky sky = {.kind = RECEDE_SKY_OVERCAST};
        view_scene overcast = view_of(&air, &sky);
        assert_light_sound(&overcast);
        assert_planes_between(&overcast);
        sky.kind = RECEDE_SKY_PAINTED;
        for (int i = 0; i < RECEDE_BANDS; i++) {
            sky.horizon_colour.at[i] = 0.02 * i; /* invented: a strong orange */
            sky.light_colour.at[i] = 1.0;
        }
        view_scene painted = view_of(&air, &sky);
        assert_light_sound(&painted);
        assert_planes_between(&painted);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(clear_sky_is_sound_everywhere),
        cmocka_unit_test(sky_is_sound_at_every_elevation),
        cmocka_unit_test(mist_and_heights_are_sound),
        cmocka_unit_test(other_skies_are_sound),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
