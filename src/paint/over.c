/*
 * The search for washes laid over dried ones, to the same recipes as the reference.
 *
 * A flat wash: first the closest difference, over every mix, and for each mix a
 * bound below which none of its differences lies; then, from fewest paints and
 * parts on, the mixes whose bound is within the tie, until some of one size hold a
 * film that is. A graded wash: each set's closest at each end, as far as it may
 * matter; then either end's mixes of the set chosen.
 */
#include "recede.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/graded.h"
#include "paint/mixes.h"
#include "paint/over_check.h"
#include "paint/over_visit.h"
#include "paint/recipe.h"

/* One colour sought on one ground: a flat wash, or an end of a graded one. Large:
 * kept off the stack. */
typedef struct {
    const recede_rules *rules;
    recede_palette *ground;
    recede_lab target;
    recede_over_visit visit;
    double closest;       /* flat; millionths */
    recede_graded *graded;
    size_t set;
    int end;
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

static double ground_difference(const goal *g)
{
    recede_lab lab = recede_palette_lab(g->ground, g->ground->paper.at);
    return recede_millionths(recede_delta_e(lab, g->target));
}

/* ---------------------------------------------------------------- flat -- */

static double closest_film(void *context, const recede_mix *mix, double difference)
{
    goal *g = context;
    (void)mix;
    return g->closest = fmin(g->closest, difference);
}

static double list_film(void *context, const recede_mix *mix, double difference)
{
    goal *g = context;
    if (!g->code)
        g->code = recede_candidates_offer(&g->list, mix, difference);
    return recede_candidates_limit(&g->list);
}

static void find_closest(goal *g, double *bounds)
{
    recede_mixes walk;
    g->closest = ground_difference(g);
    g->visit.film = closest_film;
    recede_mixes_start(&walk, (int)g->ground->count, g->rules);
    for (size_t i = 0; recede_mixes_next(&walk); i++)
        bounds[i] = recede_over_visit_mix(&g->visit, &walk.mix, g->closest);
}

/* The mixes within the tie of the first size that has any; bounds NULL: unknown. */
static void list_first_size(goal *g, recede_mixes *walk, const double *bounds)
{
    int parts = 0, count = 0;
    g->visit.film = list_film;
    for (size_t i = 0; !g->code && recede_mixes_next(walk); i++) {
        if ((walk->parts != parts || walk->mix.count != count) && g->list.count)
            return;
        parts = walk->parts;
        count = walk->mix.count;
        double limit = recede_candidates_limit(&g->list);
        if (!bounds || bounds[i] <= limit)
            recede_over_visit_mix(&g->visit, &walk->mix, limit);
    }
}

static recede_code offer_ground(goal *g)
{
    recede_mix bare = {0};
    return recede_candidates_offer(&g->list, &bare, ground_difference(g));
}

static recede_code search_flat(goal *g, const recede_allocator *allocator, recede_recipe *out)
{
    recede_mixes walk;
    size_t mixes = (size_t)recede_mixes_count((int)g->ground->count, g->rules);
    double *bounds = recede_allocate_array(allocator, mixes, sizeof *bounds);
    if (!bounds)
        return RECEDE_NO_MEMORY;
    find_closest(g, bounds);
    g->list.closest = g->closest;
    g->code = offer_ground(g);
    recede_mixes_start(&walk, (int)g->ground->count, g->rules);
    if (!g->code && !g->list.count)
        list_first_size(g, &walk, bounds);
    recede_release(allocator, bounds);
    if (g->code)
        return g->code;
    recede_candidate chosen = recede_candidates_choose(&g->list);
    *out = recede_recipe_of(g->ground, &chosen.mix, g->target, 1e-6 * g->closest);
    return RECEDE_OK;
}

/* -------------------------------------------------------------- graded -- */

static double set_film(void *context, const recede_mix *mix, double difference)
{
    goal *g = context;
    (void)mix;
    recede_graded_offer(g->graded, g->set, 0, g->end, difference);
    return recede_graded_limit(g->graded, g->set, 0, g->end);
}

static void score_sets(goal *const *ends, recede_graded *graded)
{
    recede_mixes walk;
    for (int end = 0; end < 2; end++) {
        ends[end]->graded = graded;
        ends[end]->end = end;
        ends[end]->visit.film = set_film;
        recede_graded_offer(graded, 0, 0, end, ground_difference(ends[end]));
    }
    recede_graded_score(graded, 0);
    recede_mixes_start(&walk, (int)graded->palette->count, graded->rules);
    while (recede_mixes_next(&walk)) {
        for (int end = 0; end < 2; end++) {
            ends[end]->set = walk.set;
            recede_over_visit_mix(&ends[end]->visit, &walk.mix,
                                  recede_graded_limit(graded, walk.set, 0, end));
        }
        recede_graded_score(graded, walk.set);
    }
}

static recede_code list_set(goal *g, size_t set)
{
    recede_mixes walk;
    int paint[RECEDE_MOST_IN_MIX];
    int count = recede_set_paints((int)g->ground->count, set, paint);
    g->list.closest = recede_graded_closest(g->graded, set, 0, g->end);
    if (!count)
        return offer_ground(g);
    recede_mixes_start_set(&walk, paint, count, g->rules->most_parts);
    list_first_size(g, &walk, NULL);
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
        code = search_flat(ends[0], allocator, &out->from);
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
