#include "paint/candidates.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/slip.h"

enum { FIRST_ROOM = 64 };

void recede_candidates_start(recede_candidates *list, const recede_palette *palette,
                             recede_lab target, double tie, const recede_allocator *allocator)
{
    memset(list, 0, sizeof *list);
    list->palette = palette;
    list->allocator = allocator;
    list->target = target;
    list->tie = recede_millionths(tie);
    list->closest = list->simpler = INFINITY;
}

void recede_candidates_next_size(recede_candidates *list)
{
    list->simpler = list->closest;
}

double recede_candidates_limit(const recede_candidates *list)
{
    return fmin(list->closest + list->tie, list->simpler - 1);
}

static void know_slip(const recede_candidates *list, recede_candidate *item)
{
    if (item->slip < 0)
        item->slip = recede_millionths(recede_slip(list->palette, &item->mix, list->target));
}

/* Drops what the closest mix has since put out of the tie. */
static void drop_beyond(recede_candidates *list)
{
    size_t kept = 0, settled = 0;
    for (size_t i = 0; i < list->count; i++) {
        if (list->items[i].difference > list->closest + list->tie)
            continue;
        settled += i < list->settled;
        list->items[kept++] = list->items[i];
    }
    list->count = kept;
    list->settled = settled;
}

/* one excludes other: it is as close, and goes before it wherever both may be chosen. */
static int excludes(const recede_candidate *one, const recede_candidate *other)
{
    return one->difference <= other->difference && recede_compare_candidates(one, other) < 0;
}

/* Adds one to the settled, unless one of them excludes it; returns how many. */
static size_t settle_one(recede_candidate *settled, size_t count, const recede_candidate *item)
{
    size_t kept = 0;
    for (size_t i = 0; i < count; i++)
        if (excludes(&settled[i], item))
            return count;
    for (size_t i = 0; i < count; i++)
        if (!excludes(item, &settled[i]))
            settled[kept++] = settled[i];
    settled[kept] = *item;
    return kept + 1;
}

static void settle(recede_candidates *list)
{
    for (size_t i = list->settled; i < list->count; i++) {
        recede_candidate item = list->items[i];
        know_slip(list, &item);
        list->settled = settle_one(list->items, list->settled, &item);
    }
    list->count = list->settled;
}

static recede_code grow(recede_candidates *list)
{
    size_t room = list->room ? 2 * list->room : FIRST_ROOM;
    recede_candidate *items = recede_allocate_array(list->allocator, room, sizeof *items);
    if (!items)
        return RECEDE_NO_MEMORY;
    if (list->count)
        memcpy(items, list->items, list->count * sizeof *items);
    recede_release(list->allocator, list->items);
    list->items = items;
    list->room = room;
    return RECEDE_OK;
}

/* Frees at least half of the room, or gets more. */
static recede_code make_room(recede_candidates *list)
{
    drop_beyond(list);
    if (list->count > list->room / 2)
        settle(list);
    return list->count < list->room / 2 ? RECEDE_OK : grow(list);
}

recede_code recede_candidates_offer(recede_candidates *list, const recede_mix *mix,
                                    double difference)
{
    if (difference > recede_candidates_limit(list))
        return RECEDE_OK;
    if (list->count == list->room) {
        recede_code code = make_room(list);
        if (code)
            return code;
    }
    list->closest = fmin(list->closest, difference);
    recede_candidate *item = &list->items[list->count++];
    item->mix = *mix;
    item->difference = difference;
    item->slip = -1;
    return RECEDE_OK;
}

recede_candidate recede_candidates_choose(recede_candidates *list)
{
    drop_beyond(list);
    recede_candidate *chosen = &list->items[0];
    for (size_t i = 1; i < list->count; i++) {
        recede_candidate *item = &list->items[i];
        int order = recede_compare_size(&item->mix, &chosen->mix);
        if (order == 0) {
            know_slip(list, item);
            know_slip(list, chosen);
            order = recede_compare_candidates(item, chosen);
        }
        if (order < 0)
            chosen = item;
    }
    know_slip(list, chosen);
    return *chosen;
}

void recede_candidates_end(recede_candidates *list)
{
    recede_release(list->allocator, list->items);
    list->items = NULL;
    list->count = list->settled = list->room = 0;
}
