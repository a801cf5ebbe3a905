/* Errors of the core in words, with their place in the file. */
#ifndef RECEDE_TEXT_SCENE_EXPLAIN_H
#define RECEDE_TEXT_SCENE_EXPLAIN_H

#include "text/tree.h"

/* Returns RECEDE_TEXT_REFUSED, or RECEDE_TEXT_NO_MEMORY for that error. */
recede_text_status recede_explain(const recede_tree *tree, const recede_error *core,
                                  recede_text_error *error);

#endif
