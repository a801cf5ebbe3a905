/* Numbers by chance, the same in every run: a generator of G. Marsaglia, 'Xorshift RNGs',
 * Journal of Statistical Software 8 (2003) 14, the shifts 13, 7, 17. */
#ifndef RECEDE_TESTS_CHANCE_H
#define RECEDE_TESTS_CHANCE_H

#include <stdint.h>

typedef struct chance { uint64_t state; } chance;

static inline uint64_t chance_bits(chance *c)
{
    c->state ^= c->state << 13;
    c->state ^= c->state >> 7;
    c->state ^= c->state << 17;
    return c->state;
}

static inline double chance_between(chance *c, double least, double most)
{
    return least + (most - least) * (double)(chance_bits(c) >> 11) / 9007199254740992.0;
}

static inline int chance_below(chance *c, int count)
{
    return (int)(chance_bits(c) >> 33) % count;
}

#endif
