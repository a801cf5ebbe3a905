/*
 * CIE L*a*b* against Little CMS, a general-purpose colour library, and against
 * the figures of ISO/CIE 11664-4.
 */
#include "recede.h"

#include "support/assert_near.h"

#include <lcms2.h>
#include <stdlib.h>

static double random_between(double least, double most)
{
    return least + (most - least) * (rand() / (double)RAND_MAX);
}

static cmsCIEXYZ lcms_xyz(recede_xyz c)
{
    return (cmsCIEXYZ){c.x, c.y, c.z};
}

static void assert_same_lab(recede_xyz colour, recede_xyz white)
{
    cmsCIEXYZ their_white = lcms_xyz(white), their_colour = lcms_xyz(colour);
    cmsCIELab expected;
    cmsXYZ2Lab(&their_white, &expected, &their_colour);
    recede_lab found = recede_lab_of_xyz(colour, white);
    assert_near(found.l, expected.L, 1e-9);
    assert_near(found.a, expected.a, 1e-9);
    assert_near(found.b, expected.b, 1e-9);
}

static void lab_is_that_of_little_cms(void **state)
{
    (void)state;
    recede_xyz whites[2] = {recede_white(), {0.9642, 1.0, 0.8249}};
    srand(1);
    for (int i = 0; i < 2000; i++) {
        double most = i % 2 ? 1.2 : 0.02; /* half of them about the curve's knee */
        recede_xyz colour = {random_between(-0.01, most), random_between(-0.01, most),
                             random_between(-0.01, most)};
        assert_same_lab(colour, whites[i % 3 == 0]);
    }
    assert_same_lab((recede_xyz){0, 0, 0}, whites[0]);
    assert_same_lab((recede_xyz){-1, -2, -3}, whites[0]);
}

static void xyz_is_that_of_little_cms(void **state)
{
    (void)state;
    recede_xyz white = recede_white();
    cmsCIEXYZ their_white = lcms_xyz(white), expected;
    srand(2);
    for (int i = 0; i < 2000; i++) {
        cmsCIELab lab = {random_between(-5, 110), random_between(-120, 120),
                         random_between(-120, 120)};
        cmsLab2XYZ(&their_white, &expected, &lab);
        recede_xyz found = recede_xyz_of_lab((recede_lab){lab.L, lab.a, lab.b}, white);
        assert_near(found.x, expected.X, 1e-12);
        assert_near(found.y, expected.Y, 1e-12);
        assert_near(found.z, expected.Z, 1e-12);
    }
}

static void lch_is_that_of_little_cms(void **state)
{
    (void)state;
    srand(3);
    for (int i = 0; i < 1000; i++) {
        cmsCIELab lab = {50, random_between(-120, 120), random_between(-120, 120)};
        cmsCIELCh expected;
        cmsLab2LCh(&expected, &lab);
        recede_lch found = recede_lch_of_lab((recede_lab){lab.L, lab.a, lab.b});
        assert_near(found.l, expected.L, 0);
        assert_near(found.c, expected.C, 1e-9);
        assert_near(found.h_deg, expected.h, 1e-9);
    }
}

static void there_and_back(void **state)
{
    (void)state;
    recede_xyz white = recede_white();
    srand(4);
    for (int i = 0; i < 1000; i++) {
        recede_xyz colour = {random_between(-0.1, 1.2), random_between(-0.1, 1.2),
                             random_between(-0.1, 1.2)};
        recede_xyz back = recede_xyz_of_lab(recede_lab_of_xyz(colour, white), white);
        assert_near(back.x, colour.x, 1e-13);
        assert_near(back.y, colour.y, 1e-13);
        assert_near(back.z, colour.z, 1e-13);
    }
}

/* ISO/CIE 11664-4: near black L* = (29/3)^3 Y/Yn; L* = 50 at Y = (66/116)^3. */
static void lightness_has_the_standards_figures(void **state)
{
    (void)state;
    recede_xyz white = recede_white();
    assert_near(recede_lab_of_xyz((recede_xyz){0, 0, 0}, white).l, 0, 1e-14);
    assert_near(recede_lab_of_xyz((recede_xyz){0, 0.001, 0}, white).l, 24389.0 / 27.0 * 0.001,
                1e-12);
    assert_near(recede_lab_of_xyz((recede_xyz){0, pow(66.0 / 116.0, 3), 0}, white).l, 50, 1e-12);
    assert_near(recede_lab_of_xyz((recede_xyz){0, pow(6.0 / 29.0, 3), 0}, white).l, 8, 1e-12);
}

static void hue_runs_from_0_to_below_360(void **state)
{
    (void)state;
    static const struct { double a, b, h_deg; } cases[] = {
        {10, 0, 0}, {0, 10, 90}, {-10, 0, 180}, {0, -10, 270}, {10, 10, 45}, {0, 0, 0},
        {-0.0, 0, 0}, {10, -1e-300, 0}, {10, -1e-15, 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        recede_lch lch = recede_lch_of_lab((recede_lab){50, cases[i].a, cases[i].b});
        assert_near(lch.h_deg, cases[i].h_deg, 1e-12);
        assert_true(lch.h_deg >= 0 && lch.h_deg < 360);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lab_is_that_of_little_cms),
        cmocka_unit_test(xyz_is_that_of_little_cms),
        cmocka_unit_test(lch_is_that_of_little_cms),
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(lightness_has_the_standards_figures),
        cmocka_unit_test(hue_runs_from_0_to_below_360),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
