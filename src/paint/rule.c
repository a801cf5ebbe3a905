#include "paint/rule.h"

#include <math.h>

#include "paint/palette.h"

#define FARTHER_THAN_ANY 1e9

double recede_millionths(double difference)
{
    return floor(difference * 1e6 + 0.5);
}

double recede_difference_of_ground(const recede_palette *palette, const recede_spectrum *ground,
                                   recede_lab target)
{
    if (palette->medium != RECEDE_WATERCOLOUR)
        return FARTHER_THAN_ANY;
    return recede_millionths(recede_delta_e(recede_palette_lab(palette, ground->at), target));
}

double recede_ground_difference(const recede_palette *palette, recede_lab target)
{
    return recede_difference_of_ground(palette, &palette->paper, target);
}

int recede_mix_parts(const recede_mix *mix)
{
    int parts = 0;
    for (int i = 0; i < mix->count; i++)
        parts += mix->parts[i];
    return parts;
}

int recede_compare_size(const recede_mix *one, const recede_mix *other)
{
    if (one->count != other->count)
        return one->count - other->count;
    return recede_mix_parts(one) - recede_mix_parts(other);
}

static int compare(double one, double other)
{
    return (one > other) - (one < other);
}

static int compare_lists(const int *one, const int *other, int count)
{
    for (int i = 0; i < count; i++)
        if (one[i] != other[i])
            return one[i] - other[i];
    return 0;
}

int recede_compare_candidates(const recede_candidate *one, const recede_candidate *other)
{
    int order = recede_compare_size(&one->mix, &other->mix);
    if (!order)
        order = compare(one->slip, other->slip);
    if (!order)
        order = compare(other->mix.water, one->mix.water);
    if (!order)
        order = compare_lists(one->mix.paint, other->mix.paint, one->mix.count);
    if (!order)
        order = compare_lists(one->mix.parts, other->mix.parts, one->mix.count);
    return order;
}
