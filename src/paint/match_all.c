/* Recipes for one colour by the walk of all mixes: the closest difference first,
 * then the mixes within the tie of it. The reference, kept simple. */
#include "recede.h"

#include <math.h>

#include "colour/error.h"
#include "paint/match.h"
#include "paint/mixes.h"
#include "paint/sweep.h"
#include "paint/targets.h"

typedef void take_film(void *context, const recede_mix *mix, double difference);

typedef struct walk {
    const recede_palette *palette;
    const recede_rules *rules;
    recede_lab target;
    const recede_progress *progress;
    double done, all; /* mixes, over both passes */
    int told;
} walk;

static int report(walk *w)
{
    int percent = (int)(100 * w->done / w->all);
    w->done++;
    if (!w->progress || percent == w->told)
        return 0;
    w->told = percent;
    return w->progress->report(w->progress->context, w->done / w->all);
}

static recede_code walk_all(walk *w, take_film *take, void *context)
{
    recede_mixes mixes;
    recede_sweep sweep;
    recede_mix bare = {0};
    take(context, &bare, recede_ground_difference(w->palette, w->target));
    recede_mixes_start(&mixes, (int)w->palette->count, w->rules);
    recede_sweep_start(&sweep, w->palette);
    while (recede_mixes_next(&mixes)) {
        if (report(w))
            return RECEDE_CANCELLED;
        recede_sweep_take(&sweep, &mixes.mix);
        for (size_t level = 0; level < sweep.levels; level++) {
            recede_mix mix = mixes.mix;
            recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&sweep, level),
                                               w->palette->white);
            mix.water = recede_water_at(level);
            take(context, &mix, recede_millionths(recede_delta_e(lab, w->target)));
        }
    }
    return RECEDE_OK;
}

static void take_closest(void *context, const recede_mix *mix, double difference)
{
    double *closest = context;
    (void)mix;
    *closest = fmin(*closest, difference);
}

static void take_offer(void *context, const recede_mix *mix, double difference)
{
    recede_match_keeper_offer(context, mix, difference);
}

recede_code recede_match_all(const recede_palette *palette, const recede_rules *rules,
                             recede_lab target, recede_matches *out,
                             const recede_progress *progress, recede_error *error)
{
    recede_wash_target wash = {.from = target};
    recede_match_keeper keeper;
    double closest = INFINITY;
    recede_code code = recede_rules_check(rules, error);
    if (!code)
        code = recede_targets_check(&wash, 1, error);
    if (code)
        return code;
    walk w = {palette, rules, target, progress, 0,
              2 * recede_mixes_count((int)palette->count, rules), -1};
    code = walk_all(&w, take_closest, &closest);
    if (!code) {
        recede_match_keeper_start(&keeper, palette, target, closest, rules->tie);
        code = walk_all(&w, take_offer, &keeper);
    }
    if (code)
        return recede_fail(error, code, "");
    recede_match_keeper_finish(&keeper, out);
    return RECEDE_OK;
}
