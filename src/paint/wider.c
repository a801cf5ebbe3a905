#include "paint/wider.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/candidates.h"
#include "paint/graded.h"
#include "paint/graded_search.h"
#include "paint/recipe.h"
#include "paint/stream.h"

/* A wash while mixes go by. A flat one has its closest, later the list to choose
 * from; a graded one the closest of every set at either end. */
typedef struct {
    recede_open_wash *wash;
    size_t first_set, sets;
    double tie;
    double found;               /* flat: closest; graded: best score; so far */
    double *closest;            /* graded: by set and end */
    recede_candidates list;
    int listing, list_pigments, list_parts;
} work;

typedef struct {
    const recede_index *index;
    const recede_allocator *allocator;
    int held;                   /* pigments in the mixes that the index holds */
    work *works;
    recede_stream_goal *goals;
    size_t count, goal_count;
} wider;

static double closest_limit(const work *w)
{
    double limit = fmin(w->wash->beat, w->found - 1);
    if (fmin(w->wash->closest, w->found) > RECEDE_REACHED_MILLIONTHS)
        limit = fmax(limit, RECEDE_REACHED_MILLIONTHS);
    return limit;
}

static double flat_limit(recede_stream_goal *goal, const recede_mixes *walk)
{
    (void)walk;
    return closest_limit(goal->context);
}

static recede_code flat_film(recede_stream_goal *goal, const recede_mixes *walk, double water,
                             double difference, double *limit)
{
    work *w = goal->context;
    (void)walk;
    (void)water;
    w->found = fmin(w->found, difference);
    *limit = closest_limit(w);
    return RECEDE_OK;
}

/* goal->number: which end. */
static double *set_closest(const recede_stream_goal *goal, const recede_mixes *walk)
{
    const work *w = goal->context;
    return &w->closest[2 * (walk->set - w->first_set) + goal->number];
}

static double end_limit(recede_stream_goal *goal, const recede_mixes *walk)
{
    const work *w = goal->context;
    return fmin(*set_closest(goal, walk), fmin(w->found, w->wash->beat) + w->tie);
}

static recede_code end_film(recede_stream_goal *goal, const recede_mixes *walk, double water,
                            double difference, double *limit)
{
    work *w = goal->context;
    double *closest = set_closest(goal, walk), *other = closest + 1 - 2 * (ptrdiff_t)goal->number;
    (void)water;
    *closest = difference;
    w->found = fmin(w->found, fmax(*closest, *other));
    *limit = end_limit(goal, walk);
    return RECEDE_OK;
}

/* The list is of one class: the first that has any. */
static double list_limit(recede_stream_goal *goal, const recede_mixes *walk)
{
    const work *w = goal->context;
    int past = w->list.count && (walk->mix.count != w->list_pigments ||
                                 walk->parts != w->list_parts);
    return w->listing && !past ? recede_candidates_limit(&w->list) : -1;
}

static recede_code listed_film(recede_stream_goal *goal, const recede_mixes *walk, double water,
                               double difference, double *limit)
{
    work *w = goal->context;
    recede_mix mix = walk->mix;
    mix.water = water;
    w->list_pigments = mix.count;
    w->list_parts = walk->parts;
    recede_code code = recede_candidates_offer(&w->list, &mix, difference);
    *limit = recede_candidates_limit(&w->list);
    return code;
}

static void end(wider *s)
{
    for (size_t i = 0; s->works && i < s->count; i++) {
        recede_release(s->allocator, s->works[i].closest);
        recede_candidates_end(&s->works[i].list);
    }
    recede_release(s->allocator, s->works);
    recede_release(s->allocator, s->goals);
}

static void add_goal(wider *s, work *w, recede_lab target, size_t number)
{
    recede_stream_goal *goal = &s->goals[s->goal_count++];
    recede_aim_at(&goal->aim, target);
    goal->limit = w->closest ? end_limit : flat_limit;
    goal->film = w->closest ? end_film : flat_film;
    goal->context = w;
    goal->number = number;
}

static recede_code start_work(wider *s, work *w, recede_open_wash *wash)
{
    const recede_rules *rules = &s->index->rules;
    int paints = (int)s->index->palette->count;
    w->wash = wash;
    w->found = INFINITY;
    w->tie = recede_millionths(rules->tie);
    w->first_set = recede_set_count(paints, s->held);
    w->sets = recede_set_count(paints, rules->most_pigments) - w->first_set;
    recede_candidates_start(&w->list, s->index->palette, wash->target->from, rules->tie,
                            s->allocator);
    if (!wash->target->graded) {
        add_goal(s, w, wash->target->from, 0);
        return RECEDE_OK;
    }
    w->closest = recede_allocate_array(s->allocator, 2 * w->sets, sizeof(double));
    if (!w->closest)
        return RECEDE_NO_MEMORY;
    for (size_t i = 0; i < 2 * w->sets; i++)
        w->closest[i] = INFINITY;
    add_goal(s, w, wash->target->from, 0);
    add_goal(s, w, wash->target->to, 1);
    return RECEDE_OK;
}

static recede_code start(wider *s, recede_open_wash *washes, size_t count)
{
    recede_code code = RECEDE_OK;
    s->works = recede_allocate_array(s->allocator, count, sizeof *s->works);
    s->goals = recede_allocate_array(s->allocator, 2 * count, sizeof *s->goals);
    if (!s->works || !s->goals)
        code = RECEDE_NO_MEMORY;
    if (s->works)
        memset(s->works, 0, count * sizeof *s->works);
    for (size_t i = 0; !code && i < count; i++) {
        s->count++;
        code = start_work(s, &s->works[i], &washes[i]);
    }
    return code;
}

/* A flat wash after the first pass; sets it listing where the choice is still open. */
static recede_code settle_flat(wider *s, work *w)
{
    recede_open_wash *wash = w->wash;
    recede_flat_answer answer = {.found = 1, .chosen.mix = wash->chosen};
    recede_cost cost = {0};
    recede_code code = RECEDE_OK;
    if (w->found <= wash->beat)
        code = recede_flat_find(s->index, wash->target->from, w->found, s->allocator, &cost,
                                &answer);
    w->list.closest = w->found;
    w->listing = !answer.found;
    if (!code && answer.found)
        wash->out->from = recede_recipe_of(s->index->palette, &answer.chosen.mix,
                                           wash->target->from,
                                           1e-6 * fmin(wash->closest, w->found));
    return code;
}

/* Of the sets that the index does not hold: fewest paints, smallest score, first. */
static size_t choose_set(const wider *s, const work *w)
{
    size_t set = 0, chosen = 0;
    for (int paints = s->held + 1; set < w->sets; paints++) {
        size_t end_set = recede_set_count((int)s->index->palette->count, paints) - w->first_set;
        double score = INFINITY;
        for (; set < end_set; set++) {
            double own = fmax(w->closest[2 * set], w->closest[2 * set + 1]);
            if (own < score) {
                score = own;
                chosen = set;
            }
        }
        if (score <= w->found + w->tie)
            break;
    }
    return chosen + w->first_set;
}

static recede_code settle_graded(wider *s, work *w)
{
    recede_open_wash *wash = w->wash;
    recede_cost cost = {0};
    recede_graded graded;
    double score;
    if (w->found > wash->beat)
        return RECEDE_OK;
    recede_code code = recede_search_graded(s->index, wash->target, w->found, s->allocator,
                                            &cost, wash->out, &score);
    if (code || !isinf(score))
        return code;
    code = recede_graded_start(&graded, s->index->palette, &s->index->rules, 0, s->allocator);
    if (!code)
        code = recede_graded_of_set(&graded, choose_set(s, w), wash->target, wash->out);
    return code;
}

/* The second pass, for the washes that are listing. */
static recede_code list(wider *s, const recede_stream_progress *progress)
{
    recede_code code = RECEDE_OK;
    int any = 0;
    for (size_t i = 0; i < s->goal_count; i++) {
        any |= ((work *)s->goals[i].context)->listing;
        s->goals[i].limit = list_limit;
        s->goals[i].film = listed_film;
    }
    if (any)
        code = recede_stream(s->index, s->held, s->goals, s->goal_count, progress);
    for (size_t i = 0; !code && i < s->count; i++) {
        work *w = &s->works[i];
        if (!w->listing)
            continue;
        recede_candidate chosen = recede_candidates_choose(&w->list);
        w->wash->out->from = recede_recipe_of(s->index->palette, &chosen.mix,
                                              w->wash->target->from, 1e-6 * w->found);
    }
    return code;
}

static recede_code search(wider *s, const recede_progress *progress)
{
    recede_stream_progress first = {progress, 0, 0.5}, second = {progress, 0.5, 1};
    recede_code code = recede_stream(s->index, s->held, s->goals, s->goal_count, &first);
    for (size_t i = 0; !code && i < s->count; i++)
        code = s->works[i].closest ? settle_graded(s, &s->works[i])
                                   : settle_flat(s, &s->works[i]);
    return code ? code : list(s, &second);
}

recede_code recede_search_wider(const recede_index *index, recede_open_wash *washes,
                                size_t count, const recede_allocator *allocator,
                                const recede_progress *progress)
{
    wider s = {.index = index, .allocator = allocator, .held = recede_index_pigments(index)};
    recede_code code = start(&s, washes, count);
    if (!code)
        code = search(&s, progress);
    end(&s);
    return code;
}
