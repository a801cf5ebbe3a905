/* The order of work on a sheet: pages of steps, two columns each, for the study and
 * for a sheet of its own. */
#ifndef RECEDE_DRAW_WORK_PAGES_H
#define RECEDE_DRAW_WORK_PAGES_H

#include "draw/page.h"

/* The place of what comes before the steps, of a step, or of the notes after the last. */
typedef struct recede_work_block {
    double x, y, height;
    size_t page;
} recede_work_block;

typedef struct recede_work_pages {
    const recede_plan *plan;
    const recede_work *work;
    const recede_allocator *allocator;
    recede_work_block blocks[RECEDE_MOST_STEPS + 2];
    size_t pages;
    int failed; /* memory ran out while words were put together */
} recede_work_pages;

/* Finds every step's place and how many pages there are. 0, or -1 when memory runs
 * out. */
int recede_work_pages_lay(recede_work_pages *pages, recede_type *type);
int recede_work_pages_draw(recede_work_pages *pages, const recede_page *page, size_t index);

#endif
