/* Light on a crown, under clear, overcast and painted skies. */
#include "air/solar.h"
#include "air/views.h"

#include <string.h>

enum { DIRECTIONS = 4000 };

typedef struct vector { double x, y, z; } vector;

static double dot(vector a, vector b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

/* Directions spread evenly over the sphere (a spiral by the golden angle). */
static vector direction(int k)
{
    double z = 1.0 - (2.0 * k + 1.0) / DIRECTIONS, ring = sqrt(1.0 - z * z);
    double turn = 2.39996322972865332 * k;
    return (vector){ring * cos(turn), ring * sin(turn), z};
}

/* Mean irradiance over the half of a sphere that faces a way, under a radiance
 * by height: summed over its surface and over the sky. */
static double half_sphere(vector facing, double (*radiance)(double sine))
{
    double sum = 0.0;
    for (int n = 0; n < DIRECTIONS; n += 4) {
        vector normal = direction(n);
        if (dot(normal, facing) <= 0.0)
            continue;
        for (int k = 0; k < DIRECTIONS; k++) {
            vector from = direction(k);
            sum += fmax(0.0, dot(normal, from)) * radiance(from.z);
        }
    }
    return sum * 4.0 * VIEW_PI / DIRECTIONS / (DIRECTIONS / 4 / 2.0);
}

/* Radiances with a horizontal irradiance of 1 from above, or below. */
static double even_sky(double sine) { return sine > 0.0 ? 1.0 / VIEW_PI : 0.0; }
static double even_ground(double sine) { return sine < 0.0 ? 1.0 / VIEW_PI : 0.0; }

/* P. Moon and D. Spencer 1942: radiance goes as 1 + 2 sin, E = 7 pi / 9 of the
 * zenith's. */
static double overcast_sky(double sine)
{
    return sine > 0.0 ? 9.0 / (7.0 * VIEW_PI) * (1.0 + 2.0 * sine) / 3.0 : 0.0;
}

static void crown_sides_are_the_halves_of_a_sphere(void **state)
{
    (void)state;
    const double heights_deg[] = {5.0, 40.0, 90.0};
    for (int k = 0; k < 3; k++) {
        double h = heights_deg[k] * VIEW_PI / 180.0;
        vector sunward = {cos(h), 0.0, sin(h)}, away = {-cos(h), 0.0, -sin(h)};
        double sky_on_lit = half_sphere(sunward, even_sky);
        double sky_on_shadow = half_sphere(away, even_sky);
        double ground_on_lit = half_sphere(sunward, even_ground);
        double ground_on_shadow = half_sphere(away, even_ground);
        view_scene scene = view_clear(20.0, 1.0, heights_deg[k], 90.0);
        for (int i = 0; i < RECEDE_BANDS; i++) {
            double sun = scene.light.sun.at[i], sky = scene.light.sky.at[i];
            double ground = 0.12 * (sun * sin(h) + sky);
            double lit = 0.5 * sun + sky_on_lit * sky + ground_on_lit * ground;
            double shadow = sky_on_shadow * sky + ground_on_shadow * ground;
            assert_near(scene.light.lit.at[i] / lit, 1.0, 0.003);
            assert_near(scene.light.shadow.at[i] / shadow, 1.0, 0.003);
            assert_near(scene.light.sphere.at[i] / ((lit + shadow) / 2.0), 1.0, 0.003);
            assert_near(scene.light.global.at[i], sun * sin(h) + sky, 1e-12);
        }
    }
}

static void overcast_light_is_that_of_moon_and_spencer(void **state)
{
    (void)state;
    recede_air air = {.visibility_km = 20.0, .angstrom = 1.0};
    recede_sky sky = {.kind = RECEDE_SKY_OVERCAST};
    view_scene scene = view_of(&air, &sky);
    recede_spectrum d65 = recede_illuminant_power(RECEDE_D65);
    recede_spectrum horizon = recede_horizon_radiance(&scene.air, &scene.light);
    recede_spectrum zenith = recede_sky_radiance(&scene.air, &scene.light, 90.0);
    vector up = {0.0, 0.0, 1.0}, down = {0.0, 0.0, -1.0};
    double upper = half_sphere(up, overcast_sky) + 0.12 * half_sphere(up, even_ground);
    double lower = half_sphere(down, overcast_sky) + 0.12 * half_sphere(down, even_ground);
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double e = scene.light.global.at[i];
        assert_near(e / d65.at[i], scene.light.global.at[0] / d65.at[0], 1e-12);
        assert_near(zenith.at[i] / horizon.at[i], 3.0, 1e-12);
        assert_near(e / zenith.at[i], 7.0 * VIEW_PI / 9.0, 1e-12);
        assert_near(scene.light.lit.at[i] / e, upper, 0.003);
        assert_near(scene.light.shadow.at[i] / e, lower, 0.003);
        for (double elevation = 0.0; elevation <= 90.0; elevation += 15.0) {
            recede_spectrum at = recede_sky_radiance(&scene.air, &scene.light, elevation);
            double sine = sin(elevation * VIEW_PI / 180.0);
            assert_near(at.at[i] / e, overcast_sky(sine + 1e-300), 1e-12);
        }
    }
}

static recede_spectrum colour_of(double r, double g, double b)
{
    recede_smooth smooth = recede_smooth_of_xyz(recede_xyz_of_srgb((recede_srgb){r, g, b}));
    assert_int_equal(smooth.reached, 1);
    return smooth.reflectance;
}

/* What a painter gives as the horizon's and the light's colour is what the
 * picture has, relative to white, with no adaptation in between. */
static void painted_colours_come_back(void **state)
{
    (void)state;
    recede_air air = {.visibility_km = 20.0, .angstrom = 1.0};
    recede_sky sky = {.kind = RECEDE_SKY_PAINTED, .horizon_colour = colour_of(0.93, 0.62, 0.35),
                      .light_colour = colour_of(1.0, 0.95, 0.85)};
    view_scene scene = view_of(&air, &sky);
    recede_spectrum horizon = recede_horizon_radiance(&scene.air, &scene.light);
    recede_spectrum zenith = recede_sky_radiance(&scene.air, &scene.light, 90.0);
    recede_spectrum white, none = {{0.0}};
    for (int i = 0; i < RECEDE_BANDS; i++)
        white.at[i] = 1.0;
    recede_spectrum lit_white = view_at(&scene, &white, &scene.light.lit, 0.0);
    const struct { const recede_spectrum *given, *found; } pairs[] = {
        {&sky.horizon_colour, &horizon}, {&sky.light_colour, &lit_white},
        {&sky.light_colour, &zenith},
    };
    for (int k = 0; k < 3; k++) {
        recede_lab given = recede_lab_of_xyz(recede_xyz_of_reflectance(pairs[k].given),
                                             recede_white());
        recede_xyz seen = view_adapted(&scene.light.sphere, pairs[k].found);
        assert_near(recede_delta_e(given, recede_lab_of_xyz(seen, recede_white())), 0.0, 1e-6);
    }
    assert_sound(&scene.light.shadow);
    recede_spectrum shaded = view_at(&scene, &none, &scene.light.shadow, 1e6);
    for (int i = 0; i < RECEDE_BANDS; i++)
        assert_near(shaded.at[i], horizon.at[i], 1e-6 * horizon.at[i]);
}

/* CIE 015: chromaticities of daylight, by correlated colour temperature. */
static void daylight_uv(double kelvin, double *u, double *v)
{
    double t = 1000.0 / kelvin;
    double x = kelvin <= 7000.0
                   ? -4.6070 * t * t * t + 2.9678 * t * t + 0.09911 * t + 0.244063
                   : -2.0064 * t * t * t + 1.9018 * t * t + 0.24748 * t + 0.237040;
    double y = -3.000 * x * x + 2.870 * x - 0.275;
    double scale = -2.0 * x + 12.0 * y + 3.0;
    *u = 4.0 * x / scale;
    *v = 9.0 * y / scale;
}

static double distance_from_daylight(const recede_spectrum *light)
{
    double u, v, nearest = 1.0;
    recede_uv_of_xyz(recede_xyz_of_power(light), &u, &v);
    for (double kelvin = 4000.0; kelvin <= 25000.0; kelvin += 10.0) {
        double daylight_u, daylight_v;
        daylight_uv(kelvin, &daylight_u, &daylight_v);
        nearest = fmin(nearest, hypot(u - daylight_u, v - daylight_v));
    }
    return nearest;
}

/* CIE 015: the locus was measured under the open sky, so the sum of sun and sky
 * must lie on it. */
static void global_light_is_daylight(void **state)
{
    (void)state;
    const double visibilities_km[] = {1.0, 5.0, 20.0, 80.0, 250.0}, haze[] = {1.3, 1.0, 0.5, 0.0};
    double worst = 0.0;
    for (double height = 20.0; height <= 90.0; height += 5.0) {
        for (int k = 0; k < 20; k++) {
            view_scene scene = view_clear(visibilities_km[k / 4], haze[k % 4], height, 90.0);
            worst = fmax(worst, distance_from_daylight(&scene.light.global));
        }
    }
    print_message("global light, sun 20 to 90 deg: at most %.4f in u'v' from daylight\n", worst);
    assert_below(worst, 0.004);
}

/* Global light of one band as the mean over its 10 nm: trapezoids by 0.5 nm. */
static double band_mean(const view_scene *scene, double height_deg, int band)
{
    double mass = recede_air_mass(height_deg), sum = 0.0;
    recede_solar_air air = {height_deg, mass, 1.0, 0.344, 1.42, 0.75, 0.12, 1.0 / mass, 1.0};
    for (int k = -10; k <= 10; k++) {
        double nm = 380.0 + 10.0 * band + 0.5 * k, from_400 = log(nm / 400.0);
        recede_solar_haze haze = {scene->air.haze_per_km.at[17] * scene->air.haze_scale_km
                                      * 550.0 / nm,
                                  0.945 * exp(-0.095 * from_400 * from_400)};
        recede_solar_band at = recede_solar_band_at(nm);
        recede_solar_irradiance light = recede_solar(&air, &at, haze);
        double global = light.sun * sin(height_deg * VIEW_PI / 180.0) + light.sky;
        sum += global * (k == -10 || k == 10 ? 0.5 : 1.0) / 20.0;
    }
    return sum;
}

/* The model's coefficients are taken at the middle of a band. Whether a mean over
 * the band would be better does not matter: it cannot be seen. */
static void middles_of_bands_stand_for_the_bands(void **state)
{
    (void)state;
    double worst = 0.0;
    for (double height = 5.0; height <= 85.0; height += 20.0) {
        view_scene scene = view_clear(20.0, 1.0, height, 90.0);
        recede_spectrum means;
        for (int i = 0; i < RECEDE_BANDS; i++)
            means.at[i] = band_mean(&scene, height, i);
        recede_xyz one = recede_xyz_of_power(&scene.light.global);
        recede_xyz other = recede_xyz_of_power(&means), white = recede_white();
        recede_lab a = recede_lab_of_xyz((recede_xyz){one.x / one.y, 1.0, one.z / one.y}, white);
        recede_lab b = recede_lab_of_xyz((recede_xyz){other.x / one.y, other.y / one.y,
                                                      other.z / one.y}, white);
        worst = fmax(worst, recede_delta_e(a, b));
    }
    print_message("band means against middles: at most %.2f CIEDE2000\n", worst);
    assert_below(worst, 0.1);
}

static void what_cannot_be_is_refused(void **state)
{
    (void)state;
    const struct { double height, side; recede_code code; const char *path; } cases[] = {
        {0.49, 90.0, RECEDE_OUT_OF_RANGE, "light.sun_height"},
        {90.1, 90.0, RECEDE_OUT_OF_RANGE, "light.sun_height"},
        {NAN, 90.0, RECEDE_NOT_FINITE, "light.sun_height"},
        {40.0, -1.0, RECEDE_OUT_OF_RANGE, "light.sun_side"},
        {40.0, 181.0, RECEDE_OUT_OF_RANGE, "light.sun_side"},
        {40.0, INFINITY, RECEDE_NOT_FINITE, "light.sun_side"},
    };
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_sky sky = {.kind = RECEDE_SKY_CLEAR, .sun_height_deg = cases[i].height,
                          .sun_side_deg = cases[i].side};
        recede_error error;
        memset(&error, 0, sizeof error);
        assert_int_equal(recede_light_of(&scene.air, &sky, &scene.light, &error), cases[i].code);
        assert_string_equal(error.path, cases[i].path);
        sky.kind = RECEDE_SKY_OVERCAST; /* which has no sun */
        assert_int_equal(recede_light_of(&scene.air, &sky, &scene.light, NULL), RECEDE_OK);
    }
}

static void painted_colours_that_cannot_be_are_refused(void **state)
{
    (void)state;
    const struct { double reflectance; recede_code code; } cases[] = {
        {-1e-68, RECEDE_OUT_OF_RANGE}, {1 + 1e-12, RECEDE_OUT_OF_RANGE}, {NAN, RECEDE_NOT_FINITE},
        {-INFINITY, RECEDE_NOT_FINITE}, {0, RECEDE_OK}, {1, RECEDE_OK},
    };
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        for (int light = 0; light < 2; light++) {
            recede_sky sky = {.kind = RECEDE_SKY_PAINTED};
            recede_light out;
            recede_error error = {.code = RECEDE_OK};
            for (int band = 0; band < RECEDE_BANDS; band++)
                sky.horizon_colour.at[band] = sky.light_colour.at[band] = 0.5;
            (light ? &sky.light_colour : &sky.horizon_colour)->at[7] = cases[i].reflectance;
            assert_int_equal(recede_light_of(&scene.air, &sky, &out, &error), cases[i].code);
            if (cases[i].code)
                assert_string_equal(error.path, light ? "light.light" : "light.horizon");
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(crown_sides_are_the_halves_of_a_sphere),
        cmocka_unit_test(overcast_light_is_that_of_moon_and_spencer),
        cmocka_unit_test(painted_colours_come_back),
        cmocka_unit_test(global_light_is_daylight),
        cmocka_unit_test(middles_of_bands_stand_for_the_bands),
        cmocka_unit_test(what_cannot_be_is_refused),
        cmocka_unit_test(painted_colours_that_cannot_be_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
