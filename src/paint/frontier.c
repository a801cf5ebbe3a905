#include "paint/frontier.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"

enum { FIRST_ROOM = 1024 };

void recede_frontier_start(recede_frontier *frontier, const recede_allocator *allocator)
{
    *frontier = (recede_frontier){allocator, NULL, 0, 0};
}

static recede_code make_room(recede_frontier *frontier)
{
    size_t room = frontier->room ? 2 * frontier->room : FIRST_ROOM;
    recede_place_ahead *items =
        recede_allocate_array(frontier->allocator, room, sizeof *items);
    if (!items)
        return RECEDE_NO_MEMORY;
    if (frontier->count)
        memcpy(items, frontier->items, frontier->count * sizeof *items);
    recede_release(frontier->allocator, frontier->items);
    frontier->items = items;
    frontier->room = room;
    return RECEDE_OK;
}

/* Of equals the one farther down the tree: it finds films sooner. */
static int before(recede_place_ahead one, recede_place_ahead other)
{
    return one.bound < other.bound || (one.bound == other.bound && one.level < other.level);
}

recede_code recede_frontier_add(recede_frontier *frontier, recede_place_ahead place)
{
    if (frontier->count == frontier->room && make_room(frontier))
        return RECEDE_NO_MEMORY;
    size_t at = frontier->count++;
    recede_place_ahead *items = frontier->items;
    while (at > 0 && before(place, items[(at - 1) / 2])) {
        items[at] = items[(at - 1) / 2];
        at = (at - 1) / 2;
    }
    items[at] = place;
    return RECEDE_OK;
}

int recede_frontier_take(recede_frontier *frontier, recede_place_ahead *nearest)
{
    recede_place_ahead *items = frontier->items;
    if (!frontier->count)
        return 0;
    *nearest = items[0];
    recede_place_ahead last = items[--frontier->count];
    size_t at = 0;
    for (size_t child = 1; child < frontier->count; child = 2 * at + 1) {
        if (child + 1 < frontier->count && before(items[child + 1], items[child]))
            child++;
        if (!before(items[child], last))
            break;
        items[at] = items[child];
        at = child;
    }
    items[at] = last;
    return 1;
}

float recede_frontier_least(const recede_frontier *frontier)
{
    return frontier->count ? frontier->items[0].bound : INFINITY;
}

void recede_frontier_end(recede_frontier *frontier)
{
    recede_release(frontier->allocator, frontier->items);
    frontier->items = NULL;
    frontier->count = frontier->room = 0;
}
