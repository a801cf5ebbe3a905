/* Opens leaves: films in single precision first, those that may matter then in
 * double, to the colours and differences of the reference search. */
#ifndef RECEDE_PAINT_OPENER_H
#define RECEDE_PAINT_OPENER_H

#include "paint/sweep.h"
#include "paint/visit.h"

/* film: a film within the limit, its difference in millionths; it may lower the
 * limit. */
typedef struct recede_opener {
    const recede_index *index;
    const recede_aim *aim;
    recede_cost *cost;
    recede_code (*film)(void *context, const recede_mix *mix, double difference,
                        double *limit);
    void *context;
    recede_sweep sweep;
    recede_curve_films curve;
    uint32_t swept, curved; /* the mixes that these two have taken up */
} recede_opener;

void recede_opener_start(recede_opener *opener, const recede_index *index,
                         const recede_aim *aim, recede_cost *cost);

recede_code recede_open_leaf(recede_opener *opener, const recede_leaves *leaves, int lane,
                             double *limit);

#endif
