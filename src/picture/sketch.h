/* The drawing under the paint, kept from one picture to the next: skylines, and
 * the light on each band, as long as what they come from stays the same. */
#ifndef RECEDE_PICTURE_SKETCH_H
#define RECEDE_PICTURE_SKETCH_H

#include "picture/lighting.h"
#include "picture/modelling.h"
#include "picture/relief.h"

enum { RECEDE_SKETCH_RELIEFS = 2 };

/* A relief as it was worked out for all cells of a band's grid. */
typedef struct recede_sketch_relief {
    recede_relief *of; /* NULL: none kept */
    float *cells;
} recede_sketch_relief;

typedef struct recede_sketch_band {
    recede_band band; /* as it was; its lines are the four below */
    float *height, *half, *front, *cover;
    int has_skyline, has_place, has_grid;
    recede_sketch_relief relief[RECEDE_SKETCH_RELIEFS];
    recede_lighting lighting;
    recede_grid grid;
} recede_sketch_band;

struct recede_sketch {
    recede_allocator allocator;
    size_t width, height; /* 0: nothing kept yet */
    recede_sketch_band bands[RECEDE_MOST_PLANES];
};

/* Forgets what was drawn at another size. */
void recede_sketch_size(recede_sketch *sketch, size_t width, size_t height);

/* As recede_skyline_draw, from what the band keeps where that still holds. */
recede_code recede_sketch_skyline(const recede_terrain *terrain, const recede_band *band,
                                  float *height);

/* As recede_modelling; the grid is given back with recede_sketch_grid_done. */
recede_code recede_sketch_grid(const recede_terrain *terrain, const recede_band *band,
                               const recede_lighting *lighting, recede_grid *out);
void recede_sketch_grid_done(const recede_terrain *terrain, const recede_band *band,
                             recede_grid *grid);

/* Fills the grid's light with a relief that the band keeps; 0 where it keeps none. */
int recede_sketch_recall(const recede_band *band, recede_relief *relief, recede_grid *grid);
void recede_sketch_keep(const recede_terrain *terrain, const recede_band *band,
                        recede_relief *relief, const recede_grid *grid);

#endif
