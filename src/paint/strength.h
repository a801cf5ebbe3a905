/* One paint at several strengths: from masstone to a pale wash, or, in an opaque
 * medium, let down with white. */
#ifndef RECEDE_PAINT_STRENGTH_H
#define RECEDE_PAINT_STRENGTH_H

#include "recede.h"

enum { RECEDE_STRENGTHS = 5 };

/* Water, or white, to 1 of paint: 0, 1, 3, 8, 20. */
double recede_strength_at(int step);

/* How many of them a paint of the palette has: a white that others are let down
 * with is itself shown as it is. */
int recede_strength_count(const recede_palette *palette, int paint);

/* The paint with so much water or white to one of it, on the palette's paper. */
recede_colour recede_strength_colour(const recede_palette *palette, int paint, double added);

/* The same over a bar of black ink (reflectance 0.04; common practice, no source),
 * as painters test how far a paint hides. An opaque medium, which is otherwise laid
 * on until it hides, is laid there as one coat: as thick as watercolour's masstone. */
recede_colour recede_strength_on_ink(const recede_palette *palette, int paint, double added);

/* The ink itself. */
recede_colour recede_strength_ink(void);

#endif
