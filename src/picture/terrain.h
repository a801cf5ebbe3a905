/* The lie of the land: where each plane stands in a picture of a given size.
 * Pixels, y downward; planes far to near as in recede_plan_at. */
#ifndef RECEDE_PICTURE_TERRAIN_H
#define RECEDE_PICTURE_TERRAIN_H

#include "picture/crowns.h"
#include "picture/landform.h"

typedef struct recede_band {
    recede_look look;
    double growth, relief;  /* pixels; growth 0 where nothing stands up */
    double edge;            /* width of the passage from behind into the band */
    double base_y;          /* where the heights below are measured from */
    double depth;           /* about how far below its base it can be seen */
    const float *height;    /* of its skyline above base_y, by column */
    const float *half;      /* half the height of the passage at its edge, by column */
    const float *front;     /* y by column of the skyline of all that is nearer */
    const float *cover;     /* y by column below which nearer bands hide it wholly */
    struct recede_sketch_band *kept; /* what was drawn of it before; NULL: nothing is kept */
} recede_band;

typedef struct recede_terrain {
    size_t width, height, count;
    double size;            /* the length that shapes are measured by */
    recede_band band[RECEDE_MOST_PLANES];
    float *columns;         /* what the bands point to */
    const recede_allocator *allocator;
} recede_terrain;

recede_code recede_terrain_lay(const recede_plan *plan, size_t width, size_t height,
                               const recede_allocator *allocator, recede_terrain *out);

/* The same, from what a sketch keeps and with its allocator. */
recede_code recede_terrain_lay_on(recede_sketch *sketch, const recede_plan *plan, size_t width,
                                  size_t height, recede_terrain *out);
void recede_terrain_clear(recede_terrain *terrain);

/* The visible share of each plane, and last of the sky, with hard edges. */
void recede_terrain_shares(const recede_terrain *terrain, double *shares);

/* Whether a band's trees are big enough to be drawn one by one. */
int recede_band_has_crowns(const recede_band *band);

/* The trees of a band, relative to its base; freed with recede_release. */
recede_code recede_terrain_crowns(const recede_terrain *terrain, const recede_band *band,
                                  recede_crowns *out);

#endif
