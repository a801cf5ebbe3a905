/* The words of the order of work: small amounts, and steps that are far off. */
#include "text/words_work.h"

#include "plan/work_needed.h"
#include "text/plans.h"

static void assert_mix(const recede_palette *palette, double paint_ml, const char *expected)
{
    recede_buffer out;
    recede_work_step step = {.kind = RECEDE_STEP_START, .mix = {1, {0}, {1}, 0}, .additions = 1};
    char words[200] = "On clean place 1 mix ";
    step.paint_ml[0] = paint_ml;
    recede_buffer_start(&out, NULL);
    recede_words_step_mix(&out, palette, &step);
    assert_string_equal(recede_buffer_string(&out), strcat(words, expected));
    recede_buffer_free(&out);
}

/* A pea is 0.25 ml (common practice, no source). */
static void less_than_a_tenth_of_a_pea_is_a_brush_tip(void **state)
{
    (void)state;
    recede_plan *oil = test_plan(test_oil);
    const recede_palette *palette = recede_plan_palette(oil);
    assert_mix(palette, 0.001, "a speck of titanium white");
    assert_mix(palette, 0.0175, "a brush tip of titanium white (0.07 peas)");
    assert_mix(palette, 0.0235, "a brush tip of titanium white (0.09 peas)");
    assert_mix(palette, 0.024, "0.1 peas of titanium white");
    assert_mix(palette, 0.25, "1 pea of titanium white");
    assert_mix(palette, 0.625, "2.5 peas of titanium white");
    recede_plan_free(oil);
}

static void assert_far(double delta_e, double planned, const char *expected)
{
    const recede_work_step step = {.delta_e = delta_e, .planned_delta_e = planned};
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_words_step_far(&out, &step);
    assert_string_equal(recede_buffer_string(&out), expected);
    recede_buffer_free(&out);
}

static void a_step_that_misses_is_warned_of(void **state)
{
    (void)state;
    assert_far(10, 1, "");
    assert_far(24.2, 1.9, "mind: 24 off, another colour than the one wanted; mixed by itself, as "
                          "the study has it, it is 1.9 off");
    assert_far(24.2, 24, "mind: 24 off, another colour than the one wanted, and these paints come "
                         "no nearer");
}

static int index_of(const recede_palette *palette, const char *name)
{
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (strcmp(recede_palette_paint(palette, i)->name, name) == 0)
            return (int)i;
    fail_msg("no %s", name);
    return -1;
}

static void a_pale_paint_needs_its_tube_and_white(void **state)
{
    (void)state;
    recede_plan *oil = test_plan(test_oil);
    const recede_palette *palette = recede_plan_palette(oil);
    unsigned long white = 1ul << index_of(palette, "titanium white");
    unsigned long blue = 1ul << index_of(palette, "ultramarine blue");
    unsigned long pale = 1ul << index_of(palette, "pale ultramarine blue");
    assert_int_equal(recede_work_needed(palette, pale), white | blue | pale);
    assert_int_equal(recede_work_needed(palette, blue), blue);
    assert_int_equal(recede_work_needed(palette, 0), 0);
    recede_work_count count = recede_work_count_of(palette, white | blue | pale);
    assert_int_equal(count.tubes, 2);
    assert_int_equal(count.let_down, 1);
    assert_true(recede_work_lets_down(palette));
    recede_plan_free(oil);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(less_than_a_tenth_of_a_pea_is_a_brush_tip),
        cmocka_unit_test(a_step_that_misses_is_warned_of),
        cmocka_unit_test(a_pale_paint_needs_its_tube_and_white),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
