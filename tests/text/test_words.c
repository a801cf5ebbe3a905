/* The words for what a plan holds, against what docs/plan.md promises. */
#include <string.h>

#include "support/assert_near.h"
#include "text/words.h"

static recede_buffer out;

static int start(void **state)
{
    (void)state;
    recede_buffer_start(&out, NULL);
    return 0;
}

static int stop(void **state)
{
    (void)state;
    recede_buffer_free(&out);
    return 0;
}

static const char *take(void)
{
    static char text[600];
    snprintf(text, sizeof text, "%s", recede_buffer_string(&out));
    recede_buffer_free(&out);
    return text;
}

static void differences_have_their_words(void **state)
{
    (void)state;
    assert_string_equal(recede_words_difference(0.0), "no eye will see it");
    assert_string_equal(recede_words_difference(0.94), "no eye will see it");
    assert_string_equal(recede_words_difference(1.0), "very close");
    assert_string_equal(recede_words_difference(2.0), "close");
    assert_string_equal(recede_words_difference(4.0), "near, but visible");
    assert_string_equal(recede_words_difference(8.0), "out of reach of this palette");
    assert_string_equal(recede_words_difference(80.0), "out of reach of this palette");
}

/* Two differences that are printed alike have one word: beside "1.0" never two. */
static void one_number_has_one_word(void **state)
{
    (void)state;
    static const double cuts[] = {1, 2, 4, 8};
    for (size_t i = 0; i < sizeof cuts / sizeof cuts[0]; i++) {
        for (int hundredth = -4; hundredth <= 4; hundredth++)
            assert_string_equal(recede_words_difference(cuts[i] + 0.01 * hundredth),
                                recede_words_difference(cuts[i]));
        assert_string_not_equal(recede_words_difference(cuts[i] - 0.06),
                                recede_words_difference(cuts[i]));
    }
    recede_words_slip(&out, RECEDE_WATERCOLOUR, 7.97);
    assert_string_equal(take(), "a quarter more or less water: 8.0 off, plainly visible");
}

/* Common practice, no source: from thick to thin. */
static void consistencies_run_from_butter_to_tinted_water(void **state)
{
    static const char *const order[] = {"butter", "cream", "milk", "tea", "tinted water"};
    size_t reached = 0;
    (void)state;
    for (size_t i = 0; i < recede_water_count(); i++) {
        const char *word = recede_words_consistency(recede_water_at(i));
        if (strcmp(word, order[reached]) != 0)
            reached++;
        assert_string_equal(word, order[reached]);
    }
    assert_int_equal(reached, 4);
}

/* A pea is 0.25 ml and a drop 0.05 ml: five drops make one of water to one. */
static void water_is_told_in_drops(void **state)
{
    static const struct { double water; const char *words; } cases[] = {
        {0.0, "no water"},
        {0.1, "0.1 water to 1 paint (half a drop to a pea)"},
        {0.2, "0.2 water to 1 paint (1 drop to a pea)"},
        {1.0, "1 water to 1 paint (5 drops to a pea)"},
        {4.0, "4 water to 1 paint (20 drops to a pea)"},
        {0.32, "0.32 water to 1 paint (1.5 drops to a pea)"},
        {11.2, "11 water to 1 paint (56 drops to a pea)"},
        {112.0, "110 water to 1 paint (28 ml to a pea)"},
        {200.0, "200 water to 1 paint (50 ml to a pea)"},
        {224.0, "220 water to 1 paint (hardly tinted: touch the brush tip to the paint)"},
        {1000.0, "1000 water to 1 paint (hardly tinted: touch the brush tip to the paint)"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_words_water(&out, cases[i].water);
        assert_string_equal(take(), cases[i].words);
    }
}

static recede_palette *palette_of(recede_medium medium)
{
    static const char *const names[] = {"hansa yellow", "ultramarine blue", "titanium white"};
    recede_paint paints[3];
    recede_spectrum paper = recede_paper_white();
    recede_palette *palette;
    for (int i = 0; i < 3; i++)
        assert_int_equal(recede_paint_named(names[i], &paints[i], NULL), RECEDE_OK);
    assert_int_equal(recede_palette_new(paints, 3, medium, &paper, NULL, &palette, NULL),
                     RECEDE_OK);
    return palette;
}

static void recipes_are_said_in_parts(void **state)
{
    recede_palette *palette = palette_of(RECEDE_WATERCOLOUR);
    const recede_mix two = {2, {0, 1}, {3, 1}, 4.0}, one = {1, {1}, {1}, 0.0}, bare = {0};
    (void)state;
    recede_words_parts(&out, palette, &two);
    assert_string_equal(take(), "3 parts hansa yellow + 1 part ultramarine blue");
    recede_words_recipe(&out, palette, &two);
    assert_string_equal(take(), "3 parts hansa yellow + 1 part ultramarine blue; milk: 4 water "
                                "to 1 paint (20 drops to a pea)");
    recede_words_recipe(&out, palette, &one);
    assert_string_equal(take(), "ultramarine blue alone; butter: no water");
    recede_words_recipe(&out, palette, &bare);
    assert_string_equal(take(), "bare paper");
    recede_palette_free(palette);
}

static void opaque_media_speak_of_no_water(void **state)
{
    static const recede_medium media[] = {RECEDE_GOUACHE, RECEDE_ACRYLIC, RECEDE_OIL};
    const recede_mix mix = {2, {1, 2}, {1, 5}, 0.0}, bare = {0};
    (void)state;
    for (size_t i = 0; i < 3; i++) {
        recede_palette *palette = palette_of(media[i]);
        recede_words_recipe(&out, palette, &mix);
        assert_string_equal(take(), "1 part ultramarine blue + 5 parts titanium white");
        recede_words_recipe(&out, palette, &bare);
        assert_string_equal(take(), "bare ground");
        recede_words_slip(&out, media[i], 2.0);
        assert_string_equal(take(), "a quarter more or less white: 2.0 off, close");
        assert_false(recede_medium_takes_water(media[i]));
        recede_palette_free(palette);
    }
    recede_words_slip(&out, RECEDE_WATERCOLOUR, 9.25);
    assert_string_equal(take(), "a quarter more or less water: 9.2 off, plainly visible");
}

static void distances_have_three_figures(void **state)
{
    static const struct { double metres; const char *words; } cases[] = {
        {30, "30 m"},      {365.76, "366 m"}, {2.5, "2.5 m"},     {0.1, "0.1 m"},
        {999.4, "999 m"},  {999.6, "1 km"},   {1234, "1.23 km"},  {9000, "9 km"},
        {25000, "25 km"},  {12345, "12.3 km"}, {300000, "300 km"}, {-40, "-40 m"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_words_distance(&out, cases[i].metres);
        assert_string_equal(take(), cases[i].words);
    }
}

static void air_and_light_fit_one_line(void **state)
{
    static recede_scene scene;
    (void)state;
    recede_scene_default(&scene);
    scene.sky.sun_height_deg = 38;
    scene.sky.sun_side_deg = 110;
    recede_words_air_and_light(&out, &scene);
    assert_string_equal(take(), "visibility 20 km, ordinary haze, eye at 2 m; clear sky, sun 38 "
                                "degrees high, 110 degrees to the side of the view");
    scene.air.angstrom = 0.7;
    scene.air.mist_visibility_km = 0.3;
    scene.air.mist_top_m = 60;
    scene.sky.kind = RECEDE_SKY_OVERCAST;
    recede_words_air_and_light(&out, &scene);
    assert_string_equal(take(), "visibility 20 km, haze of exponent 0.7, mist up to 60 m with "
                                "visibility 300 m, eye at 2 m; overcast sky");
}

/* Every kind has a sentence with its planes and its numbers in it. */
static void warnings_are_sentences(void **state)
{
    static recede_scene scene;
    static const struct {
        recede_warning warning;
        const char *kind, *says[3];
    } cases[] = {
        {{.kind = RECEDE_WARN_LOW_SUN, .plane = -1, .other = -1,
          .number = {3}}, "low sun", {"3 degrees", "2.7", "trust"}},
        {{.kind = RECEDE_WARN_INTO_SUN, .plane = -1, .other = -1,
          .number = {35}}, "into the sun", {"35", "never look", "eyes"}},
        {{.kind = RECEDE_WARN_INTO_SUN, .plane = -1, .other = -1,
          .number = {0}}, "into the sun", {"you look straight into the sun: ", "never", "eyes"}},
        {{.kind = RECEDE_WARN_INTO_SUN, .plane = -1, .other = -1,
          .number = {1}}, "into the sun", {"within 1 degree of", "never", "eyes"}},
        {{.kind = RECEDE_WARN_NOT_REACHED, .plane = -1, .other = -1, .graded = 1,
          .reach = RECEDE_TOO_VIVID, .number = {4}}, "not reached",
         {"the top of the sky: ", "misses", "4.0 off"}},
        {{.kind = RECEDE_WARN_MERGE, .plane = 0, .other = 1, .number = {0.21, 1.14}}, "merge",
         {"alder line and far ridge differ by 0.2 in value and 1.1 in colour: they will merge",
          "edge", ";"}},
        {{.kind = RECEDE_WARN_MERGE, .plane = 1, .other = -1, .number = {0, 1}}, "merge",
         {"far ridge and the sky", "0.0", "1.0"}},
        {{.kind = RECEDE_WARN_NOT_REACHED, .plane = 0, .other = -1, .shadow = 1,
          .reach = RECEDE_TOO_DARK, .number = {9.3}}, "not reached",
         {"the shadow side of alder line: the nearest mix comes out too light", "9.3", "darker paint"}},
        {{.kind = RECEDE_WARN_NOT_REACHED, .plane = -1, .other = -1, .reach = RECEDE_TOO_PALE,
          .number = {3}}, "not reached",
         {"the sky: the nearest mix comes out too dark", "3.0", "sky's value"}},
        {{.kind = RECEDE_WARN_DARKS_FITTED, .plane = -1, .other = -1,
          .number = {0.8, 0.7, 2.1}}, "darks fitted",
         {"0.7", "2.1", "order"}},
        {{.kind = RECEDE_WARN_TWO_WASHES, .plane = 1, .other = -1, .number = {5.1}}, "two washes",
         {"the lit side of far ridge", "5.1", "two washes"}},
        {{.kind = RECEDE_WARN_GONE, .plane = 1, .other = -1,
          .number = {0.004}}, "gone", {"far ridge", "0.4 %", "leave it out"}},
        {{.kind = RECEDE_WARN_OWN_COLOUR, .plane = 0, .other = -1, .number = {8}}, "own colour",
         {"alder line", "8.0", "duller"}},
    };
    (void)state;
    strcpy(scene.planes[0].name, "alder line");
    strcpy(scene.planes[1].name, "far ridge");
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_words_warning(&out, &scene, &cases[i].warning);
        const char *text = take();
        assert_string_equal(recede_words_warning_kind(cases[i].warning.kind), cases[i].kind);
        for (int k = 0; k < 3; k++)
            if (!strstr(text, cases[i].says[k]))
                fail_msg("'%s' does not say '%s'", text, cases[i].says[k]);
    }
    scene.medium = RECEDE_OIL;
    recede_words_warning(&out, &scene, &cases[10].warning);
    assert_null(strstr(take(), "wash"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(differences_have_their_words),
        cmocka_unit_test(one_number_has_one_word),
        cmocka_unit_test(consistencies_run_from_butter_to_tinted_water),
        cmocka_unit_test(water_is_told_in_drops),
        cmocka_unit_test(recipes_are_said_in_parts),
        cmocka_unit_test(opaque_media_speak_of_no_water),
        cmocka_unit_test(distances_have_three_figures),
        cmocka_unit_test(air_and_light_fit_one_line),
        cmocka_unit_test(warnings_are_sentences),
    };
    return cmocka_run_group_tests(tests, start, stop);
}
