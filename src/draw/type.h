/* Text on a sheet: one font, millimetres, and no text smaller or larger than it
 * was asked for. Text is never markup, its language is British English, its
 * glyphs are unhinted and grey. */
#ifndef RECEDE_DRAW_TYPE_H
#define RECEDE_DRAW_TYPE_H

#include "recede.h"

#include <cairo.h>
#include <stddef.h>

typedef struct recede_type recede_type;

typedef struct recede_rect {
    double x, y, w, h;
} recede_rect; /* mm */

typedef enum recede_align { RECEDE_LEFT, RECEDE_CENTRE, RECEDE_RIGHT } recede_align;

typedef struct recede_style {
    double size_pt;
    double least_pt; /* shrinks to this before it is cut; 0: never shrinks */
    int most_lines;  /* wraps to so many; then the last ends in an ellipsis */
    recede_align align;
    recede_srgb ink;
    int is_recipe; /* noted in the log, nothing more */
} recede_style;

/* What was set, for those who check sheets. */
typedef struct recede_type_record {
    size_t page;
    recede_rect ink;
    recede_rect room; /* what the text was to stay in */
    double size_pt;
    int is_recipe, is_cut;
    char text[120]; /* its beginning */
} recede_type_record;
typedef struct recede_type_log {
    recede_type_record *records; /* malloc; the owner frees it */
    size_t count, room;
} recede_type_log;

/* Called once for each text that holds characters the font does not have. */
typedef void recede_missing_glyphs(void *context, const char *text, int count);

/* NULL when the font cannot be read, or, with errno ENOMEM, when memory ran out. log may
 * be NULL. */
recede_type *recede_type_new(const char *font_path, recede_type_log *log,
                             recede_missing_glyphs *missing, void *missing_context);
void recede_type_free(recede_type *type);

/* 1 once the type could not be set as it should be, as when memory runs out. */
int recede_type_is_troubled(const recede_type *type);

/* The page that the log's next records belong to. */
void recede_type_turn_to(recede_type *type, size_t page);

/* Sets text in the room, from its top; returns the room it has taken. */
recede_rect recede_type_set(recede_type *type, cairo_t *cr, const char *text, recede_rect room,
                            const recede_style *style);

/* The same without setting it: how high it comes out, how wide in one line. */
double recede_type_height(recede_type *type, const char *text, double width,
                          const recede_style *style);
double recede_type_width(recede_type *type, const char *text, const recede_style *style);

/* From one line to the next. */
double recede_type_line(recede_type *type, double size_pt);

/* The room for one line in the middle of a higher room. */
recede_rect recede_type_middle(recede_type *type, recede_rect room, const recede_style *style);

#endif
