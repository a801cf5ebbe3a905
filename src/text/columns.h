/* Rows of cells side by side, each wrapped within its own column. */
#ifndef RECEDE_TEXT_COLUMNS_H
#define RECEDE_TEXT_COLUMNS_H

#include "text/buffer.h"

/* Adds one row: as many lines as the tallest cell needs, blanks at line ends
 * left out. widths are columns of the terminal; two blanks stand between. A
 * word wider than its column is cut between characters. */
void recede_columns_row(recede_buffer *out, const char *const *cells, const size_t *widths,
                        size_t count);

/* One text wrapped to a width, every line after the first indented. */
void recede_columns_text(recede_buffer *out, const char *text, size_t width, size_t indent);

#endif
