/* Recipes for one colour: by index against the exhaustive walk, byte for byte, and
 * both against the plainest search there is (paint/brute.h). */
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

#include "paint/brute.h"

static recede_lab anywhere(dice *d)
{
    return (recede_lab){110 * throw_dice(d) - 5, 160 * throw_dice(d) - 80,
                        160 * throw_dice(d) - 80};
}

static recede_lab near_the_greys(dice *d)
{
    return (recede_lab){20 + 76 * throw_dice(d), 30 * throw_dice(d) - 15,
                        40 * throw_dice(d) - 15};
}

static void assert_same_bytes(const void *one, const void *other, size_t size)
{
    assert_memory_equal(one, other, size);
}

/* Member by member, for what lies between members may differ. */
static void assert_same_matches(const recede_matches *one, const recede_matches *other)
{
    assert_same_bytes(&one->target.reflectance, &other->target.reflectance,
                      sizeof one->target.reflectance);
    assert_same_bytes(&one->target.delta_e, &other->target.delta_e, sizeof one->target.delta_e);
    assert_int_equal(one->target.reached, other->target.reached);
    assert_same_bytes(&one->by_lamp, &other->by_lamp, sizeof one->by_lamp);
    assert_int_equal(one->within_tie, other->within_tie);
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++) {
        const recede_match_recipe *a = &one->of[kind], *b = &other->of[kind];
        assert_same_mix(&a->recipe.mix, &b->recipe.mix);
        assert_same_bytes(&a->recipe.colour, &b->recipe.colour, sizeof a->recipe.colour);
        assert_same_bytes(&a->recipe.delta_e, &b->recipe.delta_e, sizeof a->recipe.delta_e);
        assert_same_bytes(&a->recipe.slip, &b->recipe.slip, sizeof a->recipe.slip);
        assert_int_equal(a->recipe.reach, b->recipe.reach);
        assert_same_bytes(&a->by_lamp, &b->by_lamp, sizeof a->by_lamp);
        assert_same_bytes(&a->lamp_delta_e, &b->lamp_delta_e, sizeof a->lamp_delta_e);
    }
}

static void by_index_as_by_walk(const char *names, recede_medium medium, recede_rules rules,
                                int targets, dice *d)
{
    recede_palette *palette = palette_of(names, medium);
    recede_index *index;
    assert_int_equal(recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL), RECEDE_OK);
    for (int i = 0; i < targets; i++) {
        static recede_matches fast, slow;
        recede_lab target = i % 2 ? anywhere(d) : near_the_greys(d);
        memset(&fast, 1, sizeof fast);
        memset(&slow, 2, sizeof slow);
        assert_int_equal(recede_match(index, target, &fast, NULL, NULL, NULL), RECEDE_OK);
        assert_int_equal(recede_match_all(palette, &rules, target, &slow, NULL, NULL), RECEDE_OK);
        assert_same_matches(&fast, &slow);
    }
    recede_index_free(index);
    recede_palette_free(palette);
}

static void the_index_gives_the_same_bytes_as_the_walk(void **state)
{
    (void)state;
    dice d = {31};
    by_index_as_by_walk(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR,
                        (recede_rules){3, 6, 1}, 10, &d);
    by_index_as_by_walk(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR,
                        (recede_rules){2, 8, 0}, 16, &d);
    by_index_as_by_walk("titanium white|yellow ochre|lamp black|french ultramarine|ultramarine blue",
                        RECEDE_WATERCOLOUR, (recede_rules){4, 5, 3}, 8, &d);
    by_index_as_by_walk(entry_of("opaque-sixteen")->paints, RECEDE_OIL, (recede_rules){3, 8, 2}, 40,
                        &d);
}

static void an_index_that_keeps_nothing_walks(void **state)
{
    (void)state;
    static recede_matches kept, walked;
    recede_palette *palette = palette_of("hansa yellow|viridian", RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 6, 1};
    recede_lab target = {70, -30, 40};
    recede_index *index;
    assert_int_equal(recede_index_new(palette, &rules, 1, NULL, NULL, &index, NULL), RECEDE_OK);
    assert_int_equal(recede_match(index, target, &kept, NULL, NULL, NULL), RECEDE_OK);
    assert_int_equal(recede_match_all(palette, &rules, target, &walked, NULL, NULL), RECEDE_OK);
    assert_same_matches(&kept, &walked);
    recede_index_free(index);
    recede_palette_free(palette);
}

/* ------------------------------------------------------------ lamp light -- */

/* The matrix of CAT16: Li and others, Color Research and Application 42 (2017). */
static const double cat16[3][3] = {{0.401288, 0.650173, -0.051461},
                                   {-0.250268, 1.204414, 0.045854},
                                   {-0.002079, 0.048952, 0.953127}};

static double determinant(const double m[3][3])
{
    return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
         - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
         + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
}

/* m x = right, by Cramer's rule. */
static void solve(const double m[3][3], const double *right, double *x)
{
    for (int column = 0; column < 3; column++) {
        double changed[3][3];
        memcpy(changed, m, sizeof changed);
        for (int row = 0; row < 3; row++)
            changed[row][column] = right[row];
        x[column] = determinant((const double(*)[3])changed) / determinant(m);
    }
}

static void to_cones(recede_xyz xyz, double *cones)
{
    const double v[3] = {xyz.x, xyz.y, xyz.z};
    for (int i = 0; i < 3; i++)
        cones[i] = cat16[i][0] * v[0] + cat16[i][1] * v[1] + cat16[i][2] * v[2];
}

/* A reflectance under illuminant A: the light it sends back as a power spectrum over
 * that of white, CIE 015:2018; then CAT16 in full. */
static recede_lab lab_by_lamp(const recede_spectrum *reflectance)
{
    recede_spectrum power = recede_illuminant_power(RECEDE_A), back = power;
    double seen[3], white[3], day[3], x[3];
    for (int band = 0; band < RECEDE_BANDS; band++)
        back.at[band] *= reflectance->at[band];
    to_cones(recede_xyz_of_power(&back), seen);
    to_cones(recede_xyz_of_power(&power), white);
    to_cones(recede_white(), day);
    for (int i = 0; i < 3; i++)
        seen[i] *= day[i] / white[i];
    solve(cat16, seen, x);
    return recede_lab_of_xyz((recede_xyz){x[0], x[1], x[2]}, recede_white());
}

static recede_lab target_by_lamp(recede_lab target)
{
    recede_smooth smooth = recede_smooth_of_xyz(recede_xyz_of_lab(target, recede_white()));
    return lab_by_lamp(&smooth.reflectance);
}

static double lamp_difference(const recede_palette *palette, const recede_mix *mix,
                              recede_lab target)
{
    recede_spectrum seen = recede_mix_reflectance(palette, mix, NULL);
    return recede_delta_e(lab_by_lamp(&seen), target_by_lamp(target));
}

/* ----------------------------------------------------------- brute force -- */

/* What each kind goes by, in millionths; the brute mix's difference and slip are
 * those from the target. */
static double score_of(const brute *all, const brute_mix *m, recede_match_kind kind,
                       recede_lab target)
{
    switch (kind) {
    case RECEDE_MATCH_CLOSEST: return m->difference;
    case RECEDE_MATCH_FORGIVING: return m->slip;
    case RECEDE_MATCH_LAMP: return brute_millionths(lamp_difference(all->palette, &m->mix, target));
    default: return 0;
    }
}

static const brute_mix *brute_best(brute *all, recede_match_kind kind, recede_lab target,
                                   size_t *within)
{
    const brute_mix *best = NULL;
    double closest, least = INFINITY;
    brute_choose(all, target, -1, &closest);
    *within = 0;
    for (size_t i = 0; i < all->count; i++) {
        brute_mix *m = &all->all[i];
        if (m->difference > closest + brute_millionths(all->rules.tie))
            continue;
        ++*within;
        m->slip = brute_millionths(brute_slip(all, m, target));
        double score = score_of(all, m, kind, target);
        if (!best || score < least || (score == least && brute_before(m, best))) {
            best = m;
            least = score;
        }
    }
    return best;
}

static void match_as_brute_force(const char *names, recede_medium medium, recede_rules rules,
                                 dice *d)
{
    recede_palette *palette = palette_of(names, medium);
    brute all = brute_start(palette, &rules);
    for (int i = 0; i < 12; i++) {
        static recede_matches found;
        recede_lab target = i % 3 ? near_the_greys(d) : anywhere(d);
        assert_int_equal(recede_match_all(palette, &rules, target, &found, NULL, NULL), RECEDE_OK);
        for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++) {
            size_t within;
            const brute_mix *best = brute_best(&all, (recede_match_kind)kind, target, &within);
            const recede_match_recipe *match = &found.of[kind];
            assert_same_mix(&match->recipe.mix, &best->mix);
            assert_int_equal(found.within_tie, within);
            assert_near(match->recipe.delta_e, 1e-6 * best->difference, 0.6e-6);
            assert_near(match->recipe.slip, 1e-6 * best->slip, 0.6e-6);
            assert_near(match->lamp_delta_e, lamp_difference(palette, &best->mix, target), 1e-9);
        }
        assert_near(recede_delta_e(found.by_lamp.lab, target_by_lamp(target)), 0, 1e-9);
    }
    brute_end(&all);
    recede_palette_free(palette);
}

static void the_four_recipes_are_those_of_brute_force(void **state)
{
    (void)state;
    dice d = {8};
    match_as_brute_force("hansa yellow|burnt sienna|ultramarine blue|viridian",
                         RECEDE_WATERCOLOUR, (recede_rules){2, 5, 1}, &d);
    match_as_brute_force("yellow ochre|quinacridone magenta|phthalo blue, green shade",
                         RECEDE_WATERCOLOUR, (recede_rules){3, 5, 2.5}, &d);
    match_as_brute_force("titanium white|yellow ochre|ultramarine blue|burnt sienna",
                         RECEDE_GOUACHE, (recede_rules){3, 8, 3}, &d);
}

/* Within the tie means at most the tie, in millionths. */
static void a_mix_exactly_at_the_tie_is_within_it(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("hansa yellow|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 5, 1};
    brute all = brute_start(palette, &rules);
    dice d = {17};
    for (int i = 0; i < 12; i++) {
        static recede_matches found;
        double closest;
        size_t within = 0;
        recede_lab target = all.all[throw_below(&d, (int)all.count)].lab;
        recede_index *index;
        target.a += 0.3;
        const brute_mix *last = brute_choose(&all, target, -1, &closest);
        for (size_t j = 0; j < all.count && within < 20; j++)
            if (all.all[j].difference < closest + 3e6) {
                last = &all.all[j];
                within++;
            }
        rules.tie = 1e-6 * (last->difference - closest);
        within = 0;
        for (size_t j = 0; j < all.count; j++)
            within += all.all[j].difference <= last->difference;
        assert_int_equal(recede_match_all(palette, &rules, target, &found, NULL, NULL), RECEDE_OK);
        assert_int_equal(found.within_tie, within);
        assert_int_equal(recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL),
                         RECEDE_OK);
        assert_int_equal(recede_match(index, target, &found, NULL, NULL, NULL), RECEDE_OK);
        assert_int_equal(found.within_tie, within);
        recede_index_free(index);
    }
    brute_end(&all);
    recede_palette_free(palette);
}

static void the_simplest_is_the_recipe_of_the_rule(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 5, 1.5};
    dice d = {99};
    for (int i = 0; i < 12; i++) {
        static recede_matches found;
        recede_wash_target target = {.from = near_the_greys(&d)};
        recede_wash_recipe recipe;
        assert_int_equal(recede_match_all(palette, &rules, target.from, &found, NULL, NULL),
                         RECEDE_OK);
        assert_int_equal(recede_search_all(palette, &rules, &target, 1, &recipe, NULL, NULL, NULL),
                         RECEDE_OK);
        const recede_recipe *simplest = &found.of[RECEDE_MATCH_SIMPLEST].recipe;
        assert_same_mix(&simplest->mix, &recipe.from.mix);
        assert_same_bytes(&simplest->colour, &recipe.from.colour, sizeof simplest->colour);
        assert_near(simplest->slip, recipe.from.slip, 0);
        assert_int_equal(simplest->reach, recipe.from.reach);
    }
    recede_palette_free(palette);
}

/* A colour that is a mix is met in lamp light only by such paints as share its
 * spectrum; but grey paper stays grey there, for the eye gets used to the lamp. */
static void greys_stay_grey_in_lamp_light(void **state)
{
    (void)state;
    static recede_matches found;
    recede_palette *palette = palette_of("hansa yellow|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 4, 1};
    for (double l = 20; l <= 100; l += 20) {
        assert_int_equal(recede_match_all(palette, &rules, (recede_lab){l, 0, 0}, &found, NULL,
                                          NULL), RECEDE_OK);
        assert_near(found.by_lamp.lab.l, l, 0.05);
        assert_near(found.by_lamp.lab.a, 0, 0.05);
        assert_near(found.by_lamp.lab.b, 0, 0.05);
        assert_true(found.target.reached);
    }
    recede_palette_free(palette);
}

static void what_is_beyond_reach_is_said_and_the_nearest_given(void **state)
{
    (void)state;
    static const struct { recede_lab lab; recede_reach reach; } wild[] = {
        {{4, 0, 0}, RECEDE_TOO_DARK}, {{110, 0, 2}, RECEDE_TOO_PALE},
        {{60, -110, 60}, RECEDE_TOO_VIVID}, {{70, -5, 15}, RECEDE_REACHABLE}};
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 5, 1};
    for (size_t i = 0; i < sizeof wild / sizeof wild[0]; i++) {
        static recede_matches found;
        assert_int_equal(recede_match_all(palette, &rules, wild[i].lab, &found, NULL, NULL),
                         RECEDE_OK);
        const recede_recipe *closest = &found.of[RECEDE_MATCH_CLOSEST].recipe;
        assert_int_equal(closest->reach, wild[i].reach);
        assert_true((closest->delta_e <= 3) == (wild[i].reach == RECEDE_REACHABLE));
    }
    recede_palette_free(palette);
}

static void faults_are_refused_and_nothing_is_left(void **state)
{
    (void)state;
    static recede_matches found;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 5, 1}, bad = {5, 5, 1};
    recede_lab target = {50, 5, 5}, none = {NAN, 0, 0};
    recede_index *index;
    test_memory memory;
    recede_error error;
    assert_int_equal(recede_match_all(palette, &bad, target, &found, NULL, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_int_equal(recede_match_all(palette, &rules, none, &found, NULL, &error),
                     RECEDE_NOT_FINITE);
    assert_int_equal(recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL), RECEDE_OK);
    assert_int_equal(recede_match(index, none, &found, NULL, NULL, &error), RECEDE_NOT_FINITE);
    for (size_t fail_at = 1;; fail_at++) {
        recede_allocator allocator = test_allocator(&memory, fail_at);
        recede_code code = recede_match(index, target, &found, &allocator, NULL, &error);
        assert_int_equal(memory.live, 0);
        if (code == RECEDE_OK)
            break;
        assert_int_equal(code, RECEDE_NO_MEMORY);
        assert_true(fail_at < 50);
    }
    recede_index_free(index);
    recede_palette_free(palette);
}

static int stop(void *context, double share_done)
{
    int *calls = context;
    assert_true(share_done >= 0 && share_done <= 1);
    return ++*calls == 3;
}

static void the_walk_can_be_stopped(void **state)
{
    (void)state;
    static recede_matches found;
    recede_palette *palette = palette_of("hansa yellow|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 8, 1};
    int calls = 0;
    recede_progress progress = {stop, &calls};
    assert_int_equal(recede_match_all(palette, &rules, (recede_lab){50, 0, 0}, &found, &progress,
                                      NULL), RECEDE_CANCELLED);
    assert_int_equal(calls, 3);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_index_gives_the_same_bytes_as_the_walk),
        cmocka_unit_test(an_index_that_keeps_nothing_walks),
        cmocka_unit_test(the_four_recipes_are_those_of_brute_force),
        cmocka_unit_test(a_mix_exactly_at_the_tie_is_within_it),
        cmocka_unit_test(the_simplest_is_the_recipe_of_the_rule),
        cmocka_unit_test(greys_stay_grey_in_lamp_light),
        cmocka_unit_test(what_is_beyond_reach_is_said_and_the_nearest_given),
        cmocka_unit_test(faults_are_refused_and_nothing_is_left),
        cmocka_unit_test(the_walk_can_be_stopped),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
