/* From one wash to another: colours in steps even to the eye, as pixels. */
#ifndef RECEDE_PICTURE_RAMP_H
#define RECEDE_PICTURE_RAMP_H

#include "recede.h"

#include <stdint.h>

enum { RECEDE_RAMP_STEPS = 256 };

/* Encoded red, green and blue of each step, in 1/256 of a pixel's step: 0 to
 * 255 * 256. */
typedef struct recede_ramp {
    uint16_t at[RECEDE_RAMP_STEPS * 3];
} recede_ramp;

/* From shadow (step 0) to lit, straight through Lab, or through Munsell value
 * alone where greys is set. */
void recede_ramp_between(const recede_colour *shadow, const recede_colour *lit, int greys,
                         recede_ramp *out);

/* The ramp a part (0 to 256) of the way from one to another. */
void recede_ramp_mix(const recede_ramp *from, const recede_ramp *to, unsigned part,
                     recede_ramp *out);

/* Rounds up or down by a threshold that differs from pixel to pixel, so that a
 * slow gradation has no bands: additive recurrence on the plastic number
 * (M. Roberts 2018), even in every neighbourhood and without a grid. */
static inline unsigned recede_threshold(size_t x, size_t y)
{
    return ((uint32_t)x * 3242174889u + (uint32_t)y * 2447445414u) >> 24;
}

static inline unsigned char recede_dithered(uint16_t encoded, unsigned threshold)
{
    return (unsigned char)((encoded + threshold) >> 8);
}

#endif
