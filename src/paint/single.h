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
    /* both compilers carry the sign down */
    /* cppcheck-suppress shiftTooManyBitsSigned */
    exponent &= ~(exponent >> 31);
    int32_t bits = exponent * (1 << 23);
    float scale;
    memcpy(&scale, &bits, sizeof scale);
    return p * scale;
}

/* Four at a time, said outright where a compiler does not find them by itself. */
typedef float recede_four __attribute__((vector_size(16)));
typedef int32_t recede_four_bits __attribute__((vector_size(16)));

static inline recede_four recede_four_at(const float *from)
{
    recede_four four;
    memcpy(&four, from, sizeof four);
    return four;
}

static inline void recede_four_to(float *to, recede_four four)
{
    memcpy(to, &four, sizeof four);
}

static inline recede_four recede_four_above_0(recede_four x)
{
    return (recede_four)((recede_four_bits)x & (x > 0.0f));
}

static inline float recede_four_sum(recede_four x)
{
    return (x[0] + x[1]) + (x[2] + x[3]);
}

/* recede_cube_root of each. */
static inline recede_four recede_four_cube_roots(recede_four t)
{
    recede_four guess = __builtin_convertvector((recede_four_bits)t, recede_four);
    recede_four_bits bits = __builtin_convertvector(guess * (1.0f / 3.0f), recede_four_bits);
    recede_four y = (recede_four)(bits + 709921077);
    for (int i = 0; i < 2; i++) {
        recede_four y3 = y * y * y;
        y = y * (y3 + 2.0f * t) / (2.0f * y3 + t);
    }
    return y;
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
