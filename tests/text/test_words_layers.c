/* What lies on what, in words. */
#include "text/words_layers.h"

#include <stdlib.h>

#include "support/assert_near.h"
#include "text/plans.h"

static recede_buffer out;

static const char *words_of(const recede_palette *palette, const recede_wash *wash)
{
    static char text[400];
    recede_buffer_start(&out, NULL);
    recede_words_wash(&out, palette, wash);
    snprintf(text, sizeof text, "%s", recede_buffer_string(&out));
    recede_buffer_free(&out);
    return text;
}

static void a_wash_says_what_it_lies_on(void **state)
{
    (void)state;
    recede_plan *plan = test_plan(test_watercolour);
    const recede_palette *palette = recede_plan_palette(plan);
    recede_wash wash = {.ground = RECEDE_ON_PAPER, .recipe.mix = {1, {3}, {1}, 4.0}};
    assert_string_equal(words_of(palette, &wash),
                        "burnt sienna alone; milk: 4 water to 1 paint (20 drops to a pea)");
    wash.ground = RECEDE_ON_LIT;
    assert_string_equal(words_of(palette, &wash),
                        "burnt sienna alone; milk: 4 water to 1 paint (20 drops to a pea); "
                        "over the dry lit wash");
    wash.recipe.mix.count = 0;
    assert_string_equal(words_of(palette, &wash), "the lit wash as it is");
    wash.ground = RECEDE_ON_PAPER;
    assert_string_equal(words_of(palette, &wash), "bare paper");
    recede_plan_free(plan);
}

/* In each case the sky stops at the crests; the rest goes by the shadows. */
static void a_plan_says_how_its_washes_lie(void **state)
{
    (void)state;
    static const struct { const char *scene, *says, *keeps_silent; } cases[] = {
        {"{\"paint\":{\"palette\":\"landscape-six\",\"most_parts\":3}," TEST_PLANES "}",
         "the shadow goes over it", "nothing is laid over"},
        {"{\"paint\":{\"palette\":\"landscape-six\",\"most_parts\":3,"
         "\"shadows\":\"beside\"}," TEST_PLANES "}",
         "nothing is laid over another wash", "goes over"},
        {"{\"paint\":{\"palette\":\"landscape-six\",\"most_parts\":2,\"tie\":9},"
         "\"planes\":[{\"name\":\"field\",\"distance\":20,\"surface\":\"snow\"},"
         "{\"name\":\"wood\",\"distance\":90,\"foliage\":\"dark conifer\"}]}",
         "A shadow whose recipe says nothing of the lit wash goes on bare paper: keep its place "
         "bare.", "does not say so"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_plan *plan = test_plan(cases[i].scene);
        const char *words = recede_words_layers(plan);
        assert_non_null(strstr(words, "The sky stops at the crests"));
        assert_non_null(strstr(words, cases[i].says));
        assert_null(strstr(words, cases[i].keeps_silent));
        recede_plan_free(plan);
    }
    recede_plan *oil = test_plan(test_oil);
    /* Common practice, no source. */
    assert_non_null(strstr(recede_words_layers(oil), "far planes go first"));
    assert_non_null(strstr(recede_words_layers(oil), "the darks before the lights"));
    assert_non_null(strstr(recede_words_layers(oil), "fat over lean"));
    assert_null(strstr(recede_words_layers(oil), "paper"));
    recede_plan_free(oil);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_wash_says_what_it_lies_on),
        cmocka_unit_test(a_plan_says_how_its_washes_lie),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
