/* What a ladder teaches, in words that a teacher can read out, with the numbers
 * of that very ladder in them. */
#ifndef RECEDE_TEXT_WORDS_LADDER_H
#define RECEDE_TEXT_WORDS_LADDER_H

#include "recede.h"
#include "text/buffer.h"

/* "summer oak", "#5e5a3c", "3 hansa yellow + 1 ultramarine blue + 2 water" of the
 * scene's paints, or "a colour of your own". */
void recede_words_own(recede_buffer *out, const recede_own *own, const recede_scene *scene);

/* "Why far greens go pale and blue", or "What the air does to red soil". */
void recede_words_ladder_title(recede_buffer *out, const recede_ladder *ladder);

/* "Summer oak and whitewash from 10 m to 20 km; clear sky, ..." */
void recede_words_ladder_subject(recede_buffer *out, const recede_ladder *ladder);

/* "Clear air" and "Haze" where that is what they are, else "Clearer air" and
 * "Thicker air". */
const char *recede_words_ladder_air(const recede_ladder *ladder, size_t air);

/* "lit side", "shadow side", or the white's name. */
void recede_words_ladder_row(recede_buffer *out, const recede_ladder *ladder,
                             recede_ladder_row row);

/* One rung: how much is air, and what that has done to both sides. */
void recede_words_rung(recede_buffer *out, const recede_ladder *ladder, size_t air, size_t rung);

/* What the whole ladder shows, in the order in which it happens. */
enum { RECEDE_LESSONS = 5 };
void recede_words_lesson_heading(recede_buffer *out, const recede_ladder *ladder, size_t lesson);
void recede_words_lesson(recede_buffer *out, const recede_ladder *ladder, size_t lesson);

/* That the white sets the scale of values, and what that does to the horizon; nothing
 * where the horizon is as light as a study would have it. */
void recede_words_ladder_scale(recede_buffer *out, const recede_ladder *ladder);

/* Why all this happens, and what sets the values: a paragraph. */
void recede_words_why(recede_buffer *out, const recede_ladder *ladder);

#endif
