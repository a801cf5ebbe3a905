/* The skies sheet's own insides: what its pages share. */
#ifndef RECEDE_DRAW_SKIES_PARTS_H
#define RECEDE_DRAW_SKIES_PARTS_H

#include "draw/dab.h"
#include "draw/page.h"
#include "text/buffer.h"

/* A block of the columns of changes: the head of a light, or one plane in it. */
typedef struct recede_skies_block {
    size_t light, plane;
    int kind;
    double x, y, height;
    size_t page;
} recede_skies_block;

typedef struct recede_skies_sheet {
    const recede_skies *skies;
    const recede_allocator *allocator;
    recede_skies_block *blocks;
    size_t block_count, change_pages;
    double change_pt; /* size of the words for changes */
    int failed; /* memory ran out while words were put together */
} recede_skies_sheet;

/* Words put together and set; the buffer is freed. */
recede_rect recede_skies_set(recede_skies_sheet *sheet, const recede_page *page,
                             recede_buffer *words, recede_rect room, const recede_style *style);

/* A plan's picture on its mount, as large as the room allows, from its upper
 * left corner. Returns what it takes, or a height below 0 without memory. */
recede_rect recede_skies_picture(recede_skies_sheet *sheet, const recede_page *page, size_t plan,
                                 recede_rect room);

/* The light of a plan in one line. */
void recede_skies_light_line(recede_skies_sheet *sheet, recede_buffer *words, size_t plan);

int recede_skies_draw_pictures(recede_skies_sheet *sheet, const recede_page *page);

/* Finds the blocks, their places and pages; then draws one page's. */
int recede_skies_lay_changes(recede_skies_sheet *sheet, recede_type *type);
int recede_skies_draw_changes(recede_skies_sheet *sheet, const recede_page *page, size_t index);

#endif
