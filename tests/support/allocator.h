/* An allocator for tests: counts, and fails when told to. */
#ifndef RECEDE_TESTS_ALLOCATOR_H
#define RECEDE_TESTS_ALLOCATOR_H

#include "recede.h"

/* Keep it in place while the allocator made from it is in use. */
typedef struct test_memory {
    size_t fail_at; /* the one call to fail, counted from 1; 0: none */
    size_t calls;   /* of allocate so far */
    size_t live;    /* blocks given out and not yet back */
    size_t bytes;   /* in those blocks */
    size_t peak;    /* most bytes there were at once */
} test_memory;

/* Clears the counts. */
recede_allocator test_allocator(test_memory *memory, size_t fail_at);

#endif
