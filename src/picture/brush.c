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

/* Columns are painted in blocks: those that a row cannot touch are passed over, and
 * those that it covers wholly need not be looked at one by one. */
enum { BLOCK = 16, BLOCKS = 8192 / BLOCK };

typedef struct block {
    float highest, lowest;  /* of the passage at the band's edge, above its base */
    float cover, all_cover; /* y below which nearer bands hide some of it, and all */
} block;

typedef struct brush {
    const recede_band *band;
    const recede_grid *grid;
    const recede_ramp *ramp;
    const float *light; /* the grid's row */
    block blocks[BLOCKS];
} brush;

static void measure_blocks(const recede_terrain *t, brush *b)
{
    const recede_band *band = b->band;
    for (size_t x = 0; x < t->width; x++) {
        block *k = &b->blocks[x / BLOCK];
        float high = band->height[x] + band->half[x], low = band->height[x] - band->half[x];
        int first = x % BLOCK == 0;
        k->highest = first || high > k->highest ? high : k->highest;
        k->lowest = first || low < k->lowest ? low : k->lowest;
        k->cover = first || band->cover[x] < k->cover ? band->cover[x] : k->cover;
        k->all_cover = first || band->cover[x] > k->all_cover ? band->cover[x] : k->all_cover;
    }
}

/* Steps of the ramp by column: light of -1 to 1 between two cells of the grid, eased
 * at both ends. */
static void steps_of_block(const brush *b, size_t from, size_t count, unsigned char steps[BLOCK])
{
    float light[BLOCK] = {0};
    size_t step = b->grid->step, cell = from / step, within = from - cell * step;
    for (size_t i = 0; i < count; i++, within++) {
        if (within == step) {
            within = 0;
            cell++;
        }
        float part = (float)within / (float)step;
        light[i] = b->light[cell] + (b->light[cell + 1] - b->light[cell]) * part;
    }
    for (size_t i = 0; i < BLOCK; i++) {
        float t = light[i] * 0.5f + 0.5f;
        t = t < 0 ? 0 : t > 1 ? 1 : t;
        steps[i] = (unsigned char)(int)(t * t * (3 - 2 * t) * (RECEDE_RAMP_STEPS - 1) + 0.5f);
    }
}

static void paint_whole_pixel(unsigned char *pixel, const uint16_t *colour, unsigned threshold)
{
    pixel[0] = recede_dithered(colour[0], threshold);
    pixel[1] = recede_dithered(colour[1], threshold);
    pixel[2] = recede_dithered(colour[2], threshold);
}

static void paint_pixel(unsigned char *pixel, const uint16_t *colour, float cover,
                        unsigned threshold)
{
    uint16_t mixed[3];
    float eased = cover * cover * (3 - 2 * cover);
    unsigned part = (unsigned)(eased * 256);
    for (int c = 0; c < 3; c++)
        mixed[c] = (uint16_t)((pixel[c] * 256u * (256 - part) + colour[c] * part) >> 8);
    paint_whole_pixel(pixel, cover >= 1 ? colour : mixed, threshold);
}

/* Columns that the band's edge or a nearer band's runs through. */
static void paint_broken(const recede_canvas *canvas, const brush *b, size_t y, size_t from,
                         size_t count, const unsigned char *steps)
{
    const recede_band *band = b->band;
    unsigned char *pixel = canvas->rgb + y * canvas->row_bytes + 3 * from;
    float middle = (float)y + 0.5f, base = (float)band->base_y;
    for (size_t x = from; x < from + count; x++, pixel += 3) {
        float below = middle - base + band->height[x], half = band->half[x];
        if (below <= -half || (float)y >= band->cover[x])
            continue;
        const uint16_t *colour = b->ramp->at + 3 * (size_t)steps[x - from];
        float cover = below >= half ? 1 : below / (2 * half) + 0.5f;
        if (!canvas->reduced)
            paint_pixel(pixel, colour, cover, recede_threshold(x, y));
        else if (cover >= 0.5f)
            recede_reduced_pixel(canvas->reduced, colour, pixel);
    }
}

static void paint_whole(const recede_canvas *canvas, const brush *b, size_t y, size_t from,
                        size_t count, const unsigned char *steps)
{
    unsigned char *pixel = canvas->rgb + y * canvas->row_bytes + 3 * from;
    for (size_t i = 0; i < count; i++, pixel += 3)
        paint_whole_pixel(pixel, b->ramp->at + 3 * (size_t)steps[i], recede_threshold(from + i, y));
}

/* A pixel's margin makes up for rounding. */
static void paint_row(const recede_canvas *canvas, const brush *b, size_t y)
{
    float below_base = (float)y + 0.5f - (float)b->band->base_y;
    unsigned char steps[BLOCK];
    for (size_t from = 0; from < canvas->width; from += BLOCK) {
        const block *k = &b->blocks[from / BLOCK];
        size_t count = canvas->width - from < BLOCK ? canvas->width - from : BLOCK;
        if (below_base + k->highest < -1 || (float)y >= k->all_cover)
            continue;
        steps_of_block(b, from, count, steps);
        if (below_base + k->lowest > 1 && (float)y < k->cover && !canvas->reduced)
            paint_whole(canvas, b, y, from, count, steps);
        else
            paint_broken(canvas, b, y, from, count, steps);
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
    recede_ramp base = crest, mixed = crest;
    if (graded)
        base = recede_ramp_of_washes(canvas, shadow->graded ? &shadow->base : &shadow->crest,
                       lit->graded ? &lit->base : &lit->crest);
    double top, bottom;
    rows_of(t, b->band, &top, &bottom);
    b->ramp = graded ? &mixed : &crest;
    b->light = light;
    measure_blocks(t, b);
    for (double y = top; y < bottom; y++) {
        if (graded)
            recede_ramp_mix(&crest, &base, (unsigned)(256 * (y - top) / (bottom - top)),
                            &mixed);
        row_of_grid(b->grid, y + 0.5, light);
        paint_row(canvas, b, (size_t)y);
    }
    b->ramp = NULL;
}

recede_code recede_brush_band(const recede_canvas *canvas, const recede_terrain *t,
                              const recede_planned *planned, const recede_band *band,
                              const recede_lighting *lighting)
{
    recede_grid grid = {0};
    brush b = {0};
    b.band = band;
    b.grid = &grid;
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

