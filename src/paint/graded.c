#include "paint/graded.h"

#include <math.h>

#include "colour/memory.h"
#include "paint/candidates.h"
#include "paint/mix.h"
#include "paint/mixes.h"
#include "paint/recipe.h"
#include "paint/sweep.h"

/* Half-and-half may be so much farther off than the worse end before the wash is
 * called two: three times a plain difference, for the eye is forgiving in the middle
 * of a gradation but does see it turn to mud. Chosen for this work. */
#define TWO_WASHES_EXCESS 3.0

recede_code recede_graded_start(recede_graded *graded, const recede_palette *palette,
                                const recede_rules *rules, size_t washes,
                                const recede_allocator *allocator)
{
    size_t sets = recede_set_count((int)palette->count, rules->most_pigments);
    *graded = (recede_graded){palette, rules, allocator, washes, sets, NULL, NULL};
    if (!washes)
        return RECEDE_OK;
    graded->closest = recede_allocate_array(allocator, washes, 2 * sets * sizeof(double));
    graded->best_score = recede_allocate_array(allocator, washes, sizeof(double));
    if (!graded->closest || !graded->best_score) {
        recede_graded_end(graded);
        return RECEDE_NO_MEMORY;
    }
    for (size_t i = 0; i < 2 * sets * washes; i++)
        graded->closest[i] = INFINITY;
    for (size_t i = 0; i < washes; i++)
        graded->best_score[i] = INFINITY;
    return RECEDE_OK;
}

void recede_graded_end(recede_graded *graded)
{
    recede_release(graded->allocator, graded->closest);
    recede_release(graded->allocator, graded->best_score);
    graded->closest = graded->best_score = NULL;
}

static double *closest_of(const recede_graded *graded, size_t set, size_t wash, int end)
{
    return &graded->closest[2 * (set * graded->washes + wash) + (size_t)end];
}

static double score_of(const recede_graded *graded, size_t set, size_t wash)
{
    return fmax(*closest_of(graded, set, wash, 0), *closest_of(graded, set, wash, 1));
}

double recede_graded_limit(const recede_graded *graded, size_t set, size_t wash, int end)
{
    return fmin(*closest_of(graded, set, wash, end),
                graded->best_score[wash] + recede_millionths(graded->rules->tie));
}

void recede_graded_offer(recede_graded *graded, size_t set, size_t wash, int end,
                         double difference)
{
    double *closest = closest_of(graded, set, wash, end);
    *closest = fmin(*closest, difference);
}

void recede_graded_score(recede_graded *graded, size_t set)
{
    for (size_t wash = 0; wash < graded->washes; wash++)
        graded->best_score[wash] = fmin(graded->best_score[wash], score_of(graded, set, wash));
}

double recede_graded_closest(const recede_graded *graded, size_t set, size_t wash, int end)
{
    return *closest_of(graded, set, wash, end);
}

size_t recede_graded_choose_set(const recede_graded *graded, size_t wash)
{
    double within = graded->best_score[wash] + recede_millionths(graded->rules->tie);
    size_t set = 0;
    for (int pigments = 0; set < graded->sets; pigments++) {
        size_t end = recede_set_count((int)graded->palette->count, pigments), best = end;
        double score = INFINITY;
        for (; set < end; set++) {
            if (score_of(graded, set, wash) < score) {
                score = score_of(graded, set, wash);
                best = set;
            }
        }
        if (best < end && score <= within)
            return best;
    }
    return 0; /* the bare ground: not reached, for the best score is some set's */
}

/* Offers every mix of exactly these paints, with every water. */
static recede_code offer_set(const recede_graded *graded, const int *paint, int count,
                             recede_candidates *ends)
{
    recede_mixes walk;
    recede_sweep sweep;
    int parts = count;
    recede_code code = RECEDE_OK;
    recede_mixes_start_set(&walk, paint, count, graded->rules->most_parts);
    recede_sweep_start(&sweep, graded->palette);
    while (!code && recede_mixes_next(&walk)) {
        if (walk.parts != parts)
            for (int end = 0; end < 2; end++)
                recede_candidates_next_size(&ends[end]);
        parts = walk.parts;
        recede_sweep_take(&sweep, &walk.mix);
        for (size_t level = 0; !code && level < sweep.levels; level++) {
            recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&sweep, level),
                                               graded->palette->white);
            walk.mix.water = recede_water_at(level);
            for (int end = 0; !code && end < 2; end++)
                code = recede_candidates_offer(
                    &ends[end], &walk.mix,
                    recede_millionths(recede_delta_e(lab, ends[end].target)));
        }
    }
    return code;
}

static recede_code offer_ground(const recede_palette *palette, recede_candidates *ends)
{
    recede_mix bare = {0};
    recede_code code = RECEDE_OK;
    for (int end = 0; !code && end < 2; end++)
        code = recede_candidates_offer(&ends[end], &bare,
                                       recede_ground_difference(palette, ends[end].target));
    return code;
}

void recede_graded_halfway(const recede_palette *halfway, const recede_wash_target *target,
                           recede_wash_recipe *out)
{
    recede_blend half = recede_blend_halves(halfway, &out->from.mix, &out->to.mix);
    out->half_delta_e = recede_delta_e(recede_blend_lab(halfway, &half), target->half);
    out->two_washes =
        out->half_delta_e > TWO_WASHES_EXCESS + fmax(out->from.delta_e, out->to.delta_e);
}

void recede_graded_finish(const recede_palette *halfway, const recede_wash_target *target,
                          recede_candidates *ends, recede_wash_recipe *out)
{
    recede_candidate from = recede_candidates_choose(&ends[0]);
    recede_candidate to = recede_candidates_choose(&ends[1]);
    out->from = recede_recipe_of(ends[0].palette, &from.mix, target->from,
                                 1e-6 * ends[0].closest);
    out->to = recede_recipe_of(ends[1].palette, &to.mix, target->to, 1e-6 * ends[1].closest);
    recede_graded_halfway(halfway, target, out);
}

recede_code recede_graded_of_set(const recede_graded *graded, size_t set,
                                 const recede_wash_target *target, recede_wash_recipe *out)
{
    recede_candidates ends[2];
    int paint[RECEDE_MOST_IN_MIX];
    int count = recede_set_paints((int)graded->palette->count, set, paint);
    recede_candidates_start(&ends[0], graded->palette, target->from, graded->rules->tie,
                            graded->allocator);
    recede_candidates_start(&ends[1], graded->palette, target->to, graded->rules->tie,
                            graded->allocator);
    recede_code code = count ? offer_set(graded, paint, count, ends)
                             : offer_ground(graded->palette, ends);
    if (!code)
        recede_graded_finish(graded->palette, target, ends, out);
    recede_candidates_end(&ends[0]);
    recede_candidates_end(&ends[1]);
    return code;
}

recede_code recede_graded_choose(const recede_graded *graded, size_t wash,
                                 const recede_wash_target *target, recede_wash_recipe *out)
{
    return recede_graded_of_set(graded, recede_graded_choose_set(graded, wash), target, out);
}
