/* The pigment a palette lacks most, against the reference search over every palette
 * with one pigment more. */
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

#include "paint/paints.h"

#include <stdio.h>

enum { TARGETS = 24 };

static recede_lab anywhere(dice *d)
{
    return (recede_lab){20 + 75 * throw_dice(d), 120 * throw_dice(d) - 60,
                        140 * throw_dice(d) - 60};
}

/* The closest difference of a palette's mixes to each target; no tie, so that the
 * recipe chosen is the closest. */
static void closest(const recede_paint *paints, size_t count, recede_medium medium,
                    const recede_spectrum *ground, const recede_rules *rules,
                    const recede_lab *targets, double *out)
{
    recede_palette *palette;
    recede_wash_target washes[TARGETS] = {{.graded = 0}};
    recede_wash_recipe found[TARGETS];
    recede_rules tight = *rules;
    tight.tie = 0;
    assert_int_equal(recede_palette_new(paints, count, medium, ground, NULL, &palette, NULL),
                     RECEDE_OK);
    for (int i = 0; i < TARGETS; i++)
        washes[i].from = targets[i];
    assert_int_equal(recede_search_all(palette, &tight, washes, TARGETS, found, NULL, NULL, NULL),
                     RECEDE_OK);
    for (int i = 0; i < TARGETS; i++)
        out[i] = found[i].from.delta_e;
    recede_palette_free(palette);
}

typedef struct {
    const char *name;
    double difference;
} best;

static double millionths(double difference)
{
    return nearbyint(1e6 * difference);
}

/* names: of the palette; kept_out: pigments that must not be tried beside those. */
static void additions_as_by_trial(const char *names, const char *kept_out, recede_medium medium,
                                  recede_spectrum ground, recede_rules rules, dice *d)
{
    static recede_paint paints[RECEDE_MOST_PAINTS];
    size_t count = paints_of(names, paints);
    recede_palette *palette = palette_of(names, medium);
    recede_lab targets[TARGETS];
    recede_addition found[TARGETS];
    double without[TARGETS], with[TARGETS];
    best bests[TARGETS] = {{NULL, 0}};
    for (int i = 0; i < TARGETS; i++)
        targets[i] = anywhere(d);
    closest(paints, count, medium, &ground, &rules, targets, without);
    for (size_t p = 0; p < recede_pigment_count(); p++) {
        const char *name = recede_pigment_at(p)->name;
        if (strstr(names, name) || strstr(kept_out, name))
            continue;
        paints[count] = paint_of(name);
        closest(paints, count + 1, medium, &ground, &rules, targets, with);
        for (int i = 0; i < TARGETS; i++) {
            double beaten = bests[i].name ? bests[i].difference : without[i];
            if (millionths(with[i]) < millionths(beaten))
                bests[i] = (best){name, with[i]};
        }
    }
    assert_int_equal(recede_best_additions(palette, &rules, &ground, targets, TARGETS, found, NULL,
                                           NULL, NULL), RECEDE_OK);
    for (int i = 0; i < TARGETS; i++) {
        assert_near(found[i].without, without[i], 0.6e-6);
        assert_true((found[i].pigment != NULL) == (bests[i].name != NULL));
        if (bests[i].name) {
            assert_string_equal(found[i].pigment->name, bests[i].name);
            assert_near(found[i].delta_e, bests[i].difference, 0.6e-6);
        } else {
            assert_near(found[i].delta_e, without[i], 0.6e-6);
        }
    }
    recede_palette_free(palette);
}

/* names: pigments, titanium white first, which the tubes that are let down have. */
static void let_down_as_by_trial(const char *names, recede_medium medium, recede_rules rules,
                                 dice *d)
{
    static recede_paint paints[RECEDE_MOST_PAINTS];
    size_t count = paints_of(names, paints);
    recede_palette *palette = palette_of(names, medium);
    recede_spectrum paper = recede_paper_white();
    recede_lab targets[TARGETS];
    recede_addition found[TARGETS];
    double without[TARGETS], with[TARGETS];
    best bests[TARGETS] = {{NULL, 0}};
    for (int i = 0; i < TARGETS; i++)
        targets[i] = i % 2 ? anywhere(d)
                           : (recede_lab){80 + 15 * throw_dice(d), 16 * throw_dice(d) - 8,
                                          24 * throw_dice(d) - 12};
    closest(paints, count, medium, &paper, &rules, targets, without);
    for (size_t p = 1; p < count; p++) {
        char name[RECEDE_NAME_SIZE + 16];
        snprintf(name, sizeof name, "pale %s", paints[p].name);
        paints[count] = paint_of(name);
        closest(paints, count + 1, medium, &paper, &rules, targets, with);
        for (int i = 0; i < TARGETS; i++) {
            double beaten = bests[i].name ? bests[i].difference : without[i];
            if (millionths(with[i]) < millionths(beaten))
                bests[i] = (best){paints[p].name, with[i]};
        }
    }
    assert_int_equal(recede_best_additions(palette, &rules, NULL, targets, TARGETS, found, NULL,
                                           NULL, NULL), RECEDE_OK);
    int helped = 0;
    for (int i = 0; i < TARGETS; i++) {
        assert_true((found[i].let_down != NULL) == (bests[i].name != NULL));
        assert_near(found[i].let_down_delta_e, bests[i].name ? bests[i].difference : without[i],
                    0.6e-6);
        helped += bests[i].name != NULL;
        if (bests[i].name)
            assert_string_equal(found[i].let_down->name, bests[i].name);
    }
    assert_true(helped > TARGETS / 3);
    recede_palette_free(palette);
}

static void strong_paints_help_let_down_as_by_trial(void **state)
{
    (void)state;
    dice d = {44};
    let_down_as_by_trial("titanium white|yellow ochre|ultramarine blue", RECEDE_OIL,
                         (recede_rules){3, 8, 1}, &d);
    let_down_as_by_trial("titanium white|burnt umber|cobalt blue|pyrrole red", RECEDE_GOUACHE,
                         (recede_rules){2, 12, 1}, &d);
    let_down_as_by_trial("titanium white|lamp black|phthalo blue, green shade", RECEDE_ACRYLIC,
                         (recede_rules){4, 6, 1}, &d);
}

/* In watercolour water does that; what is let down already is not let down again. */
static void only_strong_opaque_paints_are_let_down(void **state)
{
    (void)state;
    static const char names[] = "titanium white|ultramarine blue|pale ultramarine blue";
    recede_rules rules = {3, 8, 1};
    recede_lab pale = {88, 0, -9};
    recede_addition found;
    recede_palette *palette = palette_of("titanium white|ultramarine blue", RECEDE_WATERCOLOUR);
    assert_int_equal(recede_best_additions(palette, &rules, NULL, &pale, 1, &found, NULL, NULL,
                                           NULL), RECEDE_OK);
    assert_null(found.let_down);
    recede_palette_free(palette);
    palette = palette_of(names, RECEDE_OIL);
    assert_int_equal(recede_best_additions(palette, &rules, NULL, &pale, 1, &found, NULL, NULL,
                                           NULL), RECEDE_OK);
    assert_null(found.let_down);
    assert_near(found.let_down_delta_e, found.without, 0);
    recede_palette_free(palette);
}

static void watercolours_lack_what_trial_shows(void **state)
{
    (void)state;
    dice d = {4};
    additions_as_by_trial("hansa yellow|burnt sienna|ultramarine blue", "titanium white",
                          RECEDE_WATERCOLOUR, recede_paper_white(), (recede_rules){3, 3, 1}, &d);
    additions_as_by_trial("yellow ochre|quinacridone magenta", "titanium white",
                          RECEDE_WATERCOLOUR, recede_paper_white(), (recede_rules){2, 5, 1}, &d);
    for (int i = 0; i < 8; i++)
        additions_as_by_trial("viridian", "titanium white", RECEDE_WATERCOLOUR,
                              recede_paper_white(), (recede_rules){1, 8, 1}, &d);
    additions_as_by_trial(entry_of("landscape-six")->paints, "titanium white", RECEDE_WATERCOLOUR,
                          recede_paper_white(), (recede_rules){2, 3, 1}, &d);
}

static void opaque_paints_lack_what_trial_shows(void **state)
{
    (void)state;
    dice d = {14};
    additions_as_by_trial("titanium white|yellow ochre|ultramarine blue", "", RECEDE_OIL,
                          recede_paper_white(), (recede_rules){3, 8, 1}, &d);
    additions_as_by_trial("titanium white|hansa yellow|burnt umber|cobalt blue", "",
                          RECEDE_GOUACHE, recede_paper_white(), (recede_rules){4, 6, 1}, &d);
}

/* Over a dried wash the wash is the ground. */
static void a_dried_wash_is_a_ground_like_any_other(void **state)
{
    (void)state;
    dice d = {24};
    recede_palette *palette = palette_of("yellow ochre|cobalt blue", RECEDE_WATERCOLOUR);
    recede_mix green = {2, {0, 1}, {3, 1}, 10};
    recede_spectrum dried = recede_mix_reflectance(palette, &green, NULL);
    additions_as_by_trial("yellow ochre|cobalt blue", "titanium white", RECEDE_WATERCOLOUR, dried,
                          (recede_rules){2, 4, 1}, &d);
    recede_palette_free(palette);
}

/* On a dark ground opaque paints come out paler the more of them there is. */
static void paints_paler_than_their_ground_are_found(void **state)
{
    (void)state;
    dice d = {34};
    recede_palette *palette = palette_of("burnt umber|indigo", RECEDE_WATERCOLOUR);
    recede_mix dark = {2, {0, 1}, {1, 1}, 1};
    recede_spectrum dried = recede_mix_reflectance(palette, &dark, NULL);
    additions_as_by_trial("burnt umber|titanium white", "", RECEDE_WATERCOLOUR, dried,
                          (recede_rules){2, 3, 1}, &d);
    recede_palette_free(palette);
}

/* A pigment in the palette under a tube's name is there; one in a mixture is not. */
static void what_is_in_the_palette_is_not_added(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("french ultramarine|hansa yellow", RECEDE_WATERCOLOUR);
    const recede_pigment *ultramarine = recede_pigment_named("ultramarine blue");
    recede_rules rules = {2, 8, 1};
    recede_spectrum paper = recede_paper_white();
    for (size_t level = 10; level < 60; level += 10) {
        recede_spectrum seen = recede_film(&ultramarine->k, &ultramarine->s,
                                           recede_film_of_water(recede_water_at(level)), &paper);
        recede_lab target = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lab;
        recede_addition found;
        assert_int_equal(recede_best_additions(palette, &rules, NULL, &target, 1, &found, NULL,
                                               NULL, NULL), RECEDE_OK);
        assert_near(found.without, 0, 1e-6);
        assert_null(found.pigment);
    }
    recede_palette_free(palette);
    palette = palette_of("sap green|hansa yellow", RECEDE_WATERCOLOUR);
    for (int i = 0; i < recede_palette_paint(palette, 0)->ingredients; i++) {
        const recede_pigment *in = recede_palette_paint(palette, 0)->of[i].pigment;
        if (strcmp(in->name, "hansa yellow") == 0)
            continue;
        recede_spectrum seen = recede_film(&in->k, &in->s, recede_film_of_water(4), &paper);
        recede_lab target = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lab;
        recede_addition found;
        assert_int_equal(recede_best_additions(palette, &rules, NULL, &target, 1, &found, NULL,
                                               NULL, NULL), RECEDE_OK);
        assert_ptr_equal(found.pigment, in);
        assert_near(found.delta_e, 0, 1e-6);
    }
    recede_palette_free(palette);
}

/* A full palette can be added to all the same. */
static void twenty_four_paints_have_room_for_one_more(void **state)
{
    (void)state;
    recede_palette *palette =
        palette_of(entry_of("landscape-twenty-four")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {1, 1, 1};
    const recede_pigment *indigo = recede_pigment_named("indigo");
    recede_spectrum paper = recede_paper_white();
    recede_spectrum seen = recede_film(&indigo->k, &indigo->s, recede_film_of_water(5), &paper);
    recede_lab target = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lab;
    recede_addition found;
    assert_int_equal(recede_best_additions(palette, &rules, NULL, &target, 1, &found, NULL, NULL,
                                           NULL), RECEDE_OK);
    assert_ptr_equal(found.pigment, indigo);
    assert_near(found.delta_e, 0, 1e-6);
    assert_true(found.without > 1);
    recede_palette_free(palette);
}

static int stop(void *context, double share_done)
{
    int *calls = context;
    assert_true(share_done >= 0 && share_done <= 1);
    return ++*calls == 5;
}

static void faults_are_refused_and_nothing_is_left(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("hansa yellow|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 3, 1}, bad = {2, 13, 1};
    recede_lab target = {50, -40, 30}, none = {50, INFINITY, 0};
    recede_addition found;
    test_memory memory;
    int calls = 0;
    recede_progress progress = {stop, &calls};
    assert_int_equal(recede_best_additions(palette, &bad, NULL, &target, 1, &found, NULL, NULL,
                                           NULL), RECEDE_OUT_OF_RANGE);
    assert_int_equal(recede_best_additions(palette, &rules, NULL, &none, 1, &found, NULL, NULL,
                                           NULL), RECEDE_NOT_FINITE);
    assert_int_equal(recede_best_additions(palette, &rules, NULL, &target, 0, &found, NULL, NULL,
                                           NULL), RECEDE_OK);
    for (size_t fail_at = 1;; fail_at++) {
        recede_allocator allocator = test_allocator(&memory, fail_at);
        recede_code code = recede_best_additions(palette, &rules, NULL, &target, 1, &found,
                                                 &allocator, NULL, NULL);
        assert_int_equal(memory.live, 0);
        if (code == RECEDE_OK)
            break;
        assert_int_equal(code, RECEDE_NO_MEMORY);
        assert_true(fail_at < 20);
    }
    recede_allocator allocator = test_allocator(&memory, 0);
    assert_int_equal(recede_best_additions(palette, &rules, NULL, &target, 1, &found, &allocator,
                                           &progress, NULL), RECEDE_CANCELLED);
    assert_int_equal(memory.live, 0);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(watercolours_lack_what_trial_shows),
        cmocka_unit_test(opaque_paints_lack_what_trial_shows),
        cmocka_unit_test(strong_paints_help_let_down_as_by_trial),
        cmocka_unit_test(only_strong_opaque_paints_are_let_down),
        cmocka_unit_test(a_dried_wash_is_a_ground_like_any_other),
        cmocka_unit_test(paints_paler_than_their_ground_are_found),
        cmocka_unit_test(what_is_in_the_palette_is_not_added),
        cmocka_unit_test(twenty_four_paints_have_room_for_one_more),
        cmocka_unit_test(faults_are_refused_and_nothing_is_left),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
