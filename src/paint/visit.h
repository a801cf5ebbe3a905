/* Through the trees of an index toward one target: which leaves may hold a colour
 * within a limit. */
#ifndef RECEDE_PAINT_VISIT_H
#define RECEDE_PAINT_VISIT_H

#include "paint/frontier.h"
#include "paint/index.h"

/* What a search costs. */
typedef struct recede_cost {
    unsigned long blocks; /* of eight boxes, bounded */
    unsigned long leaves; /* opened: their films found in single precision */
    unsigned long films;  /* found in double precision */
} recede_cost;

/* limit: the largest difference that still matters, in millionths; whoever takes
 * the leaves may lower it. */
typedef struct recede_visit recede_visit;
struct recede_visit {
    const recede_index *index;
    const recede_aim *aim;
    recede_cost *cost;
    double limit;
    recede_code (*leaf)(recede_visit *visit, const recede_leaves *leaves, int lane,
                        float bound);
    void *context; /* of leaf */
};

/* A bound against such a limit: what single precision may err is on the safe side. */
static inline float recede_bound_within(double millionths)
{
    return (float)(1e-6 * millionths) + 2e-4f;
}

/* The least difference, in millionths, that a bound leaves possible. */
static inline double recede_least_of_bound(float bound)
{
    return 1e6 * ((double)bound - 1e-4);
}

/* Every leaf of a class within the limit, roughly nearest first. */
recede_code recede_visit_class(recede_visit *visit, int class);

/* The whole index nearest first: start puts its roots ahead, each step takes the
 * nearest place. The frontier's least says how near anything left can be. */
recede_code recede_visit_start(recede_visit *visit, recede_frontier *frontier);
recede_code recede_visit_step(recede_visit *visit, recede_frontier *frontier);

#endif
