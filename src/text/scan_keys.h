/* The keys of the objects that are open while a text is scanned, for finding
 * keys that stand twice in time n log n. */
#ifndef RECEDE_TEXT_SCAN_KEYS_H
#define RECEDE_TEXT_SCAN_KEYS_H

#include "text/grow.h"

typedef struct recede_keys {
    recede_array stack; /* keys of the outer objects first */
    char *pool;         /* the keys' bytes, escapes resolved */
    size_t used;
} recede_keys;

/* text_size: all keys together are never longer. Returns 0 without memory. */
int recede_keys_start(recede_keys *keys, const recede_allocator *allocator, size_t text_size);
void recede_keys_free(recede_keys *keys);

/* Adds a key of the innermost object; value tells which one it is. Returns 0
 * without memory. */
int recede_keys_add(recede_keys *keys, const char *key, size_t size, size_t value);

/* Closes the innermost object, whose keys are those from first on. Returns 1
 * where one stands twice: earlier and later are the values of the pair whose
 * later one comes first. */
int recede_keys_close(recede_keys *keys, size_t first, size_t *earlier, size_t *later);

#endif
