#include "picture/houses.h"

#include "picture/grid.h"
#include "picture/noise.h"

#include <math.h>

enum { MOST_HOUSES = 400 };

/* A house seen a little from the side: a gable end, then the long front under
 * its roof, and a chimney on the ridge. Heights are from the ground beneath. */
typedef struct house {
    double x, gable, front;  /* left edge; widths of gable end and front */
    double wall, roof;       /* heights of the walls, and of the roof above them */
    double chimney;          /* its width; it is twice as high */
    int mirrored;            /* the gable end stands at the right */
} house;

/* The i-th house from the left, and where the next may start. */
static house house_at(const recede_band *band, uint32_t i, double x, double *next)
{
    uint32_t s = recede_seed_with(band->look.seed, 5000 + i);
    double size = band->growth * recede_chance(s, 1, 0.75, 1.15);
    house h;
    h.x = x;
    h.gable = size * recede_chance(s, 2, 0.55, 0.8);
    h.front = size * recede_chance(s, 3, 0.9, 1.9);
    h.wall = size * recede_chance(s, 4, 0.42, 0.55);
    h.roof = size * recede_chance(s, 5, 0.42, 0.55);
    h.chimney = size * 0.11;
    h.mirrored = recede_chance(s, 6, 0, 1) < 0.35;
    double apart = recede_chance(s, 7, 0, 1);
    *next = x + h.gable + h.front + size * (apart < 0.4 ? 0.05 : 5 * apart * apart);
    return h;
}

/* Distance along the house from its gable end. */
static double along(const house *h, double x)
{
    return h->mirrored ? h->x + h->gable + h->front - x : x - h->x;
}

/* The gable end's own top: a point over its middle. */
static double gable_top(const house *h, double at)
{
    return h->wall + h->roof * (1 - fabs(2 * at / h->gable - 1));
}

/* The outline above the ground: half the gable, the ridge with its chimney, and
 * the roof's far edge, which falls as the gable does. 0 beside the house. */
static double outline(const house *h, double x)
{
    double at = along(h, x), length = h->gable + h->front, half = h->gable / 2;
    if (at < 0 || at > length)
        return 0;
    if (at < half)
        return gable_top(h, at);
    if (at < half + h->chimney)
        return h->wall + h->roof + 2 * h->chimney;
    return h->wall + h->roof * fmin(1, (length - at) / half);
}

static size_t column_of(const recede_terrain *t, double x)
{
    return x < 0 ? 0 : x < (double)t->width ? (size_t)x : t->width - 1;
}

/* A house stands level, on the ground under its middle. */
static double middle(const house *h)
{
    return h->x + 0.5 * (h->gable + h->front);
}

void recede_houses_raise(const recede_terrain *t, const recede_band *band, float *height)
{
    double next = -band->growth * recede_chance(band->look.seed, 60, 0, 2);
    for (uint32_t i = 0; next < (double)t->width && i < MOST_HOUSES; i++) {
        house h = house_at(band, i, next, &next);
        double floor_height = (double)height[column_of(t, middle(&h))];
        for (size_t x = column_of(t, h.x); x < t->width && (double)x < next; x++) {
            double up = outline(&h, (double)x + 0.5);
            if (up > 0)
                height[x] = (float)fmax((double)height[x], floor_height + up);
        }
    }
}

/* The front and the gable end take the light by the way they face. Roofs are of
 * darker stuff than walls and read as shadow, but against the light, when they
 * shine (common practice, no source). */
static double light_on(const house *h, const recede_lighting *light, double x, double up,
                       double step)
{
    double at = along(h, x), away = h->mirrored ? 1 : -1;
    double gable = 0.1 + 0.8 * away * light->x + 0.4 * light->z;
    double roof = light->z < -0.3 ? 0.5 : -0.7;
    double front = 0.1 + 0.8 * light->z - 0.2 * away * light->x;
    if (at >= h->gable)
        return up > h->wall ? roof : front;
    /* the gable's edge runs aslant over the cells: soften it by one of them */
    double inside = fmin(fmax((gable_top(h, at) - up) / (2 * step) + 0.5, 0), 1);
    return roof + (gable - roof) * inside;
}

void recede_houses_model(const recede_terrain *t, const recede_band *band,
                         const recede_lighting *light, recede_grid *g)
{
    double next = -band->growth * recede_chance(band->look.seed, 60, 0, 2), step = (double)g->step;
    for (uint32_t i = 0; next < (double)t->width && i < MOST_HOUSES; i++) {
        house h = house_at(band, i, next, &next);
        size_t under = column_of(t, middle(&h)) / g->step;
        size_t first = (size_t)fmax(0, floor(h.x / step) + 1);
        for (size_t c = first; c < g->columns && (double)c * step < next; c++) {
            double x = (double)c * step, top = outline(&h, x);
            for (size_t r = g->first[c]; r < g->end[c]; r++) {
                double up = (double)g->ground[under] - (g->top + (double)r * step);
                if (top > 0 && up >= 0 && up <= top + 2 * step)
                    g->light[r * g->columns + c] =
                        (float)light_on(&h, light, x, fmin(up, top), step);
            }
        }
    }
}
