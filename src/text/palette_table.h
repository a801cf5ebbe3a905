/* Palettes and pigments as text for the terminal. */
#ifndef RECEDE_TEXT_PALETTE_TABLE_H
#define RECEDE_TEXT_PALETTE_TABLE_H

#include "text/words_paint.h"

/* All built-in palettes and pigments. */
void recede_palette_list_text(recede_buffer *out);

/* One palette, every paint in full. */
void recede_palette_told_text(const recede_paints_told *told, recede_buffer *out);

/* The same as JSON: docs/paints-list.schema.json describes both. Files end with a
 * line end. */
void recede_palette_list_write(recede_buffer *out);
void recede_palette_told_write(const recede_paints_told *told, recede_buffer *out);

#endif
