#include "paint/match.h"

#include <math.h>
#include <string.h>

#include "paint/recipe.h"
#include "paint/slip.h"

void recede_match_keeper_start(recede_match_keeper *keeper, const recede_palette *palette,
                               recede_lab target, double closest, double tie)
{
    memset(keeper, 0, sizeof *keeper);
    keeper->palette = palette;
    keeper->target = target;
    keeper->lamp = recede_lamp_light();
    keeper->smooth = recede_smooth_of_xyz(recede_xyz_of_lab(target, recede_white()));
    keeper->target_by_lamp = recede_lab_of_xyz(
        recede_lamp_xyz(&keeper->lamp, &keeper->smooth.reflectance), recede_white());
    keeper->closest = closest;
    keeper->limit = closest + recede_millionths(tie);
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++)
        keeper->best[kind].score = INFINITY;
}

static recede_xyz by_lamp(const recede_match_keeper *keeper, const recede_mix *mix)
{
    recede_spectrum seen = recede_mix_reflectance(keeper->palette, mix, NULL);
    return recede_lamp_xyz(&keeper->lamp, &seen);
}

static double lamp_difference(const recede_match_keeper *keeper, recede_xyz mix_by_lamp)
{
    return recede_delta_e(recede_lab_of_xyz(mix_by_lamp, recede_white()),
                          keeper->target_by_lamp);
}

void recede_match_keeper_offer(recede_match_keeper *keeper, const recede_mix *mix,
                               double difference)
{
    if (difference > keeper->limit)
        return;
    double slip = recede_millionths(recede_slip(keeper->palette, mix, keeper->target));
    double lamp = recede_millionths(lamp_difference(keeper, by_lamp(keeper, mix)));
    recede_candidate candidate = {*mix, difference, slip};
    const double scores[RECEDE_MATCH_KINDS] = {
        [RECEDE_MATCH_CLOSEST] = difference, [RECEDE_MATCH_SIMPLEST] = 0,
        [RECEDE_MATCH_FORGIVING] = slip, [RECEDE_MATCH_LAMP] = lamp};
    keeper->count++;
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++) {
        recede_match_best *best = &keeper->best[kind];
        if (scores[kind] < best->score ||
            (scores[kind] == best->score &&
             recede_compare_candidates(&candidate, &best->candidate) < 0)) {
            best->candidate = candidate;
            best->score = scores[kind];
        }
    }
}

void recede_match_keeper_finish(const recede_match_keeper *keeper, recede_matches *out)
{
    memset(out, 0, sizeof *out);
    out->target = keeper->smooth;
    out->by_lamp =
        recede_colour_of_xyz(recede_lamp_xyz(&keeper->lamp, &keeper->smooth.reflectance));
    out->within_tie = keeper->count;
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++) {
        const recede_mix *mix = &keeper->best[kind].candidate.mix;
        recede_match_recipe *match = &out->of[kind];
        recede_xyz lamp = by_lamp(keeper, mix);
        match->recipe = recede_recipe_of(keeper->palette, mix, keeper->target,
                                         1e-6 * keeper->closest);
        match->by_lamp = recede_colour_of_xyz(lamp);
        match->lamp_delta_e = lamp_difference(keeper, lamp);
    }
}
