/* Curves in single precision against the films of the reference, in double, which
 * other tests hold to the theory. */
#include "paint/curve.h"

#include "paint/mixes.h"
#include "paint/paints.h"
#include "paint/sweep.h"
#include "recede.h"
#include "support/assert_near.h"

static double off_by(recede_lab lab, float l, float a, float b)
{
    assert_true(isfinite(l + a + b));
    return fmax(fmax(fabs(lab.l - (double)l), fabs(lab.a - (double)a)), fabs(lab.b - (double)b));
}

/* The most that any level of a mix is off. */
static double error_of_mix(const recede_palette *palette, const recede_curve_maker *maker,
                           const recede_mix *mix)
{
    recede_curve curve;
    recede_curve_films films;
    recede_stretch stretch;
    recede_sweep sweep;
    double most = 0;
    recede_curve_of_mix(maker, mix, &curve);
    recede_curve_films_of_mix(maker, mix, &films);
    recede_sweep_start(&sweep, palette);
    recede_sweep_take(&sweep, mix);
    for (size_t level = 0; level < sweep.levels; level++) {
        recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&sweep, level), palette->white);
        most = fmax(off_by(lab, curve.l[level], curve.a[level], curve.b[level]), most);
        recede_stretch_of_films(maker, &films, (int)level, &stretch);
        most = fmax(off_by(lab, stretch.l[0], stretch.a[0], stretch.b[0]), most);
        if (level >= 7)
            assert_near(stretch.l[0], curve.l[level], 1e-4);
    }
    return most;
}

static double error_of_palette(const recede_palette *palette, int every)
{
    static recede_curve_maker maker;
    recede_mixes walk;
    recede_rules rules = {3, 8, 1};
    double most = 0;
    assert_true(recede_curve_holds(palette));
    recede_curve_start(&maker, palette);
    recede_mixes_start(&walk, (int)palette->count, &rules);
    for (int i = 0; recede_mixes_next(&walk); i++)
        if (i % every == 0)
            most = fmax(error_of_mix(palette, &maker, &walk.mix), most);
    return most;
}

/* Every built-in palette, and all pigments there are: ten times nearer than promised. */
static void the_library_s_paints_are_well_within(void **state)
{
    (void)state;
    for (size_t i = 0; i < recede_palette_entry_count(); i++) {
        const recede_palette_entry *entry = recede_palette_entry_at(i);
        recede_palette *palette =
            palette_of(entry->paints, entry->opaque ? RECEDE_GOUACHE : RECEDE_WATERCOLOUR);
        assert_below(error_of_palette(palette, 97), RECEDE_CURVE_ERROR / 10);
        recede_palette_free(palette);
    }
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        recede_palette *palette = palette_of(recede_pigment_at(i)->name, RECEDE_WATERCOLOUR);
        assert_below(error_of_palette(palette, 1), RECEDE_CURVE_ERROR / 10);
        recede_palette_free(palette);
    }
}

/* Invented paints: K and S about some powers of ten, band by band, on any ground. */
static recede_palette *invented(dice *d, double k, double s, double darkest_paper,
                                recede_medium medium)
{
    static recede_paint paints[2];
    recede_palette *palette = NULL;
    recede_spectrum paper;
    for (int i = 0; i < 2; i++) {
        paints[i].name[0] = (char)('a' + i);
        paints[i].is_white = 1;
        for (int band = 0; band < RECEDE_BANDS; band++) {
            paints[i].k.at[band] = k * (0.4 + throw_dice(d));
            paints[i].s.at[band] = s * (0.4 + throw_dice(d));
        }
    }
    double level = darkest_paper + (1 - darkest_paper) * throw_dice(d) * throw_dice(d);
    for (int band = 0; band < RECEDE_BANDS; band++)
        paper.at[band] = fmin(1, level * (1 + 0.1 * throw_dice(d)));
    assert_int_equal(recede_palette_new(paints, 2, medium, &paper, NULL, &palette, NULL),
                     RECEDE_OK);
    return palette;
}

static void paints_at_the_limits_are_within(void **state)
{
    (void)state;
    static const double powers[] = {0, 1e-12, 1e-7, 1e-5, 1e-3, 0.1, 2, 700};
    enum { POWERS = sizeof powers / sizeof powers[0] };
    dice d = {41};
    int held = 0;
    for (int i = 0; i < 6000; i++) {
        double k = powers[i % POWERS], s = powers[i / POWERS % POWERS];
        recede_palette *palette =
            invented(&d, k, s, 0.03, i % 3 ? RECEDE_WATERCOLOUR : RECEDE_OIL);
        if (recede_curve_holds(palette)) {
            static recede_curve_maker maker;
            recede_mix mix = {2, {0, 1}, {1, 3}, 0};
            recede_curve_start(&maker, palette);
            assert_below(error_of_mix(palette, &maker, &mix), 0.9 * RECEDE_CURVE_ERROR);
            held++;
        }
        recede_palette_free(palette);
    }
    assert_true(held > 2000);
}

static void what_curves_cannot_hold_they_refuse(void **state)
{
    (void)state;
    static const struct { double k, s, paper; int holds; } cases[] = {
        {1, 1, 0.03, 1}, {0, 1, 0.5, 1}, {1, 0, 0.5, 1}, {0, 0, 0.5, 0},
        {5000, 1, 0.5, 0}, {1, 50, 0.5, 0}, {1, 1, 0.01, 0},
    };
    dice d = {1};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_palette *palette =
            invented(&d, cases[i].k, cases[i].s, cases[i].paper, RECEDE_WATERCOLOUR);
        if (cases[i].paper < 0.03)
            palette->paper.at[20] = cases[i].paper;
        assert_int_equal(recede_curve_holds(palette), cases[i].holds);
        recede_palette_free(palette);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_library_s_paints_are_well_within),
        cmocka_unit_test(paints_at_the_limits_are_within),
        cmocka_unit_test(what_curves_cannot_hold_they_refuse),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
