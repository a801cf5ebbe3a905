#include "draw/dab.h"

#include "picture/noise.h"

#include <math.h>

enum { POINTS = 18 };

static const double two_pi = 6.28318530717958647692;

/* How square a touch is (1: an oval), how much its outline varies, and how much
 * of it the brush leaves dry at the end. */
typedef struct touch {
    double squareness, wobble, drag;
} touch;

static const touch stroke = {0.72, 0.05, 0.12}, tip = {1, 0.03, 0}, square = {0.34, 0.022, 0};

/* Round the room, drawn from left to right: a full start and a drier end. */
static void outline_point(recede_rect room, const touch *t, uint32_t seed, int i, double *x,
                          double *y)
{
    double turn = two_pi * i / POINTS, c = cos(turn), s = sin(turn);
    double wobble = 0.95 * (1 + recede_chance(seed, (uint32_t)i, -t->wobble, t->wobble));
    double across = copysign(pow(fabs(c), t->squareness), c);
    double down = copysign(pow(fabs(s), t->squareness), s);
    double drag = c > 0.4 ? recede_chance(seed, 50 + (uint32_t)i, -t->drag, t->drag / 6) : 0;
    *x = room.x + room.w * 0.5 * (1 + across * (wobble + drag));
    *y = room.y + room.h * 0.5 * (1 + down * wobble);
}

/* A smooth closed line through the points (Catmull and Rom 1974). */
static void trace(const recede_page *page, recede_rect room, const touch *t, uint32_t seed)
{
    double x[POINTS], y[POINTS];
    for (int i = 0; i < POINTS; i++)
        outline_point(room, t, seed, i, &x[i], &y[i]);
    cairo_new_path(page->cr);
    cairo_move_to(page->cr, x[0], y[0]);
    for (int i = 0; i < POINTS; i++) {
        int p = (i + POINTS - 1) % POINTS, n = (i + 1) % POINTS, m = (i + 2) % POINTS;
        cairo_curve_to(page->cr, x[i] + (x[n] - x[p]) / 6, y[i] + (y[n] - y[p]) / 6,
                       x[n] - (x[m] - x[i]) / 6, y[n] - (y[m] - y[i]) / 6, x[n], y[n]);
    }
    cairo_close_path(page->cr);
}

static void fill(const recede_page *page, recede_rect room, const touch *t, uint32_t seed,
                 recede_srgb colour)
{
    trace(page, room, t, seed);
    cairo_set_source_rgb(page->cr, colour.r, colour.g, colour.b);
    cairo_fill(page->cr);
}

void recede_dab(const recede_page *page, recede_rect room, uint32_t seed, recede_srgb colour)
{
    fill(page, room, &stroke, seed, colour);
}

void recede_dab_round(const recede_page *page, recede_rect room, uint32_t seed, recede_srgb colour)
{
    fill(page, room, &tip, seed, colour);
}

void recede_dab_square(const recede_page *page, recede_rect room, uint32_t seed,
                       recede_srgb colour)
{
    fill(page, room, &square, seed, colour);
}

void recede_dab_ringed(const recede_page *page, recede_rect room, uint32_t seed, recede_srgb got,
                       recede_srgb wanted)
{
    double rim = 0.15 * fmin(room.w, room.h);
    recede_rect inner = {room.x + rim, room.y + rim, room.w - 2 * rim, room.h - 2 * rim};
    recede_dab(page, room, seed, wanted);
    recede_dab(page, inner, seed + 1, got);
}

void recede_dab_graded(const recede_page *page, recede_rect room, uint32_t seed,
                       const recede_srgb *colours, size_t count)
{
    cairo_pattern_t *gradient = cairo_pattern_create_linear(room.x, 0, room.x + room.w, 0);
    for (size_t i = 0; i < count; i++)
        cairo_pattern_add_color_stop_rgb(gradient, count > 1 ? (double)i / (double)(count - 1) : 0,
                                         colours[i].r, colours[i].g, colours[i].b);
    trace(page, room, &stroke, seed);
    cairo_set_source(page->cr, gradient);
    cairo_fill(page->cr);
    cairo_pattern_destroy(gradient);
}
