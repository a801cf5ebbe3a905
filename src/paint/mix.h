/* Mixes as films: K and S blended, then spread on a ground. */
#ifndef RECEDE_PAINT_MIX_H
#define RECEDE_PAINT_MIX_H

#include "paint/film.h"
#include "paint/palette.h"

/* Paints in any amounts: a mix after its water or white has slipped, or two
 * puddles run together. */
typedef struct recede_blend {
    int count;
    int paint[2 * RECEDE_MOST_IN_MIX];
    double amount[2 * RECEDE_MOST_IN_MIX];
    double film; /* thickness; INFINITY hides the ground */
} recede_blend;

recede_blend recede_blend_of_mix(const recede_palette *palette, const recede_mix *mix);

/* Equal volumes of two puddles run together: each brings its paints in proportion
 * to its paint's share of the volume, which is that of its film. */
recede_blend recede_blend_halves(const recede_palette *palette, const recede_mix *one,
                                 const recede_mix *other);

/* K and S: the amounts' weighted means (Duncan, Proc. Phys. Soc. 52 (1940) 390). */
void recede_blend_layer(const recede_palette *palette, const recede_blend *blend,
                        recede_layer *layer);

/* Lab on the palette's paper; a blend of nothing is the paper. */
recede_lab recede_blend_lab(const recede_palette *palette, const recede_blend *blend);

#endif
