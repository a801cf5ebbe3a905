/*
 * The best set of so many paints for both ends of a graded wash.
 *
 * First the leaves that may come within a radius of either end are gathered, by
 * their boxes alone, and hung up by set. A set that has some at both ends can do
 * no better than the worse of its two least bounds; sets are taken by that, and
 * their leaves opened, until no set left can beat the best. Where a radius holds
 * no set, the next is twice as large.
 */
#ifndef RECEDE_PAINT_SET_SEARCH_H
#define RECEDE_PAINT_SET_SEARCH_H

#include "paint/opener.h"

/* A set with its closest difference at either end, in millionths, and the larger. */
typedef struct recede_scored_set {
    uint32_t set;
    double closest[2], score;
} recede_scored_set;

/* A leaf gathered. */
typedef struct recede_hung_leaf {
    const recede_leaves *leaves;
    float bound;
    uint32_t next; /* of the same set and end; 0 ends */
    int lane;
} recede_hung_leaf;

/* The first leaf of a set at one end is its nearest. */
typedef struct recede_set_search {
    const recede_index *index;
    const recede_allocator *allocator;
    recede_aim aim[2];
    recede_visit visit[2];
    recede_opener opener[2];
    recede_hung_leaf *hung; /* hung[0] is not used */
    size_t count, room;
    uint32_t *first;        /* by set and end; 0: none */
    size_t sets;
    int end;
    double closest;
} recede_set_search;

/* RECEDE_NO_MEMORY leaves nothing behind. */
recede_code recede_set_search_start(recede_set_search *search, const recede_index *index,
                                    const recede_lab *ends, const recede_allocator *allocator,
                                    recede_cost *cost);
void recede_set_search_end(recede_set_search *search);

/* The set of so many paints with the smallest score, the first of equals, if that
 * is within a limit in millionths; else its score is INFINITY. */
recede_code recede_find_set(recede_set_search *search, int pigments, double limit,
                            recede_scored_set *best);

#endif
