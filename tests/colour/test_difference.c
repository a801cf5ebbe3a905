/*
 * CIEDE2000 against the pairs of G. Sharma, W. Wu and E. Dalal, Color Research
 * and Application 30 (2005) 21-30, table 1, printed to four decimals, and against
 * Little CMS, a general-purpose colour library.
 */
#include "recede.h"

#include "colour/difference.h"
#include "support/assert_near.h"

#include <lcms2.h>
#include <stdlib.h>

typedef struct pair {
    recede_lab one, other;
    double difference;
} pair;

/* In the tenth pair the hues differ by exactly 180 degrees. */
static const pair pairs[] = {
    {{50.0000, 2.6772, -79.7751}, {50.0000, 0.0000, -82.7485}, 2.0425},
    {{50.0000, 3.1571, -77.2803}, {50.0000, 0.0000, -82.7485}, 2.8615},
    {{50.0000, 2.8361, -74.0200}, {50.0000, 0.0000, -82.7485}, 3.4412},
    {{50.0000, -1.3802, -84.2814}, {50.0000, 0.0000, -82.7485}, 1.0000},
    {{50.0000, -1.1848, -84.8006}, {50.0000, 0.0000, -82.7485}, 1.0000},
    {{50.0000, -0.9009, -85.5211}, {50.0000, 0.0000, -82.7485}, 1.0000},
    {{50.0000, 0.0000, 0.0000}, {50.0000, -1.0000, 2.0000}, 2.3669},
    {{50.0000, -1.0000, 2.0000}, {50.0000, 0.0000, 0.0000}, 2.3669},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0009}, 7.1792},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0010}, 7.1792},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0011}, 7.2195},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0012}, 7.2195},
    {{50.0000, -0.0010, 2.4900}, {50.0000, 0.0009, -2.4900}, 4.8045},
    {{50.0000, -0.0010, 2.4900}, {50.0000, 0.0010, -2.4900}, 4.8045},
    {{50.0000, -0.0010, 2.4900}, {50.0000, 0.0011, -2.4900}, 4.7461},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 0.0000, -2.5000}, 4.3065},
    {{50.0000, 2.5000, 0.0000}, {73.0000, 25.0000, -18.0000}, 27.1492},
    {{50.0000, 2.5000, 0.0000}, {61.0000, -5.0000, 29.0000}, 22.8977},
    {{50.0000, 2.5000, 0.0000}, {56.0000, -27.0000, -3.0000}, 31.9030},
    {{50.0000, 2.5000, 0.0000}, {58.0000, 24.0000, 15.0000}, 19.4535},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 3.1736, 0.5854}, 1.0000},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 3.2972, 0.0000}, 1.0000},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 1.8634, 0.5757}, 1.0000},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 3.2592, 0.3350}, 1.0000},
    {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
    {{63.0109, -31.0961, -5.8663}, {62.8187, -29.7946, -4.0864}, 1.2630},
    {{61.2901, 3.7196, -5.3901}, {61.4292, 2.2480, -4.9620}, 1.8731},
    {{35.0831, -44.1164, 3.7933}, {35.0232, -40.0716, 1.5901}, 1.8645},
    {{22.7233, 20.0904, -46.6940}, {23.0331, 14.9730, -42.5619}, 2.0373},
    {{36.4612, 47.8580, 18.3852}, {36.2715, 50.5065, 21.2231}, 1.4146},
    {{90.8027, -2.0831, 1.4410}, {91.1528, -1.6435, 0.0447}, 1.4441},
    {{90.9257, -0.5406, -0.9208}, {88.6381, -0.8985, -0.7239}, 1.5381},
    {{6.7747, -0.2908, -2.4247}, {5.8714, -0.0985, -2.2286}, 0.6377},
    {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082},
};
enum { PAIRS = sizeof pairs / sizeof *pairs };

static double random_between(double least, double most)
{
    return least + (most - least) * (rand() / (double)RAND_MAX);
}

static recede_lab random_lab(void)
{
    return (recede_lab){random_between(0, 100), random_between(-110, 110),
                        random_between(-110, 110)};
}

static void the_published_pairs_agree(void **state)
{
    (void)state;
    assert_int_equal(PAIRS, 34);
    for (int i = 0; i < PAIRS; i++) {
        assert_near(recede_delta_e(pairs[i].one, pairs[i].other), pairs[i].difference, 0.00005);
        assert_near(recede_delta_e(pairs[i].other, pairs[i].one), pairs[i].difference, 0.00005);
    }
}

static void either_way_is_the_same_to_the_last_bit(void **state)
{
    (void)state;
    srand(1);
    for (int i = 0; i < 5000; i++) {
        recede_lab one = random_lab(), other = random_lab();
        if (i % 4 == 0)
            other = (recede_lab){other.l, -one.a, -one.b}; /* hues opposite */
        assert_true(recede_delta_e(one, other) == recede_delta_e(other, one));
    }
}

/* Opposite hues are left out: rounding decides there which way round they go. */
static void little_cms_agrees(void **state)
{
    (void)state;
    srand(2);
    for (int i = 0; i < 5000; i++) {
        recede_lab one = random_lab(), other = random_lab();
        if (i % 2)
            other = (recede_lab){one.l + random_between(-3, 3), one.a + random_between(-3, 3),
                                 one.b + random_between(-3, 3)};
        cmsCIELab theirs = {one.l, one.a, one.b}, their_other = {other.l, other.a, other.b};
        assert_near(recede_delta_e(one, other),
                    cmsCIE2000DeltaE(&theirs, &their_other, 1, 1, 1), 1e-9);
    }
}

/* Opposite hues, however they round, are 180 degrees apart, and the mean hue of
 * h and h + 180 is h + 90. With L* and chroma alike only the hue's term is left. */
static void opposite_hues_have_the_mean_the_paper_gives(void **state)
{
    (void)state;
    const double degree = acos(-1) / 180;
    srand(5);
    for (int i = 0; i < 2000; i++) {
        double a = random_between(-100, 100), b = random_between(0.01, 100);
        double seventh = pow(hypot(a, b), 7);
        double stretched = a * (1.5 - 0.5 * sqrt(seventh / (seventh + pow(25, 7))));
        double c = hypot(stretched, b), mean = atan2(b, stretched) / degree + 90;
        double t = 1 - 0.17 * cos((mean - 30) * degree) + 0.24 * cos(2 * mean * degree)
                   + 0.32 * cos((3 * mean + 6) * degree) - 0.20 * cos((4 * mean - 63) * degree);
        recede_lab one = {40, a, b}, other = {40, -a, -b};
        assert_near(recede_delta_e(one, other), 2 * c / (1 + 0.015 * c * t), 1e-9);
    }
}

static void a_colour_does_not_differ_from_itself(void **state)
{
    (void)state;
    srand(3);
    for (int i = 0; i < 500; i++) {
        recede_lab lab = random_lab();
        assert_true(recede_delta_e(lab, lab) == 0);
    }
    recede_lab black = {0, 0, 0}, white = {100, 0, 0};
    assert_true(recede_delta_e(black, black) == 0);
    assert_near(recede_delta_e(black, white), 100, 1e-12);
}

static void the_parts_make_the_whole(void **state)
{
    (void)state;
    srand(4);
    for (int i = 0; i < 500; i++) {
        recede_lab one = random_lab(), other = random_lab();
        recede_difference d = recede_difference_of(one, other);
        double square = d.l * d.l + d.c * d.c + d.h * d.h + d.turn * d.c * d.h;
        assert_near(recede_delta_e(one, other), sqrt(square), 1e-9);
        assert_true(fabs(d.turn) <= 2);
    }
}

/* What is not a colour must not pass for no difference. */
static void not_a_number_stays_one(void **state)
{
    (void)state;
    recede_lab grey = {50, 0, 0}, none = {NAN, 0, 0}, half = {50, NAN, 3};
    assert_true(isnan(recede_delta_e(grey, none)));
    assert_true(isnan(recede_delta_e(half, grey)));
}

static void far_colours_differ_finitely(void **state)
{
    (void)state;
    recede_lab grey = {50, 0, 0}, far = {1e4, -1e60, 1e60};
    assert_true(isfinite(recede_delta_e(grey, far)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_published_pairs_agree),
        cmocka_unit_test(either_way_is_the_same_to_the_last_bit),
        cmocka_unit_test(little_cms_agrees),
        cmocka_unit_test(opposite_hues_have_the_mean_the_paper_gives),
        cmocka_unit_test(a_colour_does_not_differ_from_itself),
        cmocka_unit_test(the_parts_make_the_whole),
        cmocka_unit_test(not_a_number_stays_one),
        cmocka_unit_test(far_colours_differ_finitely),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
