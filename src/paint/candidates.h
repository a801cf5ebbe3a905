/*
 * The mixes that may yet be chosen for one target, while a walk of all mixes goes
 * on from fewer pigments and parts to more.
 *
 * A mix is out for good when the closest so far is more than the tie away, or when
 * a mix of fewer pigments or parts is at least as close: wherever the later one is
 * within the tie, so is the simpler one, and goes first. Of what is left, the list
 * is settled when it fills up: a candidate stays only while none that goes before
 * it is as close. Few do, so the list stays short however many mixes pass by.
 */
#ifndef RECEDE_PAINT_CANDIDATES_H
#define RECEDE_PAINT_CANDIDATES_H

#include "paint/palette.h"
#include "paint/rule.h"

typedef struct recede_candidates {
    const recede_palette *palette;
    const recede_allocator *allocator;
    recede_lab target;
    double tie;      /* all three in millionths */
    double closest;  /* difference of the closest mix so far */
    double simpler;  /* the same among mixes of fewer pigments or parts */
    recede_candidate *items;
    size_t count, room;
    size_t settled;  /* the first so many: slips known, none excludes another */
} recede_candidates;

/* Nothing is allocated before the first offer. */
void recede_candidates_start(recede_candidates *list, const recede_palette *palette,
                             recede_lab target, double tie, const recede_allocator *allocator);

/* Says that from here on mixes have more pigments or parts than before. */
void recede_candidates_next_size(recede_candidates *list);

/* The largest difference, in millionths, that an offer may have to matter. */
double recede_candidates_limit(const recede_candidates *list);

/* Takes a mix, its difference in millionths, if it matters. RECEDE_NO_MEMORY
 * leaves the list as it was. */
recede_code recede_candidates_offer(recede_candidates *list, const recede_mix *mix,
                                    double difference);

/* The mix that the rule chooses; at least one must have been offered. */
recede_candidate recede_candidates_choose(recede_candidates *list);

void recede_candidates_end(recede_candidates *list);

#endif
