#include "picture/noise.h"

#include <math.h>

/* An integer mixer: every bit of the input moves about half the output's. */
static uint32_t scramble(uint32_t n)
{
    n ^= n >> 16;
    n *= 0x7feb352du;
    n ^= n >> 15;
    n *= 0x846ca68bu;
    return n ^ (n >> 16);
}

uint32_t recede_seed_with(uint32_t seed, uint32_t number)
{
    return scramble(seed ^ scramble(number + 0x9e3779b9u));
}

/* FNV-1a. */
uint32_t recede_seed_of_text(const char *text)
{
    uint32_t seed = 2166136261u;
    for (const unsigned char *at = (const unsigned char *)text; *at; at++)
        seed = (seed ^ *at) * 16777619u;
    return scramble(seed);
}

double recede_chance(uint32_t seed, uint32_t number, double least, double most)
{
    return least + (most - least) * (recede_seed_with(seed, number) / 4294967296.0);
}

static double fade(double t)
{
    return t * t * t * (t * (t * 6 - 15) + 10);
}

/* A slope of -1 to 1 from a lattice point's hash. */
static double slope_of(uint32_t hash)
{
    return (double)(int32_t)hash / 2147483648.0;
}

double recede_noise(uint32_t seed, double x)
{
    double whole = floor(x), t = x - whole;
    uint32_t cell = (uint32_t)(int32_t)whole;
    double left = slope_of(scramble(seed ^ (cell * 0x9e3779b1u))) * t;
    double right = slope_of(scramble(seed ^ ((cell + 1) * 0x9e3779b1u))) * (t - 1);
    return 2.4 * (left + (right - left) * fade(t));
}

/* Enough mixing for a gradient, in one multiplication: noise is asked for
 * millions of times a picture. */
static uint32_t mix_corner(uint32_t row, uint32_t x)
{
    uint32_t n = (row ^ (x * 0x9e3779b1u)) * 0x7feb352du;
    return n ^ (n >> 15);
}

/* The dot product of a corner's gradient with the offset from that corner. The
 * gradient's two halves are not of equal length everywhere, which only makes
 * the noise a little more various. */
static double corner(uint32_t row, uint32_t x, double dx, double dy)
{
    uint32_t hash = mix_corner(row, x);
    return (double)(int16_t)hash / 32768.0 * dx + (double)(int16_t)(hash >> 16) / 32768.0 * dy;
}

double recede_noise_at(uint32_t seed, double x, double y)
{
    double whole_x = floor(x), whole_y = floor(y), tx = x - whole_x, ty = y - whole_y;
    uint32_t cx = (uint32_t)(int32_t)whole_x, cy = (uint32_t)(int32_t)whole_y;
    uint32_t above = mix_corner(seed, cy), below = mix_corner(seed, cy + 1);
    double fx = fade(tx), a = corner(above, cx, tx, ty), b = corner(above, cx + 1, tx - 1, ty);
    double c = corner(below, cx, tx, ty - 1), d = corner(below, cx + 1, tx - 1, ty - 1);
    double top = a + (b - a) * fx, bottom = c + (d - c) * fx;
    return 1.7 * (top + (bottom - top) * fade(ty));
}

double recede_noise_octaves(uint32_t seed, double x, int octaves, double gain)
{
    double sum = 0, strength = 1;
    for (int i = 0; i < octaves; i++, strength *= gain, x = x * 2 + 17.31)
        sum += strength * recede_noise(recede_seed_with(seed, (uint32_t)i), x);
    return sum;
}

double recede_noise_octaves_at(uint32_t seed, double x, double y, int octaves, double gain)
{
    double sum = 0, strength = 1;
    for (int i = 0; i < octaves; i++, strength *= gain, x = x * 2 + 17.31, y = y * 2 + 5.83)
        sum += strength * recede_noise_at(recede_seed_with(seed, (uint32_t)i), x, y);
    return sum;
}
