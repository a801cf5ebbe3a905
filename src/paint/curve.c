/*
 * With e = exp(-2 bSX) the film of paint/film.c is a quotient of two straight
 * lines in e,
 *
 *     R = (A + B e) / (C + D e)
 *     A, B = Rg beta +- Q        Q = S (1 - Rg) - Rg K
 *     C, D = +-(beta +- P)       P = K + S (1 - Rg),  beta = bS
 *
 * and Saunderson's correction of such a quotient is one again, so that a level
 * costs an exponential, a division and six multiplications a band.
 */
#include "paint/curve.h"

#include <math.h>

#include "paint/single.h"

#define K1 0.03f
#define K2 0.65f

enum { LEVELS = RECEDE_CURVE_LEVELS };

#define MOST_K 1000.0
#define MOST_S 3.0
#define LEAST_K_AND_S 1e-6

/* In a film that shows its ground K is taken for no less than this share of S, or
 * digits would be lost where both lines of the quotient pass near nought. */
#define LEAST_K_OF_S 2e-6f
#define LEAST_K 1e-9f

int recede_curve_holds(const recede_palette *palette)
{
    int holds = 1;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        holds &= palette->paper.at[band] >= (double)K1;
        for (size_t i = 0; i < palette->count; i++) {
            double k = palette->paints[i].k.at[band], s = palette->paints[i].s.at[band];
            holds &= k <= MOST_K && s <= MOST_S && k + s >= LEAST_K_AND_S;
        }
    }
    return holds;
}

void recede_curve_start(recede_curve_maker *maker, const recede_palette *palette)
{
    maker->levels = recede_palette_levels(palette);
    for (size_t i = 0; i < sizeof maker->film / sizeof maker->film[0]; i++) {
        size_t level = i < maker->levels ? i : maker->levels - 1;
        double film = recede_palette_film(palette, recede_water_at(level));
        maker->film[i] = isinf(film) ? 0.0f : (float)(-2.0 * film);
    }
    maker->shows = isinf(recede_palette_film(palette, 0)) ? 0.0f : 1.0f;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        maker->ground[band] = maker->shows * (float)palette->paper_internal[band];
        maker->x[band] = (float)(palette->x[band] / palette->white.x);
        maker->y[band] = (float)(palette->y[band] / palette->white.y);
        maker->z[band] = (float)(palette->z[band] / palette->white.z);
        for (size_t i = 0; i < palette->count; i++) {
            maker->k[i][band] = (float)palette->paints[i].k.at[band];
            maker->s[i][band] = (float)palette->paints[i].s.at[band];
        }
    }
}

/* K and S of the mix in every band. */
static void blend(const recede_curve_maker *maker, const recede_mix *mix, float *restrict k,
                  float *restrict s)
{
    float parts = 0.0f;
    for (int i = 0; i < mix->count; i++)
        parts += (float)mix->parts[i];
    const float *first_k = maker->k[mix->paint[0]], *first_s = maker->s[mix->paint[0]];
    float first = (float)mix->parts[0] / parts;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        k[band] = first * first_k[band];
        s[band] = first * first_s[band];
    }
    for (int i = 1; i < mix->count; i++) {
        const float *paint_k = maker->k[mix->paint[i]], *paint_s = maker->s[mix->paint[i]];
        float part = (float)mix->parts[i] / parts;
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k[band] += part * paint_k[band];
            s[band] += part * paint_s[band];
        }
    }
}

void recede_curve_films_of(const recede_curve_maker *restrict maker, const float *restrict k,
                           const float *restrict s, recede_curve_films *restrict out)
{
    static const float log2_e = 1.44269504f;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        float ground = maker->ground[band];
        float wants = maker->shows * (LEAST_K_OF_S * s[band] + LEAST_K) - k[band];
        float k_band = k[band] + 0.5f * (wants + fabsf(wants));
        float beta = sqrtf(k_band * (k_band + 2.0f * s[band]));
        float p = k_band + s[band] * (1.0f - ground);
        float q = s[band] * (1.0f - ground) - ground * k_band;
        float up = ground * beta + q, up_e = maker->shows * (ground * beta - q);
        out->a[band] = (1.0f - K1) * (1.0f - K2) * up;
        out->b[band] = (1.0f - K1) * (1.0f - K2) * up_e;
        out->c[band] = beta + p - K2 * up;
        out->d[band] = maker->shows * (beta - p) - K2 * up_e;
        out->rate[band] = beta * log2_e;
    }
}

void recede_curve_films_of_mix(const recede_curve_maker *maker, const recede_mix *mix,
                               recede_curve_films *out)
{
    float k[RECEDE_BANDS], s[RECEDE_BANDS];
    blend(maker, mix, k, s);
    recede_curve_films_of(maker, k, s, out);
}

/* Adds one band's part at count levels, a constant where this is inlined. */
static inline void add_band(const recede_curve_maker *maker, const recede_curve_films *f,
                            int band, const float *film, int count, float *x, float *y, float *z)
{
    float wx = maker->x[band], wy = maker->y[band], wz = maker->z[band];
    float a = f->a[band], b = f->b[band], c = f->c[band], d = f->d[band], rate = f->rate[band];
    for (int i = 0; i < count; i++) {
        float e = recede_exp2_below_1(rate * film[i]);
        float seen = K1 + (a + b * e) / (c + d * e);
        x[i] += wx * seen;
        y[i] += wy * seen;
        z[i] += wz * seen;
    }
}

static inline void to_lab(const float *x, const float *y, const float *z, int count, float *l,
                          float *a, float *b)
{
    for (int i = 0; i < count; i++) {
        float fx = recede_cube_root(x[i]), fy = recede_cube_root(y[i]), fz = recede_cube_root(z[i]);
        l[i] = 116.0f * fy - 16.0f;
        a[i] = 500.0f * (fx - fy);
        b[i] = 200.0f * (fy - fz);
    }
}

void recede_curve_of_mix(const recede_curve_maker *maker, const recede_mix *mix,
                         recede_curve *out)
{
    float x[LEVELS] = {0}, y[LEVELS] = {0}, z[LEVELS] = {0};
    recede_curve_films films;
    recede_curve_films_of_mix(maker, mix, &films);
    for (int band = 0; band < RECEDE_BANDS; band++)
        add_band(maker, &films, band, maker->film, LEVELS, x, y, z);
    to_lab(x, y, z, LEVELS, out->l, out->a, out->b);
}

void recede_stretch_of_films(const recede_curve_maker *maker, const recede_curve_films *films,
                             int first, recede_stretch *out)
{
    enum { COUNT = RECEDE_STRETCH_LEVELS };
    float x[COUNT] = {0}, y[COUNT] = {0}, z[COUNT] = {0};
    for (int band = 0; band < RECEDE_BANDS; band++)
        add_band(maker, films, band, maker->film + first, COUNT, x, y, z);
    to_lab(x, y, z, COUNT, out->l, out->a, out->b);
}

float recede_curve_first_l(const recede_curve_maker *maker, const recede_mix *mix)
{
    recede_curve_films f;
    float part[RECEDE_BANDS], film = maker->film[0], y = K1;
    recede_curve_films_of_mix(maker, mix, &f);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        float e = recede_exp2_below_1(f.rate[band] * film);
        part[band] = maker->y[band] * (f.a[band] + f.b[band] * e) / (f.c[band] + f.d[band] * e);
    }
    for (int band = 0; band < RECEDE_BANDS; band++)
        y += part[band];
    return 116.0f * recede_cube_root(y) - 16.0f;
}
