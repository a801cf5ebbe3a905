#include "paint/set_search.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/mixes.h"

enum { FIRST_ROOM = 4096 };

/* Millionths. */
#define FIRST_RADIUS 1e6

static recede_code make_room(recede_set_search *s)
{
    size_t room = s->room ? 2 * s->room : FIRST_ROOM;
    recede_hung_leaf *hung = recede_allocate_array(s->allocator, room, sizeof *hung);
    if (!hung)
        return RECEDE_NO_MEMORY;
    if (s->room)
        memcpy(hung, s->hung, s->count * sizeof *hung);
    recede_release(s->allocator, s->hung);
    s->hung = hung;
    s->room = room;
    return RECEDE_OK;
}

static recede_code hang_leaf(recede_visit *visit, const recede_leaves *leaves, int lane,
                             float bound)
{
    recede_set_search *s = visit->context;
    if (s->count == s->room && make_room(s))
        return RECEDE_NO_MEMORY;
    uint32_t set = recede_index_mixes(s->index)[leaves->mix[lane]].set;
    uint32_t *first = &s->first[2 * set + (uint32_t)s->end], own = (uint32_t)s->count++;
    recede_hung_leaf *leaf = &s->hung[own], *head = &s->hung[*first];
    *leaf = (recede_hung_leaf){leaves, bound, *first, lane};
    if (*first && head->bound <= bound) { /* behind the nearest */
        leaf->next = head->next;
        head->next = own;
    } else {
        *first = own;
    }
    return RECEDE_OK;
}

static recede_code nearer_film(void *context, const recede_mix *mix, double difference,
                               double *limit)
{
    recede_set_search *s = context;
    (void)mix;
    s->closest = difference;
    *limit = difference;
    return RECEDE_OK;
}

recede_code recede_set_search_start(recede_set_search *s, const recede_index *index,
                                    const recede_lab *ends, const recede_allocator *allocator,
                                    recede_cost *cost)
{
    memset(s, 0, sizeof *s);
    s->index = index;
    s->allocator = allocator;
    s->sets = recede_set_count((int)index->palette->count, recede_index_pigments(index));
    s->first = recede_allocate_array(allocator, 2 * s->sets, sizeof *s->first);
    if (!s->first)
        return RECEDE_NO_MEMORY;
    for (int end = 0; end < 2; end++) {
        recede_aim_at(&s->aim[end], ends[end]);
        s->visit[end] = (recede_visit){index, &s->aim[end], cost, 0, hang_leaf, s};
        recede_opener_start(&s->opener[end], index, &s->aim[end], cost);
        s->opener[end].film = nearer_film;
        s->opener[end].context = s;
    }
    return RECEDE_OK;
}

void recede_set_search_end(recede_set_search *s)
{
    recede_release(s->allocator, s->hung);
    recede_release(s->allocator, s->first);
}

/* The leaves of so many pigments within a radius of either end. */
static recede_code gather(recede_set_search *s, int pigments, double radius)
{
    recede_code code = RECEDE_OK;
    memset(s->first, 0, 2 * s->sets * sizeof *s->first);
    s->count = 1;
    if (!s->room)
        code = make_room(s);
    for (s->end = 0; !code && s->end < 2; s->end++) {
        s->visit[s->end].limit = radius;
        for (int i = 0; !code && i < s->index->classes; i++)
            if (s->index->class[i].pigments == pigments)
                code = recede_visit_class(&s->visit[s->end], i);
    }
    return code;
}

/* A set's least bound at one end; INFINITY where nothing hangs. */
static float least_bound(const recede_set_search *s, uint32_t set, int end)
{
    uint32_t first = s->first[2 * set + (uint32_t)end];
    return first ? s->hung[first].bound : INFINITY;
}

/* Puts the sets that may come within a radius ahead, nearest first. */
static recede_code queue_sets(const recede_set_search *s, double radius,
                              recede_frontier *queue)
{
    recede_code code = RECEDE_OK;
    for (uint32_t set = 0; !code && set < s->sets; set++) {
        float bound = fmaxf(least_bound(s, set, 0), least_bound(s, set, 1));
        if (bound <= recede_bound_within(radius))
            code = recede_frontier_add(queue, (recede_place_ahead){bound, set, 0, 0});
    }
    return code;
}

/* The closest film of a set at one end; INFINITY where none is within the limit. */
static recede_code closest_at(recede_set_search *s, uint32_t set, int end, double limit,
                              double *closest)
{
    recede_code code = RECEDE_OK;
    s->closest = INFINITY;
    for (uint32_t at = s->first[2 * set + (uint32_t)end]; !code && at; at = s->hung[at].next)
        if (s->hung[at].bound <= recede_bound_within(limit))
            code = recede_open_leaf(&s->opener[end], s->hung[at].leaves, s->hung[at].lane,
                                    &limit);
    *closest = s->closest;
    return code;
}

/* The farther end first: it is the likelier to put the set out. */
static recede_code score_set(recede_set_search *s, double limit, recede_scored_set *scored)
{
    int far_end = least_bound(s, scored->set, 1) > least_bound(s, scored->set, 0);
    double *far_closest = &scored->closest[far_end], *near_closest = &scored->closest[!far_end];
    *near_closest = INFINITY;
    recede_code code = closest_at(s, scored->set, far_end, limit, far_closest);
    if (!code && *far_closest <= limit)
        code = closest_at(s, scored->set, !far_end, limit, near_closest);
    scored->score = fmax(*far_closest, *near_closest);
    return code;
}

static recede_code best_within(recede_set_search *s, double radius, recede_scored_set *best)
{
    recede_frontier queue;
    recede_place_ahead place;
    recede_frontier_start(&queue, s->allocator);
    recede_code code = queue_sets(s, radius, &queue);
    while (!code && recede_frontier_take(&queue, &place) &&
           place.bound <= recede_bound_within(fmin(radius, best->score))) {
        recede_scored_set scored = {.set = place.at};
        code = score_set(s, fmin(radius, best->score), &scored);
        if (scored.score < best->score ||
            (scored.score == best->score && scored.set < best->set))
            *best = scored;
    }
    recede_frontier_end(&queue);
    return code;
}

recede_code recede_find_set(recede_set_search *s, int pigments, double limit,
                            recede_scored_set *best)
{
    recede_code code = RECEDE_OK;
    double radius = -1;
    *best = (recede_scored_set){.score = INFINITY};
    while (!code && isinf(best->score) && radius < limit) {
        radius = fmin(fmax(2 * radius, FIRST_RADIUS), limit);
        code = gather(s, pigments, radius);
        if (!code)
            code = best_within(s, radius, best);
    }
    return code;
}
