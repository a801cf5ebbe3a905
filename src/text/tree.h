/* A JSON text as a flat tree: every value with its cJSON item and its place,
 * in the order in which the values start. Value 0 is the whole; the children of
 * a value follow it, each after the last one's span.
 *
 * cJSON takes its memory from malloc: its allocator can only be changed for
 * the whole process, which a library must not do to its host. All else comes
 * from the allocator given. When cJSON runs out, so do we, cleanly. */
#ifndef RECEDE_TEXT_TREE_H
#define RECEDE_TEXT_TREE_H

#include <cjson/cJSON.h>

#include "text/scan.h"

#define RECEDE_TREE_NONE ((size_t)-1)

typedef struct recede_tree {
    const recede_allocator *allocator;
    const char *bytes;
    recede_scan scan;
    cJSON *root;
    const cJSON **items;
} recede_tree;

/* The bytes must outlive the tree; it is to be freed in any case. */
recede_text_status recede_tree_read(const char *bytes, size_t size,
                                    const recede_allocator *allocator, recede_tree *tree,
                                    recede_text_error *error);
void recede_tree_free(recede_tree *tree);

const cJSON *recede_tree_item(const recede_tree *tree, size_t value);
const recede_scanned *recede_tree_place(const recede_tree *tree, size_t value);

/* for (c = first; c < end; c = next): all children of a value. */
size_t recede_tree_first(const recede_tree *tree, size_t value);
size_t recede_tree_end(const recede_tree *tree, size_t value);
size_t recede_tree_next(const recede_tree *tree, size_t value);

/* RECEDE_TREE_NONE where there is none. */
size_t recede_tree_member(const recede_tree *tree, size_t object, const char *key);
size_t recede_tree_element(const recede_tree *tree, size_t array, size_t index);
size_t recede_tree_count(const recede_tree *tree, size_t value); /* of children */

/* A number's value, read from its bytes whatever the locale. */
double recede_tree_number(const recede_tree *tree, size_t value);

/* The value a path such as "planes[2].distance" leads to, or as far towards it
 * as there is something; whole tells whether it went all the way. */
size_t recede_tree_find(const recede_tree *tree, const char *path, int *whole);

#endif
