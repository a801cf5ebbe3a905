/*
 * The order of work as a shortest path: from wash to wash, in painting order, which
 * of the mixes offered and which well. Exact over what is offered, unless `exact`
 * says that memory set a limit.
 *
 * A well's puddle is at least half as much again as its wash needs, and has to take
 * in all that the well held before. It costs nothing that a puddle is made larger
 * for what will come of it (plan/work_volumes.h); it does that it must be, because
 * too much was left.
 */
#ifndef RECEDE_PLAN_WORK_SEARCH_H
#define RECEDE_PLAN_WORK_SEARCH_H

#include "plan/work_washes.h"

/*
 * No mix farther than this (millionths) from the closest is worth taking: the
 * closest, started anew, costs one start more at the most, and what was to be added
 * to the other is started anew likewise. paints: in a mix, at most.
 */
double recede_work_width(int paints);

typedef enum recede_work_move {
    RECEDE_MOVE_BARE, RECEDE_MOVE_START, RECEDE_MOVE_ADD
} recede_work_move;

/* By wash. before: the wash whose puddle stood in the well, to be washed out or
 * added to; -1: the well was clean. */
typedef struct recede_work_path {
    uint8_t offer[RECEDE_MOST_STEPS];
    uint8_t move[RECEDE_MOST_STEPS];
    int16_t before[RECEDE_MOST_STEPS];
    double cost; /* millionths */
    int exact;
} recede_work_path;

recede_code recede_work_search(const recede_washes *washes, int wells,
                               const recede_allocator *allocator,
                               const recede_progress *progress, recede_work_path *out);

#endif
