/*
 * sRGB: IEC 61966-2-1.
 *
 * The matrices follow from the standard's chromaticities - red 0.64, 0.33;
 * green 0.30, 0.60; blue 0.15, 0.06; white 0.3127, 0.3290 - in full, where the
 * standard prints four decimals. They work on XYZ divided by its white, so that
 * each row sums to 1: written as differences from the middle column, greys stay
 * exactly grey and white is exactly 1, 1, 1.
 */
#include "recede.h"

#include <math.h>

/* A row (first, 1 - first - third, third) of such a matrix. */
typedef struct row { double first, third; } row;

static const row rgb_to_ratio[3] = {
    {1013504.0 / 2335869.0, 443555.0 / 2335869.0},
    {87098.0 / 409605.0, 12673.0 / 175545.0},
    {15836.0 / 892167.0, 7008169.0 / 8029503.0},
};
static const row ratio_to_rgb[3] = {
    {121953.0 / 39590.0, -10749.0 / 19795.0},
    {-8095803.0 / 8788100.0, 397713.0 / 8788100.0},
    {9381.0 / 177422.0, 10749.0 / 9338.0},
};

static double apply(row r, double first, double second, double third)
{
    return second + r.first * (first - second) + r.third * (third - second);
}

/* 1.055 c^(1/2.4) - 0.055, written so that 1 gives 1. */
static double encode(double c)
{
    return c <= 0.0031308 ? 12.92 * c : 1 + 1.055 * (pow(c, 1 / 2.4) - 1);
}

static double decode(double c)
{
    return c <= 0.04045 ? c / 12.92 : pow(1 + (c - 1) / 1.055, 2.4);
}

recede_srgb recede_srgb_of_xyz(recede_xyz colour)
{
    recede_xyz white = recede_white();
    double x = colour.x / white.x, y = colour.y / white.y, z = colour.z / white.z;
    return (recede_srgb){encode(apply(ratio_to_rgb[0], x, y, z)),
                         encode(apply(ratio_to_rgb[1], x, y, z)),
                         encode(apply(ratio_to_rgb[2], x, y, z))};
}

recede_xyz recede_xyz_of_srgb(recede_srgb srgb)
{
    recede_xyz white = recede_white();
    double r = decode(srgb.r), g = decode(srgb.g), b = decode(srgb.b);
    return (recede_xyz){white.x * apply(rgb_to_ratio[0], r, g, b),
                        white.y * apply(rgb_to_ratio[1], r, g, b),
                        white.z * apply(rgb_to_ratio[2], r, g, b)};
}
