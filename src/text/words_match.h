/* The words of recipes for one colour, and of an addition to a palette. */
#ifndef RECEDE_TEXT_WORDS_MATCH_H
#define RECEDE_TEXT_WORDS_MATCH_H

#include "recede.h"
#include "text/buffer.h"

/* "closest", "simplest", "most forgiving", "steadiest in lamp light". */
const char *recede_words_match_kind(recede_match_kind kind);

/* "closest", "simplest", "forgiving", "lamp": as JSON names them. */
const char *recede_words_match_key(recede_match_kind kind);

/* "#6a7f4c: L* 50.1, a* -14.2, b* 22.7, value 4.9". */
void recede_words_colour(recede_buffer *out, const recede_colour *colour);

/* "0.4 off, no eye will see it". */
void recede_words_off(recede_buffer *out, double delta_e);

/* "viridian (chromium: mind its label) would bring it within 0.8": the number
 * rounded up, what is to be said against the pigment with its name. */
void recede_words_addition(recede_buffer *out, const recede_pigment *pigment, double delta_e);

/* The paint that helps, whatever kind it is: one let down, which costs no new tube,
 * where that comes within 1 of the best pigment. pigment and let_down may be NULL.
 * 0, and nothing said, where none is worth naming. */
int recede_words_best_addition(recede_buffer *out, const recede_addition *addition);

/* 1 when an addition is worth naming: it brings the colour nearer by half a unit or
 * more, and within 5 or by two fifths. */
int recede_addition_helps(double delta_e_without, double delta_e_with);

#endif
