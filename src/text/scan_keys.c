#include "text/scan_keys.h"

#include <stdlib.h>
#include <string.h>

#include "colour/memory.h"

typedef struct {
    const char *text;
    size_t size, value;
} key;

int recede_keys_start(recede_keys *keys, const recede_allocator *allocator, size_t text_size)
{
    recede_array_start(&keys->stack, allocator, sizeof(key));
    keys->used = 0;
    keys->pool = recede_allocate_array(allocator, text_size, 1);
    return keys->pool != NULL;
}

void recede_keys_free(recede_keys *keys)
{
    recede_release(keys->stack.allocator, keys->pool);
    recede_array_free(&keys->stack);
}

int recede_keys_add(recede_keys *keys, const char *text, size_t size, size_t value)
{
    key *added = recede_array_add(&keys->stack);
    if (!added)
        return 0;
    char *copy = keys->pool + keys->used;
    if (size)
        memcpy(copy, text, size);
    keys->used += size;
    *added = (key){copy, size, value};
    return 1;
}

static int same(const key *a, const key *b)
{
    return a->size == b->size && memcmp(a->text, b->text, a->size) == 0;
}

/* By bytes, then by order in the text. */
static int compare(const void *one, const void *other)
{
    const key *a = one, *b = other;
    if (a->size != b->size)
        return a->size < b->size ? -1 : 1;
    int order = memcmp(a->text, b->text, a->size);
    if (order != 0)
        return order;
    return a->value < b->value ? -1 : a->value > b->value;
}

int recede_keys_close(recede_keys *keys, size_t first, size_t *earlier, size_t *later)
{
    key *stack = keys->stack.items;
    size_t count = keys->stack.count - first;
    int twice = 0;
    keys->stack.count = first;
    if (count == 0)
        return 0;
    keys->used = (size_t)(stack[first].text - keys->pool);
    qsort(stack + first, count, sizeof *stack, compare);
    for (size_t i = first + 1; i < first + count; i++) {
        if (same(&stack[i - 1], &stack[i]) && (!twice || stack[i].value < *later)) {
            *earlier = stack[i - 1].value;
            *later = stack[i].value;
            twice = 1;
        }
    }
    return twice;
}
