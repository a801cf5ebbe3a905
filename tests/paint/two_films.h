/*
 * The colour of one film over another, written out plainly: Kubelka 1948 in its
 * hyperbolic form and Saunderson 1942, band by band, twice over. Shares nothing with
 * the library but the paints' K and S and the colour of a reflectance.
 */
#ifndef RECEDE_TESTS_TWO_FILMS_H
#define RECEDE_TESTS_TWO_FILMS_H

#include "paint/paints.h"

static inline double inside_of_seen(double seen)
{
    return (seen - 0.03) / (0.97 * 0.35 + 0.65 * (seen - 0.03));
}

static inline double seen_of_inside(double inside)
{
    return 0.03 + 0.97 * 0.35 * inside / (1 - 0.65 * inside);
}

static inline double film_over(double k, double s, double x, double ground_seen)
{
    double a = 1 + k / s, b = sqrt(a * a - 1), g = inside_of_seen(ground_seen);
    double coth = 1 / tanh(b * s * x);
    return seen_of_inside((1 - g * (a - b * coth)) / (a - g + b * coth));
}

/* A blend of parts of the palette's paints, in a film of thickness x. */
static inline recede_spectrum plain_film(const recede_palette *palette, const double *parts,
                                         double x, const recede_spectrum *ground)
{
    recede_spectrum out;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double k = 0, s = 0, all = 0;
        for (size_t i = 0; i < recede_palette_count(palette); i++) {
            const recede_paint *paint = recede_palette_paint(palette, i);
            k += parts[i] * paint->k.at[band];
            s += parts[i] * paint->s.at[band];
            all += parts[i];
        }
        out.at[band] = all > 0 ? film_over(k / all, s / all, x, ground->at[band])
                               : ground->at[band];
    }
    return out;
}

static inline recede_spectrum plain_mix(const recede_palette *palette, const recede_mix *mix,
                                        const recede_spectrum *ground)
{
    double parts[RECEDE_MOST_PAINTS] = {0};
    for (int i = 0; i < mix->count; i++)
        parts[mix->paint[i]] = mix->parts[i];
    return plain_film(palette, parts, 8 / (1 + mix->water), ground);
}

/* Half of either puddle: each brings 1 / (1 + water) of its volume in paint. */
static inline recede_spectrum plain_halves(const recede_palette *palette, const recede_mix *one,
                                           const recede_mix *other,
                                           const recede_spectrum *ground)
{
    double parts[RECEDE_MOST_PAINTS] = {0}, paint = 0;
    const recede_mix *halves[2] = {one, other};
    for (int h = 0; h < 2; h++) {
        double share = 0.5 / (1 + halves[h]->water), all = 0;
        for (int i = 0; i < halves[h]->count; i++)
            all += halves[h]->parts[i];
        for (int i = 0; i < halves[h]->count; i++)
            parts[halves[h]->paint[i]] += share * halves[h]->parts[i] / all;
        paint += all > 0 ? share : 0;
    }
    return plain_film(palette, parts, 8 * paint, ground);
}

static inline recede_lab lab_of_spectrum(const recede_spectrum *seen)
{
    return recede_colour_of_xyz(recede_xyz_of_reflectance(seen)).lab;
}

static inline void assert_near_lab(recede_lab found, recede_lab expected, double tolerance)
{
    assert_near(found.l, expected.l, tolerance);
    assert_near(found.a, expected.a, tolerance);
    assert_near(found.b, expected.b, tolerance);
}

#endif
