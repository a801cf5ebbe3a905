/* The swatch sheet: every paint of a palette from masstone to wash, over paper and
 * over black ink, with empty boxes to paint one's own beside it. */
#ifndef RECEDE_DRAW_SWATCHES_H
#define RECEDE_DRAW_SWATCHES_H

#include "draw/sheet.h"
#include "text/words_paint.h"

/* A palette and how it falls into pages. */
typedef struct recede_swatches_drawing {
    const recede_paints_told *told; /* borrowed */
    size_t pages;
    size_t first[RECEDE_MOST_PAINTS + 1]; /* paint of each page; ends with their count */
} recede_swatches_drawing;

/* The sheet of a drawing whose told is set. */
recede_sheet recede_swatches_sheet(recede_swatches_drawing *drawing);

#endif
