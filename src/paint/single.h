/* Functions in single precision without a branch or a call, so that a loop of them
 * goes to the vector units. For pruning only. */
#ifndef RECEDE_PAINT_SINGLE_H
#define RECEDE_PAINT_SINGLE_H

#include <stdint.h>
#include <string.h>

/* 2^t for t of -1e6 to 0, within 3e-7 of it: a polynomial on half an octave either
 * way (interpolated at Chebyshev's points), times the exponent's bits; below 2^-126
 * those are nought. */
static inline float recede_exp2_below_1(float t)
{
    int32_t whole = (int32_t)(t - 0.5f);
    float f = (t - (float)whole) * 0.693147181f;
    float p = 1.0f + f * (1.0f + f * (0.499993721f + f * (0.16666577f + f * (0.0418756445f
              + f * 0.00836317307f))));
    int32_t exponent = whole + 127;
    exponent &= ~(exponent >> 31);
    int32_t bits = exponent * (1 << 23);
    float scale;
    memcpy(&scale, &bits, sizeof scale);
    return p * scale;
}

/* Cube root for t of 0.01 to 4: a guess from the exponent, two steps of Halley. */
static inline float recede_cube_root(float t)
{
    int32_t bits;
    memcpy(&bits, &t, sizeof bits);
    bits = (int32_t)((float)bits * (1.0f / 3.0f)) + 709921077;
    float y;
    memcpy(&y, &bits, sizeof y);
    for (int i = 0; i < 2; i++) {
        float y3 = y * y * y;
        y = y * (y3 + 2.0f * t) / (2.0f * y3 + t);
    }
    return y;
}

#endif
