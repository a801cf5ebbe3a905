/* Pictures painted on a kept sketch, and the skylines it gives, against pictures
 * painted from nothing. The plans' colours are invented. */
#include "picture/fake_plan.c"
#include "support/allocator.h"
#include "support/assert_near.h"

#include <stdlib.h>

enum { WIDTH = 270, HEIGHT = 180, ROW = 3 * WIDTH };

static const recede_picture_options options = {.width = WIDTH, .height = HEIGHT};

static recede_sketch *new_sketch(const recede_allocator *allocator)
{
    recede_sketch *sketch;
    recede_error error;
    assert_int_equal(recede_sketch_new(allocator, &sketch, &error), RECEDE_OK);
    return sketch;
}

/* The same bytes on the sketch as from nothing. */
static void assert_same_picture(recede_sketch *sketch, const recede_plan *plan,
                                const recede_picture_options *how)
{
    size_t size = 3 * how->width * how->height;
    unsigned char *kept = malloc(size), *fresh = malloc(size);
    recede_error error;
    assert_true(kept && fresh);
    assert_int_equal(recede_picture_repaint(sketch, plan, how, kept, 3 * how->width, &error),
                     RECEDE_OK);
    assert_int_equal(recede_picture_paint(plan, how, fresh, 3 * how->width, NULL, &error),
                     RECEDE_OK);
    assert_memory_equal(kept, fresh, size);
    free(kept);
    free(fresh);
}

static void change_nothing(recede_plan *plan)
{
    (void)plan;
}

static void change_colours(recede_plan *plan)
{
    for (size_t i = 0; i < plan->count; i++)
        plan->planned[i].lit.crest.recipe.colour.lab.l *= 0.8;
}

static void change_edges(recede_plan *plan)
{
    plan->planned[1].edge = RECEDE_EDGE_LOST;
}

static void change_light(recede_plan *plan)
{
    plan->scene.sky.sun_height_deg += 9;
}

static void change_side(recede_plan *plan)
{
    plan->scene.sky.sun_side_deg += 40;
}

static void change_sky(recede_plan *plan)
{
    plan->scene.sky.kind = RECEDE_SKY_OVERCAST;
}

static void change_middle(recede_plan *plan)
{
    plan->scene.planes[plan->planned[2].plane].distance_m *= 1.3;
}

static void change_nearest(recede_plan *plan)
{
    plan->scene.planes[0].distance_m *= 0.7;
}

static void change_name(recede_plan *plan)
{
    strcpy(plan->scene.planes[1].name, "larch wood");
}

static void change_share(recede_plan *plan)
{
    plan->scene.planes[1].share = 0.3;
}

static void change_own(recede_plan *plan)
{
    strcpy(plan->scene.planes[2].own.name, "water");
}

static void fewer(recede_plan *plan)
{
    plan->scene.plane_count--;
    plan->count--;
    for (size_t i = 0; i < plan->count; i++)
        plan->planned[i].plane = plan->count - 1 - i;
}

typedef void change(recede_plan *plan);
static change *const changes[] = {
    change_nothing, change_colours, change_edges, change_light, change_side,    change_nothing,
    change_middle,  change_nearest, change_name,  change_share, change_own,     change_light,
    fewer,          change_middle,  change_sky,   fewer,        change_nothing,
};
enum { CHANGES = sizeof changes / sizeof changes[0] };

static void test_same_bytes_whatever_changes(void **state)
{
    recede_plan *plan = malloc(sizeof *plan);
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    recede_sketch *sketch = new_sketch(&allocator);
    (void)state;
    assert_non_null(plan);
    fake_plan_make(plan, 6, FAKE_NOON);
    for (size_t i = 0; i < CHANGES; i++) {
        changes[i](plan);
        assert_same_picture(sketch, plan, &options);
    }
    recede_sketch_free(sketch);
    assert_int_equal(memory.live, 0);
    free(plan);
}

static void test_other_sizes_and_greys(void **state)
{
    static const recede_picture_options others[] = {
        {.width = 120, .height = 90}, {.width = 121, .height = 90}, {.width = 120, .height = 90},
        {.width = 1, .height = 1},    {.width = 90, .height = 60, .greys = 1},
        {.width = 90, .height = 60, .targets = 1},
    };
    recede_plan *plan = malloc(sizeof *plan);
    recede_sketch *sketch = new_sketch(NULL);
    (void)state;
    assert_non_null(plan);
    fake_plan_make(plan, 4, FAKE_EVENING);
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
        assert_same_picture(sketch, plan, &others[i]);
    recede_sketch_free(sketch);
    free(plan);
}

/* A sketch is there to save work: nothing changed, far less memory is asked for. */
static void test_it_keeps_what_it_drew(void **state)
{
    static unsigned char rgb[ROW * HEIGHT];
    recede_plan *plan = malloc(sizeof *plan);
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    recede_sketch *sketch = new_sketch(&allocator);
    recede_error error;
    (void)state;
    assert_non_null(plan);
    fake_plan_make(plan, 6, FAKE_NOON);
    recede_picture_repaint(sketch, plan, &options, rgb, ROW, &error);
    size_t first = memory.calls;
    recede_picture_repaint(sketch, plan, &options, rgb, ROW, &error);
    assert_true(4 * (memory.calls - first) < first);
    recede_sketch_free(sketch);
    assert_int_equal(memory.live, 0);
    free(plan);
}

/* Each request for memory made to fail in turn, on a sketch that has kept another
 * picture: no leak, and the next picture is right. */
static void test_memory_runs_out(void **state)
{
    static unsigned char rgb[ROW * HEIGHT];
    recede_plan *before = malloc(sizeof *before), *plan = malloc(sizeof *plan);
    size_t failed = 0;
    (void)state;
    assert_true(before && plan);
    fake_plan_make(before, 5, FAKE_NOON);
    fake_plan_make(plan, 6, FAKE_EVENING);
    for (size_t fail = 1; fail < 2000; fail++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        recede_sketch *sketch = new_sketch(&allocator);
        recede_error error;
        recede_picture_repaint(sketch, before, &options, rgb, ROW, &error);
        size_t calls = memory.calls;
        memory.fail_at = calls + fail;
        recede_code code = recede_picture_repaint(sketch, plan, &options, rgb, ROW, &error);
        int reached = memory.calls >= memory.fail_at;
        failed += code == RECEDE_NO_MEMORY;
        assert_true(code == RECEDE_OK || code == RECEDE_NO_MEMORY);
        memory.fail_at = 0;
        if (fail % 7 == 1)
            assert_same_picture(sketch, plan, &options);
        recede_sketch_free(sketch);
        assert_int_equal(memory.live, 0);
        if (!reached)
            break;
    }
    assert_true(failed > 10);
    free(before);
    free(plan);
}

/* Of a new sketch and of skylines on it. */
static void test_nothing_is_drawn_without_memory(void **state)
{
    static float lines[3 * WIDTH];
    recede_plan *plan = malloc(sizeof *plan);
    recede_code code = RECEDE_NO_MEMORY;
    (void)state;
    assert_non_null(plan);
    fake_plan_make(plan, 3, FAKE_NOON);
    for (size_t fail = 1; code; fail++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, fail);
        recede_sketch *sketch = NULL;
        recede_error error;
        code = recede_sketch_new(&allocator, &sketch, &error);
        if (code)
            assert_null(sketch);
        else
            code = recede_picture_skylines(sketch, plan, WIDTH, HEIGHT, lines, &error);
        assert_true(fail == 1 ? code == RECEDE_NO_MEMORY : !code || code == RECEDE_NO_MEMORY);
        if (code)
            assert_string_equal(error.path, "picture");
        recede_sketch_free(sketch);
        assert_int_equal(memory.live, 0);
        assert_in_range(fail, 1, 500);
    }
    free(plan);
}

/* Above every line of a picture of flat colours lies what is behind it, below it the
 * plane itself, until the line of a nearer one. */
static void test_skylines_part_the_planes(void **state)
{
    static unsigned char rgb[ROW * HEIGHT];
    static float lines[4 * WIDTH];
    recede_plan *plan = malloc(sizeof *plan);
    recede_sketch *sketch = new_sketch(NULL);
    recede_error error;
    size_t looked_at = 0;
    (void)state;
    assert_non_null(plan);
    fake_plan_make(plan, 4, FAKE_NOON);
    for (size_t i = 0; i < 4; i++) {
        plan->planned[i].edge = RECEDE_EDGE_HARD;
        plan->planned[i].lit.graded = plan->planned[i].shadow.graded = 0;
        plan->planned[i].lit.crest = plan->planned[i].shadow.crest =
            fake_wash(20 + 15 * (double)i, 0, 0);
    }
    recede_picture_repaint(sketch, plan, &options, rgb, ROW, &error);
    assert_int_equal(recede_picture_skylines(sketch, plan, WIDTH, HEIGHT, lines, &error),
                     RECEDE_OK);
    for (size_t x = 0; x < WIDTH; x += 5)
        for (size_t y = 2; y < HEIGHT; y += 3) {
            double nearest = 99;
            int owner = -1;
            for (int i = 0; i < 4; i++) {
                double below = (double)y - (double)lines[(size_t)i * WIDTH + x];
                nearest = fmin(nearest, fabs(below));
                if (below >= 0)
                    owner = i;
            }
            if (owner < 0 || nearest < 7)
                continue; /* the sky, or a slope's passage */
            double encoded = 255 * fake_wash(20 + 15 * owner, 0, 0).recipe.colour.srgb.g;
            assert_near(rgb[y * ROW + 3 * x + 1], encoded, 1.01);
            looked_at++;
        }
    assert_true(looked_at > 500);
    assert_int_equal(recede_picture_skylines(sketch, plan, 0, HEIGHT, lines, &error),
                     RECEDE_OUT_OF_RANGE);
    recede_sketch_free(sketch);
    free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_same_bytes_whatever_changes),
        cmocka_unit_test(test_other_sizes_and_greys),
        cmocka_unit_test(test_it_keeps_what_it_drew),
        cmocka_unit_test(test_memory_runs_out),
        cmocka_unit_test(test_skylines_part_the_planes),
        cmocka_unit_test(test_nothing_is_drawn_without_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
