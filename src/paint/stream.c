#include "paint/stream.h"

#include "paint/leaf.h"
#include "paint/nearness.h"
#include "paint/rule.h"
#include "paint/sweep.h"
#include "paint/visit.h"

/* How often the caller hears of it. */
enum { MIXES_A_REPORT = 2048 };

/* The mix at hand, and whether the sweep has taken it up. */
typedef struct {
    const recede_index *index;
    recede_mixes walk;
    recede_curve curve;
    recede_leaf leaves[RECEDE_MOST_STRETCHES];
    recede_sweep sweep;
    int swept;
} stream;

static recede_code open_film(stream *s, recede_stream_goal *goal, size_t level, double *limit)
{
    if (!s->swept)
        recede_sweep_take(&s->sweep, &s->walk.mix);
    s->swept = 1;
    recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&s->sweep, level),
                                       s->index->palette->white);
    double difference = recede_millionths(recede_delta_e(lab, goal->aim.target));
    if (difference > *limit)
        return RECEDE_OK;
    return goal->film(goal, &s->walk, recede_water_at(level), difference, limit);
}

/* Eight levels of a curve; past its end the last again. */
static recede_stretch colours_from(const recede_curve *curve, int first)
{
    recede_stretch colours;
    for (int i = 0; i < RECEDE_STRETCH_LEVELS; i++) {
        int level = first + i < RECEDE_CURVE_LEVELS ? first + i : RECEDE_CURVE_LEVELS - 1;
        colours.l[i] = curve->l[level];
        colours.a[i] = curve->a[level];
        colours.b[i] = curve->b[level];
    }
    return colours;
}

static recede_code open_stretch(stream *s, recede_stream_goal *goal, int stretch,
                                double *limit)
{
    int first = s->index->stretches.first[stretch];
    recede_stretch colours = colours_from(&s->curve, first);
    float bounds[RECEDE_BLOCK];
    recede_code code = RECEDE_OK;
    recede_bounds_of_colours(&goal->aim, colours.l, colours.a, colours.b, RECEDE_CURVE_ERROR,
                             s->leaves[stretch].arc, bounds);
    for (int i = 0; !code && i < s->index->stretches.levels[stretch]; i++)
        if (bounds[i] <= recede_bound_within(*limit))
            code = open_film(s, goal, (size_t)first + (size_t)i, limit);
    return code;
}

/* Stretches whose lightness alone does not put them beyond the limit, from one on;
 * returns how many, a block at most. */
static int next_near(const stream *s, const recede_stream_goal *goal, double limit, int *from,
                     int *near)
{
    double within = 1e-6 * (limit + 1);
    int count = 0;
    for (; *from < s->index->stretches.count && count < RECEDE_BLOCK; ++*from) {
        const recede_leaf *leaf = &s->leaves[*from];
        double low = leaf->low[0] * (1.0 / RECEDE_BOX_SCALE);
        double high = leaf->high[0] * (1.0 / RECEDE_BOX_SCALE), l = goal->aim.target.l;
        if (!(low > l && recede_lightness_beyond(low, l, within)) &&
            !(high < l && recede_lightness_beyond(high, l, within)))
            near[count++] = *from;
    }
    return count;
}

static recede_code consider(stream *s, recede_stream_goal *goal, double limit)
{
    recede_code code = RECEDE_OK;
    for (int from = 0; !code && from < s->index->stretches.count;) {
        recede_boxes boxes;
        float bounds[RECEDE_BLOCK];
        int near[RECEDE_BLOCK], count = next_near(s, goal, limit, &from, near);
        if (!count)
            break;
        for (int lane = 0; lane < RECEDE_BLOCK; lane++)
            recede_put_leaf(&boxes, lane, &s->leaves[near[lane < count ? lane : 0]]);
        recede_bounds_of_boxes(&goal->aim, &boxes, bounds);
        for (int lane = 0; !code && lane < count; lane++)
            if (bounds[lane] <= recede_bound_within(limit))
                code = open_stretch(s, goal, near[lane], &limit);
    }
    return code;
}

/* Its colours are found for the first goal that it may matter to. */
static recede_code consider_mix(stream *s, recede_stream_goal *goals, size_t count)
{
    int drawn = 0;
    recede_code code = RECEDE_OK;
    s->swept = 0;
    for (size_t i = 0; !code && i < count; i++) {
        double limit = goals[i].limit(&goals[i], &s->walk);
        if (limit < 0)
            continue;
        if (!drawn) {
            recede_curve_of_mix(&s->index->maker, &s->walk.mix, &s->curve);
            recede_leaves_of_curve(&s->index->stretches, &s->curve, s->leaves);
        }
        drawn = 1;
        code = consider(s, &goals[i], limit);
    }
    return code;
}

static int stopped(const recede_stream_progress *progress, double share)
{
    const recede_progress *to = progress->to;
    double told = progress->low + share * (progress->high - progress->low);
    return to && to->report(to->context, told);
}

recede_code recede_stream(const recede_index *index, int held_pigments,
                          recede_stream_goal *goals, size_t count,
                          const recede_stream_progress *progress)
{
    stream s = {.index = index};
    int paints = (int)index->palette->count;
    double all = recede_mixes_count(paints, &index->rules), done = 0;
    recede_code code = RECEDE_OK;
    recede_mixes_start(&s.walk, paints, &index->rules);
    recede_sweep_start(&s.sweep, index->palette);
    for (size_t i = 0; !code && recede_mixes_next(&s.walk); i++, done++) {
        if (i % MIXES_A_REPORT == 0 && stopped(progress, done / all))
            return RECEDE_CANCELLED;
        if (s.walk.mix.count > held_pigments)
            code = consider_mix(&s, goals, count);
    }
    if (!code && stopped(progress, 1))
        return RECEDE_CANCELLED;
    return code;
}
