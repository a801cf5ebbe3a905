#include "colour/memory.h"

#include <stdint.h>
#include <stdlib.h>

static void *allocate_by_malloc(void *context, size_t size)
{
    (void)context;
    return malloc(size);
}

static void release_by_free(void *context, void *block)
{
    (void)context;
    free(block);
}

static const recede_allocator by_malloc = {allocate_by_malloc, release_by_free, NULL};

const recede_allocator *recede_allocator_or_default(const recede_allocator *allocator)
{
    return allocator ? allocator : &by_malloc;
}

void *recede_allocate_array(const recede_allocator *allocator, size_t count, size_t size)
{
    allocator = recede_allocator_or_default(allocator);
    if (size && count > SIZE_MAX / size)
        return NULL;
    size_t bytes = count * size;
    return allocator->allocate(allocator->context, bytes ? bytes : 1);
}

void recede_release(const recede_allocator *allocator, void *block)
{
    allocator = recede_allocator_or_default(allocator);
    allocator->release(allocator->context, block);
}
