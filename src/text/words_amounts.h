/* Amounts that a painter measures by hand: no finer than a hand can do. */
#ifndef RECEDE_TEXT_WORDS_AMOUNTS_H
#define RECEDE_TEXT_WORDS_AMOUNTS_H

#include "text/buffer.h"

/* "a third of a pea of yellow ochre", "1.5 peas of ...", "a brush tip of ...". */
void recede_words_paint_amount(recede_buffer *out, double ml, const char *name);

/* "half a drop", "1.5 drops", "20 drops"; "3.1 ml" where they are too many to count. */
void recede_words_drops(recede_buffer *out, double ml);

/* As much water as goes with a pea of paint. */
double recede_water_to_a_pea_ml(double water);

/* At most two figures: "0.32", "5.6", "11", "130". */
void recede_words_two_figures(recede_buffer *out, double number);

#endif
