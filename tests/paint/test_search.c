/* The reference search against the plainest one there is (paint/brute.h). */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/brute.h"

enum { TARGETS = 24 };

static recede_lab anywhere(dice *d)
{
    return (recede_lab){110 * throw_dice(d) - 5, 160 * throw_dice(d) - 80,
                        160 * throw_dice(d) - 80};
}

/* Near a mix of the palette, so that many others are near too. */
static recede_lab near_a_mix(dice *d, const brute *all)
{
    recede_lab lab = all->all[throw_below(d, (int)all->count)].lab;
    lab.l += 2 * throw_dice(d) - 1;
    lab.a += 2 * throw_dice(d) - 1;
    lab.b += 2 * throw_dice(d) - 1;
    return lab;
}

static void search_as_brute_force(const char *names, recede_medium medium, recede_rules rules,
                                  dice *d)
{
    recede_palette *palette = palette_of(names, medium);
    brute all = brute_start(palette, &rules);
    recede_wash_target targets[TARGETS] = {{.graded = 0}};
    static recede_wash_recipe found[TARGETS];
    for (int i = 0; i < TARGETS; i++)
        targets[i].from = i % 3 ? near_a_mix(d, &all) : anywhere(d);
    assert_int_equal(recede_search_all(palette, &rules, targets, TARGETS, found, NULL, NULL,
                                       NULL), RECEDE_OK);
    for (int i = 0; i < TARGETS; i++) {
        double closest;
        const brute_mix *expected = brute_choose(&all, targets[i].from, -1, &closest);
        const recede_recipe *recipe = &found[i].from;
        assert_same_mix(&recipe->mix, &expected->mix);
        assert_near(recipe->delta_e, 1e-6 * expected->difference, 0.6e-6);
        assert_near(recipe->slip, 1e-6 * expected->slip, 0.6e-6);
        assert_near(recipe->colour.lab.l, expected->lab.l, 1e-9);
        assert_near(recipe->colour.lab.a, expected->lab.a, 1e-9);
        assert_near(recipe->colour.lab.b, expected->lab.b, 1e-9);
        assert_int_equal(recipe->reach == RECEDE_REACHABLE, closest <= 3e6);
    }
    brute_end(&all);
    recede_palette_free(palette);
}

static const double ties[] = {0, 0.25, 1, 3, 10};
enum { TIES = sizeof ties / sizeof ties[0] };

static void watercolour_recipes_are_those_of_brute_force(void **state)
{
    (void)state;
    static const char *const boxes[] = {
        "hansa yellow|burnt sienna|ultramarine blue",
        "yellow ochre|quinacridone magenta|phthalo blue, green shade|viridian",
        "titanium white|lamp black|cerulean blue hue|sap green",
    };
    dice d = {2024};
    for (int box = 0; box < 3; box++)
        for (int tie = 0; tie < TIES; tie++)
            search_as_brute_force(boxes[box], RECEDE_WATERCOLOUR,
                                  (recede_rules){1 + (tie + box) % 4, 3 + tie % 3, ties[tie]}, &d);
}

static void opaque_recipes_are_those_of_brute_force(void **state)
{
    (void)state;
    dice d = {77};
    for (int tie = 0; tie < TIES; tie++) {
        search_as_brute_force("titanium white|yellow ochre|ultramarine blue|burnt sienna",
                              RECEDE_GOUACHE, (recede_rules){3, 8, ties[tie]}, &d);
        search_as_brute_force("lamp black|hansa yellow|chinese white|titanium white|cadmium red",
                              RECEDE_OIL, (recede_rules){4, 6, ties[tie]}, &d);
    }
}

/* Twins, one paint under two names, tie in everything but the palette's order. */
static void twins_go_by_palette_order(void **state)
{
    (void)state;
    dice d = {5};
    search_as_brute_force("french ultramarine|hansa yellow|ultramarine blue|lemon yellow",
                          RECEDE_WATERCOLOUR, (recede_rules){2, 4, 1}, &d);
    recede_palette *palette =
        palette_of("french ultramarine|hansa yellow|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_mix blue = {1, {2}, {1}, 5};
    recede_wash_target target = {.from = colour_of_mix(palette, &blue).lab};
    recede_wash_recipe found;
    recede_rules rules = {3, 6, 0};
    assert_int_equal(recede_search_all(palette, &rules, &target, 1, &found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(found.from.mix.count, 1);
    assert_int_equal(found.from.mix.paint[0], 0);
    recede_palette_free(palette);
}

static void a_colour_that_is_a_mix_is_met_exactly(void **state)
{
    (void)state;
    static const recede_mix mixes[] = {
        {1, {3}, {1}, 0},          {1, {4}, {1}, 1000},       {2, {0, 5}, {5, 2}, 11.2},
        {2, {2, 4}, {1, 7}, 0.355}, {3, {0, 2, 5}, {3, 4, 1}, 25}, {3, {1, 3, 4}, {2, 1, 5}, 0.1},
    };
    enum { MIXES = sizeof mixes / sizeof mixes[0] };
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 8, 0};
    recede_wash_target targets[MIXES] = {{.graded = 0}};
    recede_wash_recipe found[MIXES];
    for (int i = 0; i < MIXES; i++)
        targets[i].from = colour_of_mix(palette, &mixes[i]).lab;
    assert_int_equal(recede_search_all(palette, &rules, targets, MIXES, found, NULL, NULL, NULL),
                     RECEDE_OK);
    for (int i = 0; i < MIXES; i++) {
        assert_same_mix(&found[i].from.mix, &mixes[i]);
        assert_near(found[i].from.delta_e, 0, 1e-9);
        assert_int_equal(found[i].from.reach, RECEDE_REACHABLE);
    }
    recede_palette_free(palette);
}

static void bare_paper_is_the_recipe_for_paper(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_spectrum paper = recede_paper_white();
    recede_wash_target target = {
        .from = recede_colour_of_xyz(recede_xyz_of_reflectance(&paper)).lab};
    recede_wash_recipe found;
    recede_rules rules = {2, 4, 1};
    target.from.b += 0.5;
    assert_int_equal(recede_search_all(palette, &rules, &target, 1, &found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(found.from.mix.count, 0);
    assert_near(found.from.mix.water, 0, 0);
    assert_near(found.from.slip, 0, 0);
    assert_near(found.from.delta_e, recede_delta_e(found.from.colour.lab, target.from), 1e-12);
    recede_palette_free(palette);
}

/* Common practice, no source: an opaque picture has no bare places by design. */
static void in_opaque_media_no_place_is_left_bare(void **state)
{
    (void)state;
    const recede_medium media[] = {RECEDE_GOUACHE, RECEDE_ACRYLIC, RECEDE_OIL};
    for (int i = 0; i < 3; i++) {
        recede_palette *palette = palette_of("titanium white|yellow ochre|viridian", media[i]);
        recede_rules rules = {3, 8, 1};
        recede_wash_target target = {0};
        recede_wash_recipe found[2];
        recede_index *index;
        target.from = recede_colour_of_xyz(
                          recede_xyz_of_reflectance(recede_palette_paper(palette))).lab;
        assert_int_equal(recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL), RECEDE_OK);
        assert_int_equal(recede_search_all(palette, &rules, &target, 1, &found[0], NULL, NULL, NULL),
                         RECEDE_OK);
        assert_int_equal(recede_search(index, &target, 1, &found[1], NULL, NULL, NULL), RECEDE_OK);
        for (int n = 0; n < 2; n++) {
            assert_int_equal(found[n].from.mix.count, 1);
            assert_int_equal(found[n].from.mix.paint[0], 0);
        }
        recede_index_free(index);
        recede_palette_free(palette);
    }
}

/* Out of reach, the colour says which way: darker than black paint, paler than paper,
 * stronger than any paint. */
static void what_no_mix_reaches_is_called_by_its_fault(void **state)
{
    (void)state;
    static const struct { recede_lab lab; recede_reach reach; } wild[] = {
        {{4, 0, 0}, RECEDE_TOO_DARK},        {{110, 0, 2}, RECEDE_TOO_PALE},
        {{60, -110, 60}, RECEDE_TOO_VIVID},  {{50, 30, -100}, RECEDE_TOO_VIVID},
        {{70, -5, 15}, RECEDE_REACHABLE},
    };
    enum { WILD = sizeof wild / sizeof wild[0] };
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_wash_target targets[WILD] = {{.graded = 0}};
    recede_wash_recipe found[WILD];
    recede_rules rules = {3, 6, 1};
    for (int i = 0; i < WILD; i++)
        targets[i].from = wild[i].lab;
    assert_int_equal(recede_search_all(palette, &rules, targets, WILD, found, NULL, NULL, NULL),
                     RECEDE_OK);
    for (int i = 0; i < WILD; i++)
        assert_int_equal(found[i].from.reach, wild[i].reach);
    recede_palette_free(palette);
}

static void the_order_of_the_palette_does_not_change_the_difference(void **state)
{
    (void)state;
    static const char *const orders[] = {
        "hansa yellow|burnt sienna|ultramarine blue|viridian|pyrrole red",
        "viridian|ultramarine blue|pyrrole red|hansa yellow|burnt sienna",
        "pyrrole red|viridian|burnt sienna|ultramarine blue|hansa yellow",
    };
    recede_wash_target targets[TARGETS] = {{.graded = 0}};
    static recede_wash_recipe found[3][TARGETS];
    recede_rules rules = {3, 6, 1};
    dice d = {11};
    for (int i = 0; i < TARGETS; i++)
        targets[i].from = (recede_lab){40 + 50 * throw_dice(&d), 40 * throw_dice(&d) - 20,
                                       60 * throw_dice(&d) - 20};
    for (int order = 0; order < 3; order++) {
        recede_palette *palette = palette_of(orders[order], RECEDE_WATERCOLOUR);
        assert_int_equal(recede_search_all(palette, &rules, targets, TARGETS, found[order], NULL,
                                           NULL, NULL), RECEDE_OK);
        recede_palette_free(palette);
    }
    for (int i = 0; i < TARGETS; i++) {
        assert_near(found[1][i].from.delta_e, found[0][i].from.delta_e, 1e-9);
        assert_near(found[2][i].from.delta_e, found[0][i].from.delta_e, 1e-9);
        assert_near(found[1][i].from.slip, found[0][i].from.slip, 1e-9);
    }
}

static void the_range_is_that_of_brute_force(void **state)
{
    (void)state;
    static const struct { const char *names; recede_medium medium; } boxes[] = {
        {"hansa yellow|burnt umber|ultramarine blue", RECEDE_WATERCOLOUR},
        {"titanium white|lamp black|yellow ochre", RECEDE_OIL},
    };
    recede_rules rules = {3, 6, 1};
    for (int i = 0; i < 2; i++) {
        recede_palette *palette = palette_of(boxes[i].names, boxes[i].medium);
        brute all = brute_start(palette, &rules);
        double darkest = 1, palest = 0, found_darkest, found_palest;
        for (size_t j = 0; j < all.count; j++) {
            double y = colour_of_mix(palette, &all.all[j].mix).xyz.y;
            darkest = fmin(darkest, y);
            palest = fmax(palest, y);
        }
        recede_palette_range(palette, &rules, &found_darkest, &found_palest);
        assert_near(found_darkest, darkest, 1e-12);
        assert_near(found_palest, palest, 1e-12);
        brute_end(&all);
        recede_palette_free(palette);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(watercolour_recipes_are_those_of_brute_force),
        cmocka_unit_test(opaque_recipes_are_those_of_brute_force),
        cmocka_unit_test(twins_go_by_palette_order),
        cmocka_unit_test(a_colour_that_is_a_mix_is_met_exactly),
        cmocka_unit_test(bare_paper_is_the_recipe_for_paper),
        cmocka_unit_test(in_opaque_media_no_place_is_left_bare),
        cmocka_unit_test(what_no_mix_reaches_is_called_by_its_fault),
        cmocka_unit_test(the_order_of_the_palette_does_not_change_the_difference),
        cmocka_unit_test(the_range_is_that_of_brute_force),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
