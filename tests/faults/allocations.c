/* The functions that allocate. Those called by the program, libcjson and libpng
 * are points and are kept count of; those called by the drawing libraries are
 * points of another kind. */
#define _GNU_SOURCE
#include <errno.h>
#include <signal.h>
#include <stdint.h>
#include <stdlib.h>

#include "points.h"

/* The C library's own, by glibc's other names for them. */
void *__libc_malloc(size_t size);
void *__libc_calloc(size_t count, size_t size);
void *__libc_realloc(void *block, size_t size);
void *__libc_memalign(size_t alignment, size_t size);
void __libc_free(void *block);

#define CALLER __builtin_return_address(0)

/* ---- the program's blocks: open addressing, freed places are marked */

enum { PLACES = 1 << 16 };
typedef struct {
    uintptr_t block;
    const void *caller;
} place;
static place places[PLACES];
static long live;
static const uintptr_t freed = 1;

static size_t first_place(uintptr_t block)
{
    return (size_t)((block >> 4) * 0x9E3779B97F4A7C15u >> 48) % PLACES;
}

static void remember(void *block, const void *caller)
{
    if (!block || fault_caller_of(caller) != CALLER_OURS || live > PLACES / 2)
        return;
    size_t i = first_place((uintptr_t)block);
    while (places[i].block > freed)
        i = (i + 1) % PLACES;
    places[i] = (place){(uintptr_t)block, caller};
    live++;
}

static void forget(const void *block)
{
    size_t i = first_place((uintptr_t)block);
    for (int tries = 0; block && places[i].block && tries < PLACES; tries++) {
        if (places[i].block == (uintptr_t)block) {
            places[i].block = freed;
            live--;
            return;
        }
        i = (i + 1) % PLACES;
    }
}

long fault_live_blocks(const void **caller)
{
    for (size_t i = 0; live && i < PLACES; i++)
        if (places[i].block > freed)
            *caller = places[i].caller;
    return live;
}

/* ---- the points */

static int fails(const void *caller)
{
    fault_caller who = fault_caller_of(caller);
    fault_order order = {FAULT_NOTHING, 0};
    if (who == CALLER_OURS)
        order = fault_at(FAULTS_ALLOCATIONS, "allocation");
    else if (who == CALLER_DRAWING)
        order = fault_at(FAULTS_DRAWING, "allocation");
    if (order.action == FAULT_SIGNAL)
        raise(order.value);
    if (order.action != FAULT_FAIL && order.action != FAULT_LAST)
        return 0;
    errno = ENOMEM;
    return 1;
}

static void *take(void *block, const void *caller)
{
    remember(block, caller);
    return block;
}

void *malloc(size_t size)
{
    return fails(CALLER) ? NULL : take(__libc_malloc(size), CALLER);
}

void *calloc(size_t count, size_t size)
{
    return fails(CALLER) ? NULL : take(__libc_calloc(count, size), CALLER);
}

void *realloc(void *block, size_t size)
{
    if (fails(CALLER))
        return NULL;
    void *other = __libc_realloc(block, size);
    if (other || size == 0)
        forget(block);
    return take(other, CALLER);
}

void *reallocarray(void *block, size_t count, size_t size)
{
    size_t bytes;
    if (__builtin_mul_overflow(count, size, &bytes) || fails(CALLER)) {
        errno = ENOMEM;
        return NULL;
    }
    void *other = __libc_realloc(block, bytes);
    if (other || bytes == 0)
        forget(block);
    return take(other, CALLER);
}

void *aligned_alloc(size_t alignment, size_t size)
{
    return fails(CALLER) ? NULL : take(__libc_memalign(alignment, size), CALLER);
}

void *memalign(size_t alignment, size_t size)
{
    return fails(CALLER) ? NULL : take(__libc_memalign(alignment, size), CALLER);
}

int posix_memalign(void **block, size_t alignment, size_t size)
{
    void *made = fails(CALLER) ? NULL : __libc_memalign(alignment, size);
    if (!made)
        return ENOMEM;
    *block = take(made, CALLER);
    return 0;
}

void free(void *block)
{
    forget(block);
    __libc_free(block);
}
