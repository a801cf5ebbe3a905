/*
 * A film over its ground in single precision, band by band, and boxes in Lab around
 * all that lies between two of them. For pruning only.
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

/* The lightest that anything between two shades can be, and the darkest. */
float recede_shade_lightest(const recede_curve_maker *maker, const recede_shade *one,
                            const recede_shade *other);
float recede_shade_darkest(const recede_curve_maker *maker, const recede_shade *one,
                           const recede_shade *other);

/* A box around all reflectances that lie between two shades in every band. above: to
 * is known to lie above from in all of them. */
recede_box recede_shade_box(const recede_curve_maker *maker, const recede_shade *from,
                            const recede_shade *to, int above);

/* A box around one shade. */
recede_box recede_shade_point(const recede_shade *shade);

/* Bounds on the difference from a target, in millionths: for a lightness at least so
 * far off; for a box, cheap and lax, and as good as there is. */
double recede_lightness_bound(const recede_aim *aim, float off);
double recede_quick_bound(const recede_aim *aim, const recede_box *box);
double recede_full_bound(const recede_aim *aim, const recede_box *box);

#endif
