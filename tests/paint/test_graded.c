/* Graded washes: both ends from one set of paints, against brute force. */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/brute.h"

static int bits(int set)
{
    int count = 0;
    for (; set; set >>= 1)
        count += set & 1;
    return count;
}

/* Of as many paints each: the one that has the earlier paint where they first differ. */
static int earlier_set(int one, int other)
{
    int differ = one ^ other, lowest = differ & -differ;
    return (one & lowest) != 0;
}

static double score_of_set(brute *all, const recede_wash_target *target, int set)
{
    double from, to;
    if (!brute_choose(all, target->from, set, &from))
        return INFINITY;
    brute_choose(all, target->to, set, &to);
    return fmax(from, to);
}

static int brute_set(brute *all, const recede_wash_target *target)
{
    enum { MOST_SETS = 32 };
    double score[MOST_SETS], smallest = INFINITY;
    int chosen = -1, sets = 1 << recede_palette_count(all->palette);
    assert_true(sets <= MOST_SETS);
    for (int set = 0; set < sets; set++) {
        score[set] = score_of_set(all, target, set);
        smallest = fmin(smallest, score[set]);
    }
    for (int set = 0; set < sets; set++) {
        if (score[set] > smallest + brute_millionths(all->rules.tie))
            continue;
        int better = chosen < 0;
        if (!better && bits(set) != bits(chosen))
            better = bits(set) < bits(chosen);
        else if (!better && score[set] != score[chosen])
            better = score[set] < score[chosen];
        else if (!better)
            better = earlier_set(set, chosen);
        if (better)
            chosen = set;
    }
    return chosen;
}

/* A litre of each puddle, by volumes: paint is one part in 1 + water. */
static recede_lab half_and_half(const recede_palette *palette, const recede_mix *from,
                                const recede_mix *to)
{
    recede_spectrum k = {{0}}, s = {{0}};
    const recede_mix *puddles[2] = {from, to};
    double paint_volume = 0;
    if (!from->count && !to->count)
        return colour_of_mix(palette, from).lab;
    for (int n = 0; n < 2; n++) {
        double paint = 1 / (1 + puddles[n]->water), parts = 0;
        paint_volume += paint;
        for (int i = 0; i < puddles[n]->count; i++)
            parts += puddles[n]->parts[i];
        for (int i = 0; i < puddles[n]->count; i++) {
            const recede_paint *p = recede_palette_paint(palette, (size_t)puddles[n]->paint[i]);
            for (int band = 0; band < RECEDE_BANDS; band++) {
                k.at[band] += paint * puddles[n]->parts[i] / parts * p->k.at[band];
                s.at[band] += paint * puddles[n]->parts[i] / parts * p->s.at[band];
            }
        }
    }
    for (int band = 0; band < RECEDE_BANDS; band++) {
        k.at[band] /= paint_volume;
        s.at[band] /= paint_volume;
    }
    recede_spectrum seen = recede_film(&k, &s, 8 * paint_volume / 2, recede_palette_paper(palette));
    return recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lab;
}

static void check_wash(brute *all, const recede_wash_target *target,
                       const recede_wash_recipe *found)
{
    double closest_from, closest_to;
    int set = brute_set(all, target);
    recede_mix from = brute_choose(all, target->from, set, &closest_from)->mix;
    const brute_mix *to = brute_choose(all, target->to, set, &closest_to);
    assert_same_mix(&found->from.mix, &from);
    assert_same_mix(&found->to.mix, &to->mix);
    assert_near(found->to.delta_e, 1e-6 * to->difference, 0.6e-6);
    assert_near(found->to.slip, 1e-6 * to->slip, 0.6e-6);
    assert_int_equal(found->from.reach == RECEDE_REACHABLE, closest_from <= 3e6);
    assert_int_equal(found->to.reach == RECEDE_REACHABLE, closest_to <= 3e6);
    double half = recede_delta_e(half_and_half(all->palette, &from, &to->mix), target->half);
    assert_near(found->half_delta_e, half, 1e-9);
    assert_int_equal(found->two_washes,
                     half > 3 + fmax(found->from.delta_e, found->to.delta_e));
}

enum { TARGETS = 12 };

static int search_as_brute_force(const char *names, recede_medium medium, recede_rules rules,
                                 dice *d)
{
    recede_palette *palette = palette_of(names, medium);
    brute all = brute_start(palette, &rules);
    recede_wash_target targets[TARGETS];
    recede_wash_recipe found[TARGETS];
    int two_washes = 0;
    for (int i = 0; i < TARGETS; i++) {
        const brute_mix *near_from = &all.all[throw_below(d, (int)all.count)];
        const brute_mix *near_to = &all.all[throw_below(d, (int)all.count)];
        targets[i] = (recede_wash_target){near_from->lab, near_to->lab, near_from->lab, i % 4 < 3};
        targets[i].from.b += 2 * throw_dice(d) - 1;
        targets[i].half.l = 0.5 * (near_from->lab.l + near_to->lab.l);
        targets[i].half.a = 0.5 * (near_from->lab.a + near_to->lab.a);
        targets[i].half.b = 0.5 * (near_from->lab.b + near_to->lab.b);
    }
    assert_int_equal(recede_search_all(palette, &rules, targets, TARGETS, found, NULL, NULL,
                                       NULL), RECEDE_OK);
    for (int i = 0; i < TARGETS; i++) {
        double closest;
        if (targets[i].graded)
            check_wash(&all, &targets[i], &found[i]);
        else /* a flat one among them */
            assert_same_mix(&found[i].from.mix,
                            &brute_choose(&all, targets[i].from, -1, &closest)->mix);
        two_washes += targets[i].graded && found[i].two_washes;
    }
    brute_end(&all);
    recede_palette_free(palette);
    return two_washes;
}

static void graded_washes_are_those_of_brute_force(void **state)
{
    (void)state;
    static const double ties[] = {0, 1, 5};
    dice d = {31};
    int two = 0;
    for (int tie = 0; tie < 3; tie++) {
        two += search_as_brute_force("hansa yellow|quinacridone magenta|ultramarine blue",
                                     RECEDE_WATERCOLOUR, (recede_rules){3, 4, ties[tie]}, &d);
        two += search_as_brute_force("yellow ochre|burnt sienna|cobalt blue|viridian",
                                     RECEDE_WATERCOLOUR, (recede_rules){2, 5, ties[tie]}, &d);
        two += search_as_brute_force("titanium white|yellow ochre|ultramarine blue|cadmium red",
                                     RECEDE_WATERCOLOUR, (recede_rules){4, 4, ties[tie]}, &d);
    }
    print_message("%d called two washes\n", two);
    assert_true(two > 0 && two < 3 * 3 * TARGETS);
}

/* Twin paints make twin sets: the earlier one is taken. */
static void twin_sets_go_by_palette_order(void **state)
{
    (void)state;
    dice d = {13};
    search_as_brute_force("lemon yellow|french ultramarine|hansa yellow|ultramarine blue",
                          RECEDE_WATERCOLOUR, (recede_rules){2, 4, 0}, &d);
}

static void a_wash_from_paper_to_paper_is_bare(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("hansa yellow|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_mix bare = {0};
    recede_lab paper = colour_of_mix(palette, &bare).lab;
    recede_wash_target target = {paper, paper, paper, 1};
    recede_wash_recipe found;
    recede_rules rules = {3, 5, 1};
    target.to.l -= 0.4;
    assert_int_equal(recede_search_all(palette, &rules, &target, 1, &found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(found.from.mix.count, 0);
    assert_int_equal(found.to.mix.count, 0);
    assert_near(found.half_delta_e, 0, 1e-9);
    assert_false(found.two_washes);
    recede_palette_free(palette);
}

/* The pale end takes the same pigments, far thinner. */
static void a_sky_pales_to_the_horizon_with_water(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_wash_target sky = {{62, -6, -30}, {88, -2, -6}, {75, -4, -18}, 1};
    recede_wash_recipe found;
    recede_rules rules = {3, 6, 1};
    assert_int_equal(recede_search_all(palette, &rules, &sky, 1, &found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(found.from.mix.count, found.to.mix.count);
    for (int i = 0; i < found.from.mix.count; i++)
        assert_int_equal(found.from.mix.paint[i], found.to.mix.paint[i]);
    assert_true(found.to.mix.water > 3 * found.from.mix.water);
    assert_false(found.two_washes);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(graded_washes_are_those_of_brute_force),
        cmocka_unit_test(twin_sets_go_by_palette_order),
        cmocka_unit_test(a_wash_from_paper_to_paper_is_bare),
        cmocka_unit_test(a_sky_pales_to_the_horizon_with_water),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
