/* The names that a scene may use, to read at the terminal. */
#ifndef RECEDE_TEXT_NAMES_WRITE_H
#define RECEDE_TEXT_NAMES_WRITE_H

#include "text/buffer.h"

/* Foliage, surfaces, palettes with their paints, pigments, tubes with what each
 * stands for; at most 100 columns. */
void recede_names_write(recede_buffer *out);

#endif
