/* Memory through the caller's allocator. */
#ifndef RECEDE_COLOUR_MEMORY_H
#define RECEDE_COLOUR_MEMORY_H

#include "recede.h"

/* The allocator given, or malloc and free where it is NULL. */
const recede_allocator *recede_allocator_or_default(const recede_allocator *allocator);

/* Room for count things of size bytes each, not cleared; for 0 things a block
 * of one byte. NULL when there is no memory or the product overflows. */
void *recede_allocate_array(const recede_allocator *allocator, size_t count, size_t size);

/* Gives a block back; block may be NULL. */
void recede_release(const recede_allocator *allocator, void *block);

#endif
