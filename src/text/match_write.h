/* Recipes for one colour to bytes: lines to read at the terminal, and JSON as
 * docs/mixing.md describes it. */
#ifndef RECEDE_TEXT_MATCH_WRITE_H
#define RECEDE_TEXT_MATCH_WRITE_H

#include "recede.h"
#include "text/buffer.h"

typedef struct recede_match_told {
    recede_colour target;
    const recede_palette *palette;
    const char *palette_name; /* "": a list */
    const recede_rules *rules;
    const recede_matches *matches;
    const recede_addition *addition; /* NULL: none sought */
} recede_match_told;

/* At most 100 columns. dabs: with the colours themselves, in the escape sequences
 * for 24-bit colours that many terminals take (ISO 8613-6, 38 and 48 with 2). */
void recede_match_text(const recede_match_told *told, int dabs, recede_buffer *out);

/* As a file: ends with a line end. */
void recede_match_write(const recede_match_told *told, recede_buffer *out);

#endif
