/* Paints learnt from swatches of pigments that are known: how near they come. Films of
 * the library's pigments stand for painted swatches; noise is invented, of fixed seeds. */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/swatch_maker.h"

static recede_swatches swatches;

static recede_paint_fit learn(void)
{
    recede_paint_fit fit;
    recede_error error;
    if (recede_paint_learn(&swatches, NULL, NULL, &fit, &error))
        fail_msg("refused: %s, code %d, %g, %g", error.path, (int)error.code, error.number,
                 error.most);
    return fit;
}

/* Noise may make a wash of a pale paint darker than the masstone by more than 1: learning
 * refuses that, and rightly. */
static int learn_or_refuse(recede_paint_fit *fit)
{
    recede_error error;
    recede_code code = recede_paint_learn(&swatches, NULL, NULL, fit, &error);
    assert_true(code == RECEDE_OK || code == RECEDE_CONFLICT);
    return code == RECEDE_OK;
}

/* What a set of trials came to. */
typedef struct tally {
    int trials, over; /* over: worst wash beyond 1.0 */
    int refused;
    double worst, sum;
    char worst_name[64];
} tally;

/* worst below 0: refused */
static void count_trial(tally *t, double worst, const char *name)
{
    if (worst < 0) {
        t->refused++;
        return;
    }
    t->trials++;
    t->over += worst > 1.0;
    t->sum += worst;
    if (worst <= t->worst)
        return;
    t->worst = worst;
    snprintf(t->worst_name, sizeof t->worst_name, "%s", name);
}

/* strengths NULL: even to the eye for each pigment, held at every strength there is; else
 * those, held up to the last. Below 0 where noise of every kind was refused. */
static double try_pigment(const recede_pigment *pigment, const double *strengths, int count,
                          int spectral, swatch_noise noise, unsigned seed)
{
    swatch_pot pot = pot_of(pigment, RECEDE_WATERCOLOUR);
    double even[RECEDE_MOST_SWATCHES];
    if (!strengths)
        even_strengths(&pot, count, even);
    fill_swatches(&pot, strengths ? strengths : even, count, spectral, noise, seed, &swatches);
    recede_paint_fit fit;
    if (noise != NOISE_EACH)
        fit = learn();
    else if (!learn_or_refuse(&fit))
        return -1;
    return worst_wash(&pot, &fit, strengths ? strengths[count - 1] : 1000);
}

static tally try_all(const double *strengths, int count, int spectral, swatch_noise noise,
                     int seeds)
{
    tally t = {0};
    for (size_t i = 0; i < recede_pigment_count(); i++)
        for (int seed = 0; seed < seeds; seed++)
            count_trial(&t, try_pigment(recede_pigment_at(i), strengths, count, spectral, noise,
                                        (unsigned)(1000 * i) + (unsigned)seed),
                        recede_pigment_at(i)->name);
    return t;
}

static void print_tally(const char *what, int count, const tally *t)
{
    printf("| %s | %d | %.2f | %.2f (%s) | %d of %d |\n", what, count, t->sum / t->trials,
           t->worst, t->worst_name, t->over, t->trials);
}

static void washes_come_back_from_3_to_8_swatches(void **state)
{
    (void)state;
    /* Mean and worst that each kind may come to with 3 to 5 swatches, and with 6 to 8.
     * From 3 colours a violet with two sharp bands is not to be told from a smoother
     * one by its washes between: even without noise. With 0.5 in each of L*, a* and b*
     * three colours promise nothing for a dark paint, and are held loosely. */
    static const struct {
        const char *what;
        int spectral;
        swatch_noise noise;
        double mean_few, worst_few, mean_many, worst_many;
    } kinds[] = {
        {"spectra", 1, NOISE_NONE, 0.1, 0.5, 0.1, 0.5},
        {"spectra off by 0.5", 1, NOISE_WITHIN, 0.5, 1.0, 0.5, 1.0},
        {"colours", 0, NOISE_NONE, 0.4, 2.0, 0.2, 1.0},
        {"colours off by 0.5", 0, NOISE_WITHIN, 0.7, 2.0, 0.5, 1.0},
        {"L*, a* and b* off by 0.5 each", 0, NOISE_EACH, 1.0, 5.0, 0.7, 2.0},
    };
    printf("worst wash at any strength, CIEDE2000, swatches even to the eye:\n");
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++)
        for (int count = 3; count <= 8; count++) {
            int seeds = kinds[i].noise == NOISE_NONE ? 1 : 3;
            tally t = try_all(NULL, count, kinds[i].spectral, kinds[i].noise, seeds);
            print_tally(kinds[i].what, count, &t);
            assert_below(t.refused, kinds[i].noise == NOISE_EACH ? 0.02 * t.trials : 0);
            assert_below(t.sum / t.trials, count < 6 ? kinds[i].mean_few : kinds[i].mean_many);
            assert_below(t.worst, count < 6 ? kinds[i].worst_few : kinds[i].worst_many);
        }
}

/* The round trip: swatches off by 0.5 in Lab give back every pigment of the library so
 * that no wash of it, at any strength, is off by more than 1.0. */
static void every_pigment_comes_back_within_1(void **state)
{
    (void)state;
    enum { SEEDS = 8, COUNT = 6 };
    printf("worst wash of %d trials, 6 swatches off by 0.5:\n", SEEDS);
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const recede_pigment *pigment = recede_pigment_at(i);
        double worst[2] = {0, 0};
        for (unsigned seed = 0; seed < SEEDS; seed++)
            for (int spectral = 0; spectral < 2; spectral++)
                worst[spectral] = fmax(worst[spectral],
                    try_pigment(pigment, NULL, COUNT, spectral, NOISE_WITHIN,
                                (unsigned)(1000 * i) + seed));
        printf("| %s | %.2f | %.2f |\n", pigment->name, worst[0], worst[1]);
        assert_below(worst[0], 1.0);
        assert_below(worst[1], 1.0);
    }
}

/* The same water for every paint, held between masstone and the palest swatch. */
static void washes_between_come_back_from_few_swatches(void **state)
{
    (void)state;
    static const double four[] = {0, 1, 4, 16}, six[] = {0, 1, 2, 5, 12, 40};
    const struct { const double *strengths; int count; } sets[] = {{four, 4}, {six, 6}};
    printf("same water for all, washes between:\n");
    for (int i = 0; i < 2; i++)
        for (int spectral = 0; spectral < 2; spectral++) {
            tally t = try_all(sets[i].strengths, sets[i].count, spectral, NOISE_WITHIN, 6);
            print_tally(spectral ? "spectra off by 0.5" : "colours off by 0.5", sets[i].count, &t);
            assert_below(t.worst, 1.0);
        }
}

/* K and S themselves, where a paint absorbs at all: without noise, from spectra. */
static void spectra_give_back_k_and_s(void **state)
{
    (void)state;
    double k_off = 0, s_off = 0;
    int bands = 0;
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const recede_pigment *p = recede_pigment_at(i);
        try_pigment(p, NULL, 6, 1, NOISE_NONE, 0);
        recede_paint_fit fit = learn();
        for (int band = 0; band < RECEDE_BANDS; band++)
            if (p->k.at[band] > 0.02) {
                k_off += fabs(log(fit.k.at[band] / p->k.at[band]));
                s_off += fabs(log(fit.s.at[band] / p->s.at[band]));
                bands++;
            }
    }
    printf("K off by %.1f %%, S by %.1f %% in the mean of bands with K over 0.02\n",
           100 * k_off / bands, 100 * s_off / bands);
    assert_below(k_off / bands, 0.03);
    assert_below(s_off / bands, 0.10);
}

static tally try_tints(int spectral, swatch_noise noise, int seeds)
{
    static const double strengths[] = {0, 0.5, 2, 8, 30};
    tally t = {0};
    for (size_t i = 0; i < recede_pigment_count(); i++)
        for (int seed = 0; seed < seeds; seed++) {
            swatch_pot pot = pot_of(recede_pigment_at(i), RECEDE_OIL);
            fill_swatches(&pot, strengths, 5, spectral, noise,
                          (unsigned)(i * 1000) + (unsigned)seed, &swatches);
            recede_paint_fit fit = learn();
            count_trial(&t, worst_wash(&pot, &fit, 100), recede_pigment_at(i)->name);
        }
    return t;
}

static void tints_come_back_in_an_opaque_medium(void **state)
{
    (void)state;
    printf("tints with 0 to 100 of white, from 5:\n");
    for (int spectral = 0; spectral < 2; spectral++)
        for (int noise = NOISE_NONE; noise <= NOISE_WITHIN; noise++) {
            tally t = try_tints(spectral, (swatch_noise)noise, noise == NOISE_NONE ? 1 : 6);
            print_tally(spectral ? (noise ? "spectra off by 0.5" : "spectra")
                                 : (noise ? "colours off by 0.5" : "colours"), 5, &t);
            assert_below(t.worst, 1.0);
        }
}

/* Some spectra, some colours. */
static void mixed_swatches_work_together(void **state)
{
    (void)state;
    tally t = {0};
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        swatch_pot pot = pot_of(recede_pigment_at(i), RECEDE_WATERCOLOUR);
        double strengths[5];
        dice d = {i};
        even_strengths(&pot, 5, strengths);
        fill_swatches(&pot, strengths, 5, 1, NOISE_WITHIN, (unsigned)i, &swatches);
        for (int which = (int)(i % 2); which < 5; which += 2)
            swatches.of[which] = swatch_of(&pot, strengths[which], 0, NOISE_WITHIN, &d);
        recede_paint_fit fit = learn();
        count_trial(&t, worst_wash(&pot, &fit, 1000), recede_pigment_at(i)->name);
    }
    print_tally("spectra and colours by turns, off by 0.5", 5, &t);
    assert_below(t.worst, 1.0);
}

/* Two spectra are enough, and the probe may have left the surface out: readings are then
 * what is beyond 3 %, over 97 %. */
static void surface_left_out_gives_the_same_paint(void **state)
{
    (void)state;
    static const double strengths[] = {0, 5};
    swatch_pot pot = pot_of(recede_pigment_named("burnt sienna"), RECEDE_WATERCOLOUR);
    fill_swatches(&pot, strengths, 2, 1, NOISE_NONE, 0, &swatches);
    recede_paint_fit with = learn();
    assert_below(worst_wash(&pot, &with, 1000), 1.0);
    swatches.surface_excluded = 1;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        swatches.paper.at[band] = (swatches.paper.at[band] - 0.03) / 0.97;
        for (int i = 0; i < 2; i++)
            swatches.of[i].reflectance.at[band] =
                (swatches.of[i].reflectance.at[band] - 0.03) / 0.97;
    }
    recede_paint_fit without = learn();
    for (int band = 0; band < RECEDE_BANDS; band++) {
        assert_near(log(without.k.at[band] / with.k.at[band]), 0, 1e-3);
        assert_near(log(without.s.at[band] / with.s.at[band]), 0, 1e-3);
    }
}

/* The differences told are those between the swatch and the film of K and S told. */
static void fit_tells_its_own_differences(void **state)
{
    (void)state;
    static const double strengths[] = {6, 0, 1, 20};
    swatch_pot pot = pot_of(recede_pigment_named("viridian"), RECEDE_WATERCOLOUR);
    fill_swatches(&pot, strengths, 4, 0, NOISE_EACH, 7, &swatches);
    recede_paint_fit fit = learn();
    double worst = 0, squares = 0;
    for (int i = 0; i < 4; i++) {
        recede_spectrum seen = recede_film(&fit.k, &fit.s, 8 / (1 + strengths[i]), &pot.paper);
        double off = recede_delta_e(swatches.of[i].lab, lab_of_spectrum(&seen));
        assert_near(fit.delta_e[i], off, 1e-9);
        worst = fmax(worst, off);
        squares += off * off;
    }
    assert_near(fit.worst, worst, 1e-9);
    assert_near(fit.rms, sqrt(squares / 4), 1e-9);
    assert_true(worst > 0.01);
}

static void same_swatches_same_paint(void **state)
{
    (void)state;
    static const double strengths[] = {0, 1, 4, 16}, turned[] = {16, 4, 1, 0};
    swatch_pot pot = pot_of(recede_pigment_named("hansa yellow"), RECEDE_WATERCOLOUR);
    fill_swatches(&pot, strengths, 4, 0, NOISE_NONE, 0, &swatches);
    recede_paint_fit one = learn(), again = learn();
    assert_memory_equal(&one, &again, sizeof one);
    fill_swatches(&pot, turned, 4, 0, NOISE_NONE, 0, &swatches);
    again = learn();
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(log(again.k.at[band] / one.k.at[band]), 0, 0.01);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(washes_come_back_from_3_to_8_swatches),
        cmocka_unit_test(every_pigment_comes_back_within_1),
        cmocka_unit_test(washes_between_come_back_from_few_swatches),
        cmocka_unit_test(spectra_give_back_k_and_s),
        cmocka_unit_test(tints_come_back_in_an_opaque_medium),
        cmocka_unit_test(mixed_swatches_work_together),
        cmocka_unit_test(surface_left_out_gives_the_same_paint),
        cmocka_unit_test(fit_tells_its_own_differences),
        cmocka_unit_test(same_swatches_same_paint),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
