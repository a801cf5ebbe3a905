/* What the fields of pigment and palette files share with those of a scene's
 * palette. */
#ifndef RECEDE_TEXT_PAINT_FIELDS_H
#define RECEDE_TEXT_PAINT_FIELDS_H

#include "text/nearest.h"
#include "text/palette_file.h"
#include "text/scene_fields.h"

/* true or false; the place is an int. */
extern const recede_form recede_form_truth;

/* K or S of every band; the place is a recede_spectrum. */
extern const recede_form recede_form_bands;

/* The fields of a pigment; the base is a recede_pigment_file. */
extern const recede_fields recede_pigment_fields;

/* A list of paints: names, pigment files and pigments as objects. Fills paints, none
 * of which may be there twice. */
recede_text_status recede_paints_read(recede_reader *reader, size_t value,
                                      recede_pigment_file paints[RECEDE_MOST_PAINTS],
                                      size_t *count);

/* One of them, as an element of a list. */
void recede_paint_write(recede_json *json, const recede_pigment_file *pigment);

/* What a palette file holds, at value; out is empty before. */
recede_text_status recede_palette_read(recede_reader *reader, size_t value,
                                       recede_palette_file *out);

/* The palette file named at value, into out. */
recede_text_status recede_palette_named(recede_reader *reader, size_t value, const char *name,
                                        recede_palette_file *out);

/* "WHAT "..." is not known; did you mean ...", at the value. */
recede_text_status recede_refuse_unknown(recede_reader *reader, size_t value, const char *what,
                                         const recede_nearest *nearest);

#endif
