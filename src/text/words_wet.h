/* How a watercolour wash looks before it dries: guidance, no more. */
#ifndef RECEDE_TEXT_WORDS_WET_H
#define RECEDE_TEXT_WORDS_WET_H

#include "recede.h"

typedef struct recede_wet_look {
    recede_colour colour; /* while it is wet */
    double darker;        /* by how much in L* than dry, 0 in opaque media */
} recede_wet_look;

/* Of a mix laid over another that is dry (NULL: the paper). */
recede_wet_look recede_wet_look_of(const recede_palette *palette, const recede_mix *mix,
                                   const recede_mix *under);

/* Of a wash of a plan, which must be one of its own, over what it lies on there. */
recede_wet_look recede_wet_look_in(const recede_plan *plan, const recede_wash *wash);

/* "wet it looks a little darker: it dries lighter"; "" where it differs by less than 0.5
 * in L*. The other is for beside a dab of the dry colour: "mix a little darker than
 * this: it dries lighter". */
const char *recede_words_wet(double darker);
const char *recede_words_wet_beside(double darker);

#endif
