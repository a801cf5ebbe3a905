/* What happens along a ladder, as facts to be put into words. */
#ifndef RECEDE_PLAN_LADDER_H
#define RECEDE_PLAN_LADDER_H

#include "recede.h"

/* How far a colour has gone, each stage including those before it. */
typedef enum recede_stage {
    RECEDE_STAGE_OWN,    /* nothing to be seen yet */
    RECEDE_STAGE_MOVED,  /* its value has moved by a tenth, about 1 in L*: just seen */
    RECEDE_STAGE_GREYER, /* a third of its chroma has gone */
    RECEDE_STAGE_TURNED, /* its hue is nearer to the air's than to its own */
    RECEDE_STAGE_GONE    /* under 2 % of its light is its own */
} recede_stage;

/* Of one row, from the nearest rung. A colour whose hue is near the air's from
 * the start (60 degrees) does not turn, nor does any in grey air. */
recede_stage recede_ladder_stage(const recede_ladder *ladder, size_t air, size_t rung,
                                 recede_ladder_row row);

/* The nearest rung that has reached a stage, or -1. */
int recede_ladder_reaches(const recede_ladder *ladder, size_t air, recede_ladder_row row,
                          recede_stage stage);

/* Up to three rungs whose spectra tell most: near, middle, far. Returns how
 * many. */
size_t recede_ladder_telling_rungs(const recede_ladder *ladder, size_t rungs[3]);

#endif
