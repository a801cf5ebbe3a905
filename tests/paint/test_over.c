/* Washes laid over dried ones: the reference against the plainest search there is, the
 * fast one against the reference, and both against two films written out by hand. */
#include "paint/curve.h"
#include "paint/palette.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

#include <limits.h>

#include "paint/brute.h"
#include "paint/over_targets.h"
#include "paint/recipes.h"

static const char small_box[] = "hansa yellow|burnt sienna|ultramarine blue|viridian";

enum { MOST_TARGETS = 48 };

static void search_both(const recede_palette *palette, const recede_rules *rules,
                        const recede_over_target *targets, size_t count,
                        recede_wash_recipe *fast, recede_wash_recipe *reference)
{
    assert_int_equal(recede_search_over(palette, rules, targets, count, fast, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_search_over_all(palette, rules, targets, count, reference, NULL, NULL,
                                            NULL), RECEDE_OK);
}

/* ---- the reference */

/* Brute force on a palette whose paper is the ground: every mix of at most two paints. */
static void check_by_brute_force(const recede_palette *palette, recede_rules rules,
                                 const recede_over_target *target)
{
    recede_paint paints[RECEDE_MOST_PAINTS];
    recede_palette *on;
    recede_wash_recipe found;
    recede_rules fewer = rules;
    double closest;
    size_t count = recede_palette_count(palette);
    fewer.most_pigments = rules.most_pigments < 2 ? rules.most_pigments : 2;
    for (size_t i = 0; i < count; i++)
        paints[i] = *recede_palette_paint(palette, i);
    assert_int_equal(recede_palette_new(paints, count, RECEDE_WATERCOLOUR, &target->from_ground,
                                        NULL, &on, NULL), RECEDE_OK);
    brute all = brute_start(on, &fewer);
    const brute_mix *expected = brute_choose(&all, target->wash.from, -1, &closest);
    assert_int_equal(recede_search_over_all(palette, &rules, target, 1, &found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_same_mix(&found.from.mix, &expected->mix);
    assert_near(found.from.delta_e, 1e-6 * expected->difference, 0.6e-6);
    assert_near(found.from.slip, 1e-6 * expected->slip, 0.6e-6);
    assert_int_equal(found.from.reach == RECEDE_REACHABLE, closest <= 3e6);
    recede_spectrum seen = plain_mix(palette, &found.from.mix, &target->from_ground);
    assert_near_lab(found.from.colour.lab, lab_of_spectrum(&seen), 1e-7);
    brute_end(&all);
    recede_palette_free(on);
}

static void the_reference_is_brute_force(void **state)
{
    (void)state;
    static const double ties[] = {0, 0.25, 1, 3, 10};
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    dice d = {31};
    for (int i = 0; i < 40; i++) {
        recede_over_target target = flat_over(palette, &d, i);
        check_by_brute_force(palette, (recede_rules){1 + i % 4, 3 + i % 5, ties[i % 5]}, &target);
    }
    recede_palette_free(palette);
}

/* The closest difference of one set of paints over a ground, plainly. */
static double closest_of_set(const recede_palette *palette, int one, int other, int most_parts,
                             recede_lab target, const recede_spectrum *ground)
{
    double closest = INFINITY;
    for (int p = 1; p <= most_parts; p++) {
        for (int q = 1; q <= (other < 0 ? 1 : most_parts - p); q++) {
            recede_mix mix = {other < 0 ? 1 : 2, {one, other}, {p, q}, 0};
            for (size_t level = 0; level < recede_water_count(); level++) {
                mix.water = recede_water_at(level);
                recede_spectrum seen = plain_mix(palette, &mix, ground);
                closest = fmin(closest, recede_delta_e(lab_of_spectrum(&seen), target));
            }
        }
    }
    return closest;
}

/* The larger of the ends' closest, each over its own ground. */
static double score_of_set(const recede_palette *palette, int one, int other, int most_parts,
                           const recede_over_target *t)
{
    double from = closest_of_set(palette, one, other, most_parts, t->wash.from, &t->from_ground);
    return fmax(from, closest_of_set(palette, one, other, most_parts, t->wash.to, &t->to_ground));
}

static double bare_score(const recede_over_target *t)
{
    return fmax(recede_delta_e(lab_of_spectrum(&t->from_ground), t->wash.from),
                recede_delta_e(lab_of_spectrum(&t->to_ground), t->wash.to));
}

/* Fewest paints, smallest score, palette order; rounding aside, which these few
 * targets do not come near. */
static void check_graded_set(const recede_palette *palette, const recede_rules *rules,
                             const recede_over_target *t, const recede_wash_recipe *found)
{
    int paints = (int)recede_palette_count(palette), chosen[3][2] = {{-1, -1}, {-1, -1}, {-1, -1}};
    double score[3] = {bare_score(t), INFINITY, INFINITY};
    for (int i = 0; i < paints; i++) {
        for (int j = -1; j < paints; j++) {
            if (j >= 0 && j <= i)
                continue;
            int count = j < 0 ? 1 : 2;
            double own = score_of_set(palette, i, j, rules->most_parts, t);
            if (own < score[count]) {
                score[count] = own;
                chosen[count][0] = i;
                chosen[count][1] = j;
            }
        }
    }
    double best = fmin(score[0], fmin(score[1], score[2]));
    int count = score[0] <= best + rules->tie ? 0 : score[1] <= best + rules->tie ? 1 : 2;
    assert_int_equal(found->from.mix.count, count);
    assert_int_equal(found->to.mix.count, count);
    for (int i = 0; i < count; i++) {
        assert_int_equal(found->from.mix.paint[i], chosen[count][i]);
        assert_int_equal(found->to.mix.paint[i], chosen[count][i]);
    }
}

static void graded_washes_take_one_set_of_paints(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 4, 1};
    dice d = {8};
    for (int i = 0; i < 8; i++) {
        recede_over_target t = graded_over(palette, &d, i);
        recede_wash_recipe found;
        assert_int_equal(recede_search_over_all(palette, &rules, &t, 1, &found, NULL, NULL, NULL),
                         RECEDE_OK);
        check_graded_set(palette, &rules, &t, &found);
        recede_spectrum from = plain_mix(palette, &found.from.mix, &t.from_ground);
        recede_spectrum to = plain_mix(palette, &found.to.mix, &t.to_ground);
        recede_spectrum half =
            plain_halves(palette, &found.from.mix, &found.to.mix, &t.half_ground);
        assert_near_lab(found.from.colour.lab, lab_of_spectrum(&from), 1e-7);
        assert_near_lab(found.to.colour.lab, lab_of_spectrum(&to), 1e-7);
        assert_near(found.half_delta_e, recede_delta_e(lab_of_spectrum(&half), t.wash.half), 1e-7);
    }
    recede_palette_free(palette);
}

/* ---- the fast search */

static void search_as_the_reference(const char *names, recede_rules rules, int graded, int count,
                                    dice *d)
{
    static recede_over_target targets[MOST_TARGETS];
    static recede_wash_recipe fast[MOST_TARGETS], reference[MOST_TARGETS];
    recede_palette *palette = palette_of(names, RECEDE_WATERCOLOUR);
    for (int i = 0; i < count; i++)
        targets[i] = (graded ? graded_over : flat_over)(palette, d, i);
    search_both(palette, &rules, targets, (size_t)count, fast, reference);
    for (int i = 0; i < count; i++)
        assert_same_wash(&fast[i], &reference[i], graded);
    recede_palette_free(palette);
}

static void the_fast_search_finds_the_same(void **state)
{
    (void)state;
    static const double ties[] = {1, 0, 0.25, 3, 10};
    static const char twins[] = "french ultramarine|hansa yellow|ultramarine blue|lemon yellow";
    static const char opaque[] = "titanium white|lamp black|chromium oxide green|cadmium red";
    dice d = {1948};
    for (int i = 0; i < 5; i++) {
        recede_rules rules = {1 + i % 3, 3 + 2 * i, ties[i]};
        search_as_the_reference(entry_of("landscape-six")->paints, rules, 0, 24, &d);
        search_as_the_reference(twins, rules, 0, 16, &d);
        search_as_the_reference(opaque, rules, 0, 16, &d);
        search_as_the_reference(small_box, rules, 1, 8, &d);
        search_as_the_reference(opaque, rules, 1, 4, &d);
    }
    recede_rules usual = {3, 8, 1};
    search_as_the_reference(entry_of("landscape-twelve")->paints, usual, 0, 32, &d);
    search_as_the_reference(entry_of("landscape-twelve")->paints, usual, 1, 4, &d);
}

/* Each is guessed where nothing comes nearer than itself, and no tie forgives another. */
static void a_guess_that_is_no_mix_is_passed_over(void **state)
{
    (void)state;
    static const recede_mix odd[] = {
        {2, {0, 2}, {5, 6}, 10},    {3, {0, 1, 2}, {1, 1, 1}, 10}, {2, {2, 0}, {3, 4}, 10},
        {2, {0, 1}, {1, 0}, 10},    {1, {1}, {1}, 10},             {2, {0, 2}, {2, 4}, 10},
        {2, {0, 2}, {INT_MAX, INT_MAX}, 10}, {2, {0, 99}, {1, 1}, 10}, {-1, {0}, {1}, 10},
    };
    enum { DRAWN = 6 }; /* so many can be painted at all */
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 7, 0};
    for (size_t i = 0; i < sizeof odd / sizeof odd[0]; i++) {
        dice d = {2041};
        recede_wash_recipe fast, reference;
        recede_over_target target = flat_over(palette, &d, 0);
        target.guess = odd[i];
        if (i < DRAWN) {
            recede_spectrum seen = plain_mix(palette, &odd[i], &target.from_ground);
            target.wash.from = lab_of_spectrum(&seen);
        }
        search_both(palette, &rules, &target, 1, &fast, &reference);
        assert_same_wash(&fast, &reference, 0);
    }
    recede_palette_free(palette);
}

static void a_guess_changes_nothing(void **state)
{
    (void)state;
    static recede_over_target targets[MOST_TARGETS];
    static recede_wash_recipe fast[MOST_TARGETS], reference[MOST_TARGETS];
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 8, 1};
    dice d = {1207};
    for (int i = 0; i < MOST_TARGETS; i++) {
        targets[i] = flat_over(palette, &d, i);
        targets[i].guess = any_mix(palette, &d, 2, 1);
    }
    for (int round = 0; round < 2; round++) {
        search_both(palette, &rules, targets, MOST_TARGETS, fast, reference);
        for (int i = 0; i < MOST_TARGETS; i++) {
            assert_same_wash(&fast[i], &reference[i], 0);
            targets[i].guess = reference[i].from.mix;
        }
    }
    recede_palette_free(palette);
}

/* Paints that single precision hardly holds: no K, no S, nearly none of both; and does
 * not hold: far too much of K. */
static void odd_paints_too(void **state)
{
    (void)state;
    recede_paint paints[5];
    recede_spectrum paper = recede_paper_white();
    size_t count = paints_of("yellow ochre|ultramarine blue|viridian|burnt sienna", paints);
    recede_palette *ordinary = palette_of(small_box, RECEDE_WATERCOLOUR);
    memset(&paints[0].k, 0, sizeof paints[0].k);
    memset(&paints[1].s, 0, sizeof paints[1].s);
    for (int band = 0; band < RECEDE_BANDS; band++)
        paints[2].k.at[band] *= 1e-9;
    for (int held = 1; held >= 0; held--) {
        recede_palette *palette;
        recede_over_target targets[8];
        recede_wash_recipe fast[8], reference[8];
        recede_rules rules = {2, 5, 1};
        dice d = {99};
        if (!held)
            paints[3].k.at[5] = RECEDE_MOST_K_OR_S;
        assert_int_equal(recede_palette_new(paints, count, RECEDE_WATERCOLOUR, &paper, NULL,
                                            &palette, NULL), RECEDE_OK);
        assert_int_equal(recede_curve_holds(palette), held);
        for (int i = 0; i < 8; i++)
            targets[i] = flat_over(ordinary, &d, i);
        search_both(palette, &rules, targets, 8, fast, reference);
        for (int i = 0; i < 8; i++)
            assert_same_wash(&fast[i], &reference[i], 0);
        recede_palette_free(palette);
    }
    recede_palette_free(ordinary);
}

/* ---- what it means */

static void no_more_is_laid_over_what_fits(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 8, 1};
    recede_mix lit = {2, {0, 3}, {3, 1}, 12};
    recede_spectrum paper = recede_paper_white();
    recede_over_target target = {.from_ground = plain_mix(palette, &lit, &paper)};
    recede_wash_recipe fast, reference;
    target.wash.from = lab_of_spectrum(&target.from_ground);
    target.wash.from.l -= 0.7;
    search_both(palette, &rules, &target, 1, &fast, &reference);
    assert_int_equal(fast.from.mix.count, 0);
    assert_near(fast.from.slip, 0, 0);
    assert_int_equal(fast.from.reach, RECEDE_REACHABLE);
    assert_near_lab(fast.from.colour.lab, lab_of_spectrum(&target.from_ground), 1e-9);
    assert_same_wash(&fast, &reference, 0);
    recede_palette_free(palette);
}

/* Paper for a ground: the ordinary search in mixes of two. */
static void over_paper_it_is_the_ordinary_search(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {4, 6, 1}, two = {2, 6, 1};
    dice d = {12};
    for (int i = 0; i < 24; i++) {
        recede_over_target target = {.wash = wash_target(palette, &d, i)};
        recede_wash_recipe over, ordinary;
        target.from_ground = target.to_ground = target.half_ground = recede_paper_white();
        assert_int_equal(recede_search_over(palette, &rules, &target, 1, &over, NULL, NULL, NULL),
                         RECEDE_OK);
        assert_int_equal(recede_search_all(palette, &two, &target.wash, 1, &ordinary, NULL, NULL,
                                           NULL), RECEDE_OK);
        assert_same_wash(&over, &ordinary, target.wash.graded);
    }
    recede_palette_free(palette);
}

static void half_and_half_is_the_mean_of_two_puddles(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_spectrum paper = recede_paper_white();
    dice d = {77};
    for (int i = 0; i < 30; i++) {
        recede_mix one = any_mix(palette, &d, 3, 1), other = any_mix(palette, &d, 3, 2);
        if (i % 10 == 0)
            one = (recede_mix){0};
        recede_spectrum found = recede_half_and_half(palette, &one, &other, NULL);
        recede_spectrum expected = plain_halves(palette, &one, &other, &paper);
        recede_spectrum same = recede_half_and_half(palette, &other, &other, NULL);
        recede_spectrum alone = plain_mix(palette, &other, &paper);
        for (int band = 0; band < RECEDE_BANDS; band++) {
            assert_near(found.at[band], expected.at[band], 1e-9);
            assert_near(same.at[band], alone.at[band], 1e-9);
        }
    }
    recede_palette_free(palette);
}

/* ---- refusals and failures */

typedef recede_code search(const recede_palette *, const recede_rules *,
                           const recede_over_target *, size_t, recede_wash_recipe *,
                           const recede_allocator *, const recede_progress *, recede_error *);
static search *const searches[] = {recede_search_over, recede_search_over_all};

static void check_refused(search *run, recede_medium medium, recede_rules rules,
                          const recede_over_target *target, recede_code code, const char *path)
{
    recede_palette *palette = palette_of("titanium white|yellow ochre|viridian", medium);
    recede_wash_recipe found;
    recede_error error;
    assert_int_equal(run(palette, &rules, target, 1, &found, NULL, NULL, &error), code);
    assert_int_equal(error.code, code);
    assert_string_equal(error.path, path);
    recede_palette_free(palette);
}

static void what_cannot_be_is_refused(void **state)
{
    (void)state;
    const recede_rules rules = {3, 8, 1};
    for (int i = 0; i < 2; i++) {
        recede_over_target t = {.from_ground = recede_paper_white()};
        check_refused(searches[i], RECEDE_OIL, rules, &t, RECEDE_CONFLICT, "paint.shadows");
        check_refused(searches[i], RECEDE_WATERCOLOUR, (recede_rules){0, 8, 1}, &t,
                      RECEDE_OUT_OF_RANGE, "paint.most_pigments");
        t.from_ground.at[4] = 0.029;
        check_refused(searches[i], RECEDE_WATERCOLOUR, rules, &t, RECEDE_OUT_OF_RANGE,
                      "targets[0].from_ground");
        t.from_ground.at[4] = NAN;
        check_refused(searches[i], RECEDE_WATERCOLOUR, rules, &t, RECEDE_NOT_FINITE,
                      "targets[0].from_ground");
        t.from_ground.at[4] = 0.5;
        t.wash.from.a = INFINITY;
        check_refused(searches[i], RECEDE_WATERCOLOUR, rules, &t, RECEDE_NOT_FINITE,
                      "targets[0].from");
        t.wash = graded_between((recede_lab){50, 0, 0}, (recede_lab){60, 0, 0});
        t.half_ground = recede_paper_white();
        check_refused(searches[i], RECEDE_WATERCOLOUR, rules, &t, RECEDE_OUT_OF_RANGE,
                      "targets[0].to_ground");
    }
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 4, 1};
    dice d = {3};
    recede_over_target targets[2] = {flat_over(palette, &d, 0), graded_over(palette, &d, 0)};
    for (int i = 0; i < 2; i++) {
        recede_code code = RECEDE_NO_MEMORY;
        size_t fail_at = 0;
        while (code) {
            test_memory memory;
            recede_allocator allocator = test_allocator(&memory, ++fail_at);
            recede_wash_recipe found[2];
            recede_error error;
            code = searches[i](palette, &rules, targets, 2, found, &allocator, NULL, &error);
            assert_int_equal(memory.live, 0);
            if (code) {
                assert_int_equal(code, RECEDE_NO_MEMORY);
                assert_int_equal(error.code, RECEDE_NO_MEMORY);
            }
        }
        assert_true(fail_at > 6);
    }
    recede_palette_free(palette);
}

static int stop_at_half(void *context, double share)
{
    int *calls = context;
    ++*calls;
    return share >= 0.5;
}

static void it_can_be_stopped(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 4, 1};
    dice d = {4};
    recede_over_target targets[4];
    for (int i = 0; i < 4; i++)
        targets[i] = flat_over(palette, &d, i);
    for (int i = 0; i < 2; i++) {
        recede_wash_recipe found[4];
        int calls = 0;
        recede_progress progress = {stop_at_half, &calls};
        assert_int_equal(searches[i](palette, &rules, targets, 4, found, NULL, &progress, NULL),
                         RECEDE_CANCELLED);
        assert_int_equal(calls, 2);
    }
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_reference_is_brute_force),
        cmocka_unit_test(graded_washes_take_one_set_of_paints),
        cmocka_unit_test(the_fast_search_finds_the_same),
        cmocka_unit_test(a_guess_changes_nothing),
        cmocka_unit_test(a_guess_that_is_no_mix_is_passed_over),
        cmocka_unit_test(odd_paints_too),
        cmocka_unit_test(no_more_is_laid_over_what_fits),
        cmocka_unit_test(over_paper_it_is_the_ordinary_search),
        cmocka_unit_test(half_and_half_is_the_mean_of_two_puddles),
        cmocka_unit_test(what_cannot_be_is_refused),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(it_can_be_stopped),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
