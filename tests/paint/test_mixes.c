/* The walk through every mix: how many, in which order, each once. */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/brute.h"
#include "paint/mixes.h"
#include "paint/nearness.h"
#include "paint/rule.h"
#include "paint/sweep.h"

static size_t walked(int paints, int most_pigments, int most_parts)
{
    recede_mixes walk;
    recede_rules rules = {most_pigments, most_parts, 1};
    size_t count = 0;
    recede_mixes_start(&walk, paints, &rules);
    while (recede_mixes_next(&walk))
        count++;
    assert_near(recede_mixes_count(paints, &rules), (double)count, 0);
    return count;
}

/* Worked out by hand: coprime pairs of up to 8 parts are 21, triples 52; 12 paints make
 * 66 pairs and 220 triples. 12 + 66 x 21 + 220 x 52 = 12838. */
static void so_many_mixes(void **state)
{
    (void)state;
    assert_int_equal(walked(12, 3, 8), 12838);
    assert_int_equal(walked(1, 4, 12), 1);
    assert_int_equal(walked(2, 2, 1), 2);
    assert_int_equal(walked(2, 2, 2), 3);
    assert_int_equal(walked(2, 4, 3), 5);
    assert_int_equal(walked(24, 1, 12), 24);
    assert_int_equal(walked(4, 4, 4), 4 + 6 * 5 + 4 * 4 + 1);
}

/* Binomial coefficients: 1 + 12 + 66 + 220, 1 + 24 + 276 + 2024. */
static void so_many_sets(void **state)
{
    (void)state;
    assert_int_equal(recede_set_count(12, 3), 299);
    assert_int_equal(recede_set_count(24, 3), 2325);
    assert_int_equal(recede_set_count(24, 4), 2325 + 10626);
    assert_int_equal(recede_set_count(2, 4), 4);
    assert_int_equal(recede_set_count(5, 0), 1);
}

static int same_mix(const recede_mix *one, const recede_mix *other)
{
    size_t used = (size_t)one->count * sizeof one->paint[0];
    return one->count == other->count && memcmp(one->paint, other->paint, used) == 0
           && memcmp(one->parts, other->parts, used) == 0;
}

static void the_walk_meets_what_brute_force_lists(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("titanium white|yellow ochre|cobalt blue|lamp black"
                                         "|burnt sienna", RECEDE_OIL);
    for (int pigments = 1; pigments <= 4; pigments++) {
        recede_mixes walk;
        recede_rules rules = {pigments, 7, 1};
        brute all = brute_start(palette, &rules);
        size_t met = 0;
        recede_mixes_start(&walk, 5, &rules);
        while (recede_mixes_next(&walk)) {
            size_t same = 0;
            for (size_t i = 0; i < all.count; i++)
                same += same_mix(&all.all[i].mix, &walk.mix);
            assert_int_equal(same, 1);
            met++;
        }
        assert_int_equal(met, all.count);
        brute_end(&all);
    }
    recede_palette_free(palette);
}

static int compare_in_order(const recede_mix *one, const recede_mix *other)
{
    recede_candidate first = {*one, 0, 0}, second = {*other, 0, 0};
    return recede_compare_candidates(&first, &second);
}

static void the_walk_goes_in_the_order_of_the_rule(void **state)
{
    (void)state;
    recede_mixes walk;
    recede_rules rules = {4, 9, 1};
    recede_mix before = {0};
    recede_mixes_start(&walk, 6, &rules);
    while (recede_mixes_next(&walk)) {
        assert_true(compare_in_order(&before, &walk.mix) < 0);
        assert_int_equal(walk.parts, recede_mix_parts(&walk.mix));
        before = walk.mix;
    }
}

static void sets_keep_their_numbers(void **state)
{
    (void)state;
    recede_mixes walk;
    recede_rules rules = {4, 6, 1};
    size_t seen = 0;
    recede_mixes_start(&walk, 7, &rules);
    while (recede_mixes_next(&walk)) {
        int paint[RECEDE_MOST_IN_MIX];
        assert_int_equal(recede_set_paints(7, walk.set, paint), walk.mix.count);
        assert_memory_equal(paint, walk.mix.paint, (size_t)walk.mix.count * sizeof paint[0]);
        assert_true(walk.set > 0 && walk.set < recede_set_count(7, 4));
        if (walk.set > seen) {
            assert_int_equal(walk.set, seen + 1);
            seen = walk.set;
        }
    }
    assert_int_equal(seen + 1, recede_set_count(7, 4));
}

static void one_set_alone_is_a_part_of_the_walk(void **state)
{
    (void)state;
    recede_mixes all, alone;
    recede_rules rules = {3, 8, 1};
    int paint[] = {1, 2, 4};
    recede_mixes_start(&all, 5, &rules);
    recede_mixes_start_set(&alone, paint, 3, 8);
    while (recede_mixes_next(&all)) {
        if (all.mix.count == 3 && memcmp(all.mix.paint, paint, sizeof paint) == 0) {
            assert_true(recede_mixes_next(&alone));
            assert_true(same_mix(&alone.mix, &all.mix));
            assert_int_equal(alone.parts, all.parts);
        }
    }
    assert_false(recede_mixes_next(&alone));
    recede_mixes_start_set(&alone, paint, 0, 8);
    assert_false(recede_mixes_next(&alone));
}

static void the_rule_compares_in_its_order(void **state)
{
    (void)state;
    static const recede_candidate ladder[] = { /* each goes before the next */
        {{1, {3}, {1}, 0}, 9, 9},          {{2, {1, 2}, {1, 1}, 0}, 5, 5},
        {{2, {0, 1}, {1, 2}, 1}, 8, 3},    {{2, {0, 1}, {1, 2}, 4}, 1, 4},
        {{2, {0, 1}, {1, 2}, 3}, 1, 4},    {{2, {0, 1}, {2, 1}, 3}, 1, 4},
        {{2, {0, 2}, {1, 2}, 3}, 1, 4},    {{2, {1, 2}, {1, 2}, 3}, 0, 4},
        {{3, {0, 1, 2}, {1, 1, 1}, 0}, 0, 0},
    };
    enum { RUNGS = sizeof ladder / sizeof ladder[0] };
    for (int i = 0; i < RUNGS; i++) {
        for (int j = 0; j < RUNGS; j++) {
            int order = recede_compare_candidates(&ladder[i], &ladder[j]);
            assert_int_equal((order > 0) - (order < 0), (i > j) - (i < j));
        }
    }
    assert_near(recede_millionths(1.2345674), 1234567, 0);
    assert_near(recede_millionths(1.2345676), 1234568, 0);
    assert_near(recede_millionths(0), 0, 0);
}

static void a_sweep_is_its_mixes_one_by_one(void **state)
{
    (void)state;
    static const recede_medium media[] = {RECEDE_WATERCOLOUR, RECEDE_GOUACHE};
    for (int i = 0; i < 2; i++) {
        recede_sweep sweep;
        recede_palette *palette =
            palette_of("titanium white|pyrrole red|cobalt green|raw umber", media[i]);
        recede_mix mix = {3, {0, 1, 3}, {2, 5, 1}, 0};
        recede_sweep_start(&sweep, palette);
        recede_sweep_take(&sweep, &mix);
        assert_int_equal(sweep.levels, i ? 1 : 82);
        for (size_t level = 0; level < sweep.levels; level++) {
            mix.water = recede_water_at(level);
            recede_xyz one = colour_of_mix(palette, &mix).xyz;
            recede_xyz swept = recede_sweep_xyz(&sweep, level);
            assert_near(swept.x, one.x, 1e-14);
            assert_near(swept.y, one.y, 1e-14);
            assert_near(swept.z, one.z, 1e-14);
        }
        recede_palette_free(palette);
    }
}

/* The bound of paint/nearness.h against CIEDE2000 itself (whose own tests are those of
 * Sharma, Wu and Dalal 2005). */
static void lightness_never_rules_out_what_is_near(void **state)
{
    (void)state;
    dice d = {7};
    int ruled_out = 0;
    for (int i = 0; i < 200000; i++) {
        double spread = pow(10, 2.5 * throw_dice(&d) - 1.5);
        recede_lab one = {130 * throw_dice(&d) - 15, 200 * throw_dice(&d) - 100,
                          200 * throw_dice(&d) - 100};
        recede_lab other = {one.l + spread * (throw_dice(&d) - 0.5),
                            one.a + spread * (throw_dice(&d) - 0.5),
                            one.b + spread * (throw_dice(&d) - 0.5)};
        double difference = recede_delta_e(one, other);
        assert_false(recede_lightness_beyond(one.l, other.l, difference * (1 + 1e-12)));
        ruled_out += recede_lightness_beyond(one.l, other.l, 0.5 * difference);
    }
    assert_true(ruled_out > 10000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(so_many_mixes),
        cmocka_unit_test(so_many_sets),
        cmocka_unit_test(the_walk_meets_what_brute_force_lists),
        cmocka_unit_test(the_walk_goes_in_the_order_of_the_rule),
        cmocka_unit_test(sets_keep_their_numbers),
        cmocka_unit_test(one_set_alone_is_a_part_of_the_walk),
        cmocka_unit_test(the_rule_compares_in_its_order),
        cmocka_unit_test(a_sweep_is_its_mixes_one_by_one),
        cmocka_unit_test(lightness_never_rules_out_what_is_near),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
