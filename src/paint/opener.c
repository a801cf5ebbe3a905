#include "paint/opener.h"

#include "paint/rule.h"

#define NO_MIX UINT32_MAX

void recede_opener_start(recede_opener *opener, const recede_index *index,
                         const recede_aim *aim, recede_cost *cost)
{
    opener->index = index;
    opener->aim = aim;
    opener->cost = cost;
    opener->swept = opener->curved = NO_MIX;
    recede_sweep_start(&opener->sweep, index->palette);
}

static recede_code open_film(recede_opener *opener, uint32_t number, recede_mix *mix,
                             size_t level, double *limit)
{
    if (opener->swept != number)
        recede_sweep_take(&opener->sweep, mix);
    opener->swept = number;
    opener->cost->films++;
    recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&opener->sweep, level),
                                       opener->index->palette->white);
    double difference = recede_millionths(recede_delta_e(lab, opener->aim->target));
    if (difference > *limit)
        return RECEDE_OK;
    mix->water = recede_water_at(level);
    return opener->film(opener->context, mix, difference, limit);
}

recede_code recede_open_leaf(recede_opener *opener, const recede_leaves *leaves, int lane,
                             double *limit)
{
    const recede_index *index = opener->index;
    uint32_t number = leaves->mix[lane];
    int stretch = leaves->stretch[lane], first = index->stretches.first[stretch];
    recede_mix mix = recede_mix_of_small(&recede_index_mixes(index)[number]);
    recede_stretch colours;
    float bounds[RECEDE_BLOCK];
    recede_code code = RECEDE_OK;
    opener->cost->leaves++;
    if (opener->curved != number)
        recede_curve_films_of_mix(&index->maker, &mix, &opener->curve);
    opener->curved = number;
    recede_stretch_of_films(&index->maker, &opener->curve, first, &colours);
    recede_bounds_of_colours(opener->aim, colours.l, colours.a, colours.b, RECEDE_CURVE_ERROR,
                             leaves->boxes.arc[lane], bounds);
    for (int i = 0; !code && i < index->stretches.levels[stretch]; i++)
        if (bounds[i] <= recede_bound_within(*limit))
            code = open_film(opener, number, &mix, (size_t)first + (size_t)i, limit);
    return code;
}
