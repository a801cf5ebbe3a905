/* The words of paints that are let down beforehand. */
#ifndef RECEDE_TEXT_WORDS_LET_DOWN_H
#define RECEDE_TEXT_WORDS_LET_DOWN_H

#include "recede.h"
#include "text/buffer.h"

/* "1 part ultramarine blue with 11 parts titanium white": how it is prepared. */
void recede_words_let_down(recede_buffer *out, const recede_paint *paint);

/* "beforehand: 1 part ... with 11 parts ...; 1 part ...": of the paints of a mix;
 * nothing where none is let down. */
void recede_words_beforehand(recede_buffer *out, const recede_palette *palette,
                             const recede_mix *mix);

/* What stands on sheets beside recipes in short: " What is called let down is ...", or ""
 * where the palette has nothing let down. */
const char *recede_words_let_down_note(const recede_palette *palette);

/* A sentence for all of a plan or an order of work: "Let down beforehand: 1 part ...
 * with 11 parts ...". work NULL: the plan's own recipes; else how much of each its
 * steps take stands after it. Nothing where none is used. */
void recede_words_beforehand_all(recede_buffer *out, const recede_plan *plan,
                                 const recede_work *work);

/* "ultramarine blue let down beforehand (1 part with 11 of white), as one more paint,
 * would bring it within 1.3": the number rounded up. */
void recede_words_let_down_advice(recede_buffer *out, const recede_paint *paint, double delta_e);

#endif
