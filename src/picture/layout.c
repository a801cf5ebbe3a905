#include "picture/layout.h"

#include <math.h>

static double given_share(const recede_plan *plan, size_t i)
{
    return recede_plan_scene(plan)->planes[recede_plan_at(plan, i)->plane].share;
}

/* Nearer bands are taller: each by the same factor, which eases as the planes
 * become many, so that the farthest of 64 still shows. */
static void weigh(size_t count, double *weights)
{
    double growth = 1 + 1.1 / (0.6 + (double)count), weight = 1;
    for (size_t i = 0; i < count; i++, weight *= growth)
        weights[i] = weight;
}

/* The sky takes about two fifths, a little less over many planes. */
static double sky_weight(size_t count)
{
    return 0.36 + 0.10 / (double)(count + 1);
}

void recede_layout_shares(const recede_plan *plan, double shares[RECEDE_MOST_PLANES + 1])
{
    size_t count = recede_plan_count(plan);
    double weights[RECEDE_MOST_PLANES], given = 0, open = 0, weighed = 0;
    weigh(count, weights);
    for (size_t i = 0; i < count; i++)
        weighed += weights[i];
    for (size_t i = 0; i < count; i++) {
        shares[i] = given_share(plan, i);
        given += shares[i];
    }
    shares[count] = sky_weight(count);
    for (size_t i = 0; i < count; i++)
        if (!(shares[i] > 0))
            open += (1 - shares[count]) * weights[i] / weighed;
    open += shares[count];
    /* What is given stands; the rest is shared by weight. Where too much is
     * given, a hundredth of the sheet is kept for each of the others. */
    double others = 0.01;
    for (size_t i = 0; i < count; i++)
        others += shares[i] > 0 ? 0 : 0.01;
    double rest = fmax(1 - given, fmin(others, 0.5)), squeeze = given > 0 ? (1 - rest) / given : 1;
    for (size_t i = 0; i < count; i++)
        shares[i] = shares[i] > 0 ? shares[i] * squeeze
                                  : rest * (1 - shares[count]) * weights[i] / weighed / open;
    shares[count] = rest * shares[count] / open;
}
