/* The mixing chart as a sheet to hang on the wall: rows of paints by columns of
 * paints, and in every square three proportions by three strengths. */
#ifndef RECEDE_DRAW_CHART_H
#define RECEDE_DRAW_CHART_H

#include "draw/sheet.h"

/* A chart and how it falls into pages; all of it is borrowed. */
typedef struct recede_chart_drawing {
    const recede_palette *palette;
    const recede_chart *chart;
    const char *palette_name; /* "": a list */
    size_t row_blocks, column_blocks; /* pages: across first, then down */
    const char *left_out;     /* what is said of paints that are not on it, or "" */
} recede_chart_drawing;

/* The sheet of a drawing whose palette, chart, palette_name and left_out are set. */
recede_sheet recede_chart_sheet(recede_chart_drawing *drawing);

#endif
