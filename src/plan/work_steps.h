/* A path told as steps: what is poured, into which well, on what paper. */
#ifndef RECEDE_PLAN_WORK_STEPS_H
#define RECEDE_PLAN_WORK_STEPS_H

#include "plan/work_search.h"

void recede_work_tell(const recede_washes *washes, const recede_work_path *path, int wells,
                      recede_work *out);

/* Every step's paper and what it waits for, once the rest of it is told. */
void recede_work_dry(const recede_washes *washes, const recede_work_path *path,
                     recede_work *work);

#endif
