/* Optical depths along sloping paths, in closed form, against summing them. */
#include "air/views.h"

enum { STEPS = 4000 };

/* Mean of exp(-z / scale) over part of a line, z from low to high above the eye:
 * Simpson's rule. */
static double mean_density(double low_km, double high_km, double scale_km)
{
    double sum = 0.0;
    for (int k = 0; k <= STEPS; k++) {
        double z = low_km + (high_km - low_km) * k / STEPS;
        double weight = k == 0 || k == STEPS ? 1.0 : k % 2 ? 4.0 : 2.0;
        sum += weight * exp(-z / scale_km);
    }
    return sum / (3.0 * STEPS);
}

/* Where along the line, 0 to 1, it crosses the mist's top: by halving. */
static double crossing(const recede_atmosphere *air, double height_m)
{
    double inside = air->eye_m < air->mist_top_m ? 0.0 : 1.0, outside = 1.0 - inside;
    for (int k = 0; k < 200; k++) {
        double middle = (inside + outside) / 2.0;
        double z = air->eye_m + (height_m - air->eye_m) * middle;
        if (z < air->mist_top_m)
            inside = middle;
        else
            outside = middle;
    }
    return inside;
}

static void assert_segment(const recede_atmosphere *air, const recede_segment *segment,
                           double height_m, double distance_m, double from, double to)
{
    double rise_km = (height_m - air->eye_m) / 1000.0;
    double length_km = distance_m / 1000.0 * (to - from);
    double middle_m = air->eye_m + (height_m - air->eye_m) * (from + to) / 2.0;
    int in_mist = air->has_mist && middle_m < air->mist_top_m;
    double low_km = from * rise_km, high_km = to * rise_km;
    double rayleigh = length_km * mean_density(low_km, high_km, air->rayleigh_scale_km);
    double haze = length_km * mean_density(low_km, high_km, air->haze_scale_km);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double mist = in_mist ? air->mist_per_km.at[i] * length_km : 0.0;
        double tau_rayleigh = air->rayleigh_per_km.at[i] * rayleigh;
        double tau_haze = air->haze_per_km.at[i] * haze + mist;
        assert_near(segment->tau_rayleigh.at[i], tau_rayleigh, 1e-9 * fmax(1.0, tau_rayleigh));
        assert_near(segment->tau_haze.at[i], tau_haze, 1e-9 * fmax(1.0, tau_haze));
    }
}

static void assert_path(const recede_atmosphere *air, double height_m, double distance_m)
{
    recede_path path = recede_path_to(air, height_m, distance_m);
    int crosses = air->has_mist
                  && (air->eye_m < air->mist_top_m) != (height_m < air->mist_top_m);
    assert_int_equal(path.segments, crosses ? 2 : 1);
    double at = crosses ? crossing(air, height_m) : 1.0;
    assert_segment(air, &path.segment[0], height_m, distance_m, 0.0, at);
    if (crosses)
        assert_segment(air, &path.segment[1], height_m, distance_m, at, 1.0);
}

static recede_atmosphere atmosphere(double visibility_km, double eye_m, double mist_visibility_km,
                                    double mist_top_m)
{
    recede_air air = {visibility_km, 1.0, eye_m, mist_visibility_km, mist_top_m};
    recede_atmosphere out;
    assert_int_equal(recede_atmosphere_of(&air, &out, NULL), RECEDE_OK);
    return out;
}

static const double heights_m[] = {-400.0, 0.0,   39.999999, 40.0,  40.0001,
                                   41.0,   300.0, 2500.0,    8000.0};
enum { HEIGHTS = sizeof heights_m / sizeof heights_m[0] };

static void closed_form_is_the_integral(void **state)
{
    (void)state;
    const double visibilities_km[] = {5.0, 20.0, 200.0};
    for (int v = 0; v < 3; v++) {
        recede_atmosphere air = atmosphere(visibilities_km[v], 40.0, 0.0, 0.0);
        for (int h = 0; h < HEIGHTS; h++)
            assert_path(&air, heights_m[h], 9000.0);
    }
}

static void closed_form_is_the_integral_through_mist(void **state)
{
    (void)state;
    const double eyes_m[] = {0.0, 99.0, 100.0, 101.0, 600.0};
    for (int e = 0; e < 5; e++) {
        recede_atmosphere air = atmosphere(25.0, eyes_m[e], 0.4, 100.0);
        for (int h = 0; h < HEIGHTS; h++)
            assert_path(&air, heights_m[h], 12000.0);
    }
}

static void equal_heights_are_the_straight_path_exactly(void **state)
{
    (void)state;
    recede_atmosphere air = atmosphere(20.0, 123.0, 0.0, 0.0);
    recede_path path = recede_path_to(&air, 123.0, 7000.0);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        assert_near(path.segment[0].tau_rayleigh.at[i], air.rayleigh_per_km.at[i] * 7.0, 0.0);
        assert_near(path.segment[0].tau_haze.at[i], air.haze_per_km.at[i] * 7.0, 0.0);
    }
}

/* A rise too small to see must not show: the mean density over a rise r is 1 -
 * r / (2 H), which naive code loses to rounding. */
static void tiny_rises_change_next_to_nothing(void **state)
{
    (void)state;
    recede_atmosphere air = atmosphere(20.0, 0.0, 0.0, 0.0);
    double level = air.haze_per_km.at[17] * 7.0;
    for (double rise_m = 1e-9; rise_m < 1.0; rise_m *= 10.0) {
        double up = recede_path_to(&air, rise_m, 7000.0).segment[0].tau_haze.at[17];
        double down = recede_path_to(&air, -rise_m, 7000.0).segment[0].tau_haze.at[17];
        double slope = rise_m / 2000.0 / air.haze_scale_km;
        assert_near(up / level, 1.0 - slope, 1e-15 + slope * slope);
        assert_near(down / level, 1.0 + slope, 1e-15 + slope * slope);
    }
}

static void no_line_is_longer_than_it_is(void **state)
{
    (void)state;
    recede_atmosphere air = atmosphere(20.0, 0.0, 0.0, 0.0);
    recede_path beyond = recede_path_to(&air, 5000.0, 300.0);
    recede_path straight_up = recede_path_to(&air, 300.0, 300.0);
    recede_path nowhere = recede_path_to(&air, 5000.0, 0.0);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        assert_near(beyond.segment[0].tau_haze.at[i], straight_up.segment[0].tau_haze.at[i], 0.0);
        assert_near(recede_path_transmission(&nowhere).at[i], 1.0, 0.0);
    }
}

/* Thick fog seen from a mountain: the depth grows past all bounds downward. */
static void depths_stay_finite_far_below_the_eye(void **state)
{
    (void)state;
    view_scene scene = view_clear(0.02, 1.3, 40.0, 90.0);
    scene.air.eye_m = 9000.0;
    recede_path path = recede_path_to(&scene.air, -500.0, 300000.0);
    recede_spectrum white = scene.light.lit;
    recede_spectrum seen = recede_look_through(&scene.light, &path, &white).seen;
    recede_spectrum transmission = recede_path_transmission(&path);
    assert_sound(&path.segment[0].tau_haze);
    assert_sound(&seen);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        assert_near(transmission.at[i], 0.0, 0.0);
        assert_near(seen.at[i] / scene.light.haze_source.at[i], 1.0, 1e-9);
    }
}

static double own_share(const recede_atmosphere *air, double height_m, double distance_m)
{
    recede_path path = recede_path_to(air, height_m, distance_m);
    return recede_path_transmission(&path).at[17];
}

/* Common practice, no source. */
static void peak_above_the_mist_is_clearer_at_its_crest_than_at_its_foot(void **state)
{
    (void)state;
    const double eyes_m[] = {5.0, 200.0};
    for (int e = 0; e < 2; e++) {
        recede_atmosphere air = atmosphere(30.0, eyes_m[e], 0.5, 80.0);
        double foot = own_share(&air, 20.0, 6000.0), crest = own_share(&air, 700.0, 6000.0);
        assert_true(crest > 2.0 * foot);
    }
    recede_atmosphere haze = atmosphere(30.0, 40.0, 0.0, 0.0);
    assert_true(own_share(&haze, 700.0, 6000.0) > own_share(&haze, 20.0, 6000.0));
}

/* Out of mist into clear air: what the far part sends, seen through the near. */
static void segments_are_looked_through_one_behind_the_other(void **state)
{
    (void)state;
    recede_air air = {30.0, 1.0, 5.0, 2.0, 80.0};
    recede_sky sky = {.kind = RECEDE_SKY_CLEAR, .sun_height_deg = 30.0, .sun_side_deg = 70.0};
    view_scene scene = view_of(&air, &sky);
    recede_path path = recede_path_to(&scene.air, 600.0, 9000.0);
    assert_int_equal(path.segments, 2);
    recede_view whole = recede_look_through(&scene.light, &path, &scene.light.shadow);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double light = scene.light.shadow.at[i], own = light;
        for (int s = 1; s >= 0; s--) {
            double rayleigh = path.segment[s].tau_rayleigh.at[i];
            double haze = path.segment[s].tau_haze.at[i];
            double airlight = (rayleigh * scene.light.rayleigh_source.at[i]
                               + haze * scene.light.haze_source.at[i]) / (rayleigh + haze);
            double share = exp(-rayleigh - haze);
            light = light * share + airlight * (1.0 - share);
            own *= share;
        }
        assert_near(whole.seen.at[i] / light, 1.0, 1e-12);
        assert_near(whole.own.at[i] / own, 1.0, 1e-12);
    }
}

/* Visibility 300 m, plane at 1 km; visibility 100 km, ridge at 30 km. */
static void mist_hides_and_clear_air_shows(void **state)
{
    (void)state;
    recede_atmosphere mist = atmosphere(0.3, 0.0, 0.0, 0.0);
    recede_atmosphere clear = atmosphere(100.0, 0.0, 0.0, 0.0);
    assert_true(own_share(&mist, 0.0, 1000.0) < 0.001);
    assert_true(own_share(&clear, 0.0, 30000.0) > 0.4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(closed_form_is_the_integral),
        cmocka_unit_test(closed_form_is_the_integral_through_mist),
        cmocka_unit_test(equal_heights_are_the_straight_path_exactly),
        cmocka_unit_test(tiny_rises_change_next_to_nothing),
        cmocka_unit_test(no_line_is_longer_than_it_is),
        cmocka_unit_test(depths_stay_finite_far_below_the_eye),
        cmocka_unit_test(peak_above_the_mist_is_clearer_at_its_crest_than_at_its_foot),
        cmocka_unit_test(segments_are_looked_through_one_behind_the_other),
        cmocka_unit_test(mist_hides_and_clear_air_shows),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
