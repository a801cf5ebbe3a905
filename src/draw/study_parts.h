/* The study's own insides: what its pages share. */
#ifndef RECEDE_DRAW_STUDY_PARTS_H
#define RECEDE_DRAW_STUDY_PARTS_H

#include "draw/dab.h"
#include "draw/page.h"
#include "draw/work_pages.h"
#include "text/buffer.h"

/* A row of the key: two washes side by side. */
typedef struct recede_key_row {
    const char *name;              /* of the plane, or "sky" */
    const recede_planned *planned; /* NULL: the sky */
    int foot;                      /* the second row of a plane that is graded */
    const char *left_label, *right_label;
    const recede_side *left_side, *right_side; /* NULL: no wash there */
    const recede_wash *left, *right;
    double y, height;
    size_t page;
} recede_key_row;

enum { RECEDE_MOST_KEY_ROWS = 2 * (RECEDE_MOST_PLANES + 1) };

/* A block of the last pages: a paint, a heading or a paragraph. */
typedef struct recede_note {
    const char *heading, *text;
    const recede_warning *warning;
    int paint; /* index into the palette; -1: none */
    double x, y, height;
    size_t page;
} recede_note;

typedef struct recede_study {
    const recede_plan *plan;
    const recede_allocator *allocator;
    recede_key_row rows[RECEDE_MOST_KEY_ROWS];
    recede_note *notes;
    size_t row_count, key_pages, note_count, note_pages;
    recede_work_pages work; /* no work: no pages */
    int warned_first; /* the warnings all stand on the first page */
    int failed;       /* memory ran out while words were put together */
} recede_study;

/* Words put together and set; the buffer is freed. */
recede_rect recede_study_set(recede_study *study, const recede_page *page, recede_buffer *words,
                             recede_rect room, const recede_style *style);

/* "8.0": a value as the sheet gives it. */
void recede_study_value(recede_buffer *words, double value);

/* What a paint looks like a little thinned, where even dark ones show their
 * colour. */
recede_srgb recede_study_paint_colour(const recede_palette *palette, int paint);

/* Finds whether the first page has room for all warnings; then draws it. */
void recede_study_lay_picture(recede_study *study, recede_type *type);
int recede_study_draw_picture(recede_study *study, const recede_page *page);

/* How far a picture's mount shows around it. */
#define RECEDE_STUDY_MOUNT_MM 2.4

/* The picture in as few values as will do; under it, dark to light, their steps. */
int recede_study_draw_reduced(recede_study *study, const recede_page *page, recede_rect picture,
                              recede_rect steps);

/* Finds the rows, their heights and pages; then draws one page's. */
void recede_study_lay_key(recede_study *study, recede_type *type);
void recede_study_draw_key(recede_study *study, const recede_page *page, size_t index);

/* How high a wash's recipe comes out in a given width; and the wash itself. */
double recede_study_wash_height(recede_study *study, recede_type *type, const recede_side *side,
                                const recede_wash *wash, double width);
void recede_study_draw_wash(recede_study *study, const recede_page *page, const recede_side *side,
                            const recede_wash *wash, const char *label, recede_rect room);

int recede_study_lay_notes(recede_study *study, recede_type *type);
void recede_study_draw_notes(recede_study *study, const recede_page *page, size_t index);

#endif
