#include "picture/sketch.h"

#include "colour/error.h"
#include "colour/memory.h"
#include "picture/skyline.h"

#include <string.h>

static const recede_allocator *memory_of(const recede_terrain *t)
{
    return t->allocator;
}

static void forget_place(const recede_allocator *a, recede_sketch_band *kept)
{
    for (int i = 0; i < RECEDE_SKETCH_RELIEFS; i++) {
        recede_release(a, kept->relief[i].cells);
        kept->relief[i] = (recede_sketch_relief){NULL, NULL};
    }
    recede_release(a, kept->grid.light);
    recede_release(a, kept->grid.ground);
    recede_release(a, kept->grid.first);
    recede_release(a, kept->grid.end);
    memset(&kept->grid, 0, sizeof kept->grid);
    kept->has_place = kept->has_grid = 0;
}

static void forget(const recede_allocator *a, recede_sketch_band *kept)
{
    forget_place(a, kept);
    recede_release(a, kept->height);
    memset(kept, 0, sizeof *kept);
}

recede_code recede_sketch_new(const recede_allocator *allocator, recede_sketch **out,
                              recede_error *error)
{
    const recede_allocator *memory = recede_allocator_or_default(allocator);
    *out = recede_allocate_array(memory, 1, sizeof **out);
    if (!*out)
        return recede_fail(error, RECEDE_NO_MEMORY, "picture");
    memset(*out, 0, sizeof **out);
    (*out)->allocator = *memory;
    return RECEDE_OK;
}

void recede_sketch_size(recede_sketch *sketch, size_t width, size_t height)
{
    if (sketch->width == width && sketch->height == height)
        return;
    for (size_t i = 0; i < RECEDE_MOST_PLANES; i++)
        forget(&sketch->allocator, &sketch->bands[i]);
    sketch->width = width;
    sketch->height = height;
}

void recede_sketch_free(recede_sketch *sketch)
{
    if (!sketch)
        return;
    recede_allocator allocator = sketch->allocator;
    recede_sketch_size(sketch, 0, 0);
    recede_release(&allocator, sketch);
}

/* ---- what still holds */

static int same_numbers(const float *one, const float *other, size_t count)
{
    return memcmp(one, other, count * sizeof *one) == 0;
}

static int same_skyline(const recede_band *one, const recede_band *other)
{
    return one->look.form == other->look.form && one->look.seed == other->look.seed &&
           one->look.nearness == other->look.nearness && one->growth == other->growth &&
           one->relief == other->relief && one->edge == other->edge;
}

static int same_place(const recede_terrain *t, const recede_sketch_band *kept,
                      const recede_band *band)
{
    return kept->has_place && same_skyline(&kept->band, band) &&
           kept->band.base_y == band->base_y && kept->band.depth == band->depth &&
           same_numbers(kept->height, band->height, t->width) &&
           same_numbers(kept->front, band->front, t->width) &&
           same_numbers(kept->cover, band->cover, t->width);
}

static int same_light(const recede_lighting *one, const recede_lighting *other)
{
    return one->x == other->x && one->y == other->y && one->z == other->z &&
           one->lit_part == other->lit_part && one->softness == other->softness;
}

/* ---- skylines */

/* All four lines of a band in one block; where there is no memory for them the
 * band keeps nothing. */
static int make_lines(const recede_terrain *t, recede_sketch_band *kept)
{
    if (!kept->height)
        kept->height = recede_allocate_array(memory_of(t), 4 * t->width, sizeof(float));
    if (!kept->height)
        return 0;
    kept->half = kept->height + t->width;
    kept->front = kept->half + t->width;
    kept->cover = kept->front + t->width;
    return 1;
}

recede_code recede_sketch_skyline(const recede_terrain *t, const recede_band *band, float *height)
{
    recede_sketch_band *kept = band->kept;
    if (kept && kept->has_skyline && same_skyline(&kept->band, band)) {
        memcpy(height, kept->height, t->width * sizeof *height);
        return RECEDE_OK;
    }
    recede_code code = recede_skyline_draw(t, band, height);
    if (code || !kept || !make_lines(t, kept))
        return code;
    forget_place(memory_of(t), kept);
    memcpy(kept->height, height, t->width * sizeof *height);
    kept->band = *band;
    kept->has_skyline = 1;
    return RECEDE_OK;
}

/* ---- the light on a band */

static void keep_place(const recede_terrain *t, recede_sketch_band *kept, const recede_band *band)
{
    forget_place(memory_of(t), kept);
    kept->band = *band;
    memcpy(kept->half, band->half, t->width * sizeof(float));
    memcpy(kept->front, band->front, t->width * sizeof(float));
    memcpy(kept->cover, band->cover, t->width * sizeof(float));
    kept->has_place = 1;
}

recede_code recede_sketch_grid(const recede_terrain *t, const recede_band *band,
                               const recede_lighting *lighting, recede_grid *out)
{
    recede_sketch_band *kept = band->kept;
    if (!kept || !kept->has_skyline)
        return recede_modelling(t, band, lighting, out);
    if (!same_place(t, kept, band))
        keep_place(t, kept, band);
    if (!kept->has_grid || !same_light(&kept->lighting, lighting)) {
        recede_code code = RECEDE_OK;
        if (kept->has_grid)
            recede_grid_clear(t, &kept->grid);
        kept->has_grid = 0;
        code = recede_modelling(t, band, lighting, &kept->grid);
        if (code)
            return code;
        kept->has_grid = 1;
        kept->lighting = *lighting;
    }
    *out = kept->grid;
    return RECEDE_OK;
}

void recede_sketch_grid_done(const recede_terrain *t, const recede_band *band, recede_grid *grid)
{
    if (!band->kept || band->kept->grid.light != grid->light)
        recede_grid_clear(t, grid);
}

int recede_sketch_recall(const recede_band *band, recede_relief *relief, recede_grid *grid)
{
    const recede_sketch_band *kept = band->kept;
    for (int i = 0; kept && i < RECEDE_SKETCH_RELIEFS; i++) {
        if (kept->relief[i].of != relief)
            continue;
        memcpy(grid->light, kept->relief[i].cells,
               grid->columns * grid->rows * sizeof *grid->light);
        return 1;
    }
    return 0;
}

void recede_sketch_keep(const recede_terrain *t, const recede_band *band, recede_relief *relief,
                        const recede_grid *grid)
{
    recede_sketch_band *kept = band->kept;
    size_t cells = grid->columns * grid->rows;
    for (int i = 0; kept && kept->has_place && i < RECEDE_SKETCH_RELIEFS; i++) {
        if (kept->relief[i].of)
            continue;
        kept->relief[i].cells = recede_allocate_array(memory_of(t), cells, sizeof(float));
        if (!kept->relief[i].cells)
            return;
        memcpy(kept->relief[i].cells, grid->light, cells * sizeof(float));
        kept->relief[i].of = relief;
        return;
    }
}
