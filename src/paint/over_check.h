/* What a search for washes over washes is asked: checked before any work. */
#ifndef RECEDE_PAINT_OVER_CHECK_H
#define RECEDE_PAINT_OVER_CHECK_H

#include "recede.h"

recede_code recede_over_check(const recede_palette *palette, const recede_rules *rules,
                              const recede_over_target *targets, size_t count,
                              recede_error *error);

/* The rules with no more paints than a wash over another may have. */
recede_rules recede_over_rules(const recede_rules *rules);

#endif
