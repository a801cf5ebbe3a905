/* A palette ready to mix. */
#ifndef RECEDE_PAINT_PALETTE_H
#define RECEDE_PAINT_PALETTE_H

#include "recede.h"

/* Of a paint's K and S relative to titanium white: far above any paint's. */
#define RECEDE_MOST_K_OR_S 1e6

struct recede_palette {
    recede_allocator allocator;
    recede_medium medium;
    recede_spectrum paper;
    double paper_internal[RECEDE_BANDS];
    double x[RECEDE_BANDS], y[RECEDE_BANDS], z[RECEDE_BANDS]; /* of each band alone, D65 */
    recede_xyz white;
    size_t count;
    recede_paint paints[];
};

/* The same paints on another ground: a palette whose paper is a dried wash, so that
 * its mixes are films over that. recede_palette_free releases it. NULL when there
 * is no memory. */
recede_palette *recede_palette_on(const recede_palette *palette, const recede_spectrum *ground,
                                  const recede_allocator *allocator);

/* Levels of water a mix can have: 1 (none) in an opaque medium. */
size_t recede_palette_levels(const recede_palette *palette);

/* The film a mix leaves: INFINITY in an opaque medium. */
double recede_palette_film(const recede_palette *palette, double water);

/* Lab, and tristimulus values, of a reflectance as seen. The band sums are those
 * of recede_xyz_of_reflectance with the tables multiplied out once. */
recede_xyz recede_palette_xyz(const recede_palette *palette, const double *seen);
recede_lab recede_palette_lab(const recede_palette *palette, const double *seen);

#endif
