#include "plan/work_sets.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/mixes.h"
#include "paint/opener.h"
#include "paint/over_visit.h"
#include "paint/rule.h"
#include "paint/sweep.h"

typedef struct {
    recede_sets *sets;
    uint32_t allowed;
    double width;
    int paints; /* how many these are */
    size_t set; /* of the mix at hand */
    recede_opener *opener;
} search;

recede_code recede_sets_start(recede_sets *sets, const recede_palette *palette,
                              const recede_rules *rules, const recede_index *index,
                              const recede_allocator *allocator)
{
    int paint[RECEDE_MOST_IN_MIX], paints = (int)recede_palette_count(palette);
    memset(sets, 0, sizeof *sets);
    sets->allocator = allocator;
    sets->palette = palette;
    sets->rules = rules;
    sets->index = index && recede_index_is_whole(index) ? index : NULL;
    sets->count = recede_set_count(paints, rules->most_pigments);
    sets->paints = recede_allocate_array(allocator, sets->count, sizeof *sets->paints);
    sets->closest = recede_allocate_array(allocator, sets->count, sizeof *sets->closest);
    sets->kept = recede_allocate_array(allocator, sets->count, sizeof *sets->kept);
    if (!sets->paints || !sets->closest || !sets->kept) {
        recede_sets_end(sets);
        return RECEDE_NO_MEMORY;
    }
    for (size_t set = 0; set < sets->count; set++) {
        int count = recede_set_paints(paints, set, paint);
        sets->paints[set] = 0;
        for (int i = 0; i < count; i++)
            sets->paints[set] |= (uint32_t)1 << paint[i];
    }
    return RECEDE_OK;
}

void recede_sets_end(recede_sets *sets)
{
    recede_release(sets->allocator, sets->paints);
    recede_release(sets->allocator, sets->closest);
    recede_release(sets->allocator, sets->kept);
    sets->paints = NULL;
    sets->closest = sets->kept = NULL;
}

void recede_sets_keep(recede_sets *sets)
{
    recede_set_mix *kept = sets->kept;
    sets->kept = sets->closest;
    sets->closest = kept;
}

/* Below 0 when one goes before other, both as close. */
static int compare_equals(const recede_mix *one, const recede_mix *other)
{
    int order = recede_compare_size(one, other);
    if (!order)
        order = (one->water < other->water) - (one->water > other->water);
    for (int i = 0; !order && i < one->count; i++)
        order = one->parts[i] - other->parts[i];
    return order;
}

static double limit_of(const search *s, size_t set)
{
    return fmin(s->sets->closest[set].difference, s->sets->best + s->width);
}

static void take(search *s, const recede_mix *mix, double difference)
{
    recede_set_mix *closest = &s->sets->closest[s->set];
    if (difference > closest->difference ||
        (difference == closest->difference && compare_equals(mix, &closest->mix) >= 0))
        return;
    closest->mix = *mix;
    closest->difference = difference;
    s->sets->best = fmin(s->sets->best, difference);
}

static int allowed(const search *s, size_t set)
{
    return !(s->sets->paints[set] & ~s->allowed);
}

/* ------------------------------------------------------------ by index -- */

static recede_code indexed_film(void *context, const recede_mix *mix, double difference,
                                double *limit)
{
    search *s = context;
    take(s, mix, difference);
    *limit = limit_of(s, s->set);
    return RECEDE_OK;
}

static recede_code open_leaf(recede_visit *visit, const recede_leaves *leaves, int lane,
                             float bound)
{
    search *s = visit->context;
    size_t set = recede_index_mixes(visit->index)[leaves->mix[lane]].set;
    double limit = limit_of(s, set);
    if (!allowed(s, set) || bound > recede_bound_within(limit))
        return RECEDE_OK;
    s->set = set;
    recede_code code = recede_open_leaf(s->opener, leaves, lane, &limit);
    visit->limit = s->sets->best + s->width;
    return code;
}

/* Nearest first, so that each set's first leaf is likely its last; where most leaves
 * are of no use, to put them all in a row would take longer. */
static recede_code visit_all(const search *s, recede_visit *visit)
{
    recede_frontier frontier;
    recede_code code = RECEDE_OK;
    if (s->paints < (int)s->sets->palette->count) {
        for (int i = 0; !code && i < visit->index->classes; i++)
            code = recede_visit_class(visit, i);
        return code;
    }
    recede_frontier_start(&frontier, s->sets->allocator);
    code = recede_visit_start(visit, &frontier);
    while (!code && recede_frontier_least(&frontier) <= recede_bound_within(visit->limit))
        code = recede_visit_step(visit, &frontier);
    recede_frontier_end(&frontier);
    return code;
}

static recede_code find_by_index(search *s, recede_lab target)
{
    const recede_index *index = s->sets->index;
    recede_aim aim;
    recede_cost cost = {0};
    recede_opener opener;
    recede_aim_at(&aim, target);
    recede_opener_start(&opener, index, &aim, &cost);
    opener.film = indexed_film;
    opener.context = s;
    s->opener = &opener; /* cppcheck-suppress autoVariables */
    recede_visit visit = {index, &aim, &cost, s->sets->best + s->width, open_leaf, s};
    recede_code code = visit_all(s, &visit);
    s->opener = NULL;
    return code;
}

/* ------------------------------------------------------------ by mixes -- */

/* Every mix with every water, as the reference search has it. */
static void find_by_sweep(search *s, const recede_palette *palette, const recede_rules *rules,
                          recede_lab target)
{
    recede_mixes walk;
    recede_sweep sweep;
    recede_sweep_start(&sweep, palette);
    recede_mixes_start(&walk, (int)palette->count, rules);
    while (recede_mixes_next(&walk)) {
        if (!allowed(s, walk.set))
            continue;
        s->set = walk.set;
        recede_sweep_take(&sweep, &walk.mix);
        for (size_t level = 0; level < sweep.levels; level++) {
            recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&sweep, level), palette->white);
            double difference = recede_millionths(recede_delta_e(lab, target));
            walk.mix.water = recede_water_at(level);
            if (difference <= limit_of(s, walk.set))
                take(s, &walk.mix, difference);
        }
    }
}

/* The same, where bounds spare most of it. */
static double laid_film(void *context, const recede_mix *mix, double difference)
{
    search *s = context;
    take(s, mix, difference);
    return limit_of(s, s->set);
}

static void lay_all(search *s, const recede_rules *rules, recede_over_visit *visit)
{
    recede_mixes walk;
    recede_mixes_start(&walk, (int)s->sets->palette->count, rules);
    while (recede_mixes_next(&walk)) {
        s->set = walk.set;
        if (allowed(s, walk.set))
            recede_over_visit_mix(visit, &walk.mix, limit_of(s, walk.set));
    }
}

static recede_code find_by_mixes(search *s, const recede_palette *ground,
                                 const recede_rules *rules, recede_lab target)
{
    if (!recede_curve_holds(ground)) {
        find_by_sweep(s, ground, rules, target);
        return RECEDE_OK;
    }
    recede_over_visit *visit = recede_allocate_array(s->sets->allocator, 1, sizeof *visit);
    if (!visit)
        return RECEDE_NO_MEMORY;
    recede_over_visit_start(visit, ground, target);
    visit->film = laid_film;
    visit->context = s;
    lay_all(s, rules, visit);
    recede_release(s->sets->allocator, visit);
    return RECEDE_OK;
}

/* --------------------------------------------------------------- search -- */

static void clear(recede_sets *sets, const recede_palette *ground, recede_lab target)
{
    for (size_t set = 0; set < sets->count; set++)
        sets->closest[set].difference = INFINITY;
    recede_lab bare = recede_palette_lab(ground, ground->paper.at);
    memset(&sets->closest[0].mix, 0, sizeof sets->closest[0].mix);
    sets->best = recede_millionths(recede_delta_e(bare, target));
    sets->closest[0].difference = sets->best;
}

/* What was found before the best was is farther off than the width. */
static void drop_beyond(recede_sets *sets, double width)
{
    for (size_t set = 0; set < sets->count; set++)
        if (sets->closest[set].difference > sets->best + width)
            sets->closest[set].difference = INFINITY;
}

static recede_code find_over(search *s, const recede_spectrum *ground, recede_lab target)
{
    recede_rules rules = *s->sets->rules;
    recede_palette *on = recede_palette_on(s->sets->palette, ground, s->sets->allocator);
    if (!on)
        return RECEDE_NO_MEMORY;
    if (rules.most_pigments > RECEDE_MOST_LAID_OVER)
        rules.most_pigments = RECEDE_MOST_LAID_OVER;
    clear(s->sets, on, target);
    recede_code code = find_by_mixes(s, on, &rules, target);
    recede_palette_free(on);
    return code;
}

/* Of a quarter of the paints there are so few mixes that the index is no help. */
static recede_code find_on_paper(search *s, recede_lab target)
{
    recede_sets *sets = s->sets;
    clear(sets, sets->palette, target);
    if (!sets->index) {
        find_by_sweep(s, sets->palette, sets->rules, target);
        return RECEDE_OK;
    }
    if (4 * s->paints <= (int)sets->palette->count)
        return find_by_mixes(s, sets->palette, sets->rules, target);
    return find_by_index(s, target);
}

recede_code recede_sets_find(recede_sets *sets, recede_lab target,
                             const recede_spectrum *ground, uint32_t allowed_paints,
                             double width)
{
    search s = {.sets = sets, .allowed = allowed_paints, .width = width};
    for (uint32_t paints = allowed_paints; paints; paints &= paints - 1)
        s.paints++;
    recede_code code = ground ? find_over(&s, ground, target) : find_on_paper(&s, target);
    drop_beyond(sets, width);
    return code;
}
