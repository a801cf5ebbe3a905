/* What is told about a paint: of the library's, what is known of its pigments; of
 * the painter's own, what its file says. */
#ifndef RECEDE_TEXT_WORDS_PAINT_H
#define RECEDE_TEXT_WORDS_PAINT_H

#include "text/palette_file.h"

/* A palette to tell about; all of it is borrowed. */
typedef struct recede_paints_told {
    const char *name;                 /* of the palette or its file; "": a list */
    const char *purpose;              /* "": none */
    const recede_palette *palette;
    const recede_pigment_file *own;   /* one for each paint, in use where it has no
                                         ingredients; NULL: all are the library's */
} recede_paints_told;

typedef enum recede_trait {
    RECEDE_TRAIT_TRANSPARENCY, RECEDE_TRAIT_PERMANENCE, RECEDE_TRAIT_STAINING,
    RECEDE_TRAIT_GRANULATION, RECEDE_TRAIT_MEASURED, RECEDE_TRAIT_SOURCE, RECEDE_TRAITS
} recede_trait;

/* "permanence", ...: as text and JSON call it. */
const char *recede_words_trait_name(recede_trait trait);

/* A pigment's word for it; "" where there is none. */
const char *recede_pigment_trait(const recede_pigment *pigment, recede_trait trait);

/* The same of a paint of the painter's own. */
const char *recede_own_trait(const recede_pigment_file *own, recede_trait trait);

/* How a pigment's figures were got, with what they assume in the medium. */
void recede_words_figures(recede_buffer *out, const recede_pigment *pigment,
                          recede_medium medium);

/* Of a paint: where its pigments differ, each with its name. Nothing where nothing
 * is known. */
void recede_words_trait(recede_buffer *out, const recede_paints_told *told, size_t paint,
                        recede_trait trait);

/* The same without their names, each word once. */
void recede_words_trait_short(recede_buffer *out, const recede_paints_told *told, size_t paint,
                              recede_trait trait);

/* Its cautions, each once; returns how many. */
size_t recede_paint_cautions(const recede_paints_told *told, size_t paint,
                             const char *cautions[RECEDE_MOST_IN_MIX]);

/* Whether the paint is not one pigment of its own name: then what it is taken for
 * is worth telling, "2 hansa yellow + 1 diarylide yellow". */
int recede_is_taken_for(const recede_paint *paint);
void recede_words_taken_for(recede_buffer *out, const recede_paint *paint);

/* "L* 25, C* 62, h 291; value 2.5": hue in degrees. */
void recede_words_lch(recede_buffer *out, const recede_colour *colour);

/* "half hides black ink": how far the masstone covers it, as docs/palette.md has it. */
void recede_words_covering(recede_buffer *out, const recede_palette *palette, size_t paint);

/* What the strengths are: "0, 1, 3, 8 and 20 water to 1 of paint". */
void recede_words_strengths(recede_buffer *out, recede_medium medium);

#endif
