/* A wash before it dries: the same film under another surface. */
#include "recede.h"

#include "paint/film.h"
#include "paint/palette.h"

/* Saunderson 1942 as in film.c; wet, less is turned back outside. Fitted to the mean
 * shift of 75 masstones that include/recede.h names. */
#define K1_WET 0.015
#define K2 0.65

recede_spectrum recede_wet_reflectance(const recede_palette *palette, const recede_mix *mix,
                                       const recede_spectrum *ground)
{
    recede_spectrum seen = recede_mix_reflectance(palette, mix, ground);
    if (mix->count == 0 || palette->medium != RECEDE_WATERCOLOUR)
        return seen;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double internal = recede_internal_of_seen(seen.at[band]);
        seen.at[band] = K1_WET + (1 - K1_WET) * (1 - K2) * internal / (1 - K2 * internal);
    }
    return seen;
}
