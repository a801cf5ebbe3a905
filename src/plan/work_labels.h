/* The states an order of work may be in after a wash, each with its cheapest ways
 * there: what every well holds and how much of it, and what was painted that later
 * washes depend on. */
#ifndef RECEDE_PLAN_WORK_LABELS_H
#define RECEDE_PLAN_WORK_LABELS_H

#include <stdint.h>

#include "recede.h"

/* A well holds the puddle of a wash, by wash and offer; or nothing. */
enum { RECEDE_CLEAN_WELL = 0, RECEDE_NO_WELL = UINT16_MAX };

typedef struct recede_label {
    double cost;                        /* millionths */
    double left_ml[RECEDE_MOST_WELLS];
    uint32_t parent;                    /* among the states before */
    uint32_t next;                      /* in the store: of the same key, or its end */
    uint16_t well[RECEDE_MOST_WELLS];   /* ascending; no puddle stands twice */
    uint8_t offer;                      /* taken for the wash */
    uint8_t added;                      /* 1: to a puddle there was */
    uint8_t under, chosen;              /* offers that later washes depend on, else 0 */
} recede_label;

typedef struct recede_labels {
    const recede_allocator *allocator;
    recede_label *items;
    size_t count, room, most;
    uint32_t *slots; /* heads of the lists of one key */
    size_t slot_count;
    double ceiling;  /* of cost: beyond it labels were dropped for lack of room */
    int dropped;
} recede_labels;

/* Room for so many labels at a time; nothing is allocated yet. */
void recede_labels_start(recede_labels *labels, size_t most, const recede_allocator *allocator);
void recede_labels_end(recede_labels *labels);
void recede_labels_clear(recede_labels *labels);

/* Takes a label unless one of its key costs no more and has no more left in any
 * well; those it outdoes likewise go. RECEDE_NO_MEMORY leaves the store as it was. */
recede_code recede_labels_offer(recede_labels *labels, const recede_label *label);

/* Closes the gaps of those outdone. From here on no more can be offered until the
 * next clear. */
void recede_labels_settle(recede_labels *labels);

/* Keeps so many of the cheapest, of equals the first. */
recede_code recede_labels_cut(recede_labels *labels, size_t keep);

/*
 * Drops what other labels outdo across keys. From one state one can go on as from
 * any other that has the same puddles in all wells but n, where something else
 * stands: start those n wells anew when their turn comes, at `anew` each at the
 * most. So a label dearer than another by more than n times that is out.
 */
recede_code recede_labels_prune(recede_labels *labels, int wells, double anew,
                                const double *least_left_ml);

#endif
