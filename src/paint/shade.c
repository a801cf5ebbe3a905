/*
 * Between two thicknesses of a film each band's reflectance goes straight from one
 * to the other: Kubelka and Munk's equation, dR/dX = S (1 - R)^2 - 2 K R, has one
 * place of rest, R of the endless film, and R moves toward it all the way. So every
 * film between lies in the box of reflectances that the two span, band by band,
 * and its colour in that box's image, of which the bound here takes a box in Lab.
 *
 * With d the step of each band, w its weight in X, u = sum of max(0, w d):
 * X lies between X_to - u and X_from + u; Y and Z likewise. For a* = 500 (f(X) -
 * f(Y)), f the cube root, take the chords of f over those ranges, of slopes s_X and
 * s_Y. f lies above its chord, by no more than `rise`; and s_X X - s_Y Y is a sum
 * over bands again, with weights s_X w_X - s_Y w_Y, so that it goes up from its value
 * at the first film by no more than the sum of the positive steps. b* likewise.
 */
#include "paint/shade.h"

#include <math.h>

#include "paint/single.h"

enum { LANES = 4 };

#define SURFACE 0.03f /* what the surface turns back of itself */

/* What a box may be off by in single precision. */
#define BOX_ERROR 0.03f

/* Where the quick bound is less than this share of the limit, the better one seldom
 * reaches it. */
#define NEAR_LIMIT 0.2

static inline float above_0(float x)
{
    return x > 0.0f ? x : 0.0f;
}

static inline float larger(float one, float other)
{
    return one > other ? one : other;
}

static inline float lightness(float root)
{
    return 116.0f * root - 16.0f;
}

/* ------------------------------------------------------------- shades -- */

static void weigh(const recede_curve_maker *maker, recede_shade *shade)
{
    recede_four x = {0}, y = {0}, z = {0};
    for (int band = 0; band < RECEDE_BANDS; band += LANES) {
        recede_four seen = recede_four_at(shade->seen + band);
        x += recede_four_at(maker->x + band) * seen;
        y += recede_four_at(maker->y + band) * seen;
        z += recede_four_at(maker->z + band) * seen;
    }
    recede_four xyz = {SURFACE + recede_four_sum(x), SURFACE + recede_four_sum(y),
                       SURFACE + recede_four_sum(z), 1.0f};
    recede_four_to(shade->xyz, xyz);
    recede_four_to(shade->root, recede_four_cube_roots(xyz));
    shade->l = lightness(shade->root[1]);
}

/* In a function of its own, for restrict: without, no vector units. */
static void spread(const recede_curve_films *restrict f, float film, float *restrict seen)
{
    for (int band = 0; band < RECEDE_BANDS; band++) {
        float e = recede_exp2_below_1(f->rate[band] * film);
        seen[band] = (f->a[band] + f->b[band] * e) / (f->c[band] + f->d[band] * e);
    }
}

static void hide(const recede_curve_films *restrict f, float *restrict seen)
{
    for (int band = 0; band < RECEDE_BANDS; band++)
        seen[band] = f->a[band] / f->c[band];
}

void recede_shade_of_film(const recede_curve_maker *maker, const recede_curve_films *films,
                          float film, recede_shade *out)
{
    spread(films, film, out->seen);
    weigh(maker, out);
}

void recede_shade_of_hiding(const recede_curve_maker *maker, const recede_curve_films *films,
                            recede_shade *out)
{
    hide(films, out->seen);
    weigh(maker, out);
}

void recede_shade_of_ground(const recede_curve_maker *maker, const recede_palette *palette,
                            recede_shade *out)
{
    for (int band = 0; band < RECEDE_BANDS; band++)
        out->seen[band] = (float)palette->paper.at[band] - SURFACE;
    weigh(maker, out);
}

int recede_shade_darkens(const recede_curve_films *films, const recede_shade *ground)
{
    recede_four up = {0};
    for (int band = 0; band < RECEDE_BANDS; band += LANES)
        up += recede_four_above_0(recede_four_at(films->a + band) -
                                  recede_four_at(ground->seen + band) *
                                      recede_four_at(films->c + band));
    return recede_four_sum(up) == 0.0f;
}

/* ------------------------------------------------------------- bounds -- */

/* S_L as paint/nearness.h has it, |L - 50| at the mean being no more than at the
 * target and half the step. */
static inline float most_s_l(const recede_aim *aim, float off)
{
    return 1.0f + 0.015f * fabsf(aim->l - 50.0f) + 0.0075f * off;
}

/* A little less, for what single precision may lose. */
static inline double millionths(float bound)
{
    return 1e6 * ((double)(0.9999f * bound) - 1e-4);
}

/* Square root of C^7 / (C^7 + 25^7): CIEDE2000's R_C / 2, and 1 - 2 G. */
static inline float root_share(float chroma)
{
    float t = chroma * (1.0f / 25.0f), t2 = t * t, t7 = t2 * t2 * t2 * t;
    return sqrtf(t7 / (1.0f + t7));
}

static inline float off_range(float own, float low, float high)
{
    return above_0(larger(low - own, own - high));
}

static double lightness_bound(const recede_aim *aim, float low, float high)
{
    float off = off_range(aim->l, low, high);
    return off > 0.0f ? millionths(off / most_s_l(aim, off)) : 0.0;
}

/* As recede_box_bound over all hues, with S_H no better than S_C and the largest G
 * that the target's own chroma leaves. */
static double quick_bound(const recede_aim *aim, const recede_box *box)
{
    float off_l = off_range(aim->l, box->low[0], box->high[0]);
    float off_a = off_range(aim->a, box->low[1], box->high[1]);
    float off_b = off_range(aim->b, box->low[2], box->high[2]);
    float far_a = larger(-box->low[1], box->high[1]), far_b = larger(-box->low[2], box->high[2]);
    float chromas = aim->chroma + sqrtf(far_a * far_a + far_b * far_b);
    float least = 1.5f - 0.5f * root_share(0.5f * chromas);
    float most = 1.5f - 0.5f * root_share(0.5f * aim->chroma);
    float mean = 0.5f * most * chromas, s_c = 1.0f + 0.045f * mean;
    float hold = 1.0f - 0.8661f * root_share(mean), s_l = most_s_l(aim, off_l);
    off_a *= least;
    float colour = hold * (off_a * off_a + off_b * off_b) / (s_c * s_c);
    return millionths(sqrtf(off_l * off_l / (s_l * s_l) + colour));
}

/* The quick bound, or where that comes near the limit the better one. */
static double box_bound(const recede_aim *aim, const recede_box *box, double limit)
{
    double quick = quick_bound(aim, box);
    if (quick > limit || quick <= NEAR_LIMIT * limit)
        return quick;
    return fmax(quick, millionths(recede_box_bound(aim, box, recede_box_arc(box))));
}

double recede_shade_bound(const recede_aim *aim, const recede_shade *shade, double limit)
{
    static const float off = RECEDE_CURVE_ERROR;
    float l = shade->l, a = 500.0f * (shade->root[0] - shade->root[1]);
    float b = 200.0f * (shade->root[1] - shade->root[2]);
    recede_box box = {{l - off, a - off, b - off}, {l + off, a + off, b + off}};
    double bound = lightness_bound(aim, box.low[0], box.high[0]);
    return bound > limit ? bound : box_bound(aim, &box, limit);
}

/* ------------------------------------------------------------ between -- */

static inline recede_four step_at(const recede_shade *from, const recede_shade *to, int band)
{
    return recede_four_at(to->seen + band) - recede_four_at(from->seen + band);
}

/* Of X, Y and Z: the sum of the steps upward from one shade to another. */
static recede_four up_by(const recede_curve_maker *maker, const recede_shade *from,
                         const recede_shade *to)
{
    recede_four x = {0}, y = {0}, z = {0};
    for (int band = 0; band < RECEDE_BANDS; band += LANES) {
        recede_four step = recede_four_above_0(step_at(from, to, band));
        x += recede_four_at(maker->x + band) * step;
        y += recede_four_at(maker->y + band) * step;
        z += recede_four_at(maker->z + band) * step;
    }
    return (recede_four){recede_four_sum(x), recede_four_sum(y), recede_four_sum(z), 0.0f};
}

/* Of s_X X - s_Y Y and of s_Y Y - s_Z Z. */
static void colour_up_by(const recede_curve_maker *maker, recede_four slope,
                         const recede_shade *from, const recede_shade *to, float up[2])
{
    recede_four a = {0}, b = {0};
    for (int band = 0; band < RECEDE_BANDS; band += LANES) {
        recede_four step = step_at(from, to, band);
        recede_four y = slope[1] * recede_four_at(maker->y + band);
        a += recede_four_above_0((slope[0] * recede_four_at(maker->x + band) - y) * step);
        b += recede_four_above_0((y - slope[2] * recede_four_at(maker->z + band)) * step);
    }
    up[0] = recede_four_sum(a);
    up[1] = recede_four_sum(b);
}

/* For X, Y and Z in turn: the range by its cube roots, and the chord between: there
 * the cube root lies above base + slope t, by rise at most. The slope between the
 * cubes of low and high is 1 / (low^2 + low high + high^2); the rise is largest where
 * the cube root's own slope, 1 / (3 f^2), is the same. */
typedef struct {
    recede_four low, high, base, slope, rise;
} chords;

static void find_ranges(const recede_curve_maker *maker, const recede_shade *from,
                        const recede_shade *to, int above, chords *c)
{
    if (above) {
        c->low = recede_four_at(from->root);
        c->high = recede_four_at(to->root);
        return;
    }
    recede_four up = up_by(maker, from, to);
    c->low = recede_four_cube_roots(recede_four_at(to->xyz) - up);
    c->high = recede_four_cube_roots(recede_four_at(from->xyz) + up);
}

static void draw_chords(chords *c)
{
    recede_four low = c->low, high = c->high;
    recede_four squares = low * low + low * high + high * high, top = squares;
    for (int i = 0; i < LANES; i++)
        top[i] = sqrtf(squares[i] * (1.0f / 3.0f));
    c->slope = 1.0f / squares;
    c->base = low - c->slope * low * low * low;
    c->rise = recede_four_above_0(top - c->base - c->slope * top * top * top);
}

static recede_box box_of(const recede_curve_maker *maker, const recede_shade *from,
                         const recede_shade *to, const chords *c)
{
    float up[2];
    colour_up_by(maker, c->slope, from, to, up);
    recede_four start = recede_four_at(from->xyz);
    recede_four at = c->base + c->slope * start;
    recede_four step = c->slope * (recede_four_at(to->xyz) - start);
    float a = at[0] - at[1], a_high = a + up[0] + c->rise[0];
    float b = at[1] - at[2], b_high = b + up[1] + c->rise[1];
    float a_low = a + step[0] - step[1] - up[0] - c->rise[1];
    float b_low = b + step[1] - step[2] - up[1] - c->rise[2];
    return (recede_box){{lightness(c->low[1]) - BOX_ERROR, 500.0f * a_low - BOX_ERROR,
                         200.0f * b_low - BOX_ERROR},
                        {lightness(c->high[1]) + BOX_ERROR, 500.0f * a_high + BOX_ERROR,
                         200.0f * b_high + BOX_ERROR}};
}

static float y_up_by(const recede_curve_maker *maker, const recede_shade *from,
                     const recede_shade *to)
{
    recede_four up = {0};
    for (int band = 0; band < RECEDE_BANDS; band += LANES)
        up += recede_four_at(maker->y + band) * recede_four_above_0(step_at(from, to, band));
    return recede_four_sum(up);
}

double recede_shade_lightness_bound(const recede_curve_maker *maker, const recede_aim *aim,
                                    const recede_shade *from, const recede_shade *to, int above)
{
    float low = from->l, high = to->l;
    if (!above) {
        float up = y_up_by(maker, from, to);
        low = lightness(recede_cube_root(to->xyz[1] - up));
        high = lightness(recede_cube_root(from->xyz[1] + up));
    }
    return lightness_bound(aim, low - BOX_ERROR, high + BOX_ERROR);
}

double recede_shade_bound_between(const recede_curve_maker *maker, const recede_aim *aim,
                                  const recede_shade *from, const recede_shade *to, int above,
                                  double limit)
{
    chords c;
    find_ranges(maker, from, to, above, &c);
    double bound = lightness_bound(aim, lightness(c.low[1]) - BOX_ERROR,
                                   lightness(c.high[1]) + BOX_ERROR);
    if (bound > limit)
        return bound;
    draw_chords(&c);
    recede_box box = box_of(maker, from, to, &c);
    return box_bound(aim, &box, limit);
}
