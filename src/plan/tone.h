/* From radiance at the eye to a colour on the paper: adaptation, the scale of
 * values, and the darks fitted to what the paints can do. */
#ifndef RECEDE_PLAN_TONE_H
#define RECEDE_PLAN_TONE_H

#include "recede.h"

/* The adapting white: light on a sphere, and its luminance. */
typedef struct recede_adaptation {
    recede_xyz white;  /* Y = 1 */
    double luminance;
    double degree;
} recede_adaptation;
recede_adaptation recede_adaptation_to(const recede_light *light, double degree);

/* A radiance as the adapted eye has it: XYZ relative to a white in the light,
 * CAT16 to D65. */
recede_xyz recede_adapted(const recede_adaptation *adaptation, const recede_spectrum *radiance);

/* How luminance becomes paint: one scale for all, then a power that brings the
 * darkest within reach and leaves the lightest where it is. */
typedef struct recede_tone {
    double scale;
    double lightest_y, darkest_y; /* after scaling */
    double gamma;                 /* 1 where all fits */
} recede_tone;

/* k = min(sky_y / horizon_y, paper_y / lightest_y) over all that is painted,
 * lightest_y and darkest_y before scaling. gamma brings the darkest to
 * darkest_paint_y where it lies below it; fitted 0 leaves gamma at 1. */
recede_tone recede_tone_for(double horizon_y, double sky_y, double paper_y, double lightest_y,
                            double darkest_y, double darkest_paint_y, int fitted);

/* Scaled, as the eye sees it; and with the darks fitted, as it is painted. */
recede_xyz recede_toned_as_seen(const recede_tone *tone, recede_xyz adapted);
recede_xyz recede_toned_as_painted(const recede_tone *tone, recede_xyz adapted);

#endif
