/*
 * The four recipes for one colour, while mixes go by: of each kind the best so
 * far. All of them come from the mixes within the tie, so the closest difference
 * must be known before the first is offered; then they may come in any order.
 */
#ifndef RECEDE_PAINT_MATCH_H
#define RECEDE_PAINT_MATCH_H

#include "paint/lamp.h"
#include "paint/palette.h"
#include "paint/rule.h"

/* score: what this kind goes by, in millionths, smaller is better. */
typedef struct recede_match_best {
    recede_candidate candidate;
    double score;
} recede_match_best;

typedef struct recede_match_keeper {
    const recede_palette *palette;
    recede_lab target;
    recede_lamp lamp;
    recede_smooth smooth;
    recede_lab target_by_lamp;
    double closest, limit; /* millionths */
    size_t count;
    recede_match_best best[RECEDE_MATCH_KINDS];
} recede_match_keeper;

/* closest in millionths, tie as in the rules. */
void recede_match_keeper_start(recede_match_keeper *keeper, const recede_palette *palette,
                               recede_lab target, double closest, double tie);

/* A mix and its difference in millionths; ignored beyond the limit. */
void recede_match_keeper_offer(recede_match_keeper *keeper, const recede_mix *mix,
                               double difference);

/* At least one mix must have been within the limit. */
void recede_match_keeper_finish(const recede_match_keeper *keeper, recede_matches *out);

#endif
