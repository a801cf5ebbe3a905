/* What must hold in a fuzz target: says where it does not, and aborts. */
#ifndef RECEDE_TESTS_INSIST_H
#define RECEDE_TESTS_INSIST_H

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static inline void insist_at(int truth, const char *file, int line)
{
    if (truth)
        return;
    fprintf(stderr, "%s:%d: what must hold does not\n", file, line);
    abort();
}
#define insist(truth) insist_at((truth) != 0, __FILE__, __LINE__)

/* The bytes of an input, one after another; noughts when they are used up. */
typedef struct {
    const uint8_t *at;
    size_t left;
} stream;

static inline unsigned byte(stream *s)
{
    if (!s->left)
        return 0;
    s->left--;
    return *s->at++;
}

/* Mostly a number of the range in 256 steps; of 256 kinds the last few are any eight
 * bytes at all. */
static inline double number(stream *s, unsigned ordinary, double least, double most)
{
    double any = 0;
    if (byte(s) < ordinary)
        return least + (most - least) * byte(s) / 255;
    for (size_t i = 0; i < sizeof any; i++)
        ((unsigned char *)&any)[i] = (unsigned char)byte(s);
    return any;
}

#endif
