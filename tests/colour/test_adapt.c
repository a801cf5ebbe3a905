/*
 * CAT16: C. Li and others, Color Research and Application 42 (2017) 703-718,
 * worked here anew in long double: the matrix's rows as the paper prints them,
 * the way back by Cramer's rule.
 */
#include "recede.h"

#include "support/assert_near.h"

#include <stdlib.h>

typedef struct triple { long double of[3]; } triple;

static const long double rows[3][3] = {
    {0.401288L, 0.650173L, -0.051461L},
    {-0.250268L, 1.204414L, 0.045854L},
    {-0.002079L, 0.048952L, 0.953127L},
};

static triple cones_of(recede_xyz c)
{
    triple out;
    for (int i = 0; i < 3; i++)
        out.of[i] = rows[i][0] * c.x + rows[i][1] * c.y + rows[i][2] * c.z;
    return out;
}

/* Determinant of the matrix with one column (0 to 2; else none) replaced. */
static long double determinant(int replaced, triple by)
{
    long double m[3][3];
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            m[i][j] = j == replaced ? by.of[i] : rows[i][j];
    return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
           - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
           + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
}

static triple expected(recede_xyz colour, recede_xyz from, recede_xyz to, double degree)
{
    triple c = cones_of(colour), f = cones_of(from), t = cones_of(to), out;
    for (int i = 0; i < 3; i++)
        c.of[i] *= degree * t.of[i] / f.of[i] + 1 - degree;
    for (int i = 0; i < 3; i++)
        out.of[i] = determinant(i, c) / determinant(-1, c);
    return out;
}

static void assert_same(recede_xyz found, triple wanted, double tolerance)
{
    assert_near(found.x, (double)wanted.of[0], tolerance);
    assert_near(found.y, (double)wanted.of[1], tolerance);
    assert_near(found.z, (double)wanted.of[2], tolerance);
}

static recede_xyz random_xyz(void)
{
    return (recede_xyz){rand() / (double)RAND_MAX, rand() / (double)RAND_MAX,
                        rand() / (double)RAND_MAX};
}

static recede_xyz white_under(recede_illuminant light)
{
    recede_spectrum one;
    for (int i = 0; i < RECEDE_BANDS; i++)
        one.at[i] = 1;
    return recede_xyz_under(&one, light);
}

static void it_is_the_papers_transform(void **state)
{
    (void)state;
    recede_xyz lamp = white_under(RECEDE_A), day = recede_white();
    srand(1);
    for (int i = 0; i < 500; i++) {
        recede_xyz colour = random_xyz();
        double degree = (i % 11) / 10.0;
        assert_same(recede_cat16(colour, lamp, day, degree), expected(colour, lamp, day, degree),
                    1e-14);
        assert_same(recede_cat16(colour, day, lamp, degree), expected(colour, day, lamp, degree),
                    1e-14);
    }
}

/* One example by hand. The equal-energy white (1, 1, 1) has cones 1, 1, 1, for
 * each row of the matrix sums to 1. A white of cones 2, 1, 1/2 is made so that
 * full adaptation to it doubles the first cone and halves the third. */
static void an_example_by_hand(void **state)
{
    (void)state;
    recede_xyz equal = {1, 1, 1};
    recede_xyz to = {2 * 1.86206786 - 1.01125463 + 0.14918677 / 2,
                     2 * 0.38752654 + 0.62144744 - 0.00897398 / 2,
                     2 * -0.01584150 - 0.03412294 + 1.04996444 / 2};
    recede_xyz colour = {0.2, 0.3, 0.4};
    triple before = cones_of(colour);
    triple after = cones_of(recede_cat16(colour, equal, to, 1));
    assert_near((double)after.of[0], (double)(2 * before.of[0]), 1e-7);
    assert_near((double)after.of[1], (double)before.of[1], 1e-7);
    assert_near((double)after.of[2], (double)(before.of[2] / 2), 1e-7);
    after = cones_of(recede_cat16(colour, equal, to, 0.5));
    assert_near((double)after.of[0], (double)(1.5L * before.of[0]), 1e-7);
    assert_near((double)after.of[2], (double)(0.75L * before.of[2]), 1e-7);
}

static void degree_0_changes_nothing(void **state)
{
    (void)state;
    recede_xyz lamp = white_under(RECEDE_A), day = recede_white();
    srand(2);
    for (int i = 0; i < 100; i++) {
        recede_xyz colour = random_xyz(), seen = recede_cat16(colour, lamp, day, 0);
        assert_memory_equal(&seen, &colour, sizeof colour);
    }
}

static void white_becomes_white(void **state)
{
    (void)state;
    recede_xyz day = recede_white();
    const recede_illuminant lights[] = {RECEDE_A, RECEDE_C, RECEDE_D65};
    for (int i = 0; i < 3; i++) {
        recede_xyz from = white_under(lights[i]);
        recede_xyz seen = recede_cat16(from, from, day, 1);
        assert_near(seen.x, day.x, 1e-14);
        assert_near(seen.y, day.y, 1e-14);
        assert_near(seen.z, day.z, 1e-14);
    }
}

static void full_adaptation_goes_back(void **state)
{
    (void)state;
    recede_xyz lamp = white_under(RECEDE_A), day = recede_white();
    srand(3);
    for (int i = 0; i < 100; i++) {
        recede_xyz colour = random_xyz();
        recede_xyz back = recede_cat16(recede_cat16(colour, lamp, day, 1), day, lamp, 1);
        assert_near(back.x, colour.x, 1e-14);
        assert_near(back.y, colour.y, 1e-14);
        assert_near(back.z, colour.z, 1e-14);
    }
}

static void black_stays_black_and_the_same_white_changes_nothing(void **state)
{
    (void)state;
    recede_xyz lamp = white_under(RECEDE_A), day = recede_white(), black = {0, 0, 0};
    recede_xyz seen = recede_cat16(black, lamp, day, 0.8);
    assert_memory_equal(&seen, &black, sizeof black);
    recede_xyz colour = {0.3, 0.2, 0.1};
    seen = recede_cat16(colour, lamp, lamp, 1);
    assert_memory_equal(&seen, &colour, sizeof colour);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_is_the_papers_transform),
        cmocka_unit_test(an_example_by_hand),
        cmocka_unit_test(degree_0_changes_nothing),
        cmocka_unit_test(white_becomes_white),
        cmocka_unit_test(full_adaptation_goes_back),
        cmocka_unit_test(black_stays_black_and_the_same_white_changes_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
