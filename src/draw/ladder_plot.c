/* A small plot of the light that comes from one rung. */
#include "draw/ladder_parts.h"

#include "text/words.h"

#include <math.h>

static const double axis_mm = 7.4;

/* What lies outside, the eye hardly sees. */
enum { FIRST_BAND = 2, LAST_BAND = 32 }; /* 400 to 700 nm */

static double nm_of(int band)
{
    return RECEDE_FIRST_NM + RECEDE_STEP_NM * band;
}

typedef struct frame {
    recede_rect room;
    double most;
} frame;

static double x_of(const frame *f, double nm)
{
    return f->room.x + f->room.w * (nm - nm_of(FIRST_BAND)) / (nm_of(LAST_BAND) - nm_of(FIRST_BAND));
}

static double y_of(const frame *f, double radiance)
{
    return f->room.y + f->room.h * (1 - fmin(1, radiance / f->most));
}

/* A curve from left to right, or back from right to left. */
static void trace(const recede_page *page, const frame *f, const double *heights, int back)
{
    for (int i = FIRST_BAND; i <= LAST_BAND; i++) {
        int band = back ? FIRST_BAND + LAST_BAND - i : i;
        cairo_line_to(page->cr, x_of(f, nm_of(band)), y_of(f, heights[band]));
    }
}

/* The area between two curves. */
static void fill_between(const recede_page *page, const frame *f, const double *low, const double *high,
                         recede_srgb colour)
{
    cairo_new_path(page->cr);
    trace(page, f, low, 0);
    trace(page, f, high, 1);
    cairo_close_path(page->cr);
    cairo_set_source_rgb(page->cr, colour.r, colour.g, colour.b);
    cairo_fill(page->cr);
}

static void stroke(const recede_page *page, const frame *f, const double *heights, recede_srgb ink)
{
    cairo_new_path(page->cr);
    trace(page, f, heights, 0);
    cairo_set_source_rgb(page->cr, ink.r, ink.g, ink.b);
    cairo_set_line_width(page->cr, 0.25);
    cairo_stroke(page->cr);
}

/* The colours by name instead of a scale of nanometres: the shape tells. */
static void draw_axis(const recede_page *page, const frame *f)
{
    static const struct { const char *word; double nm; } colours[] = {
        {"blue", 450}, {"green", 540}, {"red", 650}};
    recede_style style = {7, 7, 1, RECEDE_CENTRE, recede_ink_pale, 0};
    double foot = f->room.y + f->room.h;
    recede_page_rule(page, f->room.x, foot, f->room.w);
    for (int i = 0; i < 3; i++) {
        double x = x_of(f, colours[i].nm);
        recede_page_fill(page, (recede_rect){x - 0.09, foot, 0.18, 0.9}, recede_line_tone);
        recede_type_set(page->type, page->cr, colours[i].word, (recede_rect){x - 6, foot + 0.8, 12, 3.4}, &style);
    }
}

void recede_ladder_draw_plot(recede_ladder_sheet *sheet, const recede_page *page, size_t air, size_t rung,
                             double most, recede_rect room)
{
    const recede_ladder_air *in = &sheet->ladder->air[air];
    const recede_rung *at = &in->rung[rung];
    frame f = {{room.x, room.y + 5, room.w, room.h - 5 - axis_mm + 3}, most};
    double nothing[RECEDE_BANDS] = {0}, both[RECEDE_BANDS];
    recede_style head = recede_style_body;
    recede_buffer words;
    for (int i = 0; i < RECEDE_BANDS; i++)
        both[i] = at->own[RECEDE_ROW_LIT].at[i] + at->air[RECEDE_ROW_LIT].at[i];
    head.most_lines = 1;
    head.least_pt = 7;
    recede_buffer_start(&words, sheet->allocator);
    recede_words_distance(&words, at->distance_m);
    recede_ladder_set(sheet, page, &words, (recede_rect){room.x, room.y, room.w, 4.6}, &head);
    recede_page_fill(page, f.room, recede_mount_tone);
    fill_between(page, &f, nothing, at->own[RECEDE_ROW_LIT].at, in->rung[0].row[RECEDE_ROW_LIT].target.srgb);
    fill_between(page, &f, at->own[RECEDE_ROW_LIT].at, both, in->horizon.srgb);
    stroke(page, &f, both, recede_style_body.ink);
    draw_axis(page, &f);
}
