/* Which paint of a box a name means. */
#ifndef RECEDE_TEXT_PAINT_NAME_H
#define RECEDE_TEXT_PAINT_NAME_H

#include "recede.h"

enum { RECEDE_PAINT_NONE = -1, RECEDE_PAINT_MANY = -2 };

/* A paint answers to its own name, the file it was read from, its Colour Index name
 * where it is of the painter's own, and, where it is of the library, to all its names
 * there. A paint's own name goes before the others. Returns its index, or one of the
 * two above: no paint, several. */
int recede_paint_meant(const recede_paint *paints, size_t count, const char *name);

#endif
