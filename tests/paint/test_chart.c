/* The mixing chart, patch by patch, and the counts of a palette's reach. */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/brute.h"

/* ------------------------------------------------------------- families -- */

/* Which pigments painters call yellows, earths, greens and blues: common practice, no
 * source. Naples yellow and yellow ochre count as yellows here by their strength. */
static void pigments_are_what_painters_call_them(void **state)
{
    (void)state;
    static const struct { const char *names; recede_paint_family family; } groups[] = {
        {"hansa yellow|cadmium yellow, light|aureolin|diarylide yellow|naples yellow|yellow ochre|"
         "raw sienna", RECEDE_FAMILY_YELLOW},
        {"burnt sienna|red iron oxide|burnt umber|raw umber", RECEDE_FAMILY_EARTH},
        {"phthalo green, blue shade|viridian|cobalt green|chromium oxide green|green earth",
         RECEDE_FAMILY_GREEN},
        {"ultramarine blue|cobalt blue|indanthrone blue|cobalt chromite blue|"
         "phthalo blue, green shade|prussian blue|indigo", RECEDE_FAMILY_BLUE},
        {"titanium white|cadmium red|pyrrole red|quinacridone magenta|dioxazine violet|lamp black",
         RECEDE_FAMILY_OTHER},
    };
    size_t seen = 0;
    for (size_t i = 0; i < sizeof groups / sizeof groups[0]; i++) {
        recede_palette *palette = palette_of(groups[i].names, RECEDE_WATERCOLOUR);
        for (size_t p = 0; p < recede_palette_count(palette); p++, seen++)
            if (recede_paint_family_of(palette, (int)p) != groups[i].family)
                fail_msg("%s is in family %d", recede_palette_paint(palette, p)->name,
                         (int)recede_paint_family_of(palette, (int)p));
        recede_palette_free(palette);
    }
    assert_int_equal(seen, recede_pigment_count());
}

static void assert_names(const recede_palette *palette, const int *list, int count,
                         const char *names)
{
    static recede_paint expected[RECEDE_MOST_PAINTS];
    assert_int_equal(count, paints_of(names, expected));
    for (int i = 0; i < count; i++)
        assert_string_equal(recede_palette_paint(palette, (size_t)list[i])->name,
                            expected[i].name);
}

static void the_built_in_palettes_have_their_charts(void **state)
{
    (void)state;
    static const struct { const char *palette, *rows, *columns; } charts[] = {
        {"landscape-six", "hansa yellow|yellow ochre|burnt sienna",
         "ultramarine blue|phthalo blue, green shade"},
        {"landscape-twelve",
         "hansa yellow|diarylide yellow|yellow ochre|raw sienna|burnt sienna|burnt umber",
         "ultramarine blue|cobalt blue|phthalo blue, green shade|viridian"},
        {"landscape-twenty-four",
         "hansa yellow|cadmium yellow, light|diarylide yellow|yellow ochre|raw sienna|"
         "red iron oxide|burnt sienna|burnt umber|raw umber",
         "ultramarine blue|cobalt blue|indanthrone blue|cobalt chromite blue|"
         "phthalo blue, green shade|prussian blue|phthalo green, blue shade|viridian|"
         "cobalt green|chromium oxide green|green earth"},
    };
    for (size_t i = 0; i < sizeof charts / sizeof charts[0]; i++) {
        recede_palette *palette =
            palette_of(entry_of(charts[i].palette)->paints, RECEDE_WATERCOLOUR);
        recede_chart chart = recede_chart_of(palette);
        assert_names(palette, chart.row, chart.rows, charts[i].rows);
        assert_names(palette, chart.column, chart.columns, charts[i].columns);
        assert_int_equal(chart.third, -1);
        recede_palette_free(palette);
    }
}

static void a_palette_of_reds_has_no_chart(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("pyrrole red|quinacridone magenta", RECEDE_WATERCOLOUR);
    recede_chart chart = recede_chart_of(palette);
    assert_int_equal(chart.rows, 0);
    assert_int_equal(chart.columns, 0);
    recede_palette_free(palette);
}

/* -------------------------------------------------------------- patches -- */

/* K and S by the share of each paint, laid on the paper as one film. */
static recede_xyz xyz_by_hand(const char *const *names, const double *shares, int count,
                              double thickness)
{
    recede_spectrum k = {{0}}, s = {{0}}, paper = recede_paper_white();
    for (int i = 0; i < count; i++) {
        recede_paint paint = paint_of(names[i]);
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k.at[band] += shares[i] * paint.k.at[band];
            s.at[band] += shares[i] * paint.s.at[band];
        }
    }
    recede_spectrum seen = recede_film(&k, &s, thickness, &paper);
    return recede_xyz_of_reflectance(&seen);
}

static void assert_patch(const recede_chart_patch *patch, recede_xyz expected)
{
    assert_near(patch->colour.xyz.x, expected.x, 1e-12);
    assert_near(patch->colour.xyz.y, expected.y, 1e-12);
    assert_near(patch->colour.xyz.z, expected.z, 1e-12);
    assert_near(patch->colour.value, recede_value_of_y(expected.y), 1e-9);
}

static void patches_are_the_mixes_they_say(void **state)
{
    (void)state;
    static const double row_share[] = {0.75, 0.5, 0.25}, waters[] = {1, 4, 16};
    static const char *const names[] = {"yellow ochre", "cobalt blue", "burnt sienna"};
    recede_palette *palette =
        palette_of("hansa yellow|yellow ochre|burnt sienna|ultramarine blue|cobalt blue",
                   RECEDE_WATERCOLOUR);
    recede_chart chart = recede_chart_of(palette); /* rows 0 1 2, columns 3 4 */
    assert_int_equal(chart.row[1], 1);
    assert_int_equal(chart.column[1], 4);
    for (int third = 0; third <= 1; third++)
        for (int proportion = 0; proportion < 3; proportion++)
            for (int strength = 0; strength < 3; strength++) {
                double left = third ? 0.8 : 1, share = row_share[proportion];
                double shares[] = {left * share, left * (1 - share), 1 - left};
                chart.third = third ? 2 : -1;
                recede_chart_patch patch =
                    recede_chart_patch_at(palette, &chart, 1, 1, proportion, strength);
                assert_near(patch.mix.water, waters[strength], 0);
                assert_int_equal(patch.mix.count, third ? 3 : 2);
                assert_patch(&patch, xyz_by_hand(names, shares, 3, 8 / (1 + waters[strength])));
            }
    recede_palette_free(palette);
}

static void heads_are_the_paints_alone(void **state)
{
    (void)state;
    static const char *const ochre[] = {"yellow ochre"}, *const blue[] = {"cobalt blue"};
    static const double whole[] = {1};
    recede_palette *palette = palette_of("yellow ochre|cobalt blue|burnt umber",
                                         RECEDE_WATERCOLOUR);
    recede_chart chart = recede_chart_of(palette);
    chart.third = 2;
    recede_chart_patch row = recede_chart_patch_at(palette, &chart, 0, -1, 1, 1);
    recede_chart_patch column = recede_chart_patch_at(palette, &chart, -1, 0, 2, 0);
    assert_patch(&row, xyz_by_hand(ochre, whole, 1, 8.0 / 5));
    assert_patch(&column, xyz_by_hand(blue, whole, 1, 4));
    assert_int_equal(row.mix.count, 1);
    assert_int_equal(row.mix.parts[0], 1);
    recede_palette_free(palette);
}

static void opaque_paints_are_lightened_with_white(void **state)
{
    (void)state;
    static const char *const names[] = {"titanium white", "hansa yellow", "ultramarine blue"};
    static const double whites[] = {0, 1, 4};
    recede_palette *palette = palette_of("hansa yellow|titanium white|ultramarine blue",
                                         RECEDE_OIL);
    recede_chart chart = recede_chart_of(palette);
    for (int strength = 0; strength < 3; strength++) {
        double all = 1 + whites[strength];
        double shares[] = {whites[strength] / all, 0.75 / all, 0.25 / all};
        recede_chart_patch patch = recede_chart_patch_at(palette, &chart, 0, 0, 0, strength);
        assert_near(patch.mix.water, 0, 0);
        assert_patch(&patch, xyz_by_hand(names, shares, 3, INFINITY));
        for (int i = 1; i < patch.mix.count; i++)
            assert_true(patch.mix.paint[i] > patch.mix.paint[i - 1]);
    }
    recede_palette_free(palette);
}

/* A paint that is row, column and third at once is that paint. */
static void a_paint_with_itself_is_itself(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("hansa yellow|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_chart chart = {.rows = 1, .columns = 2, .row = {0}, .column = {0, 1}, .third = 0};
    recede_chart_patch same = recede_chart_patch_at(palette, &chart, 0, 0, 2, 1);
    recede_chart_patch more = recede_chart_patch_at(palette, &chart, 0, 1, 1, 1);
    assert_int_equal(same.mix.count, 1);
    assert_int_equal(same.mix.parts[0], 1);
    assert_int_equal(more.mix.count, 2);
    assert_int_equal(more.mix.parts[0], 3); /* 2 and the third's 1 */
    assert_int_equal(more.mix.parts[1], 2);
    recede_palette_free(palette);
}

/* More water, lighter: common practice, no source. */
static void weaker_patches_are_lighter(void **state)
{
    (void)state;
    recede_palette *palette =
        palette_of(entry_of("landscape-twelve")->paints, RECEDE_WATERCOLOUR);
    recede_chart chart = recede_chart_of(palette);
    for (int row = 0; row < chart.rows; row++)
        for (int column = 0; column < chart.columns; column++)
            for (int proportion = 0; proportion < 3; proportion++)
                for (int strength = 1; strength < 3; strength++)
                    assert_true(
                        recede_chart_patch_at(palette, &chart, row, column, proportion, strength)
                            .colour.value >
                        recede_chart_patch_at(palette, &chart, row, column, proportion,
                                              strength - 1).colour.value);
    recede_palette_free(palette);
}

/* ---------------------------------------------------------------- reach -- */

typedef struct { double a, b; } spot;

static int by_a_then_b(const void *one, const void *other)
{
    const spot *p = one, *q = other;
    return p->a != q->a ? (p->a > q->a) - (p->a < q->a) : (p->b > q->b) - (p->b < q->b);
}

static double turn(spot o, spot p, spot q)
{
    return (p.a - o.a) * (q.b - o.b) - (p.b - o.b) * (q.a - o.a);
}

/* The convex hull, anticlockwise (Andrew, Information Processing Letters 9 (1979) 216). */
static size_t hull_of(spot *spots, size_t count, spot *hull)
{
    size_t size = 0;
    qsort(spots, count, sizeof *spots, by_a_then_b);
    for (int pass = 0; pass < 2; pass++) {
        size_t start = size;
        for (size_t i = 0; i < count; i++) {
            spot p = spots[pass ? count - 1 - i : i];
            while (size >= start + 2 && turn(hull[size - 2], hull[size - 1], p) <= 0)
                size--;
            hull[size++] = p;
        }
        size--;
    }
    return size;
}

/* How far outside a convex hull a spot lies; 0 or below inside. */
static double outside(const spot *hull, size_t size, spot p)
{
    double most = -INFINITY;
    for (size_t i = 0; i < size; i++) {
        spot from = hull[i], to = hull[(i + 1) % size];
        most = fmax(most, -turn(from, to, p) / hypot(to.a - from.a, to.b - from.b));
    }
    return most;
}

static void check_slice(const brute *all, const recede_gamut *slice)
{
    static const double slack = 0.02; /* twice what single precision may be off */
    spot *spots = malloc(all->count * sizeof *spots), *hull = malloc(2 * all->count * sizeof *hull);
    size_t possible = 0, sure = 0, counted = 0;
    assert_true(spots && hull);
    for (size_t i = 0; i < all->count; i++) {
        recede_lab lab = all->all[i].lab;
        double off = fabs(lab.l - slice->lightness);
        if (off <= RECEDE_GAMUT_BAND + slack)
            spots[possible++] = (spot){lab.a, lab.b};
        if (off > RECEDE_GAMUT_BAND - slack)
            continue;
        sure++;
        int near = 0;
        for (int corner = 0; corner < 4; corner++) {
            double a = lab.a + (corner & 1 ? slack : -slack);
            double b = lab.b + (corner & 2 ? slack : -slack);
            near |= slice->films[(int)floor(b + 0.5) + RECEDE_GAMUT_MOST]
                                [(int)floor(a + 0.5) + RECEDE_GAMUT_MOST] > 0;
        }
        assert_true(near);
    }
    size_t size = hull_of(spots, possible, hull);
    for (int j = 0; j < RECEDE_GAMUT_SIDE; j++)
        for (int i = 0; i < RECEDE_GAMUT_SIDE; i++) {
            spot middle = {i - RECEDE_GAMUT_MOST, j - RECEDE_GAMUT_MOST};
            counted += slice->films[j][i];
            if (slice->films[j][i]) /* a square's corner lies this far from its middle */
                assert_below(outside(hull, size, middle), 0.7072 + slack);
        }
    assert_true(sure > 30 && counted >= sure && counted <= possible);
    free(spots);
    free(hull);
}

static void the_reach_holds_every_film_and_no_more(void **state)
{
    (void)state;
    static recede_gamut slices[4];
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 5, 1};
    brute all = brute_start(palette, &rules);
    for (int i = 0; i < 4; i++)
        slices[i].lightness = 30 + 22 * i; /* 96, about the paper's, the last */
    assert_int_equal(recede_gamut_fill(palette, &rules, slices, 4, NULL, NULL), RECEDE_OK);
    for (int i = 0; i < 4; i++)
        check_slice(&all, &slices[i]);
    brute_end(&all);
    recede_palette_free(palette);
}

static int stop(void *context, double share_done)
{
    (void)context;
    assert_near(share_done, 0, 0);
    return 1;
}

static void the_bare_paper_is_counted_and_faults_refused(void **state)
{
    (void)state;
    static recede_gamut slice;
    recede_palette *palette = palette_of("lamp black", RECEDE_WATERCOLOUR);
    recede_spectrum paper = recede_paper_white();
    recede_lab bare = recede_colour_of_xyz(recede_xyz_of_reflectance(&paper)).lab;
    recede_rules rules = {1, 1, 1}, bad = {0, 1, 1};
    recede_progress progress = {stop, NULL};
    unsigned films = 0;
    slice.lightness = bare.l + RECEDE_GAMUT_BAND - 1e-3;
    assert_int_equal(recede_gamut_fill(palette, &rules, &slice, 1, NULL, NULL), RECEDE_OK);
    for (int j = 0; j < RECEDE_GAMUT_SIDE; j++)
        for (int i = 0; i < RECEDE_GAMUT_SIDE; i++)
            films += slice.films[j][i];
    assert_int_equal(films, 1);
    assert_int_equal(slice.films[(int)floor(bare.b + 0.5) + RECEDE_GAMUT_MOST]
                                [(int)floor(bare.a + 0.5) + RECEDE_GAMUT_MOST], 1);
    assert_int_equal(recede_gamut_fill(palette, &bad, &slice, 1, NULL, NULL),
                     RECEDE_OUT_OF_RANGE);
    assert_int_equal(recede_gamut_fill(palette, &rules, &slice, 1, &progress, NULL),
                     RECEDE_CANCELLED);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pigments_are_what_painters_call_them),
        cmocka_unit_test(the_built_in_palettes_have_their_charts),
        cmocka_unit_test(a_palette_of_reds_has_no_chart),
        cmocka_unit_test(patches_are_the_mixes_they_say),
        cmocka_unit_test(heads_are_the_paints_alone),
        cmocka_unit_test(opaque_paints_are_lightened_with_white),
        cmocka_unit_test(a_paint_with_itself_is_itself),
        cmocka_unit_test(weaker_patches_are_lighter),
        cmocka_unit_test(the_reach_holds_every_film_and_no_more),
        cmocka_unit_test(the_bare_paper_is_counted_and_faults_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
