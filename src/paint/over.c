/*
 * The search for washes laid over dried ones, to the same recipes as the reference:
 * mix by mix from fewest paints and parts on, each as far as it may matter.
 *
 * For a flat wash the rule wants the closest difference d only to say who is within the
 * tie of it. So the mixes are listed that are within the tie of the closest so far, up to
 * the first size that has any, and one is chosen. Those ahead are then looked through only
 * for one so close that it puts out the choice: most often there is none, and one limit
 * less than d passes over nearly all.
 */
#include "recede.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/graded.h"
#include "paint/mixes.h"
#include "paint/over_check.h"
#include "paint/over_likely.h"
#include "paint/over_visit.h"
#include "paint/reach.h"
#include "paint/recipe.h"

/* So many pairs of paints are tried first, unless they come so near, in ties. */
enum { LIKELY_PAIRS = 2 };
#define NEAR_ENOUGH 0.25

/* One colour sought on one ground: a flat wash, or an end of a graded one. Large:
 * kept off the stack. */
typedef struct {
    const recede_rules *rules;
    recede_palette *ground;
    recede_lab target;
    recede_over_visit visit;
    recede_graded *graded;
    size_t set;
    int end;
    double smallest; /* graded: score that a set must come under */
    double to_beat;  /* flat: what a mix ahead must come to, to put out the choice */
    recede_candidates list;
    recede_code code;
} goal;

static void free_goal(goal *g, const recede_allocator *allocator)
{
    if (!g)
        return;
    recede_candidates_end(&g->list);
    recede_palette_free(g->ground);
    recede_release(allocator, g);
}

/* NULL when there is no memory. */
static goal *new_goal(const recede_palette *palette, const recede_rules *rules,
                      const recede_spectrum *ground, recede_lab target,
                      const recede_allocator *allocator)
{
    goal *g = recede_allocate_array(allocator, 1, sizeof *g);
    if (!g)
        return NULL;
    memset(g, 0, sizeof *g);
    g->rules = rules;
    g->target = target;
    g->ground = recede_palette_on(palette, ground, allocator);
    if (!g->ground) {
        free_goal(g, allocator);
        return NULL;
    }
    recede_candidates_start(&g->list, g->ground, target, rules->tie, allocator);
    recede_over_visit_start(&g->visit, g->ground, target);
    g->visit.context = g;
    return g;
}

/* ---------------------------------------------------------------- flat -- */

static double list_film(void *context, const recede_mix *mix, double difference)
{
    goal *g = context;
    if (!g->code)
        g->code = recede_candidates_offer(&g->list, mix, difference);
    return recede_candidates_limit(&g->list);
}

static recede_code offer_ground(goal *g)
{
    recede_mix bare = {0};
    return recede_candidates_offer(&g->list, &bare, recede_ground_difference(g->ground, g->target));
}

/* How close a mix yet to come must be to matter: so close that it puts out the mix
 * chosen, or says that the target is reached after all. */
static double limit_ahead(const goal *g)
{
    double closest = g->list.closest, limit = g->to_beat;
    if (closest > RECEDE_REACHED_MILLIONTHS)
        limit = fmax(limit, RECEDE_REACHED_MILLIONTHS);
    return fmin(limit, closest - 1);
}

static double nearer_film(void *context, const recede_mix *mix, double difference)
{
    goal *g = context;
    (void)mix;
    g->list.closest = difference;
    return limit_ahead(g);
}

static int any_within(const recede_candidates *list)
{
    for (size_t i = 0; i < list->count; i++)
        if (list->items[i].difference <= list->closest + list->tie)
            return 1;
    return 0;
}

/* A walk of all mixes: the one it stands at is the next to be visited. */
typedef struct {
    recede_mixes at;
    int more;
    size_t passed;
} stroll;

static void step(stroll *s)
{
    s->more = recede_mixes_next(&s->at);
    s->passed++;
}

/* Lists the next size's mixes within the tie of the closest so far. */
static void list_size(goal *g, stroll *listed)
{
    int parts = listed->at.parts;
    g->visit.film = list_film;
    for (; !g->code && listed->more && listed->at.parts == parts; step(listed))
        recede_over_visit_mix(&g->visit, &listed->at.mix, recede_candidates_limit(&g->list));
}

/* Looks ahead until the mix chosen is beaten; 0 when it stands against all. */
static int is_beaten(goal *g, stroll *ahead)
{
    g->visit.film = nearer_film;
    for (; ahead->more && g->list.closest > g->to_beat && limit_ahead(g) >= 0; step(ahead))
        recede_over_visit_mix(&g->visit, &ahead->at.mix, limit_ahead(g));
    return g->list.closest <= g->to_beat;
}

/* Whether the search itself comes by this mix, perhaps in lower terms. */
static int is_among_mixes(const goal *g, const recede_mix *mix)
{
    int parts = 0, last = -1;
    if (mix->count < 1 || mix->count > g->rules->most_pigments)
        return 0;
    for (int i = 0; i < mix->count; last = mix->paint[i++]) {
        if (mix->paint[i] <= last || mix->paint[i] >= (int)g->ground->count || mix->parts[i] < 1 ||
            mix->parts[i] > g->rules->most_parts)
            return 0;
        parts += mix->parts[i];
    }
    return parts <= g->rules->most_parts;
}

/* The closest of the guess, or else of the pairs that promise most: a good start, no
 * more. */
static void approach(goal *g, const recede_mix *guess)
{
    recede_over_pair pair[LIKELY_PAIRS];
    int count = 0;
    g->visit.film = nearer_film;
    g->to_beat = INFINITY;
    if (is_among_mixes(g, guess))
        recede_over_visit_mix(&g->visit, guess, g->list.closest - 1);
    else if (g->rules->most_pigments > 1)
        count = recede_over_likely(&g->visit, pair, LIKELY_PAIRS);
    for (int i = 0; i < count && g->list.closest > NEAR_ENOUGH * g->list.tie; i++) {
        recede_mixes walk;
        recede_mixes_start_set(&walk, pair[i].paint, 2, g->rules->most_parts);
        while (recede_mixes_next(&walk))
            recede_over_visit_mix(&g->visit, &walk.mix, g->list.closest - 1);
    }
}

/* The rule's choice by the closest so far: of the first size that has any within its
 * tie. */
static recede_code choose_listed(goal *g, stroll *listed, recede_candidate *out)
{
    while (!g->code && listed->more && !any_within(&g->list))
        list_size(g, listed);
    if (!g->code)
        *out = recede_candidates_choose(&g->list);
    return g->code;
}

/* What was passed looking ahead need not be passed again: each choice is harder to beat
 * than the one before. */
static recede_code choose(goal *g, const recede_mix *guess, recede_candidate *out)
{
    stroll listed = {.passed = 0}, ahead;
    recede_mixes_start(&listed.at, (int)g->ground->count, g->rules);
    listed.more = recede_mixes_next(&listed.at);
    ahead = listed;
    approach(g, guess);
    do {
        if (choose_listed(g, &listed, out))
            return g->code;
        g->to_beat = out->difference - g->list.tie - 1;
        if (ahead.passed < listed.passed)
            ahead = listed;
    } while (is_beaten(g, &ahead));
    return RECEDE_OK;
}

static recede_code search_flat(goal *g, const recede_mix *guess, recede_recipe *out)
{
    recede_candidate chosen;
    g->code = offer_ground(g);
    if (!g->code)
        g->code = choose(g, guess, &chosen);
    if (!g->code)
        *out = recede_recipe_of(g->ground, &chosen.mix, g->target, 1e-6 * g->list.closest);
    return g->code;
}

/* -------------------------------------------------------------- graded -- */

/* While sets of so many paints go by: the smallest score of theirs. A set that has a
 * larger one will not be chosen. */
typedef struct {
    goal *const *ends;
    recede_graded *graded;
    int count;
    double smallest;
} scoring;

static double score_of(const recede_graded *graded, size_t set)
{
    return fmax(recede_graded_closest(graded, set, 0, 0),
                recede_graded_closest(graded, set, 0, 1));
}

static double set_limit(const goal *g)
{
    return fmin(g->smallest, recede_graded_limit(g->graded, g->set, 0, g->end));
}

static double set_film(void *context, const recede_mix *mix, double difference)
{
    goal *g = context;
    (void)mix;
    recede_graded_offer(g->graded, g->set, 0, g->end, difference);
    return set_limit(g);
}

/* The closest of a set at one end, where it matters. */
static void visit_set(goal *g, size_t set, const int *paint, int count, double smallest)
{
    recede_mixes walk;
    g->set = set;
    g->smallest = smallest;
    recede_mixes_start_set(&walk, paint, count, g->rules->most_parts);
    while (recede_mixes_next(&walk))
        recede_over_visit_mix(&g->visit, &walk.mix, set_limit(g));
}

static void score_set(scoring *s, size_t set, const int *paint)
{
    visit_set(s->ends[0], set, paint, s->count, s->smallest);
    if (recede_graded_closest(s->graded, set, 0, 0) <= s->smallest)
        visit_set(s->ends[1], set, paint, s->count, s->smallest);
    recede_graded_score(s->graded, set);
    s->smallest = fmin(s->smallest, score_of(s->graded, set));
}

/* Sets of more paints can then make no difference. */
static int is_certain_set(const recede_graded *graded)
{
    return score_of(graded, recede_graded_choose_set(graded, 0)) <=
           recede_millionths(graded->rules->tie);
}

static void score_sets(goal *const *ends, recede_graded *graded)
{
    scoring s = {ends, graded, 0, INFINITY};
    for (int end = 0; end < 2; end++) {
        ends[end]->graded = graded;
        ends[end]->end = end;
        ends[end]->visit.film = set_film;
        recede_graded_offer(graded, 0, 0, end,
                            recede_ground_difference(ends[end]->ground, ends[end]->target));
    }
    recede_graded_score(graded, 0);
    for (size_t set = 1; set < graded->sets; set++) {
        int paint[RECEDE_MOST_IN_MIX];
        int count = recede_set_paints((int)graded->palette->count, set, paint);
        if (count != s.count) {
            if (is_certain_set(graded))
                return;
            s.count = count;
            s.smallest = INFINITY;
        }
        score_set(&s, set, paint);
    }
}

/* An end's mixes within the tie, of the fewest parts that have any. */
static recede_code list_set(goal *g, size_t set)
{
    recede_mixes walk;
    int paint[RECEDE_MOST_IN_MIX], parts = 0;
    int count = recede_set_paints((int)g->ground->count, set, paint);
    g->list.closest = recede_graded_closest(g->graded, set, 0, g->end);
    if (!count)
        return offer_ground(g);
    g->visit.film = list_film;
    recede_mixes_start_set(&walk, paint, count, g->rules->most_parts);
    while (!g->code && recede_mixes_next(&walk) && (walk.parts == parts || !g->list.count)) {
        parts = walk.parts;
        recede_over_visit_mix(&g->visit, &walk.mix, recede_candidates_limit(&g->list));
    }
    return g->code;
}

static recede_code search_graded(goal *const *ends, const recede_palette *halfway,
                                 const recede_wash_target *target,
                                 const recede_allocator *allocator, recede_wash_recipe *out)
{
    recede_graded graded;
    recede_code code = recede_graded_start(&graded, halfway, ends[0]->rules, 1, allocator);
    if (code)
        return code;
    score_sets(ends, &graded);
    size_t set = recede_graded_choose_set(&graded, 0);
    for (int end = 0; !code && end < 2; end++)
        code = list_set(ends[end], set);
    if (!code) {
        recede_candidates lists[2] = {ends[0]->list, ends[1]->list};
        recede_graded_finish(halfway, target, lists, out);
    }
    recede_graded_end(&graded);
    return code;
}

/* -------------------------------------------------------------- search -- */

static recede_code search_one(const recede_palette *palette, const recede_rules *rules,
                              const recede_over_target *target, recede_wash_recipe *out,
                              const recede_allocator *allocator)
{
    goal *ends[2] = {NULL, NULL};
    recede_palette *halfway = NULL;
    int graded = target->wash.graded;
    ends[0] = new_goal(palette, rules, &target->from_ground, target->wash.from, allocator);
    if (graded) {
        ends[1] = new_goal(palette, rules, &target->to_ground, target->wash.to, allocator);
        halfway = recede_palette_on(palette, &target->half_ground, allocator);
    }
    recede_code code = RECEDE_NO_MEMORY;
    memset(out, 0, sizeof *out);
    if (graded && ends[0] && ends[1] && halfway)
        code = search_graded(ends, halfway, &target->wash, allocator, out);
    else if (!graded && ends[0])
        code = search_flat(ends[0], &target->guess, &out->from);
    recede_palette_free(halfway);
    free_goal(ends[0], allocator);
    free_goal(ends[1], allocator);
    return code;
}

recede_code recede_search_over(const recede_palette *palette, const recede_rules *rules,
                               const recede_over_target *targets, size_t count,
                               recede_wash_recipe *out, const recede_allocator *allocator,
                               const recede_progress *progress, recede_error *error)
{
    recede_code code = recede_over_check(palette, rules, targets, count, error);
    if (code)
        return code;
    if (!recede_curve_holds(palette))
        return recede_search_over_all(palette, rules, targets, count, out, allocator, progress,
                                      error);
    recede_rules fewer = recede_over_rules(rules);
    allocator = recede_allocator_or_default(allocator);
    for (size_t i = 0; !code && i < count; i++) {
        code = search_one(palette, &fewer, &targets[i], &out[i], allocator);
        if (!code && progress &&
            progress->report(progress->context, (double)(i + 1) / (double)count))
            code = RECEDE_CANCELLED;
    }
    return code ? recede_fail(error, code, "") : RECEDE_OK;
}
