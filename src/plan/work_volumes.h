/* How much is mixed. */
#ifndef RECEDE_PLAN_WORK_VOLUMES_H
#define RECEDE_PLAN_WORK_VOLUMES_H

#include "plan/work_search.h"

/*
 * What is mixed for each wash along a path (bare ones: 0). Forward, each puddle is
 * as small as what was left in its well allows; then backward, each is made as much
 * larger as it takes for what is left of it to be just enough for the next: so what
 * the next needs no more of is not poured in at all.
 */
void recede_work_volumes(const recede_washes *washes, const recede_work_path *path,
                         double *mixed_ml);

#endif
