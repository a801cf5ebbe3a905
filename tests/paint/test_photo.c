/* The photograph as a meter: photographs of known colours are read back. */
#include <lcms2.h>
#include <stdlib.h>

#include "paint/photo_patch.h"
#include "paint/photographs.h"

static void check_reads(const scene *s, const camera *c, double tolerance, const char *what)
{
    shoot(s, c);
    assert_int_equal(take(s), RECEDE_OK);
    print_message("%-40s worst %.4f\n", what, worst(s));
    assert_below(worst(s), tolerance);
    assert_int_equal(uneven, 0);
}

/* Undoing sRGB, against Little CMS: its own sRGB profile's curve. */
static void the_curve_is_that_of_little_cms(void **state)
{
    static recede_photo_room room;
    cmsHPROFILE srgb = cmsCreate_sRGBProfile();
    cmsToneCurve *curve = cmsReadTag(srgb, cmsSigGreenTRCTag);
    (void)state;
    recede_photo_start(&room);
    assert_true(room.linear[0] == 0.0);
    assert_true(room.linear[65535] == 1.0);
    for (int i = 0; i < 65536; i++) {
        double v = i / 65535.0;
        assert_near(room.linear[i], standard_decode(v), 1e-12);
        /* Little CMS works in single precision */
        assert_near(room.linear[i], (double)cmsEvalToneCurveFloat(curve, (float)v), 2e-5);
    }
    cmsCloseProfile(srgb);
}

static void exposure_and_coloured_light_cancel(void **state)
{
    scene one = one_grey(), three = three_greys();
    camera c = plain;
    (void)state;
    check_reads(&one, &c, 0.02, "16 bits, one grey");
    memcpy(c.light, lamp.light, sizeof c.light);
    check_reads(&one, &c, 0.03, "16 bits, one grey, coloured light");
    check_reads(&three, &c, 0.03, "16 bits, three greys, coloured light");
    c.levels = 255;
    check_reads(&three, &c, 0.9, "8 bits, three greys, coloured light");
    for (int k = 0; k < 3; k++)
        c.light[k] *= 0.25; /* two stops under */
    c.levels = 65535;
    check_reads(&three, &c, 0.05, "16 bits, two stops under");
}

static void stray_light_is_found_by_two_reflectances(void **state)
{
    scene one = one_grey(), three = three_greys();
    camera c = lamp;
    (void)state;
    check_reads(&three, &c, 0.03, "stray light, three greys");
    shoot(&one, &c);
    assert_int_equal(take(&one), RECEDE_OK);
    assert_true(worst(&one) > 3); /* one grey cannot know */
}

/* 0.18 and 0.20 say little about an offset: none is sought, and noise does no harm. */
static void like_reflectances_give_no_offset(void **state)
{
    scene s = {.count = 0};
    camera c = plain;
    (void)state;
    add_card(&s, 10, 10, 0.18);
    add_card(&s, 60, 10, 0.20);
    add_colours(&s);
    c.noise = 0.02;
    check_reads(&s, &c, 0.3, "0.18 and 0.20, noise");
}

static void noise_averages_out(void **state)
{
    scene s = three_greys();
    camera c = lamp;
    (void)state;
    c.noise = 0.01;
    check_reads(&s, &c, 0.5, "16 bits, noise 1 %");
    c.levels = 255;
    check_reads(&s, &c, 0.5, "8 bits, noise 1 %");
    c.noise = 0.03;
    check_reads(&s, &c, 1.5, "8 bits, noise 3 %");
}

/* A patch of few levels: most pixels on one, and still the others count. */
static void few_levels_make_a_mean(void **state)
{
    static recede_photo_room room;
    scene s = one_grey();
    const recede_patch *p = &s.patch[0];
    (void)state;
    recede_photo_start(&room);
    for (size_t level = 10; level < 240; level += 23) {
        for (size_t i = 0; i < SIDE * SIDE; i++)
            for (size_t k = 0; k < 3; k++)
                pixels[((p->top + i / SIDE) * WIDTH + p->left + i % SIDE) * 3 + k] =
                    (unsigned short)(257 * (level + (i % 10 < 4)));
        double low = standard_decode((double)level / 255);
        double step = standard_decode((double)(level + 1) / 255) - low;
        double mean = recede_photo_mean_of(&photo, p, &room).at[1];
        assert_near((mean - low) / step, 0.4, 0.03);
    }
}

/* A white card in stronger light than the greys must not upset the darks: the offset
 * is theirs to tell. */
static void a_brighter_white_leaves_the_darks(void **state)
{
    scene s = three_greys();
    (void)state;
    for (int k = 0; k < 3; k++)
        s.rgb[0][k] = 0.9 * 1.08;
    shoot(&s, &lamp);
    assert_int_equal(take(&s), RECEDE_OK);
    print_message("white 8 %% up: black card off by %.2f, grey by %.2f\n", reading[2].card_off,
                  reading[1].card_off);
    assert_below(reading[2].card_off, 0.6);
}

/* The median of the differences, against one taken by sorting all pixels. */
static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static void spread_is_the_median_difference(void **state)
{
    static double all[SIDE * SIDE];
    scene s = one_grey();
    camera c = plain;
    (void)state;
    c.noise = 0.02;
    shoot(&s, &c);
    assert_int_equal(take(&s), RECEDE_OK);
    double grey = reading[0].xyz.y;
    assert_near(grey, 0.18, 1e-3);
    for (size_t i = 0; i < s.count; i++) {
        for (size_t k = 0; k < SIDE * SIDE; k++) {
            size_t x = s.patch[i].left + k % SIDE, y = s.patch[i].top + k / SIDE;
            double rgb[3];
            for (size_t n = 0; n < 3; n++) {
                double v = pixels[(y * WIDTH + x) * 3 + n] / 65535.0;
                rgb[n] = standard_decode(v) / 0.8;
            }
            all[k] = recede_delta_e(true_lab(rgb), reading[i].lab);
        }
        qsort(all, SIDE * SIDE, sizeof all[0], by_size);
        assert_near(reading[i].spread, all[(SIDE * SIDE - 1) / 2], 0.05);
        assert_int_equal(reading[i].glare, 0);
    }
}

static void a_slope_of_light_is_taken_out(void **state)
{
    scene s = four_corners();
    camera c = lamp;
    (void)state;
    memset(c.offset, 0, sizeof c.offset);
    c.across = 0.25;
    c.down = -0.15;
    check_reads(&s, &c, 0.05, "slope of light, four greys");
    c.noise = 0.01;
    c.levels = 255;
    check_reads(&s, &c, 0.6, "slope of light, four greys, 8 bits");
    add_card(&s, 220, 10, 0.9);
    memcpy(c.offset, lamp.offset, sizeof c.offset);
    check_reads(&s, &c, 0.6, "slope, stray light, white and four greys");
}

static void readings_agree_with_the_card(void **state)
{
    scene s = three_greys();
    (void)state;
    shoot(&s, &lamp);
    assert_int_equal(take(&s), RECEDE_OK);
    for (size_t i = 0; i < 3; i++) {
        recede_xyz white = recede_white();
        assert_near(reading[i].xyz.x, s.rgb[i][0] * white.x, 2e-4);
        assert_near(reading[i].xyz.y, s.rgb[i][0], 2e-4);
        assert_near(reading[i].xyz.z, s.rgb[i][0] * white.z, 2e-4);
        assert_below(reading[i].card_off, 0.05);
    }
    assert_true(reading[4].card_off == 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_curve_is_that_of_little_cms),
        cmocka_unit_test(exposure_and_coloured_light_cancel),
        cmocka_unit_test(stray_light_is_found_by_two_reflectances),
        cmocka_unit_test(like_reflectances_give_no_offset),
        cmocka_unit_test(noise_averages_out),
        cmocka_unit_test(few_levels_make_a_mean),
        cmocka_unit_test(a_brighter_white_leaves_the_darks),
        cmocka_unit_test(spread_is_the_median_difference),
        cmocka_unit_test(a_slope_of_light_is_taken_out),
        cmocka_unit_test(readings_agree_with_the_card),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
