/*
 * Smooth reflectances. A claim 'reached' is checked by integrating the
 * reflectance, a claim 'not reached' by a plane that has the wanted colour on
 * one side and every possible reflectance on the other, and smoothness by the
 * conditions that mark the optimum of a convex programme (Karush 1939, Kuhn and
 * Tucker 1951). Targets are made in the tests.
 */
#include "recede.h"

#include "colour/observer.h"
#include "support/assert_near.h"

#include <stdlib.h>
#include <string.h>

enum { BANDS = RECEDE_BANDS };

static double random_unit(void)
{
    return rand() / (double)RAND_MAX;
}

static recede_lab lab_of(recede_xyz colour)
{
    return recede_lab_of_xyz(colour, recede_white());
}

static double miss_of(const recede_spectrum *reflectance, recede_xyz wanted)
{
    return recede_delta_e(lab_of(recede_xyz_of_reflectance(reflectance)), lab_of(wanted));
}

static void assert_is_reflectance(const recede_spectrum *r)
{
    for (int i = 0; i < BANDS; i++)
        assert_true(r->at[i] >= 0 && r->at[i] <= 1);
}

/* The colour is reached within a limit, and said to be. */
static recede_smooth assert_reached(recede_xyz wanted, double within)
{
    recede_smooth s = recede_smooth_of_xyz(wanted);
    assert_is_reflectance(&s.reflectance);
    assert_int_equal(s.reached, 1);
    assert_below(s.delta_e, within);
    assert_near(s.delta_e, miss_of(&s.reflectance, wanted), 1e-9);
    return s;
}

static recede_spectrum flat(double height)
{
    recede_spectrum s;
    for (int i = 0; i < BANDS; i++)
        s.at[i] = height;
    return s;
}

static void random_reflectances_are_reached(void **state)
{
    (void)state;
    srand(1);
    for (int n = 0; n < 300; n++) {
        recede_spectrum r;
        for (int i = 0; i < BANDS; i++)
            r.at[i] = n % 2 ? random_unit() : random_unit() < 0.5 ? random_unit() : rand() % 2;
        assert_reached(recede_xyz_of_reflectance(&r), 1e-9);
    }
}

static void the_whole_srgb_cube_is_reached(void **state)
{
    (void)state;
    enum { STEPS = 8 };
    for (int r = 0; r <= STEPS; r++)
        for (int g = 0; g <= STEPS; g++)
            for (int b = 0; b <= STEPS; b++) {
                recede_srgb srgb = {r / (double)STEPS, g / (double)STEPS, b / (double)STEPS};
                assert_reached(recede_xyz_of_srgb(srgb), 1e-9);
            }
}

/* Optimal colours (E. Schroedinger 1920, D. MacAdam 1935) bound the object colour
 * solid: 1 in one run of bands, 0 outside, or the reverse. Also the corners that
 * other 0/1 spectra have, inside the solid or out on it. Drawn in by a step. */
static void colours_at_the_very_edge_are_reached(void **state)
{
    (void)state;
    static const double steps[] = {0, 1e-9, 1e-6, 1e-4, 1e-2};
    srand(2);
    for (int n = 0; n < 1000; n++) {
        int first = rand() % (BANDS + 1), last = rand() % (BANDS + 1), reverse = rand() % 2;
        double step = steps[n % 5], cut = random_unit();
        recede_spectrum r;
        for (int i = 0; i < BANDS; i++) {
            int inside = n % 3 ? i >= first && i < last : rand() % 2;
            double sharp = n % 2 && i == first ? cut : inside != reverse;
            r.at[i] = sharp + step * (0.5 - sharp);
        }
        assert_reached(recede_xyz_of_reflectance(&r), 0.001);
    }
}

static void black_and_white_are_reached(void **state)
{
    (void)state;
    recede_smooth black = assert_reached((recede_xyz){0, 0, 0}, 1e-6);
    recede_smooth white = assert_reached(recede_white(), 1e-6);
    for (int i = 0; i < BANDS; i++) {
        assert_near(black.reflectance.at[i], 0, 1e-8);
        assert_near(white.reflectance.at[i], 1, 1e-6);
    }
}

static void greys_are_flat(void **state)
{
    (void)state;
    for (int n = 1; n < 20; n++) {
        recede_spectrum r = flat(n / 20.0);
        recede_smooth s = assert_reached(recede_xyz_of_reflectance(&r), 1e-9);
        for (int i = 0; i < BANDS; i++)
            assert_near(s.reflectance.at[i], n / 20.0, 1e-7);
    }
}

/* ------------------------------------------------------------ smoothness -- */

/* Slope of half the squared steps with one band. */
static double pull(const recede_spectrum *r, int band)
{
    double sum = 0;
    if (band > 0)
        sum += r->at[band] - r->at[band - 1];
    if (band < BANDS - 1)
        sum += r->at[band] - r->at[band + 1];
    return sum;
}

/* Least squares for the three multipliers over the bands within the bounds. */
static void multipliers(const recede_spectrum *r, const recede_spectrum w[3], double out[3])
{
    double a[3][4] = {{0}};
    for (int i = 0; i < BANDS; i++) {
        if (r->at[i] < 1e-7 || r->at[i] > 1 - 1e-7)
            continue;
        for (int j = 0; j < 3; j++) {
            for (int k = 0; k < 3; k++)
                a[j][k] += w[j].at[i] * w[k].at[i];
            a[j][3] -= w[j].at[i] * pull(r, i);
        }
    }
    for (int p = 0; p < 3; p++)
        for (int j = 0; j < 3; j++)
            for (int k = 3; j != p && k >= p; k--)
                a[j][k] -= a[j][p] / a[p][p] * a[p][k];
    for (int p = 0; p < 3; p++)
        out[p] = a[p][3] / a[p][p];
}

/* At the optimum pull + multipliers . weights is 0 in every band within the
 * bounds, not negative at 0 and not positive at 1. */
static void assert_smoothest(const recede_spectrum *r)
{
    recede_spectrum w[3];
    double m[3];
    recede_reflectance_weights(&w[0], &w[1], &w[2]);
    multipliers(r, w, m);
    for (int i = 0; i < BANDS; i++) {
        double slope = pull(r, i) + m[0] * w[0].at[i] + m[1] * w[1].at[i] + m[2] * w[2].at[i];
        if (r->at[i] > 1e-7)
            assert_below(slope, 1e-6);
        if (r->at[i] < 1 - 1e-7)
            assert_below(-slope, 1e-6);
    }
}

static void the_smoothest_is_found(void **state)
{
    (void)state;
    int at_bounds = 0;
    srand(3);
    for (int n = 0; n < 300; n++) {
        double most = n % 3 ? 1 : 0.2;
        recede_srgb srgb = {most * random_unit(), most * random_unit(), most * random_unit()};
        if (n % 2)
            srgb.r = srgb.b / 20; /* vivid: some bands come to a bound */
        recede_smooth s = assert_reached(recede_xyz_of_srgb(srgb), 1e-9);
        assert_smoothest(&s.reflectance);
        for (int i = 0; i < BANDS; i++)
            at_bounds += s.reflectance.at[i] < 1e-7 || s.reflectance.at[i] > 1 - 1e-7;
    }
    assert_in_range(at_bounds, 300, 300 * BANDS);
}

/* ------------------------------------------------ outside the colour solid -- */

/* The way that the difference from the wanted colour grows, in XYZ. */
static void way_out(recede_xyz from, recede_xyz wanted, double out[3])
{
    const double step = 1e-6;
    for (int i = 0; i < 3; i++) {
        recede_xyz up = from, down = from;
        double *at[2][3] = {{&up.x, &up.y, &up.z}, {&down.x, &down.y, &down.z}};
        *at[0][i] += step;
        *at[1][i] -= step;
        out[i] = recede_delta_e(lab_of(down), lab_of(wanted))
                 - recede_delta_e(lab_of(up), lab_of(wanted));
    }
}

/* The farthest that any reflectance gets along a direction. */
static double farthest(const double along[3])
{
    recede_spectrum w[3];
    double sum = 0;
    recede_reflectance_weights(&w[0], &w[1], &w[2]);
    for (int i = 0; i < BANDS; i++)
        sum += fmax(0, along[0] * w[0].at[i] + along[1] * w[1].at[i] + along[2] * w[2].at[i]);
    return sum;
}

static double dot(const double along[3], recede_xyz c)
{
    return along[0] * c.x + along[1] * c.y + along[2] * c.z;
}

/* Random Lab colours, far out and near: each is reached, or proved out of reach. */
static void what_is_not_reached_cannot_be(void **state)
{
    (void)state;
    int outside = 0;
    srand(4);
    for (int n = 0; n < 600; n++) {
        recede_lab lab = {110 * random_unit() - 5, 240 * random_unit() - 120,
                          240 * random_unit() - 120};
        recede_xyz wanted = recede_xyz_of_lab(lab, recede_white());
        recede_smooth s = recede_smooth_of_xyz(wanted);
        assert_is_reflectance(&s.reflectance);
        assert_near(s.delta_e, miss_of(&s.reflectance, wanted), 1e-9);
        assert_int_equal(s.reached, s.delta_e <= 0.1);
        if (s.reached)
            continue;
        double along[3];
        way_out(recede_xyz_of_reflectance(&s.reflectance), wanted, along);
        assert_true(dot(along, wanted) > farthest(along));
        outside++;
    }
    assert_in_range(outside, 100, 550);
}

/* No step toward any of many reflectances leads nearer: a hundredth of the way,
 * where the solid's edge is all but straight, gains under a hundredth. */
static void the_nearest_found_has_nothing_nearer_around_it(void **state)
{
    (void)state;
    srand(5);
    for (int n = 0; n < 60; n++) {
        recede_lab lab = {n % 2 ? 5 + 90 * random_unit() : 100, 0, 0};
        double chroma = 60 + 60 * random_unit(), hue = 6.2831853 * random_unit();
        lab.a = chroma * cos(hue);
        lab.b = chroma * sin(hue);
        recede_xyz wanted = recede_xyz_of_lab(lab, recede_white());
        recede_smooth s = recede_smooth_of_xyz(wanted);
        for (int other = 0; !s.reached && other < 200; other++) {
            recede_spectrum near = s.reflectance;
            int first = rand() % BANDS, last = rand() % BANDS, outside = rand() % 2;
            for (int i = 0; i < BANDS; i++) {
                double goal = other % 2 ? random_unit() : (i >= first && i < last) != outside;
                near.at[i] += 0.01 * (goal - near.at[i]);
            }
            assert_true(miss_of(&near, wanted) > s.delta_e * 0.99 - 0.01);
        }
    }
}

static void lighter_than_white_with_chroma_is_not_reached(void **state)
{
    (void)state;
    const recede_lab labs[] = {{100, 10, 0}, {100, 0, 20}, {110, 0, 0}, {99, 40, 40}, {-5, 0, 0}};
    for (int i = 0; i < 5; i++) {
        recede_smooth s = recede_smooth_of_xyz(recede_xyz_of_lab(labs[i], recede_white()));
        assert_int_equal(s.reached, 0);
        assert_true(s.delta_e > 0.1);
        assert_is_reflectance(&s.reflectance);
    }
}

/* ---------------------------------------------------------------- the rest -- */

static void the_same_colour_gives_the_same_bytes(void **state)
{
    (void)state;
    srand(6);
    for (int n = 0; n < 30; n++) {
        recede_xyz colour = {random_unit(), random_unit(), random_unit()};
        recede_smooth one = recede_smooth_of_xyz(colour), other = recede_smooth_of_xyz(colour);
        assert_memory_equal(&one.reflectance, &other.reflectance, sizeof one.reflectance);
        assert_true(one.delta_e == other.delta_e && one.reached == other.reached);
    }
}

static void no_colour_at_all_is_not_reached(void **state)
{
    (void)state;
    const recede_xyz odd[] = {{NAN, 1, 1}, {0, INFINITY, 0}, {-INFINITY, 0, 0},
                              {1e300, -1e300, 1e300}, {-1, -1, -1}, {1e-300, 0, 1e3}};
    for (size_t i = 0; i < sizeof odd / sizeof *odd; i++) {
        recede_smooth s = recede_smooth_of_xyz(odd[i]);
        assert_int_equal(s.reached, 0);
        assert_is_reflectance(&s.reflectance);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(random_reflectances_are_reached),
        cmocka_unit_test(the_whole_srgb_cube_is_reached),
        cmocka_unit_test(colours_at_the_very_edge_are_reached),
        cmocka_unit_test(black_and_white_are_reached),
        cmocka_unit_test(greys_are_flat),
        cmocka_unit_test(the_smoothest_is_found),
        cmocka_unit_test(what_is_not_reached_cannot_be),
        cmocka_unit_test(the_nearest_found_has_nothing_nearer_around_it),
        cmocka_unit_test(lighter_than_white_with_chroma_is_not_reached),
        cmocka_unit_test(the_same_colour_gives_the_same_bytes),
        cmocka_unit_test(no_colour_at_all_is_not_reached),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
