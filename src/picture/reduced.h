/* The picture in a few greys: every value becomes that of the nearest group. */
#ifndef RECEDE_PICTURE_REDUCED_H
#define RECEDE_PICTURE_REDUCED_H

#include "recede.h"

#include <stdint.h>

typedef struct recede_reduced {
    int count;
    uint16_t from[RECEDE_MOST_GROUPS];      /* least encoded grey that belongs to it, as in ramps */
    unsigned char grey[RECEDE_MOST_GROUPS]; /* what it becomes */
} recede_reduced;

recede_reduced recede_reduced_to(const recede_groups *groups);

/* colour: a grey of a ramp. */
static inline void recede_reduced_pixel(const recede_reduced *reduced, const uint16_t *colour,
                                        unsigned char *pixel)
{
    int group = 0;
    while (group + 1 < reduced->count && colour[1] >= reduced->from[group + 1])
        group++;
    pixel[0] = pixel[1] = pixel[2] = reduced->grey[group];
}

#endif
