/* What a palette reaches, as a sheet: fields of a* and b* at three values, with the
 * colours that a plan wants on them. */
#ifndef RECEDE_DRAW_RANGE_H
#define RECEDE_DRAW_RANGE_H

#include "draw/sheet.h"

enum { RECEDE_RANGE_FIELDS = 3 };

/* A colour wanted: which wash, and the field whose value is nearest. The rest is
 * the list's: where the entry stands. */
typedef struct recede_range_mark {
    recede_wash_place place;
    const recede_warning *warning; /* NULL: it is reached */
    int field;
    size_t page;
    double y, height;
} recede_range_mark;

typedef struct recede_range_drawing {
    const recede_plan *plan;
    double value[RECEDE_RANGE_FIELDS]; /* dark to light */
    recede_gamut *fields;              /* RECEDE_RANGE_FIELDS, from the allocator */
    const recede_allocator *allocator;
    size_t count, pages;
    recede_range_mark marks[RECEDE_MOST_WASH_PLACES];
    int failed; /* memory ran out while words were put together */
} recede_range_drawing;

/* The values about which the plan's colours gather, and what reaches there. Errors:
 * RECEDE_NO_MEMORY, RECEDE_CANCELLED, with nothing left behind. The drawing is
 * large: keep it off small stacks. recede_range_end afterwards. */
recede_code recede_range_start(recede_range_drawing *drawing, const recede_plan *plan,
                               const recede_allocator *allocator,
                               const recede_progress *progress, recede_error *error);
void recede_range_end(recede_range_drawing *drawing);

recede_sheet recede_range_sheet(recede_range_drawing *drawing);

#endif
