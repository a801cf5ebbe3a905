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

/* A pea is 0.25 ml (common practice, no source); to what a hand can measure. */
static void paint_is_told_as_a_hand_measures_it(void **state)
{
    (void)state;
    recede_plan *oil = test_plan(test_oil);
    const recede_palette *palette = recede_plan_palette(oil);
    static const struct {
        double peas;
        const char *says;
    } cases[] = {
        {0.004, "a speck"}, {0.03, "a brush tip"}, {0.12, "a brush tip"}, {0.19, "a brush tip"},
        {0.21, "a quarter of a pea"}, {0.35, "a third of a pea"}, {0.5, "half a pea"},
        {0.66, "two thirds of a pea"}, {0.75, "three quarters of a pea"}, {0.99, "a pea"},
        {1.2, "a pea"}, {1.4, "1.5 peas"}, {2, "2 peas"}, {2.6, "2.5 peas"}, {2.9, "3 peas"},
        {3.4, "3 peas"}, {9.6, "10 peas"}, {24.3, "24 peas"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        char expected[100];
        snprintf(expected, sizeof expected, "%s of titanium white", cases[i].says);
        assert_mix(palette, 0.25 * cases[i].peas, expected);
    }
    recede_plan_free(oil);
}

static void the_sum_says_in_what_it_is_off(void **state)
{
    (void)state;
    static const recede_work none = {.exact = 1};
    static const char *const says[] = {"follow one from another, and so differ from the study's",
                                       "CIEDE2000 off on average", "additions of paint"};
    const char *const scenes[] = {test_watercolour, test_oil};
    for (size_t i = 0; i < 2; i++) {
        recede_plan *plan = test_plan(scenes[i]);
        recede_buffer out;
        recede_buffer_start(&out, NULL);
        recede_words_order(&out, plan, &none);
        for (size_t j = 0; j < sizeof says / sizeof says[0]; j++)
            if (!strstr(out.bytes, says[j]))
                fail_msg("'%s' does not say '%s'", out.bytes, says[j]);
        recede_buffer_free(&out);
        recede_plan_free(plan);
    }
}

static void the_sky_has_a_top(void **state)
{
    (void)state;
    const recede_work_step top = {.plane = -1, .graded = 1};
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_words_step_label(&out, NULL, &top);
    recede_buffer_text(&out, "; ");
    recede_words_step_wash(&out, NULL, &top);
    assert_string_equal(recede_buffer_string(&out), "top of the sky; the top of the sky");
    recede_buffer_free(&out);
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
        cmocka_unit_test(paint_is_told_as_a_hand_measures_it),
        cmocka_unit_test(the_sum_says_in_what_it_is_off),
        cmocka_unit_test(the_sky_has_a_top),
        cmocka_unit_test(a_step_that_misses_is_warned_of),
        cmocka_unit_test(a_pale_paint_needs_its_tube_and_white),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
