/* The progress of one stage of a longer call. */
#ifndef RECEDE_PLAN_STAGE_H
#define RECEDE_PLAN_STAGE_H

#include "recede.h"

typedef struct recede_stage {
    const recede_progress *whole;
    double from, to; /* shares of the whole */
    recede_progress progress;
} recede_stage;

/* What to hand to the stage; NULL where whole is. */
const recede_progress *recede_stage_start(recede_stage *stage, const recede_progress *whole,
                                          double from, double to);

#endif
