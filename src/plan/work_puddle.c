/*
 * With shares f of the first mix and g of the second, a volume V of the second
 * holds what a volume 1 of the first brought where V g_i >= f_i for every paint and
 * for water: V = max f_i / g_i, the growth. Where that maximum is taken, nothing of
 * the part is added.
 */
#include "plan/work_puddle.h"

#include <math.h>

/* Parts as good as equal: shares come from whole parts and three-figure waters. */
#define ALIKE 1e-9

recede_puddle recede_puddle_of_mix(const recede_mix *mix)
{
    recede_puddle puddle = {.count = mix->count};
    double parts = 0;
    if (!mix->count)
        return puddle;
    for (int i = 0; i < mix->count; i++)
        parts += mix->parts[i];
    for (int i = 0; i < mix->count; i++) {
        puddle.paint[i] = mix->paint[i];
        puddle.share[i] = mix->parts[i] / parts / (1 + mix->water);
        puddle.paints |= (uint32_t)1 << mix->paint[i];
    }
    puddle.water = mix->water / (1 + mix->water);
    return puddle;
}

int recede_puddle_parts(const recede_puddle *puddle)
{
    return puddle->count + (puddle->water > 0);
}

double recede_puddle_share(const recede_puddle *puddle, int paint)
{
    for (int i = 0; i < puddle->count; i++)
        if (puddle->paint[i] == paint)
            return puddle->share[i];
    return 0;
}

static double growth_of(double from, double to)
{
    return from > 0 ? from / to : 0; /* to 0: INFINITY */
}

recede_pour recede_pour_between(const recede_puddle *from, const recede_puddle *to)
{
    recede_pour pour = {INFINITY, 0};
    double each[RECEDE_MOST_IN_MIX + 1];
    int last = to->count;
    if (!from->count || !to->count || (from->paints & ~to->paints))
        return pour;
    for (int i = 0; i < to->count; i++)
        each[i] = growth_of(recede_puddle_share(from, to->paint[i]), to->share[i]);
    if (from->water > 0 || to->water > 0)
        each[last++] = growth_of(from->water, to->water);
    pour.growth = 0;
    for (int i = 0; i < last; i++)
        pour.growth = fmax(pour.growth, each[i]);
    for (int i = 0; i < last; i++)
        pour.additions += each[i] < pour.growth * (1 - ALIKE);
    return pour;
}
