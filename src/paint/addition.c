/*
 * Which pigment of the library a palette lacks most, and in opaque media which of its
 * paints let down: of all mixes that contain one more paint, the closest. Sets of paints
 * go by from fewer to more, every candidate with each, so that few are left to beat by
 * the time of the many.
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

/* Pigments by their number in the library; the palette's paints by theirs, let down. */
typedef enum { PIGMENT, LET_DOWN, KINDS } kind;

/* For one target, in millionths: the closest with a candidate, -1 while there is none. */
typedef struct {
    double with;
    int number;
} winner;

/* And the closest without. */
typedef struct {
    double without;
    winner of[KINDS];
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
static int pigment_candidate(const search *s, int number, recede_paint *paint)
{
    const recede_pigment *pigment = recede_pigment_at((size_t)number);
    if (holds(s->palette, pigment) || recede_paint_named(pigment->name, paint, NULL))
        return 0;
    return !(paint->is_white && s->palette->medium == RECEDE_WATERCOLOUR);
}

static const recede_paint *first_white(const recede_palette *palette)
{
    size_t i = 0;
    while (i + 1 < palette->count && !palette->paints[i].is_white)
        i++;
    return &palette->paints[i];
}

/* 1 when the palette has the paint let down already. */
static int holds_let_down(const recede_palette *palette, const recede_paint *strong)
{
    for (size_t i = 0; i < palette->count; i++) {
        const recede_paint *paint = &palette->paints[i];
        for (int j = 0; paint->let_down && j < paint->ingredients; j++)
            if (strong->ingredients == 1 && paint->of[j].pigment == strong->of[0].pigment)
                return 1;
    }
    return 0;
}

/* 1 and the paint let down where that would be a new one. */
static int let_down_candidate(const search *s, int number, recede_paint *paint)
{
    const recede_paint *strong = &s->palette->paints[number], *white = first_white(s->palette);
    if (s->palette->medium == RECEDE_WATERCOLOUR || strong->is_white || strong->let_down ||
        holds_let_down(s->palette, strong))
        return 0;
    *paint = *strong;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        paint->k.at[band] = (strong->k.at[band] + RECEDE_LET_DOWN_WHITE * white->k.at[band]) /
                            (1 + RECEDE_LET_DOWN_WHITE);
        paint->s.at[band] = (strong->s.at[band] + RECEDE_LET_DOWN_WHITE * white->s.at[band]) /
                            (1 + RECEDE_LET_DOWN_WHITE);
    }
    return 1;
}

static int candidate(const search *s, kind of, int number, recede_paint *paint)
{
    return of == PIGMENT ? pigment_candidate(s, number, paint)
                         : let_down_candidate(s, number, paint);
}

static int candidates(const search *s, kind of)
{
    return of == PIGMENT ? (int)recede_pigment_count() : (int)s->palette->count;
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

/* A candidate must come nearer than the palette does, and than any earlier one of its
 * kind; a later one must yield to it where they come as near. */
static double limit_for(const best *b, kind of, int number)
{
    const winner *w = &b->of[of];
    if (w->number < 0)
        return b->without - 1;
    return number < w->number ? w->with : w->with - 1;
}

static void run_with(search *s, int paints, kind of, int number)
{
    for (size_t i = 0; i < s->count; i++)
        s->limits[i] = limit_for(&s->best[i], of, number);
    recede_probe_run(&s->probe, paints, s->rules->most_parts, s->limits, s->found);
    for (size_t i = 0; i < s->count; i++)
        if (s->found[i] <= s->limits[i])
            s->best[i].of[of] = (winner){s->found[i], number};
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

/* Every candidate of a kind with each set of so many others. */
static recede_code search_with(search *s, kind of, int others)
{
    int paints = (int)s->palette->count, count = candidates(s, of);
    size_t first = others ? recede_set_count(paints, others - 1) : 0;
    size_t end = recede_set_count(paints, others);
    for (int number = 0; number < count; number++) {
        recede_paint paint;
        double done = (of + (double)number / count) / KINDS;
        if (stopped(s, (others + done) / s->rules->most_pigments))
            return RECEDE_CANCELLED;
        if (!candidate(s, of, number, &paint))
            continue;
        recede_probe_take(&s->probe, 0, &paint);
        for (size_t set = first; set < end; set++)
            run_with(s, 1 + take_set(s, set, 1), of, number);
    }
    return RECEDE_OK;
}

static double difference_of(const best *b, kind of)
{
    return 1e-6 * (b->of[of].number < 0 ? b->without : b->of[of].with);
}

static void tell(const search *s, const best *b, recede_addition *out)
{
    const winner *pigment = &b->of[PIGMENT], *strong = &b->of[LET_DOWN];
    out->without = 1e-6 * b->without;
    out->pigment = pigment->number < 0 ? NULL : recede_pigment_at((size_t)pigment->number);
    out->delta_e = difference_of(b, PIGMENT);
    out->let_down = strong->number < 0 ? NULL : &s->palette->paints[strong->number];
    out->let_down_delta_e = difference_of(b, LET_DOWN);
}

static recede_code search_all(search *s, recede_addition *out)
{
    recede_code code = RECEDE_OK;
    search_own(s);
    for (int others = 0; !code && others < s->rules->most_pigments; others++)
        for (int of = 0; !code && of < KINDS; of++)
            code = search_with(s, (kind)of, others);
    for (size_t i = 0; !code && i < s->count; i++)
        tell(s, &s->best[i], &out[i]);
    return code;
}

static recede_code start(search *s, const recede_spectrum *ground, const recede_lab *targets)
{
    s->best = recede_allocate_array(s->allocator, s->count, sizeof *s->best);
    s->limits = recede_allocate_array(s->allocator, s->count, sizeof *s->limits);
    s->found = recede_allocate_array(s->allocator, s->count, sizeof *s->found);
    if (!s->best || !s->limits || !s->found)
        return RECEDE_NO_MEMORY;
    for (size_t i = 0; i < s->count; i++)
        s->best[i] = (best){recede_difference_of_ground(s->palette, ground, targets[i]),
                            {{INFINITY, -1}, {INFINITY, -1}}};
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
