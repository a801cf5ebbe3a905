/* Swatches of a pigment that is known, read with noise of a fixed seed. */
#ifndef RECEDE_TESTS_SWATCH_MAKER_H
#define RECEDE_TESTS_SWATCH_MAKER_H

#include "recede.h"

#include "paint/paints.h"

#include <math.h>
#include <string.h>

typedef enum swatch_noise {
    NOISE_NONE,
    NOISE_WITHIN, /* each swatch off by 0.5 in Lab, in any direction */
    NOISE_EACH    /* L*, a* and b* each off with a standard deviation of 0.5 */
} swatch_noise;

static inline recede_lab lab_of_spectrum(const recede_spectrum *seen)
{
    return recede_lab_of_xyz(recede_xyz_of_reflectance(seen), recede_white());
}

static inline double lab_apart(recede_lab one, recede_lab other)
{
    double l = one.l - other.l, a = one.a - other.a, b = one.b - other.b;
    return sqrt(l * l + a * a + b * b);
}

/* Normal enough, standard deviation 1: twelve even throws. */
static inline double throw_normal(dice *d)
{
    double sum = -6;
    for (int i = 0; i < 12; i++)
        sum += throw_dice(d);
    return sum;
}

static inline recede_lab noisy_lab(recede_lab lab, swatch_noise noise, dice *d)
{
    double off[3], length = 0;
    for (int i = 0; i < 3; i++) {
        off[i] = throw_normal(d);
        length += off[i] * off[i];
    }
    double scale = noise == NOISE_NONE ? 0 : noise == NOISE_EACH ? 0.5 : 0.5 / sqrt(length);
    return (recede_lab){lab.l + scale * off[0], lab.a + scale * off[1], lab.b + scale * off[2]};
}

/* Off by 0.5 in Lab: a lift and a tilt over the spectrum and something in each band, as
 * a probe's zero, its lamp and its sensor are off. */
static inline recede_spectrum noisy_spectrum(const recede_spectrum *seen, dice *d)
{
    double off[RECEDE_BANDS], lift = throw_normal(d), tilt = throw_normal(d), scale = 0.5;
    recede_spectrum out = *seen;
    for (int band = 0; band < RECEDE_BANDS; band++)
        off[band] = lift + tilt * (band - 17.5) / 17.5 + 0.6 * throw_normal(d);
    for (int pass = 0; pass < 20; pass++) {
        for (int band = 0; band < RECEDE_BANDS; band++) {
            double l = cbrt(seen->at[band]) + scale * off[band] / 116;
            out.at[band] = fmin(fmax(l * l * l, 0), 1);
        }
        scale *= 0.5 / lab_apart(lab_of_spectrum(seen), lab_of_spectrum(&out));
    }
    return out;
}

/* How a pigment looks: watercolour over the built-in paper, or with white. */
typedef struct swatch_pot {
    recede_medium medium;
    recede_spectrum paper;
    recede_paint white;
    recede_spectrum k, s;
} swatch_pot;

static inline swatch_pot pot_of(const recede_pigment *pigment, recede_medium medium)
{
    swatch_pot pot = {.medium = medium, .paper = recede_paper_white(),
                      .white = paint_of("titanium white"), .k = pigment->k, .s = pigment->s};
    return pot;
}

static inline recede_spectrum seen_at(const swatch_pot *pot, const recede_spectrum *k,
                                      const recede_spectrum *s, double strength)
{
    if (pot->medium == RECEDE_WATERCOLOUR)
        return recede_film(k, s, 8 / (1 + strength), &pot->paper);
    recede_spectrum mixed_k, mixed_s;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        mixed_k.at[band] = (k->at[band] + strength * pot->white.k.at[band]) / (1 + strength);
        mixed_s.at[band] = (s->at[band] + strength * pot->white.s.at[band]) / (1 + strength);
    }
    return recede_film(&mixed_k, &mixed_s, INFINITY, &pot->paper);
}

static inline recede_swatch swatch_of(const swatch_pot *pot, double strength, int spectral,
                                      swatch_noise noise, dice *d)
{
    recede_spectrum seen = seen_at(pot, &pot->k, &pot->s, strength);
    recede_swatch out = {.has_reflectance = spectral};
    *(pot->medium == RECEDE_WATERCOLOUR ? &out.water : &out.white) = strength;
    if (spectral)
        out.reflectance = noise == NOISE_NONE ? seen : noisy_spectrum(&seen, d);
    else
        out.lab = noisy_lab(lab_of_spectrum(&seen), noise, d);
    return out;
}

/* Masstone and washes whose strengths go in even steps to the eye from it to the paper
 * (which is left out): strengths are water levels. */
static inline void even_strengths(const swatch_pot *pot, int count, double *strengths)
{
    recede_spectrum seen = seen_at(pot, &pot->k, &pot->s, 0);
    recede_lab masstone = lab_of_spectrum(&seen), paper = lab_of_spectrum(&pot->paper);
    strengths[0] = 0;
    for (int i = 1; i < count; i++) {
        double least = INFINITY;
        for (size_t level = 1; level < recede_water_count(); level++) {
            seen = seen_at(pot, &pot->k, &pot->s, recede_water_at(level));
            double gone = recede_delta_e(masstone, lab_of_spectrum(&seen));
            double left = recede_delta_e(paper, lab_of_spectrum(&seen));
            double off = fabs(gone / (gone + left) - (double)i / count);
            if (off < least && recede_water_at(level) > strengths[i - 1]) {
                least = off;
                strengths[i] = recede_water_at(level);
            }
        }
    }
}

static inline void fill_swatches(const swatch_pot *pot, const double *strengths, int count,
                                 int spectral, swatch_noise noise, unsigned seed,
                                 recede_swatches *out)
{
    dice d = {seed};
    for (int i = 0; i < 8; i++)
        throw_dice(&d);
    memset(out, 0, sizeof *out);
    out->medium = pot->medium;
    out->paper = pot->paper;
    out->white = pot->medium == RECEDE_WATERCOLOUR ? NULL : &pot->white;
    out->count = (size_t)count;
    for (int i = 0; i < count; i++)
        out->of[i] = swatch_of(pot, strengths[i], spectral, noise, &d);
}

/* The largest CIEDE2000 between what was painted and what the fit would paint, at every
 * water level (of an opaque medium: with so much white, from 0.1 to 100) up to most. */
static inline double worst_wash(const swatch_pot *pot, const recede_paint_fit *fit, double most)
{
    double worst = 0;
    for (size_t level = 0; level < recede_water_count(); level++) {
        double strength = recede_water_at(level);
        if (strength > most)
            break;
        recede_spectrum was = seen_at(pot, &pot->k, &pot->s, strength);
        recede_spectrum is = seen_at(pot, &fit->k, &fit->s, strength);
        worst = fmax(worst, recede_delta_e(lab_of_spectrum(&was), lab_of_spectrum(&is)));
    }
    return worst;
}

#endif
