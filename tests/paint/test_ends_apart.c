/* Graded washes of opaque media: each end by itself, in the reference and by index.
 * Colours are invented. Seen to fail with the far end searched for as the near one:
 * tools/mutations.txt. */
#include <math.h>
#include <string.h>

#include "recede.h"
#include "support/assert_near.h"
#include "support/chance.h"

enum { WASHES = 12 };
static const recede_rules rules = {2, 8, 1.0};

static recede_palette *box(recede_medium medium)
{
    static const char *const names[] = {"titanium white", "hansa yellow", "ultramarine blue",
                                        "burnt sienna", "phthalo blue, green shade",
                                        "pale ultramarine blue"};
    recede_paint paints[6];
    recede_palette *palette = NULL;
    recede_spectrum paper = recede_paper_white();
    for (int i = 0; i < 6; i++)
        assert_int_equal(recede_paint_named(names[i], &paints[i], NULL), RECEDE_OK);
    assert_int_equal(recede_palette_new(paints, 6, medium, &paper, NULL, &palette, NULL), RECEDE_OK);
    return palette;
}

static recede_lab pale_by_chance(chance *c)
{
    return (recede_lab){chance_between(c, 40, 92), chance_between(c, -12, 12),
                        chance_between(c, -35, 25)};
}

static void washes_by_chance(recede_wash_target *targets)
{
    chance c = {7};
    memset(targets, 0, WASHES * sizeof *targets);
    for (int i = 0; i < WASHES; i++) {
        recede_wash_target *t = &targets[i];
        t->graded = i % 3 != 2;
        t->from = pale_by_chance(&c);
        t->to = pale_by_chance(&c);
        t->half = (recede_lab){(t->from.l + t->to.l) / 2, (t->from.a + t->to.a) / 2,
                               (t->from.b + t->to.b) / 2};
    }
}

static void assert_same(const recede_recipe *one, const recede_recipe *other)
{
    assert_int_equal(one->mix.count, other->mix.count);
    for (int i = 0; i < one->mix.count; i++) {
        assert_int_equal(one->mix.paint[i], other->mix.paint[i]);
        assert_int_equal(one->mix.parts[i], other->mix.parts[i]);
    }
    assert_true(one->delta_e == other->delta_e && one->slip == other->slip);
}

static void each_end_takes_its_own_mix(void **state)
{
    (void)state;
    recede_palette *palette = box(RECEDE_OIL);
    recede_wash_target targets[WASHES], flat;
    recede_wash_recipe found[WASHES], alone;
    int differ = 0;
    washes_by_chance(targets);
    assert_int_equal(recede_search_all(palette, &rules, targets, WASHES, found, NULL, NULL, NULL),
                     RECEDE_OK);
    for (int i = 0; i < WASHES; i++) {
        flat = (recede_wash_target){.from = targets[i].from};
        assert_int_equal(recede_search_all(palette, &rules, &flat, 1, &alone, NULL, NULL, NULL),
                         RECEDE_OK);
        assert_same(&found[i].from, &alone.from);
        if (!targets[i].graded)
            continue;
        flat.from = targets[i].to;
        assert_int_equal(recede_search_all(palette, &rules, &flat, 1, &alone, NULL, NULL, NULL),
                         RECEDE_OK);
        assert_same(&found[i].to, &alone.from);
        differ += memcmp(found[i].from.mix.paint, found[i].to.mix.paint, 2 * sizeof(int)) != 0;
    }
    assert_true(differ > 0);
    recede_palette_free(palette);
}

static void the_index_agrees(void **state)
{
    (void)state;
    recede_palette *palette = box(RECEDE_GOUACHE);
    recede_wash_target targets[WASHES];
    recede_wash_recipe plain[WASHES], fast[WASHES];
    recede_index *index = NULL;
    washes_by_chance(targets);
    assert_int_equal(recede_search_all(palette, &rules, targets, WASHES, plain, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL), RECEDE_OK);
    assert_int_equal(recede_search(index, targets, WASHES, fast, NULL, NULL, NULL), RECEDE_OK);
    for (int i = 0; i < WASHES; i++) {
        assert_same(&plain[i].from, &fast[i].from);
        if (targets[i].graded)
            assert_same(&plain[i].to, &fast[i].to);
        if (targets[i].graded)
            assert_near(plain[i].half_delta_e, fast[i].half_delta_e, 0);
    }
    recede_index_free(index);
    recede_palette_free(palette);
}

/* Half of either mix: K and S are the means of the two mixes' (Duncan 1940), a layer
 * that hides its ground (Kubelka and Munk 1931), Saunderson's surface (1942). */
static void halfway_is_the_mean_of_both(void **state)
{
    (void)state;
    recede_palette *palette = box(RECEDE_OIL);
    recede_wash_target targets[WASHES];
    recede_wash_recipe found[WASHES];
    washes_by_chance(targets);
    assert_int_equal(recede_search_all(palette, &rules, targets, WASHES, found, NULL, NULL, NULL),
                     RECEDE_OK);
    for (int i = 0; i < WASHES; i++) {
        if (!targets[i].graded)
            continue;
        recede_spectrum seen;
        for (int band = 0; band < RECEDE_BANDS; band++) {
            double k = 0, s = 0;
            const recede_mix *ends[] = {&found[i].from.mix, &found[i].to.mix};
            for (int e = 0; e < 2; e++) {
                double all = 0;
                for (int p = 0; p < ends[e]->count; p++)
                    all += ends[e]->parts[p];
                for (int p = 0; p < ends[e]->count; p++) {
                    const recede_paint *paint =
                        recede_palette_paint(palette, (size_t)ends[e]->paint[p]);
                    k += 0.5 * ends[e]->parts[p] / all * paint->k.at[band];
                    s += 0.5 * ends[e]->parts[p] / all * paint->s.at[band];
                }
            }
            double ratio = k / s, inside = 1 + ratio - sqrt(ratio * ratio + 2 * ratio);
            seen.at[band] = 0.03 + 0.97 * 0.35 * inside / (1 - 0.65 * inside);
        }
        recede_lab half = recede_lab_of_xyz(recede_xyz_of_reflectance(&seen), recede_white());
        assert_near(found[i].half_delta_e, recede_delta_e(half, targets[i].half), 1e-6);
    }
    recede_palette_free(palette);
}

static void watercolour_keeps_its_paints_together(void **state)
{
    (void)state;
    recede_palette *palette = box(RECEDE_WATERCOLOUR);
    recede_wash_target targets[WASHES];
    recede_wash_recipe found[WASHES];
    washes_by_chance(targets);
    assert_int_equal(recede_search_all(palette, &rules, targets, WASHES, found, NULL, NULL, NULL),
                     RECEDE_OK);
    for (int i = 0; i < WASHES; i++) {
        if (!targets[i].graded)
            continue;
        assert_int_equal(found[i].from.mix.count, found[i].to.mix.count);
        for (int p = 0; p < found[i].from.mix.count; p++)
            assert_int_equal(found[i].from.mix.paint[p], found[i].to.mix.paint[p]);
    }
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_end_takes_its_own_mix),
        cmocka_unit_test(the_index_agrees),
        cmocka_unit_test(halfway_is_the_mean_of_both),
        cmocka_unit_test(watercolour_keeps_its_paints_together),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
