/* What must be at hand for an order of work: paints, and what they are made from. Sets
 * of paints have bit i for paint i of the palette. */
#ifndef RECEDE_PLAN_WORK_NEEDED_H
#define RECEDE_PLAN_WORK_NEEDED_H

#include "recede.h"

/* The paints that the mixes of all steps name. */
unsigned long recede_work_in_use(const recede_work *work);

/* Of the paints in use, and of the tubes that those let down are made from. */
unsigned long recede_work_needed(const recede_palette *palette, unsigned long in_use);

/* What of a palette is squeezed from tubes. A paint let down from what the palette does
 * not hold is one of them, for it must come from somewhere. */
unsigned long recede_work_tubes(const recede_palette *palette);

/* What cannot be had without one paint: itself, and what is let down from it. */
unsigned long recede_work_lost_without(const recede_palette *palette, size_t paint);

/* How many of them are tubes, and how many are let down. */
typedef struct recede_work_count {
    int tubes, let_down;
} recede_work_count;
recede_work_count recede_work_count_of(const recede_palette *palette, unsigned long paints);

/* Whether anything in the palette is let down. */
int recede_work_lets_down(const recede_palette *palette);

#endif
