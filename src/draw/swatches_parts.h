/* The swatch sheet's own insides. */
#ifndef RECEDE_DRAW_SWATCHES_PARTS_H
#define RECEDE_DRAW_SWATCHES_PARTS_H

#include "draw/swatches.h"

extern const double recede_swatches_row_mm;

/* The cautions that the paints of a page have, each once. */
enum { RECEDE_MOST_NOTES = RECEDE_MOST_PAINTS * RECEDE_MOST_IN_MIX };
typedef struct recede_swatches_notes {
    size_t count;
    const char *caution[RECEDE_MOST_NOTES];
} recede_swatches_notes;

/* The place of a caution among them, from 1; it is added where it is not there. */
size_t recede_swatches_note(recede_swatches_notes *notes, const char *caution);

/* What stands over the columns: strip and strengths. */
int recede_swatches_draw_heads(const recede_paints_told *told, const recede_page *page, double y);

/* One paint: its words at the left, strip and dabs. 0, or -1: no memory. */
int recede_swatches_draw_row(const recede_paints_told *told, size_t paint,
                             recede_swatches_notes *notes, const recede_page *page, double y);

#endif
