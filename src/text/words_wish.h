/* A wish and its answer: in words, and as JSON that docs/wish.md describes. */
#ifndef RECEDE_TEXT_WORDS_WISH_H
#define RECEDE_TEXT_WORDS_WISH_H

#include "recede.h"
#include "text/buffer.h"

/* scene is the one the wish was made for, checked. */
typedef struct recede_wish_told {
    const recede_scene *scene;
    const recede_wish *wish;
    const recede_wish_answer *answer;
} recede_wish_told;

/* "With visibility at 11 km instead of 25 km ...": the answer in a sentence or
 * two. */
void recede_words_wish(recede_buffer *out, const recede_wish_told *told);

/* For the terminal: wish, answer, the neighbours as they then stand, and what
 * remains. At most 100 columns. */
void recede_wish_table(recede_buffer *out, const recede_wish_told *told);

void recede_wish_write(recede_buffer *out, const recede_wish_told *told);

#endif
