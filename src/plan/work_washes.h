/* The washes of a picture in the order they are painted, with the mixes offered for
 * each. */
#ifndef RECEDE_PLAN_WORK_WASHES_H
#define RECEDE_PLAN_WORK_WASHES_H

#include "plan/plan.h"
#include "plan/work_puddle.h"
#include "plan/work_sets.h"
#include "plan/work_tubes.h"

enum { RECEDE_MOST_OFFERS = RECEDE_WORK_OFFERS };

typedef struct recede_offer {
    recede_mix mix;
    recede_puddle puddle;
} recede_offer;

/* An end of a graded side counts as a wash of its own. */
typedef struct recede_work_wash {
    int at;             /* index into the plan's planes, far to near; -1: the sky */
    int shadow, base;
    const recede_side *side;
    const recede_wash *planned;
    const recede_mix *likely; /* while offers are sought: what to lay others over */
    recede_lab target, half; /* half: of a second end, what lies between the two */
    double need_ml;
    int ground;         /* the wash before that it is laid over; -1: paper */
    int partner;        /* the other end of its side, painted before it; -1: none */
    int count;
    recede_offer offers[RECEDE_MOST_OFFERS];
    /* Millionths, by the offer taken for the ground (paper: 0) and the own one. */
    double difference[RECEDE_MOST_OFFERS][RECEDE_MOST_OFFERS];
} recede_work_wash;

typedef struct recede_washes {
    const recede_plan *plan;
    size_t count;
    recede_work_wash *wash;
} recede_washes;

/* The washes without offers; shares as recede_picture_shares gives them.
 * RECEDE_NO_MEMORY leaves nothing behind. */
recede_code recede_washes_start(recede_washes *washes, const recede_plan *plan,
                                const double *shares, const recede_allocator *allocator);
void recede_washes_end(recede_washes *washes, const recede_allocator *allocator);

/* What a wash gives with one of its offers over one of its ground's (on paper: 0). */
recede_spectrum recede_wash_seen(const recede_washes *washes, size_t wash, int ground_offer,
                                 int offer);

/* 2 where a wash and the next are the ends of one graded side, else 1. */
int recede_wash_ends(const recede_washes *washes, size_t wash);

/*
 * Offers for every wash: the plan's own recipe, and of the sets of paints whose
 * closest mix comes nearest that mix: 8 in all from the whole palette, then 6 from
 * half of its tubes, 3 from a quarter, and so on down to one tube, so that washes
 * have paints to share. On the way the tubes are put in the order in which one
 * would leave them at home. Sets farther than `width` (millionths) from the closest
 * are not offered. Both ends of a graded side are offered the same sets, by their
 * differences together. A wash laid over another is offered what suits the first
 * mix offered there from the same tubes.
 */
recede_code recede_washes_offer(recede_washes *washes, recede_sets *sets, double width,
                                recede_tubes *tubes);

/* The same washes offered only what these paints give; a copy, to be ended. */
recede_code recede_washes_within(const recede_washes *washes, uint32_t paints,
                                 const recede_allocator *allocator, recede_washes *out);

#endif
