/*
 * A flat wash by index. The rule wants the closest difference d only to say who is
 * within the tie of it, and d lies between `least`, what nothing left ahead can be
 * under, and `closest`, the best film so far. So: bring these two near each other;
 * list, in the first class that has any, the mixes within the tie of `closest`;
 * choose among them; and where the chosen one is within the tie of `least` it is
 * so of d, and is the rule's choice. Else go on until that is decided.
 */
#include "paint/flat_search.h"

#include <math.h>

#include "paint/candidates.h"
#include "paint/opener.h"

typedef struct {
    const recede_index *index;
    recede_aim aim;
    recede_visit visit;
    recede_opener opener;
    recede_frontier frontier;
    recede_candidates list;
    double closest;
    int next_class;
} flat_search;

static recede_code open_leaf(recede_visit *visit, const recede_leaves *leaves, int lane,
                             float bound)
{
    flat_search *s = visit->context;
    (void)bound;
    return recede_open_leaf(&s->opener, leaves, lane, &visit->limit);
}

static recede_code nearer_film(void *context, const recede_mix *mix, double difference,
                               double *limit)
{
    flat_search *s = context;
    (void)mix;
    *limit = s->closest = difference;
    return RECEDE_OK;
}

static recede_code listed_film(void *context, const recede_mix *mix, double difference,
                               double *limit)
{
    flat_search *s = context;
    recede_code code = recede_candidates_offer(&s->list, mix, difference);
    *limit = recede_candidates_limit(&s->list);
    return code;
}

static double least(const flat_search *s)
{
    return fmin(recede_least_of_bound(recede_frontier_least(&s->frontier)), s->closest);
}

static recede_code step(flat_search *s)
{
    s->opener.film = nearer_film;
    s->visit.limit = s->closest;
    return recede_visit_step(&s->visit, &s->frontier);
}

/* For a start near enough: within half of the tie, or of the closest so far. What
 * is left open then seldom matters, and else costs no more for coming later. */
static recede_code approach(flat_search *s)
{
    recede_code code = recede_visit_start(&s->visit, &s->frontier);
    while (!code && s->closest - least(s) > 0.5 * fmax(s->list.tie, s->closest))
        code = step(s);
    return code;
}

/* Lists the next class's mixes within the tie of the closest so far. */
static recede_code list_class(flat_search *s)
{
    s->opener.film = listed_film;
    s->list.closest = s->closest;
    s->visit.limit = recede_candidates_limit(&s->list);
    recede_code code = recede_visit_class(&s->visit, s->next_class++);
    s->closest = s->list.closest;
    return code;
}

static int any_within(const recede_candidates *list)
{
    for (size_t i = 0; i < list->count; i++)
        if (list->items[i].difference <= list->closest + list->tie)
            return 1;
    return 0;
}

/* The first class's candidates, in the end those within the tie of the closest. */
static recede_code choose(flat_search *s, recede_flat_answer *out)
{
    recede_code code = RECEDE_OK;
    for (;;) {
        while (!code && !any_within(&s->list) && s->next_class < s->index->classes)
            code = list_class(s);
        out->found = any_within(&s->list);
        if (code || !out->found)
            return code;
        out->chosen = recede_candidates_choose(&s->list);
        double wanted = out->chosen.difference - s->list.tie;
        while (!code && least(s) < wanted && wanted <= s->closest)
            code = step(s);
        if (code || wanted <= least(s))
            return code;
        s->list.closest = s->closest;
    }
}

/* Whether anything comes within reach. */
static recede_code decide_reach(flat_search *s)
{
    recede_code code = RECEDE_OK;
    while (!code && s->closest > RECEDE_REACHED_MILLIONTHS &&
           least(s) <= RECEDE_REACHED_MILLIONTHS)
        code = step(s);
    return code;
}

static recede_code search(flat_search *s, double known, recede_flat_answer *out)
{
    const recede_palette *palette = s->index->palette;
    recede_mix bare = {0};
    double ground = recede_ground_difference(palette, s->aim.target);
    s->closest = fmin(ground, known);
    recede_code code = approach(s);
    s->list.closest = s->closest;
    if (!code)
        code = recede_candidates_offer(&s->list, &bare, ground);
    if (!code)
        code = choose(s, out);
    if (!code)
        code = decide_reach(s);
    out->closest = s->closest;
    return code;
}

recede_code recede_flat_find(const recede_index *index, recede_lab target, double known,
                             const recede_allocator *allocator, recede_cost *cost,
                             recede_flat_answer *out)
{
    flat_search s = {.index = index};
    recede_aim_at(&s.aim, target);
    s.visit = (recede_visit){index, &s.aim, cost, 0, open_leaf, &s};
    recede_opener_start(&s.opener, index, &s.aim, cost);
    s.opener.context = &s;
    recede_frontier_start(&s.frontier, allocator);
    recede_candidates_start(&s.list, index->palette, target, index->rules.tie, allocator);
    recede_code code = search(&s, known, out);
    recede_candidates_end(&s.list);
    recede_frontier_end(&s.frontier);
    return code;
}
