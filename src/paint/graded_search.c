/*
 * A graded wash by index. A set of more paints is chosen only where it scores
 * better, by more than the tie, than what fewer paints can do; so the numbers of
 * paints are gone through upward, each asked only for sets that much better.
 */
#include "paint/graded_search.h"

#include <math.h>

#include "paint/candidates.h"
#include "paint/graded.h"
#include "paint/mixes.h"
#include "paint/rule.h"
#include "paint/set_search.h"

/* By number of paints: the best set, its score INFINITY where none is within
 * limit. */
typedef struct {
    const recede_index *index;
    recede_lab ends[2];
    recede_set_search sets;
    recede_scored_set best[RECEDE_MOST_IN_MIX + 1];
    double limit[RECEDE_MOST_IN_MIX + 1];
    int most_paints;
    double tie;
} graded_search;

static recede_scored_set score_of_ground(const graded_search *s)
{
    recede_scored_set ground = {.set = 0};
    for (int end = 0; end < 2; end++)
        ground.closest[end] = recede_ground_difference(s->index->palette, s->ends[end]);
    ground.score = fmax(ground.closest[0], ground.closest[1]);
    return ground;
}

static recede_code look(graded_search *s, int paints, double limit)
{
    s->limit[paints] = limit;
    return recede_find_set(&s->sets, paints, limit, &s->best[paints]);
}

/* The fewest paints, below so many, with a score within some; else so many. */
static recede_code fewest_within(graded_search *s, double within, int below, int *paints)
{
    recede_code code = RECEDE_OK;
    for (*paints = 0; *paints < below; ++*paints) {
        if (isinf(s->best[*paints].score) && s->limit[*paints] < within)
            code = look(s, *paints, within);
        if (code || s->best[*paints].score <= within)
            break;
    }
    return code;
}

/* known: as in recede_search_graded; paints past the most where none will do. */
static recede_code choose_set(graded_search *s, double known, int *paints)
{
    recede_code code = RECEDE_OK;
    s->best[0] = score_of_ground(s);
    *paints = 0;
    for (int more = 1; !code && more <= s->most_paints; more++) {
        code = look(s, more, s->best[*paints].score - s->tie - 1);
        if (!code && !isinf(s->best[more].score))
            code = fewest_within(s, s->best[more].score + s->tie, more, paints);
    }
    if (!code && known + s->tie < s->best[*paints].score)
        code = fewest_within(s, known + s->tie, s->most_paints + 1, paints);
    return code;
}

/* One end's mixes of the chosen set within the tie, fewest parts first. */
typedef struct {
    recede_candidates *list;
    recede_opener *opener;
    uint32_t set;
} end_search;

static recede_code open_leaf(recede_visit *visit, const recede_leaves *leaves, int lane,
                             float bound)
{
    end_search *e = visit->context;
    (void)bound;
    if (recede_index_mixes(visit->index)[leaves->mix[lane]].set != e->set)
        return RECEDE_OK;
    return recede_open_leaf(e->opener, leaves, lane, &visit->limit);
}

static recede_code listed_film(void *context, const recede_mix *mix, double difference,
                               double *limit)
{
    end_search *e = context;
    recede_code code = recede_candidates_offer(e->list, mix, difference);
    *limit = recede_candidates_limit(e->list);
    return code;
}

static recede_code list_end(graded_search *s, int end, int paints, recede_candidates *list)
{
    recede_opener *opener = &s->sets.opener[end];
    end_search e = {list, opener, s->best[paints].set};
    recede_visit visit = s->sets.visit[end];
    recede_mix bare = {0};
    recede_code code = RECEDE_OK;
    list->closest = s->best[paints].closest[end];
    if (!paints)
        return recede_candidates_offer(list, &bare, list->closest);
    opener->film = listed_film;
    opener->context = &e;
    visit.leaf = open_leaf;
    visit.context = &e;
    visit.limit = recede_candidates_limit(list);
    for (int i = 0; !code && list->count == 0 && i < s->index->classes; i++)
        if (s->index->class[i].pigments == paints)
            code = recede_visit_class(&visit, i);
    opener->context = NULL;
    return code;
}

static recede_code finish(graded_search *s, int paints, const recede_wash_target *target,
                          const recede_allocator *allocator, recede_wash_recipe *out)
{
    const recede_palette *palette = s->index->palette;
    recede_candidates lists[2];
    recede_code code = RECEDE_OK;
    for (int end = 0; end < 2; end++) {
        recede_candidates_start(&lists[end], palette, s->ends[end], s->index->rules.tie,
                                allocator);
        if (!code)
            code = list_end(s, end, paints, &lists[end]);
    }
    if (!code)
        recede_graded_finish(palette, target, lists, out);
    recede_candidates_end(&lists[0]);
    recede_candidates_end(&lists[1]);
    return code;
}

recede_code recede_search_graded(const recede_index *index, const recede_wash_target *target,
                                 double known, const recede_allocator *allocator,
                                 recede_cost *cost, recede_wash_recipe *out, double *score)
{
    graded_search s = {.index = index, .ends = {target->from, target->to},
                       .most_paints = recede_index_pigments(index),
                       .tie = recede_millionths(index->rules.tie)};
    int paints;
    recede_code code = recede_set_search_start(&s.sets, index, s.ends, allocator, cost);
    if (code)
        return code;
    *score = INFINITY;
    code = choose_set(&s, known, &paints);
    if (!code && paints <= s.most_paints) {
        *score = s.best[paints].score;
        code = finish(&s, paints, target, allocator, out);
    }
    recede_set_search_end(&s.sets);
    return code;
}
