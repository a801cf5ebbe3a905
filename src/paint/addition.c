/*
 * Which pigment of the library a palette lacks most: of all mixes that contain one
 * more pigment, the closest. Sets of paints go by from fewer to more, every pigment
 * of the library with each, so that few are left to beat by the time of the many.
 */
#include "recede.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/mixes.h"
#include "paint/probe.h"
#include "paint/rule.h"
#include "paint/targets.h"

/* For one target, in millionths: the closest without and with the pigment of that
 * number, -1 while there is none. */
typedef struct {
    double without, with;
    int pigment;
} best;

typedef struct {
    const recede_palette *palette;
    const recede_rules *rules;
    const recede_allocator *allocator;
    const recede_progress *progress;
    size_t count;
    recede_probe probe;
    best *best;
    double *limits, *found;
} search;

/* 1 when a paint of the palette is this pigment and nothing else. */
static int holds(const recede_palette *palette, const recede_pigment *pigment)
{
    for (size_t i = 0; i < palette->count; i++)
        if (palette->paints[i].ingredients == 1 &&
            palette->paints[i].of[0].pigment == pigment)
            return 1;
    return 0;
}

/* 1 and its paint when the pigment of that number may be added. */
static int candidate(const search *s, int number, recede_paint *paint)
{
    const recede_pigment *pigment = recede_pigment_at((size_t)number);
    if (holds(s->palette, pigment) || recede_paint_named(pigment->name, paint, NULL))
        return 0;
    return !(paint->is_white && s->palette->medium == RECEDE_WATERCOLOUR);
}

/* Takes a set of the palette's paints from a slot on; returns how many. */
static int take_set(search *s, size_t set, int slot)
{
    int paint[RECEDE_MOST_IN_MIX];
    int count = recede_set_paints((int)s->palette->count, set, paint);
    for (int i = 0; i < count; i++)
        recede_probe_take(&s->probe, slot + i, &s->palette->paints[paint[i]]);
    return count;
}

static void run_own(search *s, int paints)
{
    for (size_t i = 0; i < s->count; i++)
        s->limits[i] = s->best[i].without;
    recede_probe_run(&s->probe, paints, s->rules->most_parts, s->limits, s->found);
    for (size_t i = 0; i < s->count; i++)
        s->best[i].without = fmin(s->best[i].without, s->found[i]);
}

/* A pigment must come nearer than the palette does, and than any earlier one of the
 * library; a later one must yield to it where they come as near. */
static double limit_for(const best *b, int pigment)
{
    if (b->pigment < 0)
        return b->without - 1;
    return pigment < b->pigment ? b->with : b->with - 1;
}

static void run_with(search *s, int paints, int pigment)
{
    for (size_t i = 0; i < s->count; i++)
        s->limits[i] = limit_for(&s->best[i], pigment);
    recede_probe_run(&s->probe, paints, s->rules->most_parts, s->limits, s->found);
    for (size_t i = 0; i < s->count; i++)
        if (s->found[i] <= s->limits[i]) {
            s->best[i].with = s->found[i];
            s->best[i].pigment = pigment;
        }
}

static int stopped(const search *s, double done)
{
    return s->progress && s->progress->report(s->progress->context, done);
}

/* The palette's own mixes, as the palette's paints are so many at most. */
static void search_own(search *s)
{
    size_t sets = recede_set_count((int)s->palette->count, s->rules->most_pigments);
    for (size_t set = 1; set < sets; set++)
        run_own(s, take_set(s, set, 0));
}

/* Every pigment with each set of so many others. */
static recede_code search_with(search *s, int others)
{
    int paints = (int)s->palette->count, pigments = (int)recede_pigment_count();
    size_t first = others ? recede_set_count(paints, others - 1) : 0;
    size_t end = recede_set_count(paints, others);
    for (int pigment = 0; pigment < pigments; pigment++) {
        recede_paint paint;
        if (stopped(s, (others + (double)pigment / pigments) / s->rules->most_pigments))
            return RECEDE_CANCELLED;
        if (!candidate(s, pigment, &paint))
            continue;
        recede_probe_take(&s->probe, 0, &paint);
        for (size_t set = first; set < end; set++)
            run_with(s, 1 + take_set(s, set, 1), pigment);
    }
    return RECEDE_OK;
}

static recede_code search_all(search *s, recede_addition *out)
{
    recede_code code = RECEDE_OK;
    search_own(s);
    for (int others = 0; !code && others < s->rules->most_pigments; others++)
        code = search_with(s, others);
    for (size_t i = 0; !code && i < s->count; i++) {
        const best *b = &s->best[i];
        out[i].pigment = b->pigment < 0 ? NULL : recede_pigment_at((size_t)b->pigment);
        out[i].without = 1e-6 * b->without;
        out[i].delta_e = b->pigment < 0 ? out[i].without : 1e-6 * b->with;
    }
    return code;
}

static recede_code start(search *s, const recede_spectrum *ground, const recede_lab *targets)
{
    recede_lab bare = recede_palette_lab(s->palette, ground->at);
    s->best = recede_allocate_array(s->allocator, s->count, sizeof *s->best);
    s->limits = recede_allocate_array(s->allocator, s->count, sizeof *s->limits);
    s->found = recede_allocate_array(s->allocator, s->count, sizeof *s->found);
    if (!s->best || !s->limits || !s->found)
        return RECEDE_NO_MEMORY;
    for (size_t i = 0; i < s->count; i++)
        s->best[i] = (best){recede_millionths(recede_delta_e(bare, targets[i])), INFINITY, -1};
    return recede_probe_start(&s->probe, s->palette, ground, targets, s->count, s->allocator);
}

static void end(search *s)
{
    recede_probe_end(&s->probe);
    recede_release(s->allocator, s->best);
    recede_release(s->allocator, s->limits);
    recede_release(s->allocator, s->found);
    recede_release(s->allocator, s);
}

static recede_code check(const recede_rules *rules, const recede_lab *targets, size_t count,
                         recede_error *error)
{
    recede_code code = recede_rules_check(rules, error);
    for (size_t i = 0; !code && i < count; i++) {
        recede_wash_target wash = {.from = targets[i]};
        code = recede_targets_check(&wash, 1, error);
    }
    return code;
}

recede_code recede_best_additions(const recede_palette *palette, const recede_rules *rules,
                                  const recede_spectrum *ground, const recede_lab *targets,
                                  size_t count, recede_addition *out,
                                  const recede_allocator *allocator,
                                  const recede_progress *progress, recede_error *error)
{
    recede_code code = check(rules, targets, count, error);
    if (code || count == 0)
        return code;
    allocator = recede_allocator_or_default(allocator);
    search *s = recede_allocate_array(allocator, 1, sizeof *s);
    if (!s)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    memset(s, 0, sizeof *s);
    s->palette = palette;
    s->rules = rules;
    s->allocator = allocator;
    s->progress = progress;
    s->count = count;
    s->probe.allocator = allocator;
    code = start(s, ground ? ground : &palette->paper, targets);
    if (!code)
        code = search_all(s, out);
    end(s);
    return code ? recede_fail(error, code, "") : RECEDE_OK;
}
