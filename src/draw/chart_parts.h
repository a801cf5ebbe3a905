/* The chart's own insides: what its pages share. */
#ifndef RECEDE_DRAW_CHART_PARTS_H
#define RECEDE_DRAW_CHART_PARTS_H

#include "draw/chart.h"
#include "draw/page.h"

#include <stdint.h>

typedef struct recede_span { int first, count; } recede_span;

/* One page: which rows and columns it holds, and where they stand. The panel is
 * the painter's paper; heads of rows at its left, of columns at its top. */
typedef struct recede_chart_page {
    const recede_chart_drawing *drawing;
    recede_span rows, columns;
    recede_rect panel;
    double head_w, head_h, square_w, square_h;
} recede_chart_page;

/* The panel with all in it. 0, or -1 when memory runs out. */
int recede_chart_draw_panel(const recede_chart_page *p, const recede_page *page);

/* A patch with its value on it. */
void recede_chart_draw_patch(const recede_page *page, const recede_chart_patch *patch,
                             recede_rect room, uint32_t seed);

#endif
