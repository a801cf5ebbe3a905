/*
 * A film over its ground in single precision, band by band, and how near anything
 * between two of them can come to a target. For pruning only.
 *
 * Laid out for the compiler's vector units: loops over bands, four at a time where
 * they sum.
 */
#ifndef RECEDE_PAINT_SHADE_H
#define RECEDE_PAINT_SHADE_H

#include "paint/box.h"
#include "paint/curve.h"

typedef struct recede_shade {
    float seen[RECEDE_BANDS]; /* reflectance, less the surface's own */
    float xyz[4], root[4];    /* X, Y, Z over the white's, and their cube roots; 1 */
    float l;
} recede_shade;

/* Of a film that is given as maker.film has it: twice its thickness, below 0. */
void recede_shade_of_film(const recede_curve_maker *maker, const recede_curve_films *films,
                          float film, recede_shade *out);

/* Of one so thick that it hides its ground. */
void recede_shade_of_hiding(const recede_curve_maker *maker, const recede_curve_films *films,
                            recede_shade *out);

/* Of the ground itself. */
void recede_shade_of_ground(const recede_curve_maker *maker, const recede_palette *palette,
                            recede_shade *out);

/* 1 where no film goes up in any band, however thick: then every thinner one lies
 * above every thicker one in all bands. */
int recede_shade_darkens(const recede_curve_films *films, const recede_shade *ground);

/* Bounds on the difference from a target, in millionths: by lightness, for all that
 * lies between two shades in every band; the same, by lightness and colour; and for
 * one shade. above: to is known to lie above from in all bands. */
double recede_shade_lightness_bound(const recede_curve_maker *maker, const recede_aim *aim,
                                    const recede_shade *from, const recede_shade *to, int above);
double recede_shade_bound_between(const recede_curve_maker *maker, const recede_aim *aim,
                                  const recede_shade *from, const recede_shade *to, int above,
                                  double limit);
double recede_shade_bound(const recede_aim *aim, const recede_shade *shade, double limit);

#endif
