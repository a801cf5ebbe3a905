/* What is said of a ladder: from ladders made up for it, so that every number in
 * a sentence is known. */
#include <string.h>

#include "support/assert_near.h"
#include "text/words_ladder.h"
#include "text/words_ladder_parts.h"

/* Two airs of four rungs: a green, its shadow, and a white, in blue air. */
static const struct {
    double distance_m, value, c, h_deg, own_share;
} lit[2][4] = {
    {{10, 4.1, 44, 125, 1.0}, {300, 4.3, 40, 126, 0.95}, {2000, 5.3, 24, 140, 0.75}, {20000, 7.0, 9, 250, 0.1}},
    {{10, 4.1, 44, 125, 0.98}, {300, 4.6, 27, 130, 0.66}, {2000, 6.0, 10, 240, 0.2}, {20000, 8.0, 6, 266, 0.001}},
}, shadow[2][4] = {
    {{10, 2.0, 16, 135, 1.0}, {300, 2.4, 10, 150, 0.7}, {2000, 3.9, 8, 240, 0.25}, {20000, 6.8, 9, 262, 0.01}},
    {{10, 2.1, 16, 135, 0.9}, {300, 3.4, 8, 150, 0.4}, {2000, 5.8, 9, 260, 0.05}, {20000, 8.0, 6, 266, 0}},
}, white[2][4] = {
    {{10, 9.5, 8, 89, 1.0}, {300, 9.5, 8, 88, 1.0}, {2000, 9.3, 8, 84, 0.95}, {20000, 8.4, 5, 72, 0.5}},
    {{10, 9.5, 8, 86, 1.0}, {300, 9.2, 7, 84, 0.9}, {2000, 8.6, 4, 75, 0.6}, {20000, 8.0, 6, 266, 0}},
};

static recede_ladder ladder;
static recede_scene scene;
static recede_buffer out;

static void set_wash(recede_wash *wash, double value, double c, double h_deg, double own_share)
{
    static const double degree = 3.14159265358979323846 / 180;
    wash->own_share = own_share;
    wash->target.value = value;
    wash->target.lch = (recede_lch){10 * value, c, h_deg};
    wash->target.lab = (recede_lab){10 * value, c * cos(h_deg * degree), c * sin(h_deg * degree)};
}

static int start(void **state)
{
    (void)state;
    memset(&ladder, 0, sizeof ladder);
    recede_scene_default(&scene);
    ladder.scene = &scene;
    ladder.wish.own.kind = RECEDE_OWN_FOLIAGE;
    strcpy(ladder.wish.own.name, "summer oak");
    ladder.wish.white.kind = RECEDE_OWN_SURFACE;
    strcpy(ladder.wish.white.name, "whitewash");
    ladder.wish.rung_count = 4;
    ladder.wish.air_count = 2;
    for (size_t a = 0; a < 2; a++) {
        ladder.wish.visibility_km[a] = ladder.air[a].visibility_km = a ? 8 : 60;
        ladder.air[a].horizon.value = 8;
        ladder.air[a].horizon.lch = (recede_lch){80, 6, 266};
        for (size_t i = 0; i < 4; i++) {
            recede_wash *row = ladder.air[a].rung[i].row;
            ladder.wish.distance_m[i] = ladder.air[a].rung[i].distance_m = lit[a][i].distance_m;
            set_wash(&row[0], lit[a][i].value, lit[a][i].c, lit[a][i].h_deg, lit[a][i].own_share);
            set_wash(&row[1], shadow[a][i].value, shadow[a][i].c, shadow[a][i].h_deg, shadow[a][i].own_share);
            set_wash(&row[2], white[a][i].value, white[a][i].c, white[a][i].h_deg, white[a][i].own_share);
        }
    }
    recede_buffer_start(&out, NULL);
    return 0;
}

static const char *take(void)
{
    static char text[900];
    snprintf(text, sizeof text, "%s", recede_buffer_string(&out));
    recede_buffer_free(&out);
    return text;
}

static const char *rung(size_t air, size_t at)
{
    recede_words_rung(&out, &ladder, air, at);
    return take();
}

static void captions_hold_their_rung_s_numbers(void **state)
{
    (void)state;
    assert_string_equal(rung(0, 0), "At 10 m you see the colour itself: the lit side has value 4.1 and "
                                    "C* 44 (CIELAB chroma), the shadow side value 2.0 and C* 16. The white "
                                    "has value 9.5.");
    assert_string_equal(rung(0, 2),
                        "At 2 km a quarter of what you see is air: the green has lost 20 of its C* of 44 "
                        "and rises from value 4.1 to 5.3: lighter and greyer. The shadow side is ahead: "
                        "three quarters of it is air; it has gone over to the air's blue, C* 8, and "
                        "rises from value 2.0 to 3.9. The white sinks to 9.3 and is warmer.");
    assert_string_equal(rung(0, 3),
                        "At 20 km nine tenths of what you see is air: the green has gone over to the air's "
                        "blue, C* 9, and rises from value 4.1 to 7.0. The shadow side has gone. The "
                        "white sinks to 8.4 and is warmer.");
    assert_string_equal(rung(1, 3), "At 20 km the green has gone. What you see is air: value 8.0, where the "
                                    "horizon has 8.0. The white has gone too.");
}

static const char *lesson(size_t which)
{
    recede_words_lesson_heading(&out, &ladder, which);
    recede_buffer_text(&out, ". ");
    recede_words_lesson(&out, &ladder, which);
    return take();
}

/* The order in which a teacher tells it (common practice, no source). */
static void lessons_come_in_order(void **state)
{
    (void)state;
    assert_string_equal(lesson(0), "First lighter. The lit green goes from value 4.1 at 10 m to 7.0 at 20 "
                                   "km. At 300 m, in haze at 300 m, the eye first sees it.");
    assert_string_equal(lesson(1), "Then greyer. By 2 km, in haze by 300 m, a third or more of its C* of "
                                   "44 (CIELAB chroma) has gone: the air's blue and the leaves' yellow put each other out.");
    assert_string_equal(lesson(2), "Last bluer. From 20 km, in haze from 2 km, the air's blue outweighs what "
                                   "is left of the green. It all ends in the colour of the horizon.");
    assert_string_equal(lesson(3), "The shadow goes first. At 2 km air is 75 % of the shadow's light and 25 % "
                                   "of the lit side's: the darker a thing, the less it has to set against "
                                   "the air.");
    assert_string_equal(lesson(4), "The white grows warmer. It sinks from value 9.5 to 8.4; its hue turns from "
                                   "89 to 72, towards orange: air takes blue away, and adds little to so "
                                   "much light.");
}

/* A white sets the scale where the horizon comes out darker than a plan's. */
static void the_scale_is_said_to_be_the_white_s(void **state)
{
    (void)state;
    scene.sky_value = 8.5;
    recede_words_why(&out, &ladder);
    assert_non_null(strstr(take(), "The paper must hold the sunlit white too, so all values are lower here "
                                   "than in a study with nothing so light in it: the horizon has value 8.0, "
                                   "not 8.5."));
    ladder.air[1].horizon.value = 7.2;
    recede_words_why(&out, &ladder);
    assert_non_null(strstr(take(), "has value 8.0, in the thicker air 7.2, not 8.5."));
    ladder.air[0].horizon.value = ladder.air[1].horizon.value = 8.5;
    recede_words_why(&out, &ladder);
    assert_null(strstr(take(), "paper"));
}

static const char *title(void)
{
    recede_words_ladder_title(&out, &ladder);
    return take();
}

static void the_head_says_what_is_shown(void **state)
{
    (void)state;
    assert_string_equal(title(), "Why far greens go pale and blue");
    recede_words_ladder_subject(&out, &ladder);
    assert_string_equal(take(), "Summer oak, with whitewash beside it, from 10 m to 20 km; clear sky, sun "
                                "40 degrees high, 100 degrees to the side of the view");
    assert_string_equal(recede_words_ladder_air(&ladder, 0), "Clear air");
    assert_string_equal(recede_words_ladder_air(&ladder, 1), "Haze");
    ladder.wish.visibility_km[0] = 8;
    ladder.wish.visibility_km[1] = 2;
    assert_string_equal(recede_words_ladder_air(&ladder, 0), "Clearer air");
    assert_string_equal(recede_words_ladder_air(&ladder, 1), "Thicker air");
}

/* No green, no blue air: then nothing is said of either. */
static void other_colours_are_not_called_green(void **state)
{
    (void)state;
    ladder.wish.own.kind = RECEDE_OWN_COLOUR;
    ladder.wish.own.srgb = (recede_srgb){1, 0.502, 0};
    for (size_t i = 0; i < 4; i++)
        set_wash(&ladder.air[0].rung[i].row[0], 4 + (double)i, 40 - 10 * (double)i, 50, 1 - 0.2 * (double)i);
    ladder.air[0].horizon.lch = ladder.air[1].horizon.lch = (recede_lch){80, 20, 80};
    assert_string_equal(title(), "What the air does to #ff8000");
    assert_string_equal(rung(0, 1), "At 300 m a fifth of what you see is air: the colour has lost 10 of its C* of "
                                    "40 and rises from value 4.0 to 5.0: it looks lighter. The shadow "
                                    "side is ahead: a third of it is air; it has lost 6 of its C* of 16 and "
                                    "rises from value 2.0 to 2.4: lighter and greyer.");
    for (size_t i = 0; i < RECEDE_LESSONS; i++) {
        const char *text = lesson(i);
        assert_null(strstr(text, "green"));
        assert_null(strstr(text, "blue") && i != 4 ? text : NULL);
    }
    recede_words_why(&out, &ladder);
    assert_null(strstr(take(), "blue"));
}

static void fractions_are_the_nearest_ones_said(void **state)
{
    static const struct { double share; const char *words; } cases[] = {
        {0, "hardly any"},   {0.05, "a twentieth"},  {0.1, "a tenth"},       {0.2, "a fifth"},
        {0.25, "a quarter"}, {1.0 / 3, "a third"},   {0.4, "two fifths"},    {0.5, "half"},
        {0.6, "three fifths"}, {2.0 / 3, "two thirds"}, {0.75, "three quarters"}, {0.8, "four fifths"},
        {0.9, "nine tenths"}, {0.95, "nineteen parts in twenty"}, {1, "nearly all"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        assert_string_equal(recede_words_fraction(cases[i].share), cases[i].words);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup(captions_hold_their_rung_s_numbers, start),
        cmocka_unit_test_setup(lessons_come_in_order, start),
        cmocka_unit_test_setup(the_scale_is_said_to_be_the_white_s, start),
        cmocka_unit_test_setup(the_head_says_what_is_shown, start),
        cmocka_unit_test_setup(other_colours_are_not_called_green, start),
        cmocka_unit_test(fractions_are_the_nearest_ones_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
