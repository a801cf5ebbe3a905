/* Photographs with something wrong: glare, edges, clipping, uneven light; and patches
 * that cannot be read. */
#include "paint/photographs.h"
#include "support/allocator.h"

/* Mirrored light over a share of one patch, up to the top of the scale. */
static void add_glare(const recede_patch *p, double share)
{
    for (size_t y = 0; y < p->height; y++)
        for (size_t x = 0; x < (size_t)((double)p->width * share); x++)
            for (size_t k = 0; k < 3; k++)
                pixels[((p->top + y) * WIDTH + p->left + x) * 3 + k] = 65535;
}

static void glare_is_left_out_and_told(void **state)
{
    static const double shares[] = {0.1, 0.25, 0.4};
    scene s = three_greys();
    camera c = lamp;
    (void)state;
    c.noise = 0.01;
    for (size_t i = 0; i < 3; i++) {
        shoot(&s, &c);
        add_glare(&s.patch[5], shares[i]);
        assert_int_equal(take(&s), RECEDE_OK);
        print_message("glare over %.0f %%: %.3f\n", 100 * shares[i],
                      recede_delta_e(reading[5].lab, true_lab(s.rgb[5])));
        assert_below(recede_delta_e(reading[5].lab, true_lab(s.rgb[5])), 0.6);
        assert_near(reading[5].clipped, shares[i], 1e-12);
        for (size_t k = 0; k < s.count; k++)
            assert_int_equal(reading[k].glare, k == 5);
    }
}

static void an_edge_in_the_patch_is_told(void **state)
{
    scene s = three_greys();
    (void)state;
    shoot(&s, &plain);
    s.patch[5].left += 5; /* an eighth of it shows the table */
    assert_int_equal(take(&s), RECEDE_OK);
    assert_int_equal(reading[5].glare, 1);
    assert_below(recede_delta_e(reading[5].lab, true_lab(s.rgb[5])), 0.1);
}

static void each_end_of_each_channel_is_clipping(void **state)
{
    scene s = three_greys();
    (void)state;
    for (size_t k = 0; k < 3; k++)
        for (int end = 0; end < 2; end++) {
            shoot_patches(&s, &plain);
            size_t at = (s.patch[5].top + 7) * WIDTH + s.patch[5].left + 11;
            pixels[at * 3 + k] = end ? 65535 : 0;
            assert_int_equal(take(&s), RECEDE_OK);
            assert_near(reading[5].clipped, 1.0 / (SIDE * SIDE), 1e-15);
            assert_near(reading[6].clipped, 0, 0);
        }
}

static void clipping_is_told(void **state)
{
    scene s = three_greys();
    camera c = plain;
    (void)state;
    shoot(&s, &c);
    assert_int_equal(take(&s), RECEDE_OK);
    for (size_t i = 0; i < s.count; i++)
        assert_true(reading[i].clipped == 0.0);
    for (int k = 0; k < 3; k++)
        c.light[k] = 1.3; /* over-exposed: the white card and the paper run out */
    shoot(&s, &c);
    assert_int_equal(take(&s), RECEDE_OK);
    assert_true(reading[0].clipped == 1.0);
    assert_true(reading[3].clipped == 1.0);
    assert_true(reading[1].clipped == 0.0);
    assert_true(reading[0].card_off > 2); /* the white is no measure now, */
    assert_int_equal(uneven, 1);
    for (size_t i = 4; i < s.count; i++) /* but the greys are */
        assert_below(recede_delta_e(reading[i].lab, true_lab(s.rgb[i])), 0.05);
    c = plain;
    c.offset[2] = -0.05; /* a camera that cuts the darks off */
    shoot(&s, &c);
    assert_int_equal(take(&s), RECEDE_OK);
    assert_true(reading[8].clipped == 1.0);
}

/* Two greys at the ends, or four with swatches far from them, cannot carry a slope:
 * then it is told and not guessed. */
static void uneven_light_is_told_where_it_cannot_be_taken_out(void **state)
{
    scene two = {.count = 0}, near = {.count = 0}, steps = three_greys();
    camera c = plain;
    (void)state;
    c.across = 0.2;
    add_card(&two, 10, 10, 0.18);
    add_card(&two, WIDTH - 50, 10, 0.18);
    add_colours(&two);
    shoot(&two, &c);
    assert_int_equal(take(&two), RECEDE_OK);
    assert_int_equal(uneven, 1);
    assert_true(reading[0].card_off > 2 && reading[1].card_off > 2);
    assert_true(worst(&two) < 6);
    for (size_t i = 0; i < 4; i++)
        add_card(&near, 10 + 20 * i, 10 + 10 * (i % 2), 0.18);
    add_colours(&near);
    shoot(&near, &c);
    assert_int_equal(take(&near), RECEDE_OK);
    for (size_t i = 4; i < near.count; i++) { /* as bright as the light is there */
        double here = 1 + 0.2 * (2.0 * ((double)near.patch[i].left + SIDE / 2.0) / WIDTH - 1);
        double card = 1 + 0.2 * (2.0 * (40 + SIDE / 2.0) / WIDTH - 1);
        assert_near(reading[i].xyz.y * card / here,
                    recede_xyz_of_lab(true_lab(near.rgb[i]), recede_white()).y, 2e-3);
    }
    c.across = 0;
    c.noise = 0.02;
    shoot(&near, &c);
    assert_int_equal(take(&near), RECEDE_OK);
    assert_below(worst(&near), 0.5); /* a slope guessed from these would give noise */
    c.noise = 0;
    c.across = 0.02;
    shoot(&steps, &c);
    assert_int_equal(take(&steps), RECEDE_OK);
    assert_int_equal(uneven, 0); /* a little does not matter */
}

/* Two cards said to be one grey, one a little lighter than the other: each is near the
 * grey that the light makes of both, and only beside each other are they too far apart. */
static void cards_that_differ_are_told(void **state)
{
    scene s = three_greys();
    camera c = plain;
    size_t first = s.count;
    (void)state;
    add_card(&s, 20, 160, 0.30);
    add_card(&s, 20, 240, 0.34);
    shoot(&s, &c);
    s.patch[first].reflectance = s.patch[first + 1].reflectance = 0.32;
    assert_int_equal(take(&s), RECEDE_OK);
    for (size_t i = 0; i < s.count; i++)
        if (s.patch[i].reflectance > 0)
            assert_below(reading[i].card_off, 2);
    assert_true(recede_delta_e(reading[first].lab, reading[first + 1].lab) > 2);
    assert_int_equal(uneven, 1);
}

static void expect_error(const scene *s, recede_code code, const char *path)
{
    assert_int_equal(take(s), code);
    assert_int_equal(error.code, code);
    assert_string_equal(error.path, path);
    assert_int_equal(recede_photo_read(&photo, s->patch, s->count, NULL, reading, &uneven, NULL),
                     code);
}

static void what_cannot_be_read_is_refused(void **state)
{
    scene good = three_greys(), s;
    static const double cards[] = {-0.1, 0.019, 1.001};
    (void)state;
    shoot(&good, &plain);
    s = good;
    s.count = 0;
    expect_error(&s, RECEDE_TOO_FEW, "patches.card");
    s = good;
    s.patch[0].reflectance = s.patch[1].reflectance = s.patch[2].reflectance = 0;
    expect_error(&s, RECEDE_TOO_FEW, "patches.card");
    s = good;
    s.patch[4].left = WIDTH - SIDE + 1;
    expect_error(&s, RECEDE_OUT_OF_RANGE, "patches[4].left");
    assert_near(error.number, WIDTH + 1, 0);
    assert_near(error.most, WIDTH, 0);
    s.patch[4].left = (size_t)-8;
    expect_error(&s, RECEDE_OUT_OF_RANGE, "patches[4].left");
    s = good;
    s.patch[6].height = (size_t)-1;
    expect_error(&s, RECEDE_OUT_OF_RANGE, "patches[6].top");
    s = good;
    s.patch[10].width = 5;
    s.patch[10].height = 3;
    expect_error(&s, RECEDE_OUT_OF_RANGE, "patches[10]");
    assert_near(error.number, 15, 0);
    assert_near(error.least, 16, 0);
    s.patch[10].height = 0;
    expect_error(&s, RECEDE_OUT_OF_RANGE, "patches[10]");
    for (size_t i = 0; i < 3; i++) {
        s = good;
        s.patch[1].reflectance = cards[i];
        expect_error(&s, RECEDE_OUT_OF_RANGE, "patches[1].reflectance");
    }
    s.patch[1].reflectance = NAN;
    expect_error(&s, RECEDE_NOT_FINITE, "patches[1].reflectance");
    s = good;
    s.patch[0].reflectance = 0.04; /* the white taken for the black */
    s.patch[2].reflectance = 0.9;
    expect_error(&s, RECEDE_CONFLICT, "patches.card");
    assert_near(error.number, 0.04, 0);
    assert_near(error.most, 0.18, 0);
}

static void the_smallest_patches_and_most_of_them_will_do(void **state)
{
    static recede_patch many[RECEDE_MOST_PATCHES + 1];
    scene s = one_grey();
    (void)state;
    shoot(&s, &plain);
    for (size_t i = 0; i <= RECEDE_MOST_PATCHES; i++)
        many[i] = (recede_patch){12 + i % 30, 12 + i / 30, 4, 4, i ? 0 : 0.18};
    assert_int_equal(recede_photo_read(&photo, many, RECEDE_MOST_PATCHES, NULL, reading, &uneven,
                                       &error), RECEDE_OK);
    for (size_t i = 0; i < RECEDE_MOST_PATCHES; i++)
        assert_near(reading[i].xyz.y, 0.18, 1e-4);
    assert_int_equal(recede_photo_read(&photo, many, RECEDE_MOST_PATCHES + 1, NULL, reading,
                                       &uneven, &error), RECEDE_TOO_MANY);
    assert_string_equal(error.path, "patches");
    many[0] = (recede_patch){0, 0, WIDTH, HEIGHT, 0.2}; /* all of it */
    assert_int_equal(recede_photo_read(&photo, many, 1, NULL, reading, &uneven, &error),
                     RECEDE_OK);
}

static void darkness_is_no_light(void **state)
{
    scene s = one_grey();
    camera c = plain;
    (void)state;
    memset(c.light, 0, sizeof c.light);
    shoot(&s, &c);
    expect_error(&s, RECEDE_CONFLICT, "patches.card");
    assert_near(error.number, 0, 0);
    assert_near(error.most, 0, 0);
    c.light[0] = c.light[1] = 0.8; /* a lamp with no blue at all */
    shoot(&s, &c);
    expect_error(&s, RECEDE_CONFLICT, "patches.card");
}

static void memory_may_run_out(void **state)
{
    scene s = three_greys();
    size_t failures = 0;
    (void)state;
    shoot(&s, &plain);
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_code code = recede_photo_read(&photo, s.patch, s.count, &allocator, reading,
                                             &uneven, &error);
        assert_int_equal(memory.live, 0);
        if (!code)
            break;
        assert_int_equal(code, RECEDE_NO_MEMORY);
        failures++;
    }
    assert_true(failures >= 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(glare_is_left_out_and_told),
        cmocka_unit_test(an_edge_in_the_patch_is_told),
        cmocka_unit_test(each_end_of_each_channel_is_clipping),
        cmocka_unit_test(clipping_is_told),
        cmocka_unit_test(uneven_light_is_told_where_it_cannot_be_taken_out),
        cmocka_unit_test(cards_that_differ_are_told),
        cmocka_unit_test(what_cannot_be_read_is_refused),
        cmocka_unit_test(the_smallest_patches_and_most_of_them_will_do),
        cmocka_unit_test(darkness_is_no_light),
        cmocka_unit_test(memory_may_run_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
