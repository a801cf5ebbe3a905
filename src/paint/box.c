/*
 * The bound. For a target and any colour of the box, with dL, da, db the
 * distances to the box:
 *
 *   dE^2 >= (dL / S_L)^2 + (1 - R_C s / 2) max(D^2 / S_C^2,
 *                                D^2 / S_H^2 - dC'^2 (1 / S_H^2 - 1 / S_C^2))
 *   D^2 = ((1 + G) da)^2 + db^2 = dC'^2 + dH'^2
 *
 * docs/search.md has the argument. Every quantity is taken at that end of its
 * range which makes the bound smaller: S_L at the nearest L, G in D at the box's
 * largest chroma, S_C, S_H and R_C at the largest mean chroma, dC' at its largest
 * in the box, s and the T of S_H over all hues the mean may have.
 *
 * No branches and no calls, so that a loop over eight boxes goes to the vector
 * units: hence boxes by their middles and half widths, and no fminf or fmaxf.
 */
#include "paint/box.h"

#include <math.h>

/* What single precision may lose. */
#define KEPT 0.9999f

static inline float larger(float one, float other)
{
    return one > other ? one : other;
}

static inline float smaller(float one, float other)
{
    return one < other ? one : other;
}

static inline float above_0(float x)
{
    return 0.5f * (x + fabsf(x));
}

/* C^7 / (C^7 + 25^7) */
static inline float seventh_share(float chroma)
{
    float t = chroma * (1.0f / 25.0f), t2 = t * t, t7 = t2 * t2 * t2 * t;
    return t7 / (1.0f + t7);
}

/* 1 + G */
static inline float stretch(float mean_chroma)
{
    return 1.5f - 0.5f * sqrtf(seventh_share(mean_chroma));
}

static inline float length(float a, float b, float stretched)
{
    return sqrtf(stretched * stretched * a * a + b * b);
}

/* The squared chroma and hue terms, without their rotation. */
static inline float colour_part(float apart2, float step_c, float s_c, float s_h)
{
    float by_c = 1.0f / (s_c * s_c), by_h = 1.0f / (s_h * s_h);
    return larger(apart2 * by_c, apart2 * by_h - step_c * step_c * (by_h - by_c));
}

/* The least of x^2 + y^2 - 2 turn x y at and beyond x and y, turn below 1. */
static inline float corner_part(float x, float y, float turn)
{
    float far_x = x + above_0(turn * y - x), far_y = y + above_0(turn * x - y);
    return smaller(x * x + far_y * far_y - 2.0f * turn * x * far_y,
                   far_x * far_x + y * y - 2.0f * turn * far_x * y);
}

/* Eight boxes in full. */
typedef struct {
    float middle[3][RECEDE_BLOCK], half[3][RECEDE_BLOCK];
    float twist[RECEDE_BLOCK], weight[RECEDE_BLOCK];
} block;

/* (dL / S_L)^2 */
static inline float lightness_part(float target, float middle, float half)
{
    float part = above_0(fabsf(middle - target) - half);
    float off = target + 0.5f * copysignf(part, middle - target) - 50.0f, off2 = off * off;
    float over = part / (1.0f + 0.015f * off2 / sqrtf(20.0f + off2));
    return over * over;
}

/* The first count, a constant where this is inlined, as it must be to become one
 * loop for the vector units. */
__attribute__((always_inline)) static inline void bounds_of(const recede_aim *aim,
                                                            const block *box, int count,
                                                            float *bounds)
{
    float own_a = aim->a, own_b = aim->b, chroma = aim->chroma, own_l = aim->l;
    float bound[RECEDE_BLOCK];
    for (int i = 0; i < count; i++) {
        float a = box->middle[1][i], half_a = box->half[1][i];
        float b = box->middle[2][i], half_b = box->half[2][i];
        float da = above_0(fabsf(a - own_a) - half_a), db = above_0(fabsf(b - own_b) - half_b);
        float far_a = fabsf(a) + half_a, near_a = above_0(fabsf(a) - half_a);
        float far_b = fabsf(b) + half_b, near_b = above_0(fabsf(b) - half_b);
        float least = stretch(0.5f * (chroma + length(far_a, far_b, 1.0f)));
        float most = stretch(0.5f * (chroma + length(near_a, near_b, 1.0f)));
        float own_least = length(own_a, own_b, least), own_most = length(own_a, own_b, most);
        float largest = length(far_a, far_b, most), smallest = length(near_a, near_b, least);
        float mean = 0.5f * (own_most + largest);
        float c_low = smallest - own_most, c_high = largest - own_least;
        float s_c = 1.0f + 0.045f * mean;
        float s_h = smaller(s_c, 1.0f + 0.015f * mean * box->weight[i]);
        float cross = own_a * b - own_b * a;
        float half_cross = fabsf(own_a) * half_b + fabsf(own_b) * half_a + 0.01f;
        float x = (above_0(c_low) + above_0(-c_high)) / s_c;
        float y = least * above_0(fabsf(cross) - half_cross) /
                  (sqrtf(own_most * largest + 1e-6f) * s_h);
        float alike = above_0(c_high) * above_0(half_cross + cross) +
                      above_0(-c_low) * above_0(half_cross - cross);
        float turn = smaller(sqrtf(seventh_share(mean)) * box->twist[i], 1e20f * alike);
        float colour = larger((1.0f - turn) * colour_part(least * least * da * da + db * db,
                                                larger(c_high, -c_low), s_c, s_h),
                              corner_part(x, y, turn));
        float lightness = lightness_part(own_l, box->middle[0][i], box->half[0][i]);
        bound[i] = sqrtf(lightness + colour) * KEPT;
    }
    for (int i = 0; i < count; i++)
        bounds[i] = bound[i];
}

static void eight_bounds(const recede_aim *aim, const block *boxes, float *bounds)
{
    bounds_of(aim, boxes, RECEDE_BLOCK, bounds);
}

float recede_box_bound(const recede_aim *aim, const recede_box *box, unsigned arc)
{
    block one;
    float bound;
    for (int axis = 0; axis < 3; axis++) {
        one.middle[axis][0] = 0.5f * (box->low[axis] + box->high[axis]);
        one.half[axis][0] = 0.5f * (box->high[axis] - box->low[axis]);
    }
    one.twist[0] = aim->twist[arc];
    one.weight[0] = aim->weight[arc];
    bounds_of(aim, &one, 1, &bound);
    return bound;
}

recede_box recede_box_of(const recede_boxes *boxes, int lane)
{
    recede_box box;
    for (int i = 0; i < 3; i++) {
        box.low[i] = (float)boxes->low[i][lane] * (1.0f / RECEDE_BOX_SCALE);
        box.high[i] = (float)boxes->high[i][lane] * (1.0f / RECEDE_BOX_SCALE);
    }
    return box;
}

void recede_bounds_of_boxes(const recede_aim *aim, const recede_boxes *boxes, float *bounds)
{
    block eight;
    for (int axis = 0; axis < 3; axis++)
        for (int i = 0; i < RECEDE_BLOCK; i++) {
            float low = boxes->low[axis][i], high = boxes->high[axis][i];
            eight.middle[axis][i] = (low + high) * (0.5f / RECEDE_BOX_SCALE);
            eight.half[axis][i] = (high - low) * (0.5f / RECEDE_BOX_SCALE);
        }
    for (int i = 0; i < RECEDE_BLOCK; i++) {
        eight.twist[i] = aim->twist[boxes->arc[i]];
        eight.weight[i] = aim->weight[boxes->arc[i]];
    }
    eight_bounds(aim, &eight, bounds);
}

void recede_bounds_of_colours(const recede_aim *aim, const float *l, const float *a,
                              const float *b, float off, unsigned arc, float *bounds)
{
    const float *const lab[3] = {l, a, b};
    block eight;
    for (int axis = 0; axis < 3; axis++)
        for (int i = 0; i < RECEDE_BLOCK; i++) {
            eight.middle[axis][i] = lab[axis][i];
            eight.half[axis][i] = off;
        }
    for (int i = 0; i < RECEDE_BLOCK; i++) {
        eight.twist[i] = aim->twist[arc];
        eight.weight[i] = aim->weight[arc];
    }
    eight_bounds(aim, &eight, bounds);
}
