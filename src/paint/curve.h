/*
 * The colours of a mix at all its water levels at once, in single precision, for
 * pruning only: within RECEDE_CURVE_ERROR of what paint/sweep.h gives in double.
 *
 * Laid out for the compiler's vector units: a structure of arrays, water levels
 * innermost, their number a multiple of four, no call per band.
 */
#ifndef RECEDE_PAINT_CURVE_H
#define RECEDE_PAINT_CURVE_H

#include "paint/palette.h"

enum { RECEDE_CURVE_LEVELS = 84 }; /* 82 in use; the rest repeat the last */

#define RECEDE_CURVE_ERROR 0.01f /* in L*, a* and b* */

/* What all curves of a palette share. */
typedef struct recede_curve_maker {
    size_t levels;
    float film[RECEDE_CURVE_LEVELS + 8];        /* negative, doubled: -2 X */
    float ground[RECEDE_BANDS];                 /* internal */
    float shows;                                /* 1; an opaque medium: 0, no ground does */
    float x[RECEDE_BANDS], y[RECEDE_BANDS], z[RECEDE_BANDS]; /* over the white's */
    float k[RECEDE_MOST_PAINTS][RECEDE_BANDS], s[RECEDE_MOST_PAINTS][RECEDE_BANDS];
} recede_curve_maker;

typedef struct recede_curve {
    float l[RECEDE_CURVE_LEVELS], a[RECEDE_CURVE_LEVELS], b[RECEDE_CURVE_LEVELS];
} recede_curve;

/* 1 where the error holds: K up to 1000, S up to 3, not both nothing, and a ground
 * no darker than its surface, 0.03. All paints and papers there are lie within. */
int recede_curve_holds(const recede_palette *palette);

void recede_curve_start(recede_curve_maker *maker, const recede_palette *palette);

/* An opaque medium has one level: the rest repeat it. */
void recede_curve_of_mix(const recede_curve_maker *maker, const recede_mix *mix,
                         recede_curve *out);

/* L* of a mix at its first level alone. */
float recede_curve_first_l(const recede_curve_maker *maker, const recede_mix *mix);

/* A mix's films band by band, and a stretch of its curve from them: the levels
 * first to first + RECEDE_STRETCH_LEVELS - 1 (past the end: the last again). */
enum { RECEDE_STRETCH_LEVELS = 8 };
typedef struct recede_curve_films {
    float a[RECEDE_BANDS], b[RECEDE_BANDS], c[RECEDE_BANDS], d[RECEDE_BANDS];
    float rate[RECEDE_BANDS];
} recede_curve_films;
typedef struct recede_stretch {
    float l[RECEDE_STRETCH_LEVELS], a[RECEDE_STRETCH_LEVELS], b[RECEDE_STRETCH_LEVELS];
} recede_stretch;

void recede_curve_films_of_mix(const recede_curve_maker *maker, const recede_mix *mix,
                               recede_curve_films *out);
/* The same of any K and S. */
void recede_curve_films_of(const recede_curve_maker *maker, const float *k, const float *s,
                           recede_curve_films *out);
void recede_stretch_of_films(const recede_curve_maker *maker, const recede_curve_films *films,
                             int first, recede_stretch *out);

#endif
