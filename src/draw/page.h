/* A page of a sheet: A4, landscape, measured in millimetres from its upper left
 * corner, whatever it is drawn on. */
#ifndef RECEDE_DRAW_PAGE_H
#define RECEDE_DRAW_PAGE_H

#include "draw/type.h"
#include "text/buffer.h"

extern const double recede_page_width_mm, recede_page_height_mm, recede_page_margin_mm;

/* What a page is drawn with. */
typedef struct recede_page {
    cairo_t *cr;
    recede_type *type;
    double dots_per_mm; /* of the pixels it will be seen in */
} recede_page;

/* The quiet greys of the page. */
extern const recede_srgb recede_ink_pale, recede_paper_tone, recede_mount_tone, recede_line_tone;

/* Styles shared by all sheets. */
extern const recede_style recede_style_title, recede_style_heading, recede_style_body,
    recede_style_small, recede_style_recipe;

void recede_page_blank(const recede_page *page);
void recede_page_fill(const recede_page *page, recede_rect rect, recede_srgb colour);
void recede_page_frame(const recede_page *page, recede_rect rect, double line_mm);
void recede_page_rule(const recede_page *page, double x, double y, double w);

/* One line at the foot: a text at the left, the page's number at the right. */
void recede_page_foot(const recede_page *page, const char *text, size_t number, size_t count);

/* One small line right above the foot: what the medium calls for, "" for nothing. */
void recede_page_care(const recede_page *page, const char *caution);

/* How far down a page may be filled, usually so far, where it has that line. */
double recede_page_bottom_mm(double usual_mm, const char *caution);

/* A picture's room as whole pixels, so that its pixels meet the page's. */
recede_rect recede_page_snap(const recede_page *page, recede_rect rect, size_t *width,
                             size_t *height);

/* Pixels as recede_picture_paint makes them, in a room got from snap. 0, or -1
 * when there is no memory. */
int recede_page_picture(const recede_page *page, recede_rect rect, const unsigned char *rgb,
                        size_t width, size_t height);

/* The same on a mount so much wider all round. */
int recede_page_mounted(const recede_page *page, recede_rect rect, double mount_mm,
                        const unsigned char *rgb, size_t width, size_t height);

/* Sets the words of a buffer and frees it; failed becomes 1 where memory ran out
 * over them. Returns the room taken. */
recede_rect recede_page_set(const recede_page *page, recede_buffer *words, recede_rect room,
                            const recede_style *style, int *failed);

#endif
