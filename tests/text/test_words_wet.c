/* The words for wet washes, and for paints that are let down. */
#include "text/words_wet.h"

#include "text/plans.h"
#include "text/words_let_down.h"
#include "text/words_match.h"
#include "text/words_media.h"

static void a_shift_is_told_in_three_grades(void **state)
{
    (void)state;
    static const struct { double darker; const char *word; } shifts[] = {
        {0.5, "a touch"}, {1.49, "a touch"}, {1.5, "a little"}, {2.9, "a little"},
        {3.0, "clearly"}, {9.0, "clearly"},
    };
    assert_string_equal(recede_words_wet(0.49), "");
    assert_string_equal(recede_words_wet_beside(0.49), "");
    assert_string_equal(recede_words_wet(0), "");
    assert_string_equal(recede_words_wet(-0.2), "");
    for (size_t i = 0; i < sizeof shifts / sizeof shifts[0]; i++) {
        assert_non_null(strstr(recede_words_wet(shifts[i].darker), shifts[i].word));
        assert_non_null(strstr(recede_words_wet_beside(shifts[i].darker), shifts[i].word));
    }
    assert_string_equal(recede_words_wet_beside(2),
                        "mix a little darker than this: it dries lighter");
}

static recede_mix mix_of(int one, int parts, int other, int other_parts)
{
    return (recede_mix){2, {one, other}, {parts, other_parts}, 0};
}

static void a_recipe_says_what_is_let_down_beforehand(void **state)
{
    (void)state;
    recede_plan *oil = test_plan(test_oil);
    const recede_palette *palette = recede_plan_palette(oil);
    int white = -1, let_down = -1, umber = -1;
    for (int i = 0; i < (int)recede_palette_count(palette); i++) {
        const char *name = recede_palette_paint(palette, (size_t)i)->name;
        white = strcmp(name, "titanium white") == 0 ? i : white;
        umber = strcmp(name, "burnt umber") == 0 ? i : umber;
        let_down = strcmp(name, "pale ultramarine blue") == 0 ? i : let_down;
    }
    assert_true(white >= 0 && let_down >= 0 && umber >= 0);
    recede_mix pale = mix_of(white, 4, let_down, 1), dark = mix_of(white, 1, umber, 3);
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_words_beforehand(&out, palette, &dark);
    assert_int_equal(out.size, 0);
    recede_words_beforehand(&out, palette, &pale);
    assert_string_equal(recede_buffer_string(&out),
                        "beforehand: 1 part ultramarine blue with 11 parts titanium white");
    recede_buffer_free(&out);
    recede_words_let_down_advice(&out, recede_palette_paint(palette, (size_t)umber), 1.21);
    assert_string_equal(recede_buffer_string(&out),
                        "burnt umber let down beforehand (1 part with 11 of white), as one more "
                        "paint, would bring it within 1.3");
    recede_buffer_free(&out);
    recede_plan_free(oil);
}

/* A paint at hand goes before one to buy, unless that is nearer by 1 or more. */
static void the_better_addition_is_named(void **state)
{
    (void)state;
    static recede_paint umber;
    const recede_pigment *blue = recede_pigment_named("cobalt blue");
    const struct { recede_addition addition; const char *says; } cases[] = {
        {{blue, 1.0, 5.0, &umber, 1.9}, "umber"}, {{blue, 1.0, 5.0, &umber, 2.1}, "cobalt"},
        {{blue, 1.0, 5.0, NULL, 5.0}, "cobalt"},  {{NULL, 5.0, 5.0, &umber, 4.0}, "umber"},
        {{NULL, 5.0, 5.0, NULL, 5.0}, NULL},      {{blue, 4.8, 5.0, &umber, 4.7}, NULL},
    };
    assert_int_equal(recede_paint_named("burnt umber", &umber, NULL), RECEDE_OK);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_buffer out;
        recede_buffer_start(&out, NULL);
        assert_int_equal(recede_words_best_addition(&out, &cases[i].addition),
                         cases[i].says != NULL);
        assert_true(cases[i].says ? strstr(recede_buffer_string(&out), cases[i].says) != NULL
                                  : out.size == 0);
        recede_buffer_free(&out);
    }
}

/* Every word of every opaque medium. */
static void no_water_stands_among_the_words_of_opaque_media(void **state)
{
    (void)state;
    static const char *const wrong[] = {"water", "wash", "puddle", "paper", "well"};
    static const recede_medium media[] = {RECEDE_GOUACHE, RECEDE_ACRYLIC, RECEDE_OIL};
    for (size_t i = 0; i < 3; i++) {
        const recede_trade *t = recede_trade_of(media[i]);
        const char *const said[] = {
            t->wash, t->washes, t->puddle, t->puddles, t->well, t->wells, t->at_well,
            t->to_wash, t->washed, t->to_pour[0], t->to_pour[1], t->film, t->bare, t->middle,
            t->middle_short, t->middle_mix, t->graded[0], t->graded[1], t->scrap, t->box,
            t->box_legend, t->beside, t->caution, t->layers};
        for (size_t j = 0; j < sizeof said / sizeof said[0]; j++)
            for (size_t k = 0; k < sizeof wrong / sizeof wrong[0]; k++)
                if (strstr(said[j], wrong[k]))
                    fail_msg("'%s' says %s", said[j], wrong[k]);
    }
    assert_non_null(strstr(recede_trade_of(RECEDE_OIL)->caution, "labels"));
    assert_non_null(strstr(recede_trade_of(RECEDE_OIL)->caution, "Rags"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_shift_is_told_in_three_grades),
        cmocka_unit_test(a_recipe_says_what_is_let_down_beforehand),
        cmocka_unit_test(the_better_addition_is_named),
        cmocka_unit_test(no_water_stands_among_the_words_of_opaque_media),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
