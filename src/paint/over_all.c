/*
 * The reference search for washes laid over dried ones: the films of paint/film.h
 * with the dried wash for their paper, every mix with every water.
 */
#include "recede.h"

#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/graded.h"
#include "paint/mixes.h"
#include "paint/over_check.h"
#include "paint/palette.h"
#include "paint/sweep.h"

/* A graded wash: its ends, each on its own ground, and the middle. */
typedef struct {
    const recede_allocator *allocator;
    recede_rules rules;
    const recede_over_target *target;
    recede_palette *ground[3]; /* from, to, half */
    recede_graded graded;
} graded_over;

static recede_code offer_ground(recede_candidates *end)
{
    recede_mix bare = {0};
    return recede_candidates_offer(end, &bare, recede_ground_difference(end->palette, end->target));
}

/* Offers every mix of exactly these paints, with every water. */
static recede_code offer_paints(const graded_over *g, const int *paint, int count,
                                recede_candidates *end)
{
    recede_mixes walk;
    recede_sweep sweep;
    recede_code code = RECEDE_OK;
    recede_mixes_start_set(&walk, paint, count, g->rules.most_parts);
    recede_sweep_start(&sweep, end->palette);
    while (!code && recede_mixes_next(&walk)) {
        recede_sweep_take(&sweep, &walk.mix);
        for (size_t level = 0; !code && level < sweep.levels; level++) {
            recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&sweep, level),
                                               end->palette->white);
            walk.mix.water = recede_water_at(level);
            code = recede_candidates_offer(end, &walk.mix,
                                           recede_millionths(recede_delta_e(lab, end->target)));
        }
    }
    return code;
}

/* All mixes of a set for one end; the list is to be ended even on failure. */
static recede_code offer_set(const graded_over *g, size_t set, int which, recede_candidates *end)
{
    int paint[RECEDE_MOST_IN_MIX];
    int count = recede_set_paints((int)g->ground[0]->count, set, paint);
    recede_candidates_start(end, g->ground[which], which ? g->target->wash.to : g->target->wash.from,
                            g->rules.tie, g->allocator);
    return count ? offer_paints(g, paint, count, end) : offer_ground(end);
}

static recede_code score_set(graded_over *g, size_t set)
{
    recede_code code = RECEDE_OK;
    for (int which = 0; !code && which < 2; which++) {
        recede_candidates end;
        code = offer_set(g, set, which, &end);
        recede_graded_offer(&g->graded, set, 0, which, end.closest);
        recede_candidates_end(&end);
    }
    recede_graded_score(&g->graded, set);
    return code;
}

static recede_code choose(const graded_over *g, recede_wash_recipe *out)
{
    recede_candidates ends[2];
    size_t set = recede_graded_choose_set(&g->graded, 0);
    recede_code code = offer_set(g, set, 0, &ends[0]);
    recede_code other = offer_set(g, set, 1, &ends[1]);
    code = code ? code : other;
    if (!code)
        recede_graded_finish(g->ground[2], &g->target->wash, ends, out);
    recede_candidates_end(&ends[0]);
    recede_candidates_end(&ends[1]);
    return code;
}

static recede_code search_sets(graded_over *g, recede_wash_recipe *out)
{
    recede_code code = recede_graded_start(&g->graded, g->ground[0], &g->rules, 1, g->allocator);
    if (code)
        return code;
    for (size_t set = 0; !code && set < g->graded.sets; set++)
        code = score_set(g, set);
    if (!code)
        code = choose(g, out);
    recede_graded_end(&g->graded);
    return code;
}

static recede_code search_graded(const recede_palette *palette, const recede_rules *rules,
                                 const recede_over_target *target, recede_wash_recipe *out,
                                 const recede_allocator *allocator)
{
    const recede_spectrum *grounds[3] = {&target->from_ground, &target->to_ground,
                                         &target->half_ground};
    graded_over g = {.allocator = allocator, .rules = *rules, .target = target};
    recede_code code = RECEDE_OK;
    for (int i = 0; !code && i < 3; i++) {
        g.ground[i] = recede_palette_on(palette, grounds[i], allocator);
        code = g.ground[i] ? RECEDE_OK : RECEDE_NO_MEMORY;
    }
    if (!code)
        code = search_sets(&g, out);
    for (int i = 0; i < 3; i++)
        recede_palette_free(g.ground[i]);
    return code;
}

/* A flat wash: the ordinary search with the ground for paper. */
static recede_code search_flat(const recede_palette *palette, const recede_rules *rules,
                               const recede_over_target *target, recede_wash_recipe *out,
                               const recede_allocator *allocator)
{
    recede_palette *on = recede_palette_on(palette, &target->from_ground, allocator);
    if (!on)
        return RECEDE_NO_MEMORY;
    recede_code code =
        recede_search_all(on, rules, &target->wash, 1, out, allocator, NULL, NULL);
    recede_palette_free(on);
    return code;
}

recede_code recede_search_over_all(const recede_palette *palette, const recede_rules *rules,
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
        memset(&out[i], 0, sizeof out[i]);
        code = (targets[i].wash.graded ? search_graded : search_flat)(palette, &fewer, &targets[i],
                                                                     &out[i], allocator);
        if (!code && progress &&
            progress->report(progress->context, (double)(i + 1) / (double)count))
            code = RECEDE_CANCELLED;
    }
    return code ? recede_fail(error, code, "") : RECEDE_OK;
}
