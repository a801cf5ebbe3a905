/* How little an order of work can still cost: what lets the search leave hopeless
 * beginnings alone. */
#ifndef RECEDE_PLAN_WORK_BOUND_H
#define RECEDE_PLAN_WORK_BOUND_H

#include "plan/work_labels.h"
#include "plan/work_washes.h"

typedef struct recede_work_bound {
    const recede_allocator *allocator;
    size_t washes;
    double anew;                        /* the dearest start there is */
    double rest[RECEDE_MOST_STEPS + 1]; /* of all washes from one on, wells of no use */
    float *gain;                        /* by wash and puddle: what that spares them */
    size_t puddles;
} recede_work_bound;

/* RECEDE_NO_MEMORY leaves nothing behind. */
recede_code recede_work_bound_start(recede_work_bound *bound, const recede_washes *washes,
                                    const recede_allocator *allocator);
void recede_work_bound_end(recede_work_bound *bound);

/* The least cost of any order that begins with a label, washes from `next` on still
 * to come. */
double recede_work_bound_of(const recede_work_bound *bound, size_t next,
                            const recede_label *label);

#endif
