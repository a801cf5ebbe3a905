#include "picture/brush.h"

#include "colour/memory.h"
#include "picture/sketch.h"

#include <math.h>

recede_ramp recede_ramp_of_washes(const recede_canvas *canvas, const recede_wash *from,
                                  const recede_wash *to)
{
    recede_ramp ramp;
    recede_ramp_between(canvas->targets ? &from->target : &from->recipe.colour,
                        canvas->targets ? &to->target : &to->recipe.colour, canvas->greys, &ramp);
    return ramp;
}

/* One row of the grid, between the two rows it lies between. */
static void row_of_grid(const recede_grid *g, double y, float *out)
{
    double at = fmin(fmax((y - g->top) / (double)g->step, 0), (double)(g->rows - 1) - 1e-6);
    size_t row = (size_t)at;
    float part = (float)(at - (double)row);
    const float *upper = g->light + row * g->columns, *lower = upper + g->columns;
    for (size_t c = 0; c < g->columns; c++)
        out[c] = upper[c] + (lower[c] - upper[c]) * part;
}

/* -1 to 1 becomes a step of the ramp, eased at both ends. */
static size_t step_of_light(float light)
{
    float t = light * 0.5f + 0.5f;
    t = t < 0 ? 0 : t > 1 ? 1 : t;
    return (size_t)(t * t * (3 - 2 * t) * (RECEDE_RAMP_STEPS - 1) + 0.5f);
}

typedef struct brush {
    const recede_band *band;
    const recede_grid *grid;
    const recede_ramp *ramp;
    const float *light; /* the grid's row */
} brush;

static void paint_pixel(unsigned char *pixel, const uint16_t *colour, float cover,
                        unsigned threshold)
{
    if (cover >= 1) {
        for (int c = 0; c < 3; c++)
            pixel[c] = recede_dithered(colour[c], threshold);
        return;
    }
    float eased = cover * cover * (3 - 2 * cover);
    unsigned part = (unsigned)(eased * 256);
    for (int c = 0; c < 3; c++) {
        unsigned mixed = (pixel[c] * 256u * (256 - part) + colour[c] * part) >> 8;
        pixel[c] = recede_dithered((uint16_t)mixed, threshold);
    }
}

static void paint_row(const recede_canvas *canvas, const brush *b, size_t y)
{
    const recede_band *band = b->band;
    unsigned char *pixel = canvas->rgb + y * canvas->row_bytes;
    float middle = (float)y + 0.5f, base = (float)band->base_y;
    size_t cell = 0, within = 0, step = b->grid->step; /* x is cell * step + within */
    for (size_t x = 0; x < canvas->width; x++, within++, pixel += 3) {
        if (within == step) {
            within = 0;
            cell++;
        }
        float below = middle - base + band->height[x], half = band->half[x];
        if (below <= -half || (float)y >= band->cover[x])
            continue;
        float part = (float)within / (float)step;
        float light = b->light[cell] + (b->light[cell + 1] - b->light[cell]) * part;
        const uint16_t *colour = b->ramp->at + step_of_light(light) * 3;
        float cover = below >= half ? 1 : below / (2 * half) + 0.5f;
        if (!canvas->reduced)
            paint_pixel(pixel, colour, cover, recede_threshold(x, y));
        else if (cover >= 0.5f)
            recede_reduced_pixel(canvas->reduced, colour, pixel);
    }
}

/* The rows in which anything of a band can show. */
static void rows_of(const recede_terrain *t, const recede_band *band, double *top, double *bottom)
{
    *top = (double)t->height;
    *bottom = 0;
    for (size_t x = 0; x < t->width; x++) {
        *top = fmin(*top, band->base_y - (double)band->height[x] - (double)band->half[x]);
        *bottom = fmax(*bottom, (double)band->cover[x]);
    }
    *top = fmax(0, floor(*top));
    *bottom = fmin((double)t->height, floor(*bottom) + 1);
}

static void paint_rows(const recede_canvas *canvas, const recede_terrain *t,
                       const recede_planned *planned, brush *b, float *light)
{
    const recede_side *lit = &planned->lit, *shadow = &planned->shadow;
    int graded = lit->graded || shadow->graded;
    recede_ramp crest = recede_ramp_of_washes(canvas, &shadow->crest, &lit->crest);
    recede_ramp base = crest, mixed;
    if (graded)
        base = recede_ramp_of_washes(canvas, shadow->graded ? &shadow->base : &shadow->crest,
                       lit->graded ? &lit->base : &lit->crest);
    double top, bottom;
    rows_of(t, b->band, &top, &bottom);
    b->ramp = graded ? &mixed : &crest;
    b->light = light;
    for (double y = top; y < bottom; y++) {
        if (graded)
            recede_ramp_mix(&crest, &base, (unsigned)(256 * (y - top) / (bottom - top)),
                            &mixed);
        row_of_grid(b->grid, y + 0.5, light);
        paint_row(canvas, b, (size_t)y);
    }
}

recede_code recede_brush_band(const recede_canvas *canvas, const recede_terrain *t,
                              const recede_planned *planned, const recede_band *band,
                              const recede_lighting *lighting)
{
    recede_grid grid;
    brush b = {band, &grid, NULL, NULL};
    recede_code code = recede_sketch_grid(t, band, lighting, &grid);
    if (code)
        return code;
    float *light = recede_allocate_array(t->allocator, grid.columns, sizeof *light);
    if (light)
        paint_rows(canvas, t, planned, &b, light);
    recede_release(t->allocator, light);
    recede_sketch_grid_done(t, band, &grid);
    return light ? RECEDE_OK : RECEDE_NO_MEMORY;
}

