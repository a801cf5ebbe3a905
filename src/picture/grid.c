#include "picture/grid.h"

#include "colour/memory.h"
#include "picture/noise.h"
#include "picture/skyline.h"

#include <math.h>
#include <string.h>

/* Cells beyond what is seen that its neighbours are blended with. */
enum { MARGIN = 3 };

static size_t pixel_column(const recede_terrain *t, const recede_grid *g, size_t column)
{
    size_t x = column * g->step;
    return x < t->width ? x : t->width - 1;
}

/* The grid covers the band from its highest place to the lowest it is seen. */
static void measure(const recede_terrain *t, const recede_band *band, recede_grid *g)
{
    double top = (double)t->height, bottom = 0;
    for (size_t x = 0; x < t->width; x++) {
        double crest = fmax(0, band->base_y - (double)band->height[x]);
        if (crest < (double)band->cover[x]) {
            top = fmin(top, crest);
            bottom = fmax(bottom, (double)band->cover[x]);
        }
    }
    g->step = (size_t)fmax(1, floor(t->size / 360 + 0.5));
    g->top = floor(top);
    g->columns = t->width / g->step + 2;
    g->rows = (size_t)(fmax(0, bottom - g->top) / (double)g->step) + 2;
}

static recede_code allocate(const recede_terrain *t, recede_grid *g)
{
    const recede_allocator *a = t->allocator;
    g->light = recede_allocate_array(a, g->columns * g->rows, sizeof *g->light);
    g->ground = recede_allocate_array(a, g->columns, sizeof *g->ground);
    g->first = recede_allocate_array(a, g->columns, sizeof *g->first);
    g->end = recede_allocate_array(a, g->columns, sizeof *g->end);
    if (g->light && g->ground && g->first && g->end)
        return RECEDE_OK;
    recede_grid_clear(t, g);
    return RECEDE_NO_MEMORY;
}

void recede_grid_clear(const recede_terrain *t, recede_grid *g)
{
    recede_release(t->allocator, g->light);
    recede_release(t->allocator, g->ground);
    recede_release(t->allocator, g->first);
    recede_release(t->allocator, g->end);
    memset(g, 0, sizeof *g);
}

static size_t row_at(const recede_grid *g, double y, double margin)
{
    double row = (y - g->top) / (double)g->step + margin;
    return row < 0 ? 0 : row < (double)g->rows ? (size_t)row : g->rows;
}

static recede_code find_rows(const recede_terrain *t, const recede_band *band, recede_grid *g)
{
    float *height = recede_allocate_array(t->allocator, t->width, sizeof *height);
    if (!height)
        return RECEDE_NO_MEMORY;
    recede_skyline_ground(t, band, height);
    for (size_t c = 0; c < g->columns; c++) {
        size_t x = pixel_column(t, g, c), to = pixel_column(t, g, c + 1);
        double crest = band->base_y - (double)band->height[x], cover = (double)band->cover[x];
        for (size_t i = c * g->step > g->step ? x - g->step : 0; i < to; i++) {
            crest = fmin(crest, band->base_y - (double)band->height[i] - (double)band->half[i]);
            cover = fmax(cover, (double)band->cover[i]);
        }
        g->ground[c] = (float)(band->base_y - (double)height[x]);
        g->first[c] = row_at(g, crest, -MARGIN);
        g->end[c] = row_at(g, cover, MARGIN);
    }
    recede_release(t->allocator, height);
    return RECEDE_OK;
}

recede_code recede_grid_lay(const recede_terrain *t, const recede_band *band, recede_grid *out)
{
    measure(t, band, out);
    recede_code code = allocate(t, out);
    if (code)
        return code;
    memset(out->light, 0, out->columns * out->rows * sizeof *out->light);
    code = find_rows(t, band, out);
    if (code)
        recede_grid_clear(t, out);
    return code;
}

recede_spot recede_grid_spot(const recede_grid *g, size_t column, size_t row)
{
    recede_spot p;
    p.x = (double)(column * g->step);
    p.y = g->top + (double)(row * g->step);
    p.below = p.y - (double)g->ground[column];
    return p;
}

/* The k-th smallest of count numbers (Hoare's selection); reorders them. */
static float kth_smallest(float *numbers, size_t count, size_t k)
{
    size_t from = 0, to = count - 1;
    while (from < to) {
        float pivot = numbers[from + (to - from) / 2];
        size_t i = from, j = to;
        for (;;) {
            while (numbers[i] < pivot)
                i++;
            while (numbers[j] > pivot)
                j--;
            if (i >= j)
                break;
            float held = numbers[i];
            numbers[i++] = numbers[j];
            numbers[j--] = held;
        }
        if (k <= j)
            to = j;
        else
            from = j + 1;
    }
    return numbers[k];
}

/* The light of every cell that shows; returns how many. */
static size_t sample(const recede_terrain *t, const recede_band *band, const recede_grid *g,
                     float *out)
{
    size_t seen = 0;
    for (size_t c = 0; c < g->columns; c++) {
        size_t x = pixel_column(t, g, c);
        double crest = band->base_y - (double)band->height[x], front = (double)band->front[x];
        for (size_t r = g->first[c]; r < g->end[c]; r++) {
            double y = g->top + (double)(r * g->step);
            if (y >= crest && y < front)
                out[seen++] = g->light[r * g->columns + c];
        }
    }
    return seen;
}

/* Passages are crisp in places and lost in others, as in any painting. Found
 * at each eighth cell of a column and between those in a straight line. */
static void scale_column(const recede_terrain *t, const recede_band *band, recede_grid *g, size_t c,
                         double middle, double passage)
{
    enum { EVERY = 8 };
    double scale = 5 / t->size, before = 0, after = 0;
    for (size_t r = g->first[c]; r < g->end[c]; r++) {
        size_t between = (r - g->first[c]) % EVERY;
        if (between == 0) {
            recede_spot p = recede_grid_spot(g, c, r);
            for (int i = 0; i < 2; i++) {
                double y = p.y + (double)((size_t)i * EVERY * g->step);
                double n = recede_noise_at(band->look.seed + 71, p.x * scale, y * scale * 1.6);
                n = fmax(0, n + 0.25);
                before = after;
                after = 0.65 + 3 * n * n;
            }
        }
        double width = passage * (before + (after - before) * (double)between / EVERY);
        float *cell = &g->light[r * g->columns + c];
        *cell = (float)(((double)*cell - middle) / width);
    }
}

recede_code recede_grid_divide(const recede_terrain *t, const recede_band *band,
                               const recede_lighting *light, recede_grid *g)
{
    float *cells = recede_allocate_array(t->allocator, g->columns * g->rows, sizeof *cells);
    if (!cells)
        return RECEDE_NO_MEMORY;
    size_t seen = sample(t, band, g, cells);
    double middle = 0, spread = 0;
    if (seen > 0) {
        middle = (double)kth_smallest(cells, seen, (size_t)((1 - light->lit_part) * (double)seen));
        for (size_t i = 0; i < seen; i++)
            spread += fabs((double)cells[i] - middle) / (double)seen;
    }
    recede_release(t->allocator, cells);
    double far = 1 - band->look.nearness;
    double passage = (spread + 1e-9) * (light->softness + 0.2 * far + 1.6 * far * far);
    for (size_t c = 0; c < g->columns; c++)
        scale_column(t, band, g, c, middle, passage);
    return RECEDE_OK;
}
