/*
 * A film of paint on a ground: Kubelka, J. Opt. Soc. Am. 38 (1948) 448, the
 * hyperbolic solution of Kubelka and Munk's equations,
 *
 *     R = (1 - Rg (a - b coth bSX)) / (a - Rg + b coth bSX),
 *     a = 1 + K / S,  b = sqrt(a^2 - 1),
 *
 * inside the paint, and Saunderson, J. Opt. Soc. Am. 32 (1942) 727, for the
 * surface: k1 of the light is turned back outside, k2 inside.
 *
 * With u = bSX = X sqrt(K (K + 2S)) and c = u coth u, multiplied by SX:
 *
 *     R = (Rg (c - KX) + SX (1 - Rg)) / (c + KX + SX (1 - Rg))
 *
 * which divides by neither S nor X and needs no limit at K = 0, S = 0, X = 0.
 */
#include "paint/film.h"

#include <math.h>

#define K1 0.03
#define K2 0.65

/* From here on coth u is 1 in double precision: the ground is hidden. */
#define HIDING_U 20.0

double recede_internal_of_seen(double seen)
{
    return (seen - K1) / ((1 - K1) * (1 - K2) + K2 * (seen - K1));
}

double recede_seen_of_internal(double internal)
{
    return K1 + (1 - K1) * (1 - K2) * internal / (1 - K2 * internal);
}

void recede_layer_prepare(recede_layer *layer)
{
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double k = layer->k[band];
        layer->beta[band] = sqrt(k * (k + 2 * layer->s[band]));
    }
}

/* u coth u for u of 0 to HIDING_U. Near 0 its power series (Bernoulli numbers),
 * for 1 - exp(-2u) would lose digits there; the next term is below 1e-16. */
static inline double u_coth_u(double u)
{
    if (u < 0.25) {
        double z = u * u;
        return 1 + z * (1.0 / 3 + z * (-1.0 / 45 + z * (2.0 / 945 + z * (-1.0 / 4725
                 + z * (2.0 / 93555 + z * (-1382.0 / 638512875 + z * (4.0 / 18243225)))))));
    }
    double e = exp(-2 * u);
    return u * (1 + e) / (1 - e);
}

/* The layer so thick that no ground shows: S / (K + S + bS). Without K and S
 * there is no layer. */
static double hiding(const recede_layer *layer, int band, double ground_internal)
{
    double sum = layer->k[band] + layer->s[band] + layer->beta[band];
    return recede_seen_of_internal(sum > 0 ? layer->s[band] / sum : ground_internal);
}

void recede_layer_seen(const recede_layer *layer, double x, const double *ground_internal,
                       double *seen)
{
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double ground = ground_internal[band], u = layer->beta[band] * x;
        if (!(u < HIDING_U)) { /* also INFINITY times a beta of 0, not a number */
            seen[band] = hiding(layer, band, ground);
            continue;
        }
        double c = u_coth_u(u), kx = layer->k[band] * x;
        double lifted = layer->s[band] * x * (1 - ground);
        double up = ground * (c - kx) + lifted, down = c + kx + lifted;
        seen[band] = K1 + (1 - K1) * (1 - K2) * up / (down - K2 * up);
    }
}

recede_spectrum recede_film(const recede_spectrum *k, const recede_spectrum *s, double x,
                            const recede_spectrum *ground)
{
    recede_layer layer;
    recede_spectrum seen = {{0}};
    double internal[RECEDE_BANDS];
    for (int band = 0; band < RECEDE_BANDS; band++) {
        layer.k[band] = k->at[band];
        layer.s[band] = s->at[band];
        internal[band] = recede_internal_of_seen(ground->at[band]);
    }
    recede_layer_prepare(&layer);
    recede_layer_seen(&layer, x, internal, seen.at);
    return seen;
}
