/* Which tubes to leave at home: one at a time the one that is missed least. What is let
 * down from a tube stays at home with it. */
#ifndef RECEDE_PLAN_WORK_TUBES_H
#define RECEDE_PLAN_WORK_TUBES_H

#include <stdint.h>

#include "recede.h"

/* The tubes of a palette in the order in which they are left out; the last stays. */
typedef struct recede_tubes {
    int count;
    int order[RECEDE_MOST_PAINTS];      /* by their place in the palette */
    uint32_t paints;                    /* all of the palette, bit i: paint i */
    uint32_t lost[RECEDE_MOST_PAINTS];  /* without a tube; 0: paint i is no tube */
} recede_tubes;

recede_tubes recede_tubes_of(const recede_palette *palette);

/* The paints to be had, bit i: paint i, when so many tubes are left. */
uint32_t recede_tubes_left(const recede_tubes *tubes, int left);

/* A set of paints that a wash can be mixed from, and how near (millionths). */
typedef struct recede_tube_use {
    uint32_t paints;
    double difference;
} recede_tube_use;

/* What every wash, or graded side, can be mixed from. */
typedef struct recede_tube_uses {
    const recede_allocator *allocator;
    recede_tube_use *uses;
    size_t count, room;
    size_t sides;
    size_t first[RECEDE_MOST_STEPS + 1]; /* of each side's uses */
    double farthest[RECEDE_MOST_STEPS];  /* what it counts where none is left */
} recede_tube_uses;

void recede_tube_uses_start(recede_tube_uses *uses, const recede_allocator *allocator);
void recede_tube_uses_end(recede_tube_uses *uses);
void recede_tube_uses_clear(recede_tube_uses *uses);

/* A side, then each of its uses. */
void recede_tube_uses_side(recede_tube_uses *uses, double farthest);
recede_code recede_tube_uses_add(recede_tube_uses *uses, recede_tube_use use);

/* Goes on leaving out tubes of those that are left, down to so many: each time the
 * one without which the sides, each as near as it comes, come nearest in sum; of
 * equals the later in the palette. left: how many there are, and how many then. */
void recede_tubes_leave_out(recede_tubes *tubes, const recede_tube_uses *uses, int *left, int to);

#endif
