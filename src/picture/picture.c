#include "colour/error.h"
#include "colour/memory.h"
#include "picture/brush.h"
#include "picture/sketch.h"

#include <math.h>

enum { LARGEST = 8192 };

/* The sky: one graded wash from overhead to the horizon, and on behind the
 * farthest skyline where that dips. */
static void paint_sky(const recede_canvas *canvas, const recede_side *sky, double horizon_y,
                      double bottom_y)
{
    const recede_wash *overhead = &sky->crest, *horizon = sky->graded ? &sky->base : &sky->crest;
    recede_ramp ramp = recede_ramp_of_washes(canvas, overhead, horizon);
    size_t rows = (size_t)fmin((double)canvas->height, floor(bottom_y) + 1);
    for (size_t y = 0; y < rows; y++) {
        unsigned char *pixel = canvas->rgb + y * canvas->row_bytes;
        double above = 1 - fmin(1, ((double)y + 0.5) / horizon_y);
        double at = (1 - pow(above, 1.15)) * (RECEDE_RAMP_STEPS - 1);
        size_t step = (size_t)fmin(at, RECEDE_RAMP_STEPS - 2);
        unsigned part = (unsigned)((at - (double)step) * 256);
        const uint16_t *from = ramp.at + step * 3;
        uint16_t colour[3];
        for (size_t c = 0; c < 3; c++)
            colour[c] = (uint16_t)((from[c] * (256 - part) + from[c + 3] * part) >> 8);
        for (size_t x = 0; x < canvas->width; x++, pixel += 3) {
            unsigned threshold = recede_threshold(x, y);
            for (int c = 0; c < 3; c++)
                pixel[c] = recede_dithered(colour[c], threshold);
            if (canvas->reduced)
                recede_reduced_pixel(canvas->reduced, colour, pixel);
        }
    }
}

/* The skyline behind which the sky lies: its mean height and its lowest place. */
static void skyline_of(const recede_terrain *t, double *mean_y, double *lowest_y)
{
    const recede_band *far = &t->band[0];
    double sum = 0, lowest = 0;
    for (size_t x = 0; x < t->width; x++) {
        double top = far->base_y - (double)far->height[x];
        sum += fmin((double)far->front[x], fmax(0, top));
        lowest = fmax(lowest, fmin((double)far->cover[x], top + (double)far->half[x]));
    }
    *mean_y = fmax(1, (sum / (double)t->width + lowest) / 2);
    *lowest_y = lowest;
}

static recede_code paint(const recede_canvas *canvas, const recede_plan *plan,
                         recede_terrain *terrain)
{
    recede_code code = RECEDE_OK;
    recede_lighting lighting = recede_lighting_of(&recede_plan_scene(plan)->sky);
    double horizon_y, bottom_y;
    skyline_of(terrain, &horizon_y, &bottom_y);
    paint_sky(canvas, recede_plan_sky(plan), horizon_y, bottom_y);
    for (size_t i = 0; i < terrain->count && !code; i++)
        code = recede_brush_band(canvas, terrain, recede_plan_at(plan, i), &terrain->band[i],
                                 &lighting);
    recede_terrain_clear(terrain);
    return code;
}

static recede_code check(const recede_picture_options *o, size_t row_bytes, recede_error *error)
{
    recede_code code = recede_check_range(error, "picture.width", (double)o->width, 1, LARGEST);
    if (!code)
        code = recede_check_range(error, "picture.height", (double)o->height, 1, LARGEST);
    if (!code && row_bytes < 3 * o->width)
        code = recede_fail_range(error, "picture.row_bytes", (double)row_bytes,
                                 3 * (double)o->width, (double)SIZE_MAX);
    return code;
}

/* sketch NULL: nothing is kept, and memory comes from the allocator. */
static recede_code paint_on(recede_sketch *sketch, const recede_plan *plan,
                            const recede_picture_options *options, unsigned char *rgb,
                            size_t row_bytes, const recede_allocator *allocator,
                            recede_error *error)
{
    recede_code code = check(options, row_bytes, error);
    if (code)
        return code;
    recede_terrain terrain;
    recede_reduced reduced;
    recede_canvas canvas = {rgb, row_bytes, options->width, options->height,
                            options->greys || options->groups, options->targets, NULL};
    if (options->groups) {
        reduced = recede_reduced_to(options->groups);
        canvas.reduced = &reduced;
    }
    code = sketch ? recede_terrain_lay_on(sketch, plan, canvas.width, canvas.height, &terrain)
                  : recede_terrain_lay(plan, canvas.width, canvas.height,
                                       recede_allocator_or_default(allocator), &terrain);
    if (!code)
        code = paint(&canvas, plan, &terrain);
    return code ? recede_fail(error, code, "picture") : RECEDE_OK;
}

recede_code recede_picture_paint(const recede_plan *plan, const recede_picture_options *options,
                                 unsigned char *rgb, size_t row_bytes,
                                 const recede_allocator *allocator, recede_error *error)
{
    return paint_on(NULL, plan, options, rgb, row_bytes, allocator, error);
}

recede_code recede_picture_repaint(recede_sketch *sketch, const recede_plan *plan,
                                   const recede_picture_options *options, unsigned char *rgb,
                                   size_t row_bytes, recede_error *error)
{
    return paint_on(sketch, plan, options, rgb, row_bytes, NULL, error);
}

recede_code recede_picture_shares(const recede_plan *plan, double *shares,
                                  const recede_allocator *allocator, recede_error *error)
{
    recede_terrain terrain;
    const recede_allocator *memory = recede_allocator_or_default(allocator);
    recede_code code = recede_terrain_lay(plan, 1536, 1024, memory, &terrain);
    if (code)
        return recede_fail(error, code, "picture");
    recede_terrain_shares(&terrain, shares);
    recede_terrain_clear(&terrain);
    return RECEDE_OK;
}
