/*
 * The reference search: every mix with every water, films outer and targets inner,
 * so that one pass answers all targets. It goes from fewer pigments and parts to
 * more (paint/mixes.h), which lets the candidates of a target stay few.
 */
#include "recede.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/candidates.h"
#include "paint/ends_apart.h"
#include "paint/graded.h"
#include "paint/mixes.h"
#include "paint/nearness.h"
#include "paint/recipe.h"
#include "paint/sweep.h"
#include "paint/targets.h"

/* One colour sought: a flat wash, or an end of a graded one. */
typedef struct goal {
    recede_lab lab;
    double limit; /* difference above which a mix does not matter */
} goal;

/* Goals: the flat washes first, then from and to of each graded one. */
typedef struct search {
    const recede_palette *palette;
    const recede_rules *rules;
    const recede_allocator *allocator;
    size_t flats, goals;
    goal *goal;
    recede_candidates *lists; /* one a flat wash */
    recede_graded graded;
} search;

static void end(search *s)
{
    for (size_t i = 0; s->lists && i < s->flats; i++)
        recede_candidates_end(&s->lists[i]);
    recede_release(s->allocator, s->lists);
    recede_release(s->allocator, s->goal);
    recede_graded_end(&s->graded);
}

static void add_goals(search *s, const recede_wash_target *targets, size_t count)
{
    size_t flat = 0, graded_end = s->flats;
    for (size_t i = 0; i < count; i++) {
        if (targets[i].graded) {
            s->goal[graded_end++] = (goal){targets[i].from, INFINITY};
            s->goal[graded_end++] = (goal){targets[i].to, INFINITY};
        } else {
            recede_candidates_start(&s->lists[flat], s->palette, targets[i].from, s->rules->tie,
                                    s->allocator);
            s->goal[flat++] = (goal){targets[i].from, INFINITY};
        }
    }
}

static recede_code start(search *s, const recede_wash_target *targets, size_t count)
{
    size_t washes = 0;
    for (size_t i = 0; i < count; i++)
        washes += targets[i].graded != 0;
    recede_code code = recede_graded_start(&s->graded, s->palette, s->rules, washes,
                                           s->allocator);
    if (code)
        return code;
    s->goals = count + washes;
    s->goal = recede_allocate_array(s->allocator, s->goals, sizeof s->goal[0]);
    s->lists = recede_allocate_array(s->allocator, count - washes, sizeof s->lists[0]);
    if (!s->goal || !s->lists) {
        end(s);
        return RECEDE_NO_MEMORY;
    }
    s->flats = count - washes;
    add_goals(s, targets, count);
    return RECEDE_OK;
}

/* The difference that rounds to so many millionths at most, and a little more. */
static double limit_of(double millionths)
{
    return 1e-6 * (millionths + 1);
}

static void limit_ends(search *s, size_t set)
{
    for (size_t i = s->flats; i < s->goals; i++)
        s->goal[i].limit = limit_of(recede_graded_limit(&s->graded, set, (i - s->flats) / 2,
                                                        (int)(i - s->flats) % 2));
}

static recede_code take(search *s, size_t i, const recede_mix *mix, size_t set, double difference)
{
    if (i < s->flats) {
        recede_code code = recede_candidates_offer(&s->lists[i], mix, difference);
        s->goal[i].limit = limit_of(recede_candidates_limit(&s->lists[i]));
        return code;
    }
    size_t wash = (i - s->flats) / 2;
    int which = (int)(i - s->flats) % 2;
    recede_graded_offer(&s->graded, set, wash, which, difference);
    s->goal[i].limit = limit_of(recede_graded_limit(&s->graded, set, wash, which));
    return RECEDE_OK;
}

/* Holds one film against every goal. */
static recede_code consider(search *s, const recede_mix *mix, size_t set, recede_xyz xyz)
{
    recede_lab lab = recede_lab_of_xyz(xyz, s->palette->white);
    for (size_t i = 0; i < s->goals; i++) {
        const goal *g = &s->goal[i];
        if (recede_lightness_beyond(lab.l, g->lab.l, g->limit))
            continue;
        double difference = recede_delta_e(lab, g->lab);
        if (difference > g->limit)
            continue;
        recede_code code = take(s, i, mix, set, recede_millionths(difference));
        if (code)
            return code;
    }
    return RECEDE_OK;
}

static recede_code consider_mix(search *s, recede_sweep *sweep, recede_mix mix, size_t set)
{
    recede_sweep_take(sweep, &mix);
    limit_ends(s, set);
    for (size_t level = 0; level < sweep->levels; level++) {
        mix.water = recede_water_at(level);
        recede_code code = consider(s, &mix, set, recede_sweep_xyz(sweep, level));
        if (code)
            return code;
    }
    recede_graded_score(&s->graded, set);
    return RECEDE_OK;
}

static recede_code consider_ground(search *s)
{
    recede_mix bare = {0};
    recede_code code = RECEDE_OK;
    for (size_t i = 0; !code && i < s->goals; i++)
        code = take(s, i, &bare, 0, recede_ground_difference(s->palette, s->goal[i].lab));
    recede_graded_score(&s->graded, 0);
    return code;
}

static void next_size(search *s)
{
    for (size_t i = 0; i < s->flats; i++) {
        recede_candidates_next_size(&s->lists[i]);
        s->goal[i].limit = limit_of(recede_candidates_limit(&s->lists[i]));
    }
}

/* Tells the caller each whole per cent; not 0 when the caller wants to stop. */
static int report(const recede_progress *progress, double done, double all, int *told)
{
    int percent = (int)(100 * done / all);
    if (!progress || percent == *told)
        return 0;
    *told = percent;
    return progress->report(progress->context, done / all);
}

static recede_code consider_all(search *s, const recede_progress *progress)
{
    recede_mixes walk;
    recede_sweep sweep;
    int parts = 0, count = 0, told = -1;
    double done = 0, all = recede_mixes_count((int)s->palette->count, s->rules);
    recede_code code = consider_ground(s);
    recede_mixes_start(&walk, (int)s->palette->count, s->rules);
    recede_sweep_start(&sweep, s->palette);
    while (!code && recede_mixes_next(&walk)) {
        if (report(progress, done++, all, &told))
            return RECEDE_CANCELLED;
        if (walk.parts != parts || walk.mix.count != count)
            next_size(s);
        parts = walk.parts;
        count = walk.mix.count;
        code = consider_mix(s, &sweep, walk.mix, walk.set);
    }
    if (!code && report(progress, done, all, &told))
        return RECEDE_CANCELLED;
    return code;
}

static recede_code finish(search *s, const recede_wash_target *targets, size_t count,
                          recede_wash_recipe *out)
{
    size_t flat = 0, wash = 0;
    recede_code code = RECEDE_OK;
    for (size_t i = 0; !code && i < count; i++) {
        memset(&out[i], 0, sizeof out[i]);
        if (targets[i].graded) {
            code = recede_graded_choose(&s->graded, wash++, &targets[i], &out[i]);
        } else {
            recede_candidates *list = &s->lists[flat++];
            recede_candidate chosen = recede_candidates_choose(list);
            out[i].from = recede_recipe_of(s->palette, &chosen.mix, targets[i].from,
                                           1e-6 * list->closest);
        }
    }
    return code;
}

typedef struct {
    const recede_palette *palette;
    const recede_rules *rules;
    const recede_allocator *allocator;
    const recede_progress *progress;
} asked;

static recede_code seek(const void *context, const recede_wash_target *targets, size_t count,
                        recede_wash_recipe *out)
{
    const asked *a = context;
    search s = {.palette = a->palette, .rules = a->rules, .allocator = a->allocator};
    recede_code code = start(&s, targets, count);
    if (code)
        return code;
    code = consider_all(&s, a->progress);
    if (!code)
        code = finish(&s, targets, count, out);
    end(&s);
    return code;
}

recede_code recede_search_all(const recede_palette *palette, const recede_rules *rules,
                              const recede_wash_target *targets, size_t count,
                              recede_wash_recipe *out, const recede_allocator *allocator,
                              const recede_progress *progress, recede_error *error)
{
    const asked a = {palette, rules, recede_allocator_or_default(allocator), progress};
    recede_code code = recede_rules_check(rules, error);
    if (!code)
        code = recede_targets_check(targets, count, error);
    if (code || count == 0)
        return code;
    code = recede_ends_are_apart(palette, targets, count)
               ? recede_search_ends_apart(palette, targets, count, out, a.allocator, seek, &a)
               : seek(&a, targets, count, out);
    return code ? recede_fail(error, code, "") : RECEDE_OK;
}
