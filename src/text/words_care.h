/* What to mind in handling the paints of a picture. */
#ifndef RECEDE_TEXT_WORDS_CARE_H
#define RECEDE_TEXT_WORDS_CARE_H

#include "recede.h"
#include "text/buffer.h"

/* "Take care:" and a line each, so wide: the cautions of the paints in use (work NULL:
 * those of the plan's own mixes), the medium's, and the sun's where the scene looks
 * toward it. */
void recede_words_care(recede_buffer *out, const recede_plan *plan, const recede_work *work,
                       size_t width);

#endif
