/* Recipes for one colour by index: the closest difference by branch and bound, then
 * every film within the tie of it. They may be many thousands for a pale colour:
 * none is kept but the best of each kind. */
#include "recede.h"

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/match.h"
#include "paint/opener.h"
#include "paint/targets.h"

typedef struct {
    recede_aim aim;
    recede_cost cost;
    recede_visit visit;
    recede_opener opener;
    double closest; /* millionths */
    recede_match_keeper keeper;
} search;

static recede_code open_leaf(recede_visit *visit, const recede_leaves *leaves, int lane,
                             float bound)
{
    search *s = visit->context;
    (void)bound;
    return recede_open_leaf(&s->opener, leaves, lane, &visit->limit);
}

static recede_code nearer_film(void *context, const recede_mix *mix, double difference,
                               double *limit)
{
    search *s = context;
    (void)mix;
    *limit = s->closest = difference;
    return RECEDE_OK;
}

static recede_code film_within(void *context, const recede_mix *mix, double difference,
                               double *limit)
{
    (void)limit;
    recede_match_keeper_offer(&((search *)context)->keeper, mix, difference);
    return RECEDE_OK;
}

static void start(search *s, const recede_index *index, recede_lab target)
{
    s->closest = recede_ground_difference(index->palette, target);
    s->cost = (recede_cost){0};
    recede_aim_at(&s->aim, target);
    recede_opener_start(&s->opener, index, &s->aim, &s->cost);
    s->opener.context = s;
    s->visit = (recede_visit){index, &s->aim, &s->cost, s->closest, open_leaf, s};
}

static recede_code find_closest(search *s, const recede_allocator *allocator)
{
    recede_frontier frontier;
    recede_frontier_start(&frontier, allocator);
    s->opener.film = nearer_film;
    recede_code code = recede_visit_start(&s->visit, &frontier);
    while (!code && recede_least_of_bound(recede_frontier_least(&frontier)) <= s->closest)
        code = recede_visit_step(&s->visit, &frontier);
    recede_frontier_end(&frontier);
    return code;
}

static recede_code offer_all(search *s)
{
    recede_mix bare = {0};
    recede_code code = RECEDE_OK;
    recede_match_keeper_offer(&s->keeper, &bare,
                              recede_ground_difference(s->visit.index->palette,
                                                       s->aim.target));
    s->opener.film = film_within;
    s->visit.limit = s->keeper.limit;
    for (int i = 0; !code && i < s->visit.index->classes; i++)
        code = recede_visit_class(&s->visit, i);
    return code;
}

recede_code recede_match(const recede_index *index, recede_lab target, recede_matches *out,
                         const recede_allocator *allocator, const recede_progress *progress,
                         recede_error *error)
{
    recede_wash_target wash = {.from = target};
    if (!recede_index_is_whole(index))
        return recede_match_all(index->palette, &index->rules, target, out, progress, error);
    recede_code code = recede_targets_check(&wash, 1, error);
    if (code)
        return code;
    search s;
    start(&s, index, target);
    code = find_closest(&s, recede_allocator_or_default(allocator));
    if (code)
        return recede_fail(error, code, "");
    recede_match_keeper_start(&s.keeper, index->palette, target, s.closest, index->rules.tie);
    code = offer_all(&s);
    if (code)
        return recede_fail(error, code, "");
    recede_match_keeper_finish(&s.keeper, out);
    return RECEDE_OK;
}
