#include "plan/work_tubes.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "plan/work_needed.h"

enum { FIRST_ROOM = 1024 };

recede_tubes recede_tubes_of(const recede_palette *palette)
{
    recede_tubes tubes = {.count = 0};
    unsigned long are_tubes = recede_work_tubes(palette);
    for (size_t i = 0; i < recede_palette_count(palette); i++) {
        tubes.paints |= (uint32_t)1 << i;
        if (are_tubes >> i & 1) {
            tubes.lost[i] = (uint32_t)recede_work_lost_without(palette, i);
            tubes.count++;
        }
    }
    return tubes;
}

uint32_t recede_tubes_left(const recede_tubes *tubes, int left)
{
    uint32_t paints = tubes->paints;
    for (int i = 0; i < tubes->count - left; i++)
        paints &= ~tubes->lost[tubes->order[i]];
    return paints;
}

void recede_tube_uses_start(recede_tube_uses *uses, const recede_allocator *allocator)
{
    memset(uses, 0, sizeof *uses);
    uses->allocator = allocator;
}

void recede_tube_uses_end(recede_tube_uses *uses)
{
    recede_release(uses->allocator, uses->uses);
    uses->uses = NULL;
}

void recede_tube_uses_clear(recede_tube_uses *uses)
{
    uses->count = uses->sides = uses->first[0] = 0;
}

void recede_tube_uses_side(recede_tube_uses *uses, double farthest)
{
    uses->farthest[uses->sides++] = farthest;
    uses->first[uses->sides] = uses->count;
}

static recede_code grow(recede_tube_uses *uses)
{
    size_t room = uses->room ? 2 * uses->room : FIRST_ROOM;
    recede_tube_use *more = recede_allocate_array(uses->allocator, room, sizeof *more);
    if (!more)
        return RECEDE_NO_MEMORY;
    if (uses->count)
        memcpy(more, uses->uses, uses->count * sizeof *more);
    recede_release(uses->allocator, uses->uses);
    uses->uses = more;
    uses->room = room;
    return RECEDE_OK;
}

recede_code recede_tube_uses_add(recede_tube_uses *uses, recede_tube_use use)
{
    if (uses->count == uses->room && grow(uses))
        return RECEDE_NO_MEMORY;
    uses->uses[uses->count++] = use;
    uses->first[uses->sides] = uses->count;
    return RECEDE_OK;
}

/* All sides mixed from these paints, each as near as it comes. */
static double difference_with(const recede_tube_uses *uses, uint32_t paints)
{
    double sum = 0;
    for (size_t side = 0; side < uses->sides; side++) {
        double least = uses->farthest[side];
        for (size_t i = uses->first[side]; i < uses->first[side + 1]; i++)
            if (!(uses->uses[i].paints & ~paints))
                least = fmin(least, uses->uses[i].difference);
        sum += least;
    }
    return sum;
}

static int least_missed(const recede_tubes *tubes, const recede_tube_uses *uses, uint32_t paints)
{
    int least = -1;
    double nearest = INFINITY;
    for (int i = 0; i < RECEDE_MOST_PAINTS; i++) {
        if (!tubes->lost[i] || !(paints >> i & 1))
            continue;
        double difference = difference_with(uses, paints & ~tubes->lost[i]);
        if (difference <= nearest) {
            nearest = difference;
            least = i;
        }
    }
    return least;
}

void recede_tubes_leave_out(recede_tubes *tubes, const recede_tube_uses *uses, int *left, int to)
{
    for (; *left > to; --*left) {
        uint32_t paints = recede_tubes_left(tubes, *left);
        tubes->order[tubes->count - *left] = least_missed(tubes, uses, paints);
    }
}
