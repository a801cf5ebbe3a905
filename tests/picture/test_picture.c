/* The picture, painted from plans of invented colours. */
#include "picture/fake_plan.c"
#include "support/allocator.h"
#include "support/assert_near.h"

#include <stdlib.h>

typedef struct image {
    size_t width, height;
    unsigned char *rgb;
} image;

static image painted_with(const recede_plan *plan, recede_picture_options options)
{
    image im = {options.width, options.height, NULL};
    recede_error error;
    im.rgb = malloc(3 * im.width * im.height);
    assert_non_null(im.rgb);
    memset(im.rgb, 0xA5, 3 * im.width * im.height);
    assert_int_equal(recede_picture_paint(plan, &options, im.rgb, 3 * im.width, NULL, &error),
                     RECEDE_OK);
    return im;
}

static image painted(const recede_plan *plan, size_t width, size_t height)
{
    return painted_with(plan, (recede_picture_options){width, height, 0, 0, NULL});
}

static const unsigned char *pixel(const image *im, size_t x, size_t y)
{
    return im->rgb + 3 * (y * im->width + x);
}

/* IEC 61966-2-1, written out anew: an encoded component from a linear one. */
static double encoded(double linear)
{
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * pow(linear, 1 / 2.4) - 0.055;
}

/* ASTM D1535: luminance factor in per cent from Munsell value, for perfect
 * white at 100 (the standard's quintic divided by its value at 10). */
static double luminance_of_value(double v)
{
    double y = ((((0.00081939 * v - 0.020484) * v + 0.23352) * v - 0.22533) * v + 1.1914) * v;
    double white =
        ((((0.00081939 * 10 - 0.020484) * 10 + 0.23352) * 10 - 0.22533) * 10 + 1.1914) * 10;
    return y / white;
}

/* A side of one colour all over. */
static recede_side flat_side(double l, double a, double b)
{
    recede_side side;
    memset(&side, 0, sizeof side);
    side.crest = side.base = fake_wash(l, a, b);
    return side;
}

/* Every plane one flat colour, every edge hard: what is whose can be counted.
 * Plane i has the grey L* = 10 + i, the sky is white. */
static void make_countable(recede_plan *plan)
{
    for (size_t i = 0; i < plan->count; i++) {
        plan->planned[i].lit = plan->planned[i].shadow = flat_side(10 + (double)i, 0, 0);
        plan->planned[i].edge = RECEDE_EDGE_HARD;
    }
    plan->sky = flat_side(100, 0, 0);
}

/* Shares of planes and sky by the nearest of their greys. */
static void count_shares(const image *im, size_t planes, double *shares)
{
    double levels[RECEDE_MOST_PLANES + 1];
    size_t pixels = im->width * im->height;
    for (size_t i = 0; i <= planes; i++) {
        recede_wash wash = fake_wash(i < planes ? 10 + (double)i : 100, 0, 0);
        levels[i] = 255 * encoded(wash.target.xyz.y);
        shares[i] = 0;
    }
    for (size_t n = 0; n < pixels; n++) {
        size_t nearest = 0;
        for (size_t i = 1; i <= planes; i++)
            if (fabs(im->rgb[3 * n + 1] - levels[i]) < fabs(im->rgb[3 * n + 1] - levels[nearest]))
                nearest = i;
        shares[nearest] += 1.0 / (double)pixels;
    }
}

static void same_plan_same_bytes_and_all_of_them(void **state)
{
    (void)state;
    static recede_plan plan;
    enum { WIDTH = 203, HEIGHT = 131, ROW = 3 * WIDTH + 5 };
    unsigned char *one = malloc(ROW * HEIGHT), *other = malloc(ROW * HEIGHT);
    recede_picture_options options = {WIDTH, HEIGHT, 0, 0, NULL};
    assert_true(one && other);
    fake_plan_make(&plan, 7, FAKE_NOON);
    memset(one, 0xAA, ROW * HEIGHT);
    memset(other, 0x55, ROW * HEIGHT);
    assert_int_equal(recede_picture_paint(&plan, &options, one, ROW, NULL, NULL), RECEDE_OK);
    assert_int_equal(recede_picture_paint(&plan, &options, other, ROW, NULL, NULL), RECEDE_OK);
    for (size_t y = 0; y < HEIGHT; y++) {
        assert_memory_equal(one + y * ROW, other + y * ROW, 3 * WIDTH);
        for (size_t i = 3 * WIDTH; i < ROW; i++) {
            assert_int_equal(one[y * ROW + i], 0xAA);
            assert_int_equal(other[y * ROW + i], 0x55);
        }
    }
    free(one);
    free(other);
}

static void shares_are_those_of_the_pixels(void **state)
{
    (void)state;
    static const size_t counts[] = {1, 3, 12, 64};
    static const size_t sizes[][2] = {{1536, 1024}, {900, 700}, {500, 900}};
    static recede_plan plan;
    for (size_t c = 0; c < 4; c++) {
        for (size_t s = 0; s < 3; s++) {
            double said[RECEDE_MOST_PLANES + 1], counted[RECEDE_MOST_PLANES + 1], sum = 0;
            fake_plan_make(&plan, counts[c], FAKE_NOON);
            make_countable(&plan);
            assert_int_equal(recede_picture_shares(&plan, said, NULL, NULL), RECEDE_OK);
            image im = painted(&plan, sizes[s][0], sizes[s][1]);
            count_shares(&im, counts[c], counted);
            for (size_t i = 0; i <= counts[c]; i++) {
                assert_near(counted[i], said[i], 0.003);
                assert_true(said[i] > 0.004);
                sum += said[i];
            }
            assert_near(sum, 1, 1e-9);
            free(im.rgb);
        }
    }
}

static void a_share_that_is_given_is_kept(void **state)
{
    (void)state;
    static recede_plan plan;
    double said[8], counted[8];
    fake_plan_make(&plan, 5, FAKE_NOON);
    make_countable(&plan);
    plan.scene.planes[2].share = 0.31; /* in the middle: index 2 from either end */
    plan.scene.planes[4].share = 0.02; /* the farthest */
    assert_int_equal(recede_picture_shares(&plan, said, NULL, NULL), RECEDE_OK);
    image im = painted(&plan, 800, 600);
    count_shares(&im, 5, counted);
    assert_near(said[2], 0.31, 1e-5);
    assert_near(said[0], 0.02, 1e-5);
    assert_near(counted[2], 0.31, 0.003);
    assert_near(counted[0], 0.02, 0.003);
    free(im.rgb);
}

static void shares_that_ask_too_much_still_leave_something(void **state)
{
    (void)state;
    static recede_plan plan;
    double said[8], sum = 0;
    fake_plan_make(&plan, 3, FAKE_NOON);
    plan.scene.planes[0].share = plan.scene.planes[1].share = 1;
    assert_int_equal(recede_picture_shares(&plan, said, NULL, NULL), RECEDE_OK);
    for (size_t i = 0; i <= 3; i++) {
        assert_true(said[i] > 0.003);
        sum += said[i];
    }
    assert_near(said[1], said[2], 1e-6);
    assert_near(sum, 1, 1e-9);
}

static int compare(const void *a, const void *b)
{
    return *(const int *)a - *(const int *)b;
}

/* Median over the columns of the rows in which black turns into white. */
static int passage_rows(recede_edge edge)
{
    static recede_plan plan;
    static int rows[700];
    fake_plan_make(&plan, 1, FAKE_NOON);
    plan.scene.planes[0].distance_m = 8000;
    snprintf(plan.scene.planes[0].name, RECEDE_NAME_SIZE, "far ridge");
    plan.planned[0].lit = plan.planned[0].shadow = flat_side(0, 0, 0);
    plan.planned[0].edge = edge;
    plan.sky = flat_side(100, 0, 0);
    image im = painted(&plan, 700, 600);
    for (size_t x = 0; x < im.width; x++) {
        rows[x] = 0;
        for (size_t y = 0; y < im.height; y++)
            rows[x] += pixel(&im, x, y)[1] > 12 && pixel(&im, x, y)[1] < 243;
    }
    free(im.rgb);
    qsort(rows, 700, sizeof rows[0], compare);
    return rows[350];
}

static void edges_are_as_wide_as_they_are_soft(void **state)
{
    (void)state;
    int hard = passage_rows(RECEDE_EDGE_HARD), soft = passage_rows(RECEDE_EDGE_SOFT);
    int lost = passage_rows(RECEDE_EDGE_LOST);
    assert_in_range(hard, 1, 2);
    assert_in_range(soft, 3, 6);
    assert_in_range(lost, 12, 24);
}

static void greys_have_the_values_of_the_mixes(void **state)
{
    (void)state;
    static recede_plan plan;
    fake_plan_make(&plan, 3, FAKE_EVENING);
    for (size_t i = 0; i < 3; i++)
        plan.planned[i].shadow = plan.planned[i].lit;
    image im = painted_with(&plan, (recede_picture_options){400, 300, 1, 0, NULL});
    for (size_t n = 0; n < im.width * im.height; n++) {
        assert_int_equal(im.rgb[3 * n], im.rgb[3 * n + 1]);
        assert_int_equal(im.rgb[3 * n], im.rgb[3 * n + 2]);
    }
    double value = plan.planned[2].lit.crest.recipe.colour.value;
    for (size_t x = 0; x < im.width; x++)
        assert_near(pixel(&im, x, im.height - 1)[0], 255 * encoded(luminance_of_value(value)), 1.0);
    value = plan.sky.crest.recipe.colour.value;
    assert_near(pixel(&im, 0, 0)[0], 255 * encoded(luminance_of_value(value)), 1.2);
    free(im.rgb);
}

static void colours_are_those_of_the_mixes_or_the_targets(void **state)
{
    (void)state;
    static recede_plan plan;
    fake_plan_make(&plan, 2, FAKE_NOON);
    plan.planned[1].lit.crest = fake_wash(50, 30, 20);
    plan.planned[1].lit.crest.target = fake_wash(60, -30, 10).target;
    plan.planned[1].shadow = plan.planned[1].lit;
    for (int targets = 0; targets < 2; targets++) {
        const recede_wash *wash = &plan.planned[1].lit.crest;
        recede_srgb want = targets ? wash->target.srgb : wash->recipe.colour.srgb;
        image im = painted_with(&plan, (recede_picture_options){300, 200, 0, targets, NULL});
        for (size_t x = 0; x < im.width; x++) {
            assert_near(pixel(&im, x, 199)[0], 255 * want.r, 1.0);
            assert_near(pixel(&im, x, 199)[1], 255 * want.g, 1.0);
            assert_near(pixel(&im, x, 199)[2], 255 * want.b, 1.0);
        }
        free(im.rgb);
    }
}

static double row_mean(const image *im, size_t y)
{
    double sum = 0;
    for (size_t x = 0; x < im->width; x++)
        sum += pixel(im, x, y)[1];
    return sum / (double)im->width;
}

/* In a graded sky the mean of each row moves by less than a level from the row
 * above, and no row is all of one level where it lies between two. */
static void the_sky_has_no_bands(void **state)
{
    (void)state;
    static recede_plan plan;
    fake_plan_make(&plan, 1, FAKE_NOON);
    image im = painted(&plan, 600, 900);
    size_t mixed = 0;
    for (size_t y = 1; y < 200; y++) {
        double here = row_mean(&im, y), above = row_mean(&im, y - 1);
        assert_true(here > above && here - above < 0.5);
        mixed += fabs(here - floor(here + 0.5)) > 0.05;
    }
    assert_true(mixed > 150);
    free(im.rgb);
}

static void a_graded_wash_runs_from_crest_to_base(void **state)
{
    (void)state;
    static recede_plan plan;
    fake_plan_make(&plan, 1, FAKE_NOON);
    recede_side *lit = &plan.planned[0].lit;
    lit->graded = 1;
    lit->crest = fake_wash(80, 0, 0);
    lit->base = fake_wash(30, 0, 0);
    plan.planned[0].shadow = *lit;
    image im = painted(&plan, 300, 300);
    assert_near(row_mean(&im, 299), 255 * encoded(lit->base.target.xyz.y), 2);
    for (size_t y = 230; y < 300; y++)
        assert_true(row_mean(&im, y) < row_mean(&im, y - 10) - 2);
    free(im.rgb);
}

/* The part of a plane that is nearer the lit wash, and the part that is neither
 * quite lit nor quite in shadow. */
static void light_parts(const recede_sky *sky, double *lit, double *between)
{
    static recede_plan plan;
    fake_plan_make(&plan, 1, FAKE_NOON);
    plan.scene.sky = *sky;
    plan.planned[0].lit = flat_side(80, 0, 0);
    plan.planned[0].shadow = flat_side(30, 0, 0);
    plan.sky = flat_side(100, 0, 0);
    image im = painted(&plan, 500, 400);
    double bright = 255 * encoded(plan.planned[0].lit.crest.target.xyz.y);
    double dark = 255 * encoded(plan.planned[0].shadow.crest.target.xyz.y);
    size_t count = 0;
    *lit = *between = 0;
    for (size_t n = 0; n < im.width * im.height; n++) {
        double part = (im.rgb[3 * n + 1] - dark) / (bright - dark);
        if (part > 1.02)
            continue; /* sky */
        count++;
        *lit += part > 0.5;
        *between += part > 0.04 && part < 0.96;
    }
    *lit /= (double)count;
    *between /= (double)count;
    free(im.rgb);
}

/* Common practice, no source: with the sun behind the painter most is lit, with
 * the sun in front most is in shadow; an overcast models softly. */
static void the_sun_decides_how_much_is_lit(void **state)
{
    (void)state;
    double into, side, behind, dull, crisp, soft, ignored;
    recede_sky sky = {.kind = RECEDE_SKY_CLEAR, .sun_height_deg = 35};
    light_parts(&sky, &into, &ignored);
    sky.sun_side_deg = 90;
    light_parts(&sky, &side, &crisp);
    sky.sun_side_deg = 180;
    light_parts(&sky, &behind, &ignored);
    sky.kind = RECEDE_SKY_OVERCAST;
    light_parts(&sky, &dull, &soft);
    assert_true(into < side && side < behind);
    assert_true(into > 0.2 && behind < 0.8);
    assert_true(dull > 0.3 && dull < 0.7);
    assert_true(soft > 1.5 * crisp);
}

static void any_size_and_stride_will_do(void **state)
{
    (void)state;
    static const size_t sizes[][2] = {{1, 1},    {2, 1}, {1, 7},   {1, 8192},
                                      {8192, 1}, {3, 5}, {640, 2}, {33, 1001}};
    static recede_plan plan;
    for (size_t count = 1; count <= 64; count += 21) {
        fake_plan_make(&plan, count, FAKE_FOG);
        for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++)
            free(painted(&plan, sizes[i][0], sizes[i][1]).rgb);
    }
}

static void wrong_sizes_are_refused(void **state)
{
    (void)state;
    static recede_plan plan;
    static const struct {
        size_t width, height, row_bytes;
        const char *path;
    } wrong[] = {
        {0, 10, 30, "picture.width"},      {8193, 10, 30000, "picture.width"},
        {10, 0, 30, "picture.height"},     {10, 8193, 30, "picture.height"},
        {10, 10, 29, "picture.row_bytes"}, {(size_t)-1, 10, 30, "picture.width"},
    };
    unsigned char rgb[300] = {7};
    fake_plan_make(&plan, 2, FAKE_NOON);
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        recede_picture_options options = {wrong[i].width, wrong[i].height, 0, 0, NULL};
        recede_error error;
        assert_int_equal(
            recede_picture_paint(&plan, &options, rgb, wrong[i].row_bytes, NULL, &error),
            RECEDE_OUT_OF_RANGE);
        assert_string_equal(error.path, wrong[i].path);
        assert_int_equal(rgb[0], 7);
    }
}

/* Each allocation fails in turn until the picture comes through. */
static void memory_running_out_is_survived(void **state)
{
    (void)state;
    static recede_plan plan;
    static unsigned char rgb[3 * 90 * 60];
    recede_picture_options options = {90, 60, 0, 0, NULL};
    test_memory memory;
    recede_error error;
    size_t at = 1;
    fake_plan_make(&plan, 10, FAKE_NOON);
    snprintf(plan.scene.planes[1].name, RECEDE_NAME_SIZE, "mill cottages");
    snprintf(plan.scene.planes[2].name, RECEDE_NAME_SIZE, "mill pond");
    for (;; at++) {
        recede_allocator allocator = test_allocator(&memory, at);
        recede_code code = recede_picture_paint(&plan, &options, rgb, 270, &allocator, &error);
        assert_int_equal(memory.live, 0);
        if (code == RECEDE_OK)
            break;
        assert_int_equal(code, RECEDE_NO_MEMORY);
        assert_int_equal(error.code, RECEDE_NO_MEMORY);
    }
    assert_true(at > 50);
    for (at = 1;; at++) {
        double shares[11];
        recede_allocator allocator = test_allocator(&memory, at);
        recede_code code = recede_picture_shares(&plan, shares, &allocator, &error);
        assert_int_equal(memory.live, 0);
        if (code == RECEDE_OK)
            break;
        assert_int_equal(code, RECEDE_NO_MEMORY);
    }
    assert_true(at > 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(same_plan_same_bytes_and_all_of_them),
        cmocka_unit_test(shares_are_those_of_the_pixels),
        cmocka_unit_test(a_share_that_is_given_is_kept),
        cmocka_unit_test(shares_that_ask_too_much_still_leave_something),
        cmocka_unit_test(edges_are_as_wide_as_they_are_soft),
        cmocka_unit_test(greys_have_the_values_of_the_mixes),
        cmocka_unit_test(colours_are_those_of_the_mixes_or_the_targets),
        cmocka_unit_test(the_sky_has_no_bands),
        cmocka_unit_test(a_graded_wash_runs_from_crest_to_base),
        cmocka_unit_test(the_sun_decides_how_much_is_lit),
        cmocka_unit_test(any_size_and_stride_will_do),
        cmocka_unit_test(wrong_sizes_are_refused),
        cmocka_unit_test(memory_running_out_is_survived),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
