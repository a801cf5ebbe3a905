/* Arrays that grow on an allocator without realloc. */
#ifndef RECEDE_TEXT_GROW_H
#define RECEDE_TEXT_GROW_H

#include "recede.h"

typedef struct recede_array {
    const recede_allocator *allocator;
    void *items;
    size_t count, capacity, item_size;
} recede_array;

void recede_array_start(recede_array *array, const recede_allocator *allocator, size_t item_size);
void recede_array_free(recede_array *array);

/* Room for one more item, counted in; NULL when there is no memory. Pointers
 * to earlier items no longer hold. */
void *recede_array_add(recede_array *array);

#endif
