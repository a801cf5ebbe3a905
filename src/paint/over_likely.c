/*
 * Each paint alone has been found as dark as the target. Mixes of two that are as dark
 * lie in a* and b* about on the line between them.
 */
#include "paint/over_likely.h"

/* Squared distance of the target from the line between two paints alone. */
static float off_line(const recede_over_visit *v, int one, int other)
{
    float a = v->alone[one][0], b = v->alone[one][1];
    float along_a = v->alone[other][0] - a, along_b = v->alone[other][1] - b;
    float to_a = v->aim.a - a, to_b = v->aim.b - b;
    float length = along_a * along_a + along_b * along_b;
    float share = length > 0.0f ? (to_a * along_a + to_b * along_b) / length : 0.0f;
    share = share < 0.0f ? 0.0f : share > 1.0f ? 1.0f : share;
    to_a -= share * along_a;
    to_b -= share * along_b;
    return to_a * to_a + to_b * to_b;
}

/* Into its place among the likeliest; the least likely falls off the end. */
static int insert(recede_over_pair *out, int count, int most, const recede_over_pair *pair)
{
    int place = count < most ? count : most;
    for (; place > 0 && out[place - 1].off > pair->off; place--)
        if (place < most)
            out[place] = out[place - 1];
    if (place < most)
        out[place] = *pair;
    return count < most ? count + 1 : most;
}

int recede_over_likely(const recede_over_visit *visit, recede_over_pair *out, int most)
{
    int count = 0, paints = (int)visit->palette->count;
    for (int one = 0; one < paints; one++)
        for (int other = one + 1; other < paints; other++) {
            recede_over_pair pair = {{one, other}, off_line(visit, one, other)};
            count = insert(out, count, most, &pair);
        }
    return count;
}
