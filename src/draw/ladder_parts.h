/* The ladder sheet's own insides: what its pages share. */
#ifndef RECEDE_DRAW_LADDER_PARTS_H
#define RECEDE_DRAW_LADDER_PARTS_H

#include "draw/dab.h"
#include "draw/page.h"
#include "text/buffer.h"

/* A row of the mixes: a heading for an air, or one rung of it. */
typedef struct recede_ladder_mixes {
    size_t air, rung;
    int heading;
    double y, height;
    size_t page;
} recede_ladder_mixes;

/* At worst every rung has a page, and so a heading, of its own. */
enum { RECEDE_MOST_LADDER_MIXES = 2 * RECEDE_MOST_LADDER_AIRS * RECEDE_MOST_RUNGS };

typedef struct recede_ladder_sheet {
    const recede_ladder *ladder;
    const recede_allocator *allocator;
    int blank;
    recede_ladder_mixes mixes[RECEDE_MOST_LADDER_MIXES];
    size_t mix_count, mix_pages;
    int failed; /* memory ran out while words were put together */
} recede_ladder_sheet;

/* Words put together and set; the buffer is freed. */
recede_rect recede_ladder_set(recede_ladder_sheet *sheet, const recede_page *page,
                              recede_buffer *words, recede_rect room, const recede_style *style);

/* What the medium calls for, and how far down a page may be filled above it. */
const char *recede_ladder_caution(const recede_ladder_sheet *sheet);
double recede_ladder_bottom_mm(const recede_ladder_sheet *sheet);

/* The picture; answers 0: all but the nearest rung left open. */
void recede_ladder_draw_picture(recede_ladder_sheet *sheet, const recede_page *page, int answers);

/* Why it is so, the spectra, and a caption for every rung. */
void recede_ladder_draw_reading(recede_ladder_sheet *sheet, const recede_page *page);

/* The spectrum of one rung's lit side: the plane's part with the air's upon it.
 * most: the radiance at the top of the plot. */
void recede_ladder_draw_plot(recede_ladder_sheet *sheet, const recede_page *page, size_t air,
                             size_t rung, double most, recede_rect room);

/* The mixes: their rows are found first, then drawn page by page. */
void recede_ladder_lay_mixes(recede_ladder_sheet *sheet, recede_type *type);
void recede_ladder_draw_mixes(recede_ladder_sheet *sheet, const recede_page *page, size_t index);

/* The seed of a rung's dab. */
uint32_t recede_ladder_seed(size_t air, size_t rung, int row);

#endif
