/* The words for what another light changes. Recipes are invented. */
#include <string.h>

#include "support/assert_near.h"
#include "text/words_skies.h"

static recede_buffer out;

static const char *take(void)
{
    static char text[600];
    snprintf(text, sizeof text, "%s", recede_buffer_string(&out));
    recede_buffer_free(&out);
    return text;
}

static int start(void **state)
{
    (void)state;
    recede_buffer_start(&out, NULL);
    return 0;
}

static recede_palette *palette_of(recede_medium medium, const char *const *names, size_t count)
{
    recede_paint paints[6];
    recede_spectrum paper = recede_paper_white();
    recede_palette *palette;
    for (size_t i = 0; i < count; i++)
        assert_int_equal(recede_paint_named(names[i], &paints[i], NULL), RECEDE_OK);
    assert_int_equal(recede_palette_new(paints, count, medium, &paper, NULL, &palette, NULL), RECEDE_OK);
    return palette;
}

static recede_wash wash(recede_mix mix, double value)
{
    recede_wash w;
    memset(&w, 0, sizeof w);
    w.recipe.mix = mix;
    w.recipe.colour.value = value;
    return w;
}

static const char *said(const recede_palette *palette, const recede_wash *from, const recede_wash *to)
{
    recede_words_change(&out, palette, from, to);
    return take();
}

static void changes_are_said_as_a_painter_would(void **state)
{
    static const char *const names[] = {"yellow ochre", "burnt umber", "cobalt blue", "viridian",
                                        "phthalo blue, green shade"};
    recede_palette *palette = palette_of(RECEDE_WATERCOLOUR, names, 5);
    const recede_wash green = wash((recede_mix){2, {0, 2}, {3, 4}, 3.15}, 5.0);
    const recede_wash brown = wash((recede_mix){2, {0, 1}, {3, 4}, 4.2}, 6.5);
    const recede_wash more = wash((recede_mix){2, {0, 2}, {1, 4}, 3.15}, 4.7);
    const recede_wash three = wash((recede_mix){3, {1, 3, 4}, {1, 1, 1}, 6.3}, 5.05);
    const recede_wash thick = wash((recede_mix){2, {0, 2}, {3, 4}, 0.0}, 3.0);
    const recede_wash bare = wash((recede_mix){0}, 9.4);
    recede_wash over = green, nothing = bare;
    (void)state;
    over.ground = nothing.ground = RECEDE_ON_LIT;
    assert_string_equal(said(palette, &green, &brown),
                        "cobalt blue goes, burnt umber comes in; a third more water; a step and a "
                        "half lighter");
    assert_string_equal(said(palette, &green, &green), "as before");
    assert_string_equal(said(palette, &green, &more), "more cobalt blue in it; a touch darker");
    assert_string_equal(said(palette, &green, &three),
                        "yellow ochre and cobalt blue go, burnt umber, viridian and phthalo blue "
                        "come in; twice the water; value as before");
    assert_string_equal(said(palette, &green, &thick), "no water now; two steps darker");
    assert_string_equal(said(palette, &thick, &green), "now with water; two steps lighter");
    assert_string_equal(said(palette, &green, &bare),
                        "bare paper now; four steps and a half lighter");
    assert_string_equal(said(palette, &bare, &green),
                        "yellow ochre and cobalt blue come in; four steps and a half darker");
    assert_string_equal(said(palette, &green, &over), "over the dry lit wash; value as before");
    assert_string_equal(said(palette, &over, &green), "on the paper itself; value as before");
    assert_string_equal(said(palette, &green, &nothing),
                        "nothing over the lit wash now; four steps and a half lighter");
    recede_palette_free(palette);
}

/* Two blues that differ only behind the comma keep their full names. */
static void names_stay_apart(void **state)
{
    recede_paint paints[3];
    recede_spectrum paper = recede_paper_white();
    recede_palette *palette;
    (void)state;
    assert_int_equal(recede_paint_named("phthalo blue, green shade", &paints[0], NULL), RECEDE_OK);
    assert_int_equal(recede_paint_named("cobalt blue", &paints[1], NULL), RECEDE_OK);
    assert_int_equal(recede_paint_named("viridian", &paints[2], NULL), RECEDE_OK);
    strcpy(paints[1].name, "phthalo blue, of my own");
    assert_int_equal(recede_palette_new(paints, 3, RECEDE_WATERCOLOUR, &paper, NULL, &palette, NULL),
                     RECEDE_OK);
    const recede_wash green = wash((recede_mix){1, {2}, {1}, 3.15}, 5.0);
    const recede_wash blue = wash((recede_mix){1, {0}, {1}, 3.15}, 5.0);
    assert_string_equal(said(palette, &green, &blue),
                        "viridian goes, phthalo blue, green shade comes in; value as before");
    recede_palette_free(palette);
}

static void opaque_media_speak_of_no_water(void **state)
{
    static const char *const names[] = {"yellow ochre", "cobalt blue", "titanium white"};
    recede_palette *palette = palette_of(RECEDE_GOUACHE, names, 3);
    const recede_wash pale = wash((recede_mix){2, {0, 2}, {1, 5}, 0}, 8.0);
    const recede_wash deep = wash((recede_mix){2, {0, 1}, {1, 1}, 0}, 4.0), bare = wash((recede_mix){0}, 9);
    (void)state;
    assert_string_equal(said(palette, &pale, &deep),
                        "titanium white goes, cobalt blue comes in; four steps darker");
    assert_string_equal(said(palette, &deep, &bare), "bare ground now; five steps lighter");
    recede_palette_free(palette);
}

/* Water comes in steps of 12 %: one step is a little, two a quarter, ... */
static void water_is_said_in_fractions(void **state)
{
    static const struct { double ratio; const char *words; } cases[] = {
        {1.0, ""}, {1.12, "a little more water"}, {1.25, "a quarter more water"},
        {1.4, "a third more water"}, {1.6, "half as much water again"}, {2.0, "twice the water"},
        {3.2, "three times the water"}, {5.0, "five times the water"}, {12.0, "12 times the water"},
        {0.89, "a little less water"}, {0.8, "a quarter less water"}, {0.66, "a third less water"},
        {0.5, "half the water"}, {0.33, "a third of the water"}, {0.25, "a quarter of the water"},
        {0.1, "a tenth of the water"}, {0.01, "far less water"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_words_water_ratio(&out, cases[i].ratio);
        assert_string_equal(take(), cases[i].words);
    }
}

static void values_are_said_in_steps(void **state)
{
    static const struct { double step; const char *words; } cases[] = {
        {0, "value as before"}, {0.14, "value as before"}, {-0.2, "a touch darker"},
        {0.5, "half a step lighter"}, {-1.1, "a step darker"}, {1.5, "a step and a half lighter"},
        {-2.2, "two steps darker"}, {9.9, "ten steps lighter"}, {-10, "ten steps darker"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_words_value_step(&out, cases[i].step);
        assert_string_equal(take(), cases[i].words);
    }
}

static void a_light_fits_one_line(void **state)
{
    const recede_air air = {.visibility_km = 5};
    recede_sky sky = {.kind = RECEDE_SKY_CLEAR, .sun_height_deg = 15, .sun_side_deg = 80};
    (void)state;
    recede_words_light_line(&out, &air, &sky);
    assert_string_equal(take(), "visibility 5 km; sun 15 degrees high, 80 degrees to the side");
    sky.sun_height_deg = 1;
    sky.sun_side_deg = 180;
    recede_words_light_line(&out, &air, &sky);
    assert_string_equal(take(), "visibility 5 km; sun 1 degree high, straight behind");
    sky.kind = RECEDE_SKY_OVERCAST;
    recede_words_light_line(&out, &air, &sky);
    assert_string_equal(take(), "visibility 5 km; overcast sky");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup(changes_are_said_as_a_painter_would, start),
        cmocka_unit_test_setup(names_stay_apart, start),
        cmocka_unit_test_setup(opaque_media_speak_of_no_water, start),
        cmocka_unit_test_setup(water_is_said_in_fractions, start),
        cmocka_unit_test_setup(values_are_said_in_steps, start),
        cmocka_unit_test_setup(a_light_fits_one_line, start),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
