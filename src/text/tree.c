#include "text/tree.h"

#include <string.h>

#include "colour/memory.h"
#include "text/first_bytes.h"
#include "text/numbers.h"

const cJSON *recede_tree_item(const recede_tree *tree, size_t value)
{
    return tree->items[value];
}

const recede_scanned *recede_tree_place(const recede_tree *tree, size_t value)
{
    return recede_scan_at(&tree->scan, value);
}

size_t recede_tree_first(const recede_tree *tree, size_t value)
{
    (void)tree;
    return value + 1;
}

size_t recede_tree_next(const recede_tree *tree, size_t value)
{
    return value + recede_tree_place(tree, value)->span;
}

size_t recede_tree_end(const recede_tree *tree, size_t value)
{
    return recede_tree_next(tree, value);
}

/* cJSON's items in the scanner's order. Brackets nest no deeper than the
 * scanner allows, and so does this. */
static size_t collect(recede_tree *tree, const cJSON *item, size_t value)
{
    tree->items[value++] = item;
    if (!cJSON_IsArray(item) && !cJSON_IsObject(item))
        return value;
    for (const cJSON *child = item->child; child; child = child->next)
        value = collect(tree, child, value);
    return value;
}

recede_text_status recede_tree_read(const char *bytes, size_t size,
                                    const recede_allocator *allocator, recede_tree *tree,
                                    recede_text_error *error)
{
    *tree = (recede_tree){.allocator = allocator, .bytes = bytes};
    recede_text_status status = recede_scan_bytes(bytes, size, allocator, &tree->scan, error);
    if (status)
        return status;
    tree->items = recede_allocate_array(allocator, recede_scan_count(&tree->scan),
                                        sizeof *tree->items); /* NOLINT(bugprone-sizeof-expression): pointers it is */
    if (!tree->items)
        return recede_text_no_memory(error);
    size_t mark = recede_byte_order_mark(bytes, size);
    tree->root = cJSON_ParseWithLengthOpts(bytes + mark, size - mark, NULL, 0);
    if (!tree->root) /* the scanner has passed it: only memory can be short */
        return recede_text_no_memory(error);
    collect(tree, tree->root, 0);
    return RECEDE_TEXT_OK;
}

void recede_tree_free(recede_tree *tree)
{
    cJSON_Delete(tree->root);
    recede_release(tree->allocator, (void *)tree->items);
    recede_scan_free(&tree->scan);
}

size_t recede_tree_member(const recede_tree *tree, size_t object, const char *key)
{
    size_t end = recede_tree_end(tree, object);
    if (!cJSON_IsObject(recede_tree_item(tree, object)))
        return RECEDE_TREE_NONE;
    for (size_t c = recede_tree_first(tree, object); c < end; c = recede_tree_next(tree, c))
        if (strcmp(recede_tree_item(tree, c)->string, key) == 0)
            return c;
    return RECEDE_TREE_NONE;
}

size_t recede_tree_element(const recede_tree *tree, size_t array, size_t index)
{
    size_t end = recede_tree_end(tree, array);
    if (!cJSON_IsArray(recede_tree_item(tree, array)))
        return RECEDE_TREE_NONE;
    for (size_t c = recede_tree_first(tree, array); c < end; c = recede_tree_next(tree, c))
        if (index-- == 0)
            return c;
    return RECEDE_TREE_NONE;
}

size_t recede_tree_count(const recede_tree *tree, size_t value)
{
    size_t count = 0, end = recede_tree_end(tree, value);
    for (size_t c = recede_tree_first(tree, value); c < end; c = recede_tree_next(tree, c))
        count++;
    return count;
}

double recede_tree_number(const recede_tree *tree, size_t value)
{
    const recede_scanned *place = recede_tree_place(tree, value);
    return recede_number_value(tree->bytes + place->start, place->end - place->start);
}

/* One step of a path: a name, or an index in brackets. */
static const char *find_step(const recede_tree *tree, const char *path, size_t *value)
{
    char name[RECEDE_NAME_SIZE];
    if (*path == '[') {
        size_t index = 0;
        for (path++; *path >= '0' && *path <= '9'; path++)
            index = index * 10 + (size_t)(*path - '0');
        *value = recede_tree_element(tree, *value, index);
        return *path == ']' ? path + 1 : path;
    }
    if (*path == '.')
        path++;
    size_t length = strcspn(path, ".[");
    if (length >= sizeof name)
        length = sizeof name - 1;
    memcpy(name, path, length);
    name[length] = '\0';
    *value = recede_tree_member(tree, *value, name);
    return path + length;
}

size_t recede_tree_find(const recede_tree *tree, const char *path, int *whole)
{
    size_t value = 0;
    *whole = 1;
    while (*path && *whole) {
        size_t further = value;
        path = find_step(tree, path, &further);
        if (further == RECEDE_TREE_NONE)
            *whole = 0;
        else
            value = further;
    }
    return value;
}
