/* For one colour the closest mix of every set of paints, as far as it may matter:
 * what the order of work chooses among. */
#ifndef RECEDE_PLAN_WORK_SETS_H
#define RECEDE_PLAN_WORK_SETS_H

#include <stdint.h>

#include "recede.h"

/* A set's closest mix; INFINITY where none was found. Of equals the one of fewest
 * parts, then most water, then palette order. */
typedef struct recede_set_mix {
    recede_mix mix;
    double difference; /* millionths of CIEDE2000 */
} recede_set_mix;

typedef struct recede_sets {
    const recede_allocator *allocator;
    const recede_palette *palette;
    const recede_rules *rules;
    const recede_index *index; /* NULL: every mix is looked at */
    size_t count;
    uint32_t *paints;          /* of each set, bit i: paint i */
    recede_set_mix *closest;   /* of each set, after a search */
    recede_set_mix *kept;      /* those of another search */
    double best;               /* the least of these */
} recede_sets;

/* RECEDE_NO_MEMORY leaves nothing behind. */
recede_code recede_sets_start(recede_sets *sets, const recede_palette *palette,
                              const recede_rules *rules, const recede_index *index,
                              const recede_allocator *allocator);
void recede_sets_end(recede_sets *sets);

/* Finds the sets among the allowed paints whose closest comes within width
 * (millionths) of the best of all. ground NULL: on paper; else over that ground as
 * seen, in mixes of RECEDE_MOST_LAID_OVER paints at most. The bare ground is set 0. */
recede_code recede_sets_find(recede_sets *sets, recede_lab target,
                             const recede_spectrum *ground, uint32_t allowed, double width);

/* Keeps what was found while something else is sought. */
void recede_sets_keep(recede_sets *sets);

#endif
