/* The words of recipes for one colour, and the lines at the terminal. */
#include "text/match_write.h"
#include "text/words_match.h"

#include "paint/paints.h"
#include "support/assert_near.h"
#include "text/words.h"

static const char *said(recede_buffer *words)
{
    assert_false(words->failed);
    return recede_buffer_string(words);
}

static void additions_come_with_what_is_to_be_said_against_them(void **state)
{
    (void)state;
    static const struct { const char *pigment; double within; const char *words; } told[] = {
        {"phthalo green, blue shade", 0.31, "phthalo green, blue shade would bring it within 0.4"},
        {"burnt sienna", 0.4, "burnt sienna would bring it within 0.4"},
        {"cadmium red", 1.999, "cadmium red (cadmium: mind its label) would bring it within 2.0"},
        {"naples yellow", 0,
         "naples yellow (lead and antimony: mind its label) would bring it within 0.0"},
        {"indigo", 1, "indigo (it fades) would bring it within 1.0"},
        {"aureolin", 1, "aureolin (it fades; cobalt: mind its label) would bring it within 1.0"},
    };
    for (size_t i = 0; i < sizeof told / sizeof told[0]; i++) {
        recede_buffer words;
        recede_buffer_start(&words, NULL);
        recede_words_addition(&words, recede_pigment_named(told[i].pigment), told[i].within);
        assert_string_equal(said(&words), told[i].words);
        recede_buffer_free(&words);
    }
    assert_true(recede_addition_helps(3, 2.4));
    assert_false(recede_addition_helps(3, 2.6));
}

static void a_warning_names_the_pigment_or_else_the_remedy(void **state)
{
    (void)state;
    static recede_scene scene;
    recede_warning warning = {.kind = RECEDE_WARN_NOT_REACHED, .plane = -1, .other = -1,
                              .reach = RECEDE_TOO_VIVID, .number = {3.3, 0.72}};
    for (int named = 0; named <= 2; named++) {
        recede_buffer words;
        recede_buffer_start(&words, NULL);
        warning.pigment = named ? recede_pigment_named("viridian") : NULL;
        warning.number[1] = named < 2 ? 0.72 : 3.1;
        recede_words_warning(&words, &scene, &warning);
        int says = strstr(said(&words), "viridian (chromium: mind its label) would bring it "
                                        "within 0.8, or take the mix as it is") != NULL;
        int remedy = strstr(said(&words), "add a purer paint of that hue, or take") != NULL;
        assert_true(says == (named == 1) && remedy == (named != 1));
        recede_buffer_free(&words);
    }
}

static void colours_and_differences_in_words(void **state)
{
    (void)state;
    recede_colour colour = recede_colour_of_xyz(recede_xyz_of_srgb((recede_srgb){0.2, 0.4, 1}));
    recede_buffer words;
    recede_buffer_start(&words, NULL);
    recede_words_colour(&words, &colour);
    assert_memory_equal(said(&words), "#3366ff: L* ", 12);
    words.size = 0;
    recede_words_off(&words, 0.44);
    assert_string_equal(said(&words), "0.4 off, no eye will see it");
    words.size = 0;
    recede_words_off(&words, 9.99);
    assert_string_equal(said(&words), "10.0 off, plainly visible");
    recede_buffer_free(&words);
}

/* Columns as shown: escape sequences take none. */
static size_t widest(const char *text)
{
    size_t most = 0, column = 0;
    for (; *text; text++) {
        if (*text == '\033') {
            text += strcspn(text, "m");
        } else {
            column = *text == '\n' ? 0 : column + 1;
            most = column > most ? column : most;
        }
    }
    return most;
}

static int same_mix(const recede_mix *one, const recede_mix *other)
{
    int differences = one->count != other->count || fabs(one->water - other->water) > 0;
    for (int i = 0; i < one->count; i++)
        differences += one->paint[i] != other->paint[i] || one->parts[i] != other->parts[i];
    return differences == 0;
}

static void every_recipe_is_told_once_and_no_line_is_too_long(void **state)
{
    (void)state;
    static recede_matches matches;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 4, 1};
    dice d = {3};
    for (int i = 0; i < 12; i++) {
        recede_lab target = {30 + 66 * throw_dice(&d), 60 * throw_dice(&d) - 30,
                             80 * throw_dice(&d) - 40};
        recede_buffer text;
        size_t recipes = 0;
        assert_int_equal(recede_match_all(palette, &rules, target, &matches, NULL, NULL),
                         RECEDE_OK);
        recede_match_told told = {recede_colour_of_xyz(recede_xyz_of_lab(target, recede_white())),
                                  palette, "landscape-six", &rules, &matches, NULL};
        recede_buffer_start(&text, NULL);
        recede_match_text(&told, i % 2, &text);
        assert_true(widest(said(&text)) <= 100);
        assert_true((strchr(said(&text), '\033') != NULL) == i % 2);
        for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++) {
            int before = 0;
            assert_non_null(strstr(said(&text),
                                   recede_words_match_kind((recede_match_kind)kind)));
            for (int earlier = 0; earlier < kind; earlier++)
                before |= same_mix(&matches.of[earlier].recipe.mix, &matches.of[kind].recipe.mix);
            recipes += !before;
        }
        for (const char *at = said(&text); (at = strstr(at, "; in lamp light ")); at++)
            recipes--;
        assert_int_equal(recipes, 0);
        recede_buffer_free(&text);
    }
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(additions_come_with_what_is_to_be_said_against_them),
        cmocka_unit_test(a_warning_names_the_pigment_or_else_the_remedy),
        cmocka_unit_test(colours_and_differences_in_words),
        cmocka_unit_test(every_recipe_is_told_once_and_no_line_is_too_long),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
