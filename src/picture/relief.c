#include "picture/relief.h"

#include "picture/noise.h"

#include <math.h>

/* Spurs that run down from the ridge, broader toward the foot. */
double recede_relief_hill(const recede_terrain *t, const recede_band *band, recede_spot p)
{
    uint32_t s = band->look.seed;
    double x = p.x / t->size, y = p.below / t->size;
    double lean = 0.9 * recede_noise(s + 31, x * 2.1) + 0.4 * recede_noise_at(s + 32, x * 4, y * 5);
    double fine = 3.2 + 3 * band->look.nearness;
    double across = (x + lean * y * 2) * fine, down = (y * 1.9 + x * 0.3) * fine;
    return recede_noise_octaves_at(s + 33, across, down, 2, 0.42);
}

/* Ground that comes toward the painter: patches lie flat far off and open out
 * as they come near, their edges broken as by grass. */
double recede_relief_ground(const recede_terrain *t, const recede_band *band, recede_spot p)
{
    uint32_t s = band->look.seed;
    double x = p.x / t->size, y = p.y / t->size;
    double d = fmax(p.below, 0) / t->size + 0.09 + 0.05 * band->look.nearness;
    double u = (x - 0.6) / d, v = 1.1 / d;
    double patches = recede_noise_octaves_at(s + 41, u * 0.42 + v * 0.30, v * 0.24 - u * 0.08,
                                             2, 0.40);
    double grass = recede_noise_octaves_at(s + 42, x * 90, y * 36, 2, 0.6);
    return patches + 0.38 * fmin(d, 0.4) * grass;
}

/* Dark under the trees; before the foremost of them the ground comes out into
 * the light. */
double recede_relief_wood_floor(const recede_terrain *t, const recede_band *band, recede_spot p)
{
    double out = (p.below - recede_crowns_depth(band->growth, band->depth)) / band->growth;
    if (out < 0)
        return RECEDE_UNDER_TREES;
    return recede_relief_ground(t, band, p) + 0.35 - 1.4 * fmax(0, 0.5 - out);
}

/* Water holds the dark of the far side near its edge and the light of the sky
 * toward the painter, in lazy level shapes. */
double recede_relief_water(const recede_terrain *t, const recede_band *band, recede_spot p)
{
    double x = p.x / t->size, d = fmax(p.below, 0) / t->size, v = 0.6 / (d + 0.06);
    double shapes = recede_noise_octaves_at(band->look.seed + 51, x * 2.2, v * 1.6, 3, 0.5);
    return 9 * d - 0.5 + 0.8 * shapes;
}

/* Leaves, and slow changes that put whole crowns in light or shade. */
double recede_relief_leaves(const recede_terrain *t, const recede_band *band, recede_spot p)
{
    uint32_t s = band->look.seed;
    double scale = 9 / fmax(band->growth, 1);
    (void)t;
    return 0.5 * recede_noise_octaves_at(s + 61, p.x * scale, p.y * scale, 2, 0.6)
         + 1.1 * recede_noise_at(s + 62, p.x * scale * 0.03, p.y * scale * 0.04);
}
