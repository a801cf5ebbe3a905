#include "text/grow.h"

#include <string.h>

#include "colour/memory.h"

void recede_array_start(recede_array *array, const recede_allocator *allocator, size_t item_size)
{
    *array = (recede_array){.allocator = allocator, .item_size = item_size};
}

void recede_array_free(recede_array *array)
{
    recede_release(array->allocator, array->items);
    recede_array_start(array, array->allocator, array->item_size);
}

void *recede_array_add(recede_array *array)
{
    if (array->count == array->capacity) {
        size_t capacity = array->capacity ? 2 * array->capacity : 32;
        void *items = recede_allocate_array(array->allocator, capacity, array->item_size);
        if (!items)
            return NULL;
        if (array->count)
            memcpy(items, array->items, array->count * array->item_size);
        recede_release(array->allocator, array->items);
        array->items = items;
        array->capacity = capacity;
    }
    return (char *)array->items + array->count++ * array->item_size;
}
