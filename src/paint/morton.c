#include "paint/morton.h"

enum { BITS = 10, DIGIT = 10, BINS = 1 << DIGIT };

/* Ten bits spread out to every third. */
static uint32_t spread(uint32_t bits)
{
    bits = (bits | bits << 16) & 0x030000ffu;
    bits = (bits | bits << 8) & 0x0300f00fu;
    bits = (bits | bits << 4) & 0x030c30c3u;
    bits = (bits | bits << 2) & 0x09249249u;
    return bits;
}

/* The middle of an axis in 1/128 from -128 to 128 (L*: 0 to 128), in ten bits. */
static uint32_t middle(int low, int high, int from, int shift)
{
    int at = ((low + high) / 2 - from * 128) >> shift;
    return (uint32_t)(at < 0 ? 0 : at >= 1 << BITS ? (1 << BITS) - 1 : at);
}

static uint32_t key_of(const recede_leaf *leaf)
{
    return spread(middle(leaf->low[0], leaf->high[0], 0, 4)) << 2 |
           spread(middle(leaf->low[1], leaf->high[1], -128, 5)) << 1 |
           spread(middle(leaf->low[2], leaf->high[2], -128, 5));
}

static void sort_digit(const recede_place *in, size_t count, int shift, recede_place *out)
{
    uint32_t starts[BINS + 1] = {0};
    for (size_t i = 0; i < count; i++)
        starts[(in[i].key >> shift & (BINS - 1)) + 1]++;
    for (int bin = 0; bin < BINS; bin++)
        starts[bin + 1] += starts[bin];
    for (size_t i = 0; i < count; i++)
        out[starts[in[i].key >> shift & (BINS - 1)]++] = in[i];
}

const recede_place *recede_sort_leaves(const recede_leaf *leaves, size_t count,
                                       recede_place *places, recede_place *others)
{
    for (size_t i = 0; i < count; i++)
        places[i] = (recede_place){key_of(&leaves[i]), (uint32_t)i};
    sort_digit(places, count, 0, others);
    sort_digit(others, count, DIGIT, places);
    sort_digit(places, count, 2 * DIGIT, others);
    return others;
}
