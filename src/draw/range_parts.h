/* The range sheet's own insides. */
#ifndef RECEDE_DRAW_RANGE_PARTS_H
#define RECEDE_DRAW_RANGE_PARTS_H

#include "draw/page.h"
#include "draw/range.h"
#include "text/buffer.h"

/* The square of a field on the page; a* and b* from -most to most. */
typedef struct recede_range_frame {
    recede_rect room;
    double most;
} recede_range_frame;

/* The largest a* or b* that any field or mark needs, in tens. */
double recede_range_most(const recede_range_drawing *drawing);

/* A field's reach in its colours. 0, or -1 when memory runs out. */
int recede_range_draw_reach(const recede_range_drawing *drawing, const recede_page *page,
                            const recede_range_frame *frame, int field);

/* Axes and rings under the marks; then the marks with their numbers. */
void recede_range_draw_axes(const recede_page *page, const recede_range_frame *frame);
void recede_range_draw_marks(const recede_range_drawing *drawing, const recede_page *page,
                             const recede_range_frame *frame, int field);

/* The list: finds places and pages of the entries, and draws those of a page. */
void recede_range_lay_list(recede_range_drawing *drawing, recede_type *type);
void recede_range_draw_list(recede_range_drawing *drawing, const recede_page *page,
                            size_t index);

/* Where a field and its part of the list stand, from the left. */
double recede_range_column_x(int field);
extern const double recede_range_column_mm;

#endif
