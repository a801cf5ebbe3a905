/* Lengths against the exact definitions of the units (international yard and
 * pound agreement of 1959: 1 yd = 0.9144 m), angles and words. */
#include <string.h>

#include "support/assert_near.h"
#include "text/units.h"

static void lengths_are_exact(void **state)
{
    static const struct { const char *text; double metres; } cases[] = {
        {"30 m", 30.0},        {"400 yd", 365.76},   {"9 km", 9000.0},   {"2 mi", 3218.688},
        {"38 cm", 0.38},       {"28cm", 0.28},       {"300 mm", 0.3},    {"15 in", 0.381},
        {"6 ft", 1.8288},      {" 1.5  km ", 1500.0}, {"-20 m", -20.0},  {"1e3 m", 1000.0},
        {"0.1 m", 0.1},        {"1 mi", 1609.344},   {"1 ft", 0.3048},   {"1 in", 0.0254},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        double metres = -1;
        assert_null(recede_length_of(cases[i].text, &metres));
        assert_near(metres, cases[i].metres, 0.0);
    }
}

static void wrong_lengths_are_told_apart(void **state)
{
    static const struct { const char *text, *why; } cases[] = {
        {"", "number"},          {"far", "number"},      {"m", "number"},
        {"400", "unit"},         {"400 yards", "unit"},  {"9 KM", "unit"},
        {"9 kilometres", "unit"}, {"1,5 km", "point"},   {"1,200 m", "point"},
        {".5 m", "number"},      {"+5 m", "number"},     {"01 m", "unit"},
        {"5 m m", "more"},       {"5 ft 6 in", "more"},  {"nan m", "number"},
        {"1e999 m", "large"},    {"5 m.", "unit"},
        {"0.00000000000000000000000000000000000000001 m", "too long"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        double metres = -1;
        const char *why = recede_length_of(cases[i].text, &metres);
        if (!why || !strstr(why, cases[i].why))
            fail_msg("'%s': '%s', expected '%s'", cases[i].text, why ? why : "fine", cases[i].why);
        assert_near(metres, -1.0, 0.0);
    }
}

/* The code's ranges, as optics handbooks list them (from memory). */
static void visibility_words_lie_in_their_ranges(void **state)
{
    static const struct { const char *word; double from_m, to_m; } ranges[] = {
        {"dense fog", 20, 50},        {"thick fog", 50, 200},   {"moderate fog", 200, 500},
        {"light fog", 500, 1000},     {"thin fog", 1000, 2000}, {"haze", 2000, 4000},
        {"light haze", 4000, 10000},  {"clear", 10000, 20000},  {"very clear", 20000, 50000},
        {"exceptionally clear", 50000, 250000},
    };
    size_t count = sizeof ranges / sizeof ranges[0];
    (void)state;
    for (size_t i = 0; i < count; i++) {
        const recede_word *word = recede_word_named(recede_visibility_words, ranges[i].word);
        double middle = sqrt(ranges[i].from_m * ranges[i].to_m);
        assert_non_null(word);
        assert_near(word->number, middle, 0.03 * middle);
    }
    assert_null(recede_visibility_words[count].word);
    assert_null(recede_word_named(recede_visibility_words, "murky"));
}

/* The design's exponents. */
static void haze_words_have_their_exponents(void **state)
{
    (void)state;
    assert_near(recede_word_named(recede_haze_words, "fine")->number, 1.3, 0.0);
    assert_near(recede_word_named(recede_haze_words, "ordinary")->number, 1.0, 0.0);
    assert_near(recede_word_named(recede_haze_words, "dust")->number, 0.5, 0.0);
    assert_near(recede_word_named(recede_haze_words, "mist")->number, 0.0, 0.0);
    assert_string_equal(recede_word_numbered(recede_haze_words, 0.5)->word, "dust");
    assert_null(recede_word_numbered(recede_haze_words, 0.7));
}

static void a_fist_is_ten_degrees(void **state)
{
    double degrees = -1;
    (void)state;
    assert_null(recede_fists_of("2 fists", &degrees));
    assert_near(degrees, 20.0, 0.0);
    assert_null(recede_fists_of("1 fist", &degrees));
    assert_near(degrees, 10.0, 0.0);
    assert_null(recede_fists_of("0.5 fists", &degrees));
    assert_near(degrees, 5.0, 0.0);
    assert_non_null(recede_fists_of("2 hands", &degrees));
    assert_non_null(recede_fists_of("two fists", &degrees));
    assert_null(recede_word_named(recede_sun_side_words, "left"));
    assert_near(recede_word_named(recede_sun_side_words, "behind")->number, 180.0, 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lengths_are_exact),
        cmocka_unit_test(wrong_lengths_are_told_apart),
        cmocka_unit_test(visibility_words_lie_in_their_ranges),
        cmocka_unit_test(haze_words_have_their_exponents),
        cmocka_unit_test(a_fist_is_ten_degrees),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
