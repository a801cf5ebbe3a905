/* What must be at hand for an order of work. */
#ifndef RECEDE_TEXT_WORK_NEEDED_H
#define RECEDE_TEXT_WORK_NEEDED_H

#include "recede.h"

/* Bit i: paint i of the palette. Of the paints in use, and of the tubes that those let
 * down are made from. */
unsigned long recede_work_needed(const recede_palette *palette, unsigned long in_use);

/* How many of them are tubes, and how many are let down. */
typedef struct recede_work_count {
    int tubes, let_down;
} recede_work_count;
recede_work_count recede_work_count_of(const recede_palette *palette, unsigned long paints);

/* Whether anything in the palette is let down. */
int recede_work_lets_down(const recede_palette *palette);

#endif
