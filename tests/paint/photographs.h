/* Photographs made from known colours, with the standard's formula written a second
 * time. All data is invented. */
#ifndef RECEDE_TESTS_PHOTOGRAPHS_H
#define RECEDE_TESTS_PHOTOGRAPHS_H

#include "recede.h"

#include <string.h>

#include "support/assert_near.h"

enum { WIDTH = 480, HEIGHT = 320, SIDE = 40, MOST = 24 };

/* How the photograph is taken. */
typedef struct camera {
    double light[3];       /* of a perfect reflector in the middle, per channel */
    double across, down;   /* change of the light over half the picture */
    double offset[3];      /* stray light */
    double noise;          /* of the sample, normal, as a share of full scale */
    int levels;            /* 255 or 65535 */
} camera;

typedef struct scene {
    size_t count;
    recede_patch patch[MOST];
    double rgb[MOST][3];   /* reflectance in linear sRGB */
} scene;

static unsigned short pixels[WIDTH * HEIGHT * 3];
static const recede_photo photo = {WIDTH, HEIGHT, pixels};
static recede_patch_reading reading[RECEDE_MOST_PATCHES];
static int uneven;
static recede_error error;
static unsigned long long seed;

static const camera plain = {{0.8, 0.8, 0.8}, 0, 0, {0, 0, 0}, 0, 65535};
static const camera lamp = {{0.9, 0.55, 0.3}, 0, 0, {0.012, 0.010, 0.008}, 0, 65535};

/* Muted and vivid colours, as linear sRGB reflectances. */
static const double colours[][3] = {
    {0.85, 0.83, 0.78}, {0.60, 0.08, 0.05}, {0.05, 0.12, 0.45}, {0.70, 0.55, 0.05},
    {0.10, 0.30, 0.08}, {0.03, 0.03, 0.04}, {0.35, 0.20, 0.10}, {0.45, 0.55, 0.70},
};
enum { COLOURS = sizeof colours / sizeof colours[0] };

static inline double uniform(void)
{
    seed = seed * 6364136223846793005ull + 1442695040888963407ull;
    return ((double)(seed >> 33) + 0.5) / 2147483648.0;
}

static inline double normal(void)
{
    return sqrt(-2 * log(uniform())) * cos(6.283185307179586 * uniform());
}

/* IEC 61966-2-1, written separately from the library. */
static inline double standard_encode(double c)
{
    return c > 0.0031308 ? 1.055 * pow(c, 1.0 / 2.4) - 0.055 : 12.92 * c;
}

static inline double standard_decode(double v)
{
    return v <= 0.04045 ? v / 12.92 : pow((v + 0.055) / 1.055, 2.4);
}

static inline recede_lab true_lab(const double rgb[3])
{
    recede_srgb encoded = {standard_encode(rgb[0]), standard_encode(rgb[1]),
                           standard_encode(rgb[2])};
    return recede_lab_of_xyz(recede_xyz_of_srgb(encoded), recede_white());
}

static inline void put(size_t x, size_t y, const double rgb[3], const camera *c)
{
    double slope = 1 + c->across * (2.0 * (double)x / WIDTH - 1) +
                   c->down * (2.0 * (double)y / HEIGHT - 1);
    for (int k = 0; k < 3; k++) {
        double sample = standard_encode(rgb[k] * c->light[k] * slope + c->offset[k]);
        if (c->noise > 0)
            sample += c->noise * normal();
        sample = fmin(fmax(sample, 0), 1);
        pixels[(y * WIDTH + x) * 3 + (size_t)k] =
            (unsigned short)(floor(sample * c->levels + 0.5) * (65535 / c->levels));
    }
}

static inline void add(scene *s, size_t left, size_t top, const double rgb[3], double card)
{
    s->patch[s->count] = (recede_patch){left, top, SIDE, SIDE, card};
    for (int k = 0; k < 3; k++)
        s->rgb[s->count][k] = rgb[k];
    s->count++;
}

static inline void add_card(scene *s, size_t left, size_t top, double reflectance)
{
    const double grey[3] = {reflectance, reflectance, reflectance};
    add(s, left, top, grey, reflectance);
}

static inline void add_colours(scene *s)
{
    for (size_t i = 0; i < COLOURS; i++)
        add(s, 90 + 80 * (i % 4), 90 + 80 * (i / 4), colours[i], 0);
}

static inline void shoot_patches(const scene *s, const camera *c)
{
    seed = 20;
    for (size_t i = 0; i < s->count; i++)
        for (size_t y = 0; y < SIDE; y++)
            for (size_t x = 0; x < SIDE; x++)
                put(s->patch[i].left + x, s->patch[i].top + y, s->rgb[i], c);
}

static inline void shoot(const scene *s, const camera *c)
{
    static const double table[3] = {0.25, 0.2, 0.15};
    for (size_t y = 0; y < HEIGHT; y++)
        for (size_t x = 0; x < WIDTH; x++)
            put(x, y, table, c);
    shoot_patches(s, c);
}

static inline recede_code take(const scene *s)
{
    uneven = -1;
    return recede_photo_read(&photo, s->patch, s->count, NULL, reading, &uneven, &error);
}

/* The worst difference from the truth over what is not the card. */
static inline double worst(const scene *s)
{
    double most = 0;
    for (size_t i = 0; i < s->count; i++)
        if (s->patch[i].reflectance <= 0)
            most = fmax(most, recede_delta_e(reading[i].lab, true_lab(s->rgb[i])));
    return most;
}

static inline scene three_greys(void)
{
    scene s = {.count = 0};
    add_card(&s, 10, 10, 0.9);
    add_card(&s, 60, 10, 0.18);
    add_card(&s, 110, 10, 0.04);
    add_colours(&s);
    return s;
}

static inline scene one_grey(void)
{
    scene s = {.count = 0};
    add_card(&s, 10, 10, 0.18);
    add_colours(&s);
    return s;
}

static inline scene four_corners(void)
{
    scene s = {.count = 0};
    add_card(&s, 10, 10, 0.18);
    add_card(&s, WIDTH - 50, 10, 0.18);
    add_card(&s, 10, HEIGHT - 50, 0.18);
    add_card(&s, WIDTH - 50, HEIGHT - 50, 0.18);
    add_colours(&s);
    return s;
}

#endif
