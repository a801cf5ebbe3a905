/* The parts of a swatch description as tables, each with what its base is. */
#ifndef RECEDE_TEXT_SWATCH_FIELDS_H
#define RECEDE_TEXT_SWATCH_FIELDS_H

#include "text/scene_fields.h"
#include "text/swatch_read.h"

extern const recede_fields recede_paper_source_fields; /* a recede_source */
extern const recede_fields recede_card_fields;         /* a recede_card */
extern const recede_fields recede_painted_fields;      /* a recede_painted */

/* The name of a white of the library; the place is a recede_paint. */
extern const recede_form recede_form_white;

/* Refuses what is no list of 1 to most values. */
recede_text_status recede_list_check(recede_reader *reader, size_t value, const char *expected,
                                     size_t most);

#endif
