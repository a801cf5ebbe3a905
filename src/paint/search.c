/*
 * The search by index, to the same recipes as the reference. Boxes and single
 * precision only say what need not be opened; a film's colour and difference are
 * those of the reference, in double precision.
 */
#include "paint/search.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/ends_apart.h"
#include "paint/flat_search.h"
#include "paint/graded_search.h"
#include "paint/recipe.h"
#include "paint/targets.h"

/* What others would have to come to, to change a choice: closer by more than the tie. */
static double to_beat(const recede_index *index, double difference)
{
    return difference - recede_millionths(index->rules.tie) - 1;
}

static recede_code search_flat(const recede_index *index, const recede_wash_target *target,
                               const recede_allocator *allocator, recede_cost *cost,
                               recede_open_wash *left, recede_recipe *out)
{
    recede_flat_answer answer;
    recede_code code =
        recede_flat_find(index, target->from, INFINITY, allocator, cost, &answer);
    if (code)
        return code;
    *out = recede_recipe_of(index->palette, &answer.chosen.mix, target->from,
                            1e-6 * answer.closest);
    left->chosen = answer.chosen.mix;
    left->closest = answer.closest;
    left->beat = to_beat(index, answer.chosen.difference);
    return RECEDE_OK;
}

recede_code recede_search_one(const recede_index *index, const recede_wash_target *target,
                              const recede_allocator *allocator, recede_cost *cost,
                              recede_wash_recipe *out, recede_open_wash *left, int *open)
{
    recede_code code;
    memset(out, 0, sizeof *out);
    *left = (recede_open_wash){.target = target, .out = out};
    if (target->graded) {
        double score = 0;
        code = recede_search_graded(index, target, INFINITY, allocator, cost, out, &score);
        left->beat = to_beat(index, score);
    } else {
        code = search_flat(index, target, allocator, cost, left, &out->from);
    }
    *open = !recede_index_is_whole(index) &&
            (left->beat >= 0 || left->closest > RECEDE_REACHED_MILLIONTHS);
    return code;
}

/* First by what the index holds, then, for the washes that it leaves open, beyond. */
static recede_code search(const recede_index *index, const recede_wash_target *targets,
                          size_t count, recede_wash_recipe *out, recede_open_wash *open,
                          const recede_allocator *allocator, const recede_progress *progress)
{
    int whole = recede_index_is_whole(index), is_open;
    recede_cost cost = {0};
    recede_code code = RECEDE_OK;
    size_t left = 0;
    for (size_t i = 0; !code && i < count; i++) {
        code = recede_search_one(index, &targets[i], allocator, &cost, &out[i], &open[left],
                                 &is_open);
        left += (size_t)is_open;
        if (!code && whole && progress &&
            progress->report(progress->context, (double)(i + 1) / (double)count))
            code = RECEDE_CANCELLED;
    }
    if (!code && left)
        code = recede_search_wider(index, open, left, allocator, progress);
    return code;
}

typedef struct {
    const recede_index *index;
    const recede_allocator *allocator;
    const recede_progress *progress;
} asked;

static recede_code seek(const void *context, const recede_wash_target *targets, size_t count,
                        recede_wash_recipe *out)
{
    const asked *a = context;
    recede_open_wash *open = recede_allocate_array(a->allocator, count, sizeof *open);
    recede_code code = open ? search(a->index, targets, count, out, open, a->allocator, a->progress)
                            : RECEDE_NO_MEMORY;
    recede_release(a->allocator, open);
    return code;
}

recede_code recede_search(const recede_index *index, const recede_wash_target *targets,
                          size_t count, recede_wash_recipe *out,
                          const recede_allocator *allocator, const recede_progress *progress,
                          recede_error *error)
{
    if (!recede_curve_holds(index->palette))
        return recede_search_all(index->palette, &index->rules, targets, count, out, allocator,
                                 progress, error);
    recede_code code = recede_targets_check(targets, count, error);
    if (code || count == 0)
        return code;
    const asked a = {index, recede_allocator_or_default(allocator), progress};
    code = recede_ends_are_apart(index->palette, targets, count)
               ? recede_search_ends_apart(index->palette, targets, count, out, a.allocator, seek, &a)
               : seek(&a, targets, count, out);
    return code ? recede_fail(error, code, "") : RECEDE_OK;
}
