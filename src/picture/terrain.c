#include "picture/terrain.h"

#include "colour/memory.h"
#include "picture/layout.h"
#include "picture/noise.h"
#include "picture/sketch.h"
#include "picture/skyline.h"

#include <math.h>

typedef enum kind { HEIGHTS, HALVES, FRONTS, COVERS, KINDS } kind;

static float *columns_of(const recede_terrain *t, kind which, size_t i)
{
    return t->columns + (t->count * which + i) * t->width;
}

/* Hard edges are one pixel, whatever the size of the picture; a band too thin
 * for its edge keeps half of itself. */
static double edge_width(const recede_terrain *t, recede_edge edge, double share)
{
    static const double part[] = {0, 0.007, 0.030};
    double width = part[edge] * t->size, most = 0.5 * share * (double)t->height;
    return fmax(1, fmin(width, most));
}

/* Bands that must be thin are kept low too, or their tops would stand about as
 * islands. */
static void size_band(const recede_terrain *t, const recede_planned *planned, double share,
                      recede_band *band)
{
    double thickness = share * (double)t->height;
    double growth = band->look.growth * t->size;
    if (band->look.form == RECEDE_LANDFORM_WOOD || band->look.form == RECEDE_LANDFORM_CONIFERS)
        growth = fmax(growth, 0.22 * thickness);
    band->growth = fmin(growth, 2.2 * thickness + 0.01 * t->size);
    band->relief = fmin(band->look.relief * t->size, 1.3 * thickness + 0.01 * t->size);
    band->edge = edge_width(t, planned->edge, share);
    band->depth = 1.5 * thickness + band->relief;
}

/* The area of a band between its skyline and what stands before it, and how
 * fast it grows as the band's base rises. */
static double area_above(const recede_terrain *t, size_t i, double base_y, double *columns_seen)
{
    const float *height = t->band[i].height, *front = t->band[i].front;
    double area = 0, seen = 0;
    for (size_t x = 0; x < t->width; x++) {
        double top = fmax(0, base_y - (double)height[x]);
        if (top < (double)front[x]) {
            area += (double)front[x] - top;
            seen += top > 0;
        }
    }
    *columns_seen = seen;
    return area;
}

/* The base that gives the band its area: Newton's steps, kept inside a bracket
 * that each step narrows. The area falls as the base goes down. */
static double base_for_area(const recede_terrain *t, size_t i, double area)
{
    double least = 0, most = (double)t->height;
    for (size_t x = 0; x < t->width; x++) {
        least = fmin(least, (double)t->band[i].height[x]);
        most = fmax(most, (double)t->height + (double)t->band[i].height[x]);
    }
    double base = 0.5 * (double)t->height;
    for (int step = 0; step < 60; step++) {
        double seen, over = area_above(t, i, base, &seen) - area;
        if (fabs(over) <= 1e-7 * area)
            break;
        if (over > 0)
            least = base;
        else
            most = base;
        double next = seen > 0 ? base + over / seen : least - 1;
        base = next > least && next < most ? next : 0.5 * (least + most);
    }
    return base;
}

/* A passage is as wide measured across the skyline as along the upright where
 * that runs level; steep stretches need more height for it. */
static void measure_halves(const recede_terrain *t, size_t i)
{
    const float *height = t->band[i].height;
    float *half = columns_of(t, HALVES, i);
    for (size_t x = 0; x < t->width; x++) {
        size_t from = x > 0 ? x - 1 : 0, to = x + 1 < t->width ? x + 1 : x;
        double slope = to > from ? (double)(height[to] - height[from]) / (double)(to - from) : 0;
        half[x] = (float)(0.5 * t->band[i].edge * sqrt(1 + fmin(slope * slope, 144)));
    }
}

/* The front and cover lines of a band from those of the next nearer one. */
static void stand_behind(const recede_terrain *t, size_t i)
{
    float *front = columns_of(t, FRONTS, i), *cover = columns_of(t, COVERS, i);
    for (size_t x = 0; x < t->width; x++)
        front[x] = cover[x] = (float)t->height;
    if (i + 1 == t->count)
        return;
    const recede_band *nearer = &t->band[i + 1];
    for (size_t x = 0; x < t->width; x++) {
        double top = nearer->base_y - (double)nearer->height[x];
        front[x] = (float)fmin((double)nearer->front[x], fmax(0, top));
        cover[x] = (float)fmin((double)nearer->cover[x], fmax(0, top + (double)nearer->half[x]));
    }
}

static recede_code shape(recede_terrain *t, const recede_plan *plan, const double *shares,
                         recede_sketch *sketch)
{
    const recede_scene *scene = recede_plan_scene(plan);
    for (size_t i = 0; i < t->count; i++) {
        const recede_planned *planned = recede_plan_at(plan, i);
        recede_band *band = &t->band[i];
        band->look = recede_look_of(&scene->planes[planned->plane]);
        band->kept = sketch ? &sketch->bands[i] : NULL;
        size_band(t, planned, shares[i], band);
        band->height = columns_of(t, HEIGHTS, i);
        band->half = columns_of(t, HALVES, i);
        band->front = columns_of(t, FRONTS, i);
        band->cover = columns_of(t, COVERS, i);
        recede_code code = recede_sketch_skyline(t, band, columns_of(t, HEIGHTS, i));
        if (code)
            return code;
        measure_halves(t, i);
    }
    return RECEDE_OK;
}

/* Near to far, each by its area. */
static void place(recede_terrain *t, const double *shares)
{
    double sheet = (double)t->width * (double)t->height;
    for (size_t i = t->count; i-- > 0;) {
        stand_behind(t, i);
        t->band[i].base_y = base_for_area(t, i, shares[i] * sheet);
    }
}

static recede_code lay(const recede_plan *plan, size_t width, size_t height,
                       const recede_allocator *allocator, recede_sketch *sketch,
                       recede_terrain *out)
{
    double shares[RECEDE_MOST_PLANES + 1];
    out->width = width;
    out->height = height;
    out->count = recede_plan_count(plan);
    out->size = fmax((double)height, (double)width / 4);
    out->allocator = allocator;
    out->columns = recede_allocate_array(allocator, KINDS * out->count * width, sizeof(float));
    if (!out->columns)
        return RECEDE_NO_MEMORY;
    recede_layout_shares(plan, shares);
    recede_code code = shape(out, plan, shares, sketch);
    if (code) {
        recede_terrain_clear(out);
        return code;
    }
    place(out, shares);
    return RECEDE_OK;
}

recede_code recede_terrain_lay(const recede_plan *plan, size_t width, size_t height,
                               const recede_allocator *allocator, recede_terrain *out)
{
    return lay(plan, width, height, allocator, NULL, out);
}

recede_code recede_terrain_lay_on(recede_sketch *sketch, const recede_plan *plan, size_t width,
                                  size_t height, recede_terrain *out)
{
    recede_sketch_size(sketch, width, height);
    return lay(plan, width, height, &sketch->allocator, sketch, out);
}

void recede_terrain_clear(recede_terrain *terrain)
{
    recede_release(terrain->allocator, terrain->columns);
    terrain->columns = NULL;
}

void recede_terrain_shares(const recede_terrain *t, double *shares)
{
    double sheet = (double)t->width * (double)t->height, rest = 1;
    for (size_t i = 0; i < t->count; i++) {
        double seen;
        shares[i] = area_above(t, i, t->band[i].base_y, &seen) / sheet;
        rest -= shares[i];
    }
    shares[t->count] = rest;
}

int recede_band_has_crowns(const recede_band *band)
{
    recede_landform form = band->look.form;
    int grown = form == RECEDE_LANDFORM_WOOD || form == RECEDE_LANDFORM_CONIFERS
             || form == RECEDE_LANDFORM_BANK;
    return grown && band->growth >= 5;
}

recede_code recede_terrain_crowns(const recede_terrain *t, const recede_band *band,
                                  recede_crowns *out)
{
    float *foot = recede_allocate_array(t->allocator, t->width, sizeof *foot);
    out->count = 0;
    out->room = recede_crowns_room((double)t->width, band->growth, band->depth);
    out->clumps = foot ? recede_allocate_array(t->allocator, out->room, sizeof *out->clumps) : NULL;
    if (!out->clumps) {
        recede_release(t->allocator, foot);
        return RECEDE_NO_MEMORY;
    }
    recede_skyline_ground(t, band, foot);
    for (size_t x = 0; x < t->width; x++)
        foot[x] = -foot[x];
    recede_crowns_grow(out, &band->look, foot, t->width, band->growth, band->depth);
    recede_release(t->allocator, foot);
    return RECEDE_OK;
}
