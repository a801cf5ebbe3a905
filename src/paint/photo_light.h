/* The light on the card, and so on what lies beside it. */
#ifndef RECEDE_PAINT_PHOTO_LIGHT_H
#define RECEDE_PAINT_PHOTO_LIGHT_H

#include "paint/photo_patch.h"

/* What a perfect reflector would give in each channel: white + across x + down y,
 * x and y from -1 to 1 over the photograph; and what no reflection gives. */
typedef struct recede_photo_light {
    double width, height; /* pixels, of the photograph */
    double white[RECEDE_PHOTO_CHANNELS], across[RECEDE_PHOTO_CHANNELS];
    double down[RECEDE_PHOTO_CHANNELS], offset[RECEDE_PHOTO_CHANNELS];
} recede_photo_light;

/* Fits it to the card's patches. Errors: RECEDE_TOO_FEW, RECEDE_CONFLICT (path
 * patches.card; a darker card that reads lighter: number and most are their
 * reflectances, the darker first; no light: both 0). */
recede_code recede_photo_light_of(const recede_photo *photo, const recede_patch *patches,
                                  const recede_photo_mean *means, size_t count,
                                  recede_photo_light *out, recede_error *error);

/* At the middle of a patch. */
recede_photo_scale recede_photo_scale_at(const recede_photo_light *light,
                                         const recede_patch *patch);

#endif
