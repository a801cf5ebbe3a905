/* What a search is asked: checked before any work. */
#ifndef RECEDE_PAINT_TARGETS_H
#define RECEDE_PAINT_TARGETS_H

#include "recede.h"

/* RECEDE_NOT_FINITE or RECEDE_OUT_OF_RANGE, with paths such as targets[2].from. */
recede_code recede_targets_check(const recede_wash_target *targets, size_t count,
                                 recede_error *error);

/* The same for the rules, with paths such as paint.most_parts. */
recede_code recede_rules_check(const recede_rules *rules, recede_error *error);

#endif
