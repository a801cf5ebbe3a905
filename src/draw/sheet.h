/* A sheet of pages, drawn in memory: as pixels or as PDF. */
#ifndef RECEDE_DRAW_SHEET_H
#define RECEDE_DRAW_SHEET_H

#include "draw/page.h"
#include "text/buffer.h"

/* A sheet asks its content how many pages it has (what the text comes to must
 * be known for that) and then for each page. Both return 0, or -1 when memory
 * runs out. */
typedef struct recede_sheet {
    void *content;
    int (*lay)(void *content, recede_type *type, size_t *pages);
    int (*draw)(void *content, const recede_page *page, size_t index);
    const char *title; /* for the PDF's own description */
} recede_sheet;

typedef struct recede_sheet_options {
    const char *font_path;             /* NULL: the font built for */
    const recede_allocator *allocator; /* NULL: malloc and free */
    recede_type_log *log;              /* NULL: none is kept */
    recede_missing_glyphs *missing;    /* NULL: not told */
    void *missing_context;
} recede_sheet_options;

/* 300 dots to the inch, pages below each other. */
enum { RECEDE_SHEET_WIDTH = 3508, RECEDE_SHEET_PAGE_HEIGHT = 2480, RECEDE_SHEET_DPI = 300 };
typedef struct recede_sheet_pixels {
    unsigned char *rgb; /* from the allocator; 3 bytes a pixel, rows from the top */
    size_t width, height, row_bytes, pages;
} recede_sheet_pixels;

typedef enum recede_sheet_result {
    RECEDE_SHEET_OK = 0,
    RECEDE_SHEET_NO_FONT,
    RECEDE_SHEET_NO_MEMORY
} recede_sheet_result;

recede_sheet_result recede_sheet_to_pixels(const recede_sheet *sheet,
                                           const recede_sheet_options *options,
                                           recede_sheet_pixels *out);

/* PDF at true size, added to out (started by the caller). Same content, same
 * bytes: its dates are fixed. */
recede_sheet_result recede_sheet_to_pdf(const recede_sheet *sheet,
                                        const recede_sheet_options *options, recede_buffer *out);

#endif
