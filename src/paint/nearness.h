/* Bounds and terms of CIEDE2000 that a search needs beside the whole of it. */
#ifndef RECEDE_PAINT_NEARNESS_H
#define RECEDE_PAINT_NEARNESS_H

#include <math.h>

/*
 * 1 when the lightnesses alone put two colours more than limit apart.
 *
 * CIEDE2000 squared is (dL / S_L)^2 plus x^2 + y^2 + R_T x y of the chroma and hue
 * terms, which is never negative, for |R_T| <= 2 sin 60 deg < 2. And S_L, being
 * 1 + 0.015 m^2 / sqrt(20 + m^2) with m the mean lightness less 50, is at most
 * 1 + 0.015 |m|, which needs no root.
 */
static inline int recede_lightness_beyond(double one_l, double other_l, double limit)
{
    return fabs(one_l - other_l) > limit * (1 + 0.015 * fabs(0.5 * (one_l + other_l) - 50));
}

#endif
