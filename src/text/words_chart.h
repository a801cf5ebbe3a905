/* The words of mixing charts and of the sheet that shows a palette's reach. */
#ifndef RECEDE_TEXT_WORDS_CHART_H
#define RECEDE_TEXT_WORDS_CHART_H

#include "recede.h"
#include "text/buffer.h"

/* What is mixed with what: "3 paints down, each with 4 across; 1 part in 5 of
 * every mix is burnt sienna". */
void recede_words_chart(recede_buffer *out, const recede_palette *palette,
                        const recede_chart *chart);

/* Which paints of the palette are nowhere on it, and why, a sentence for each reason: "Left
 * out, being neither yellow or earth for the rows nor blue or green for the columns: pyrrole
 * red; lamp black."; nothing where all are on it. In opaque media the white that lightens the
 * mixes is. */
void recede_words_chart_left_out(recede_buffer *out, const recede_palette *palette,
                                 const recede_chart *chart);

/* "landscape-twelve, watercolour": the paints and how they are used. name "" is
 * a list of the painter's own. */
void recede_words_chart_paints(recede_buffer *out, const recede_palette *palette,
                               const char *name);

/* "3 : 1", and of a strength "cream, 1 water" or "with 4 white". */
void recede_words_proportion(recede_buffer *out, int proportion);
void recede_words_strength(recede_buffer *out, recede_medium medium, int strength);

/* "top of the sky", "far ridge, shadow side, at its foot": which wash. */
void recede_words_place(recede_buffer *out, const recede_scene *scene,
                        const recede_wash_place *place);

/* What a range sheet shows: "up to 3 paints and 8 parts a mix". */
void recede_words_rules(recede_buffer *out, const recede_rules *rules);

#endif
