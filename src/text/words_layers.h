/* What lies on what, in words. */
#ifndef RECEDE_TEXT_WORDS_LAYERS_H
#define RECEDE_TEXT_WORDS_LAYERS_H

#include "recede.h"
#include "text/buffer.h"

/* The recipe of a wash with what it lies on: as recede_words_recipe, for one over
 * another with "; over the dry lit wash" after it; "the lit wash as it is" where that
 * other needs nothing more. */
void recede_words_wash(recede_buffer *out, const recede_palette *palette,
                       const recede_wash *wash);

/* How the washes of a plan lie beside and over each other, a sentence or two; for
 * opaque media in which order they go. */
const char *recede_words_layers(const recede_plan *plan);

#endif
