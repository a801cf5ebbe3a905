#include "support/allocator.h"

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

/* Before each block, so that a foreign or second release is noticed. */
typedef union head {
    struct {
        uintptr_t mark;
        size_t size;
    } of;
    max_align_t align;
} head;

static uintptr_t mark_of(const head *h)
{
    return (uintptr_t)h ^ (uintptr_t)0x5EED;
}

static void *allocate(void *context, size_t size)
{
    test_memory *memory = context;
    memory->calls++;
    if (memory->calls == memory->fail_at)
        return NULL;
    head *h = malloc(sizeof *h + size);
    if (!h)
        return NULL;
    h->of.mark = mark_of(h);
    h->of.size = size;
    memory->live++;
    memory->bytes += size;
    if (memory->bytes > memory->peak)
        memory->peak = memory->bytes;
    return h + 1;
}

static void release(void *context, void *block)
{
    test_memory *memory = context;
    if (!block)
        return;
    head *h = (head *)block - 1;
    if (h->of.mark != mark_of(h) || !memory->live) {
        fprintf(stderr, "released a block that this allocator does not have out\n");
        abort();
    }
    h->of.mark = 0;
    memory->live--;
    memory->bytes -= h->of.size;
    free(h);
}

recede_allocator test_allocator(test_memory *memory, size_t fail_at)
{
    *memory = (test_memory){.fail_at = fail_at};
    return (recede_allocator){allocate, release, memory};
}
