/* Axes in plain words, and on the fields the colours that a plan wants. */
#include "draw/range_parts.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static const double two_pi = 6.28318530717958647692;
static const double ring_mm = 1.25, number_w_mm = 4.8, number_h_mm = 3.1;

static double x_of(const recede_range_frame *f, double a)
{
    return f->room.x + f->room.w * (a + f->most) / (2 * f->most);
}

static double y_of(const recede_range_frame *f, double b)
{
    return f->room.y + f->room.h * (f->most - b) / (2 * f->most);
}

double recede_range_most(const recede_range_drawing *drawing)
{
    int middle = RECEDE_GAMUT_MOST, reach = 30;
    double most;
    for (int field = 0; field < RECEDE_RANGE_FIELDS; field++)
        for (int j = 0; j < RECEDE_GAMUT_SIDE; j++)
            for (int i = 0; i < RECEDE_GAMUT_SIDE; i++)
                if (drawing->fields[field].films[j][i])
                    reach = (int)fmax(reach, fmax(abs(i - middle), abs(j - middle)));
    most = reach + 4;
    for (size_t i = 0; i < drawing->count; i++) {
        recede_lab lab = drawing->marks[i].place.wash->target.lab;
        most = fmax(most, fmax(fabs(lab.a), fabs(lab.b)) + 4);
    }
    return 10 * ceil(most / 10);
}

/* ---------------------------------------------------------------- axes -- */

static void set_word(const recede_page *page, const char *word, double x, double y,
                     recede_align align)
{
    enum { WIDE_MM = 20 };
    recede_style style = {8, 7, 1, align, recede_ink_pale, 0};
    double left = align == RECEDE_LEFT ? x : align == RECEDE_RIGHT ? x - WIDE_MM : x - 0.5 * WIDE_MM;
    recede_type_set(page->type, page->cr, word, (recede_rect){left, y, WIDE_MM, 4}, &style);
}

/* Circles 20 apart in chroma, and words at the ends of the axes. */
void recede_range_draw_axes(const recede_page *page, const recede_range_frame *frame)
{
    const recede_rect *r = &frame->room;
    cairo_t *cr = page->cr;
    double cx = x_of(frame, 0), cy = y_of(frame, 0);
    cairo_save(cr);
    cairo_rectangle(cr, r->x, r->y, r->w, r->h);
    cairo_clip(cr);
    cairo_set_source_rgba(cr, 0.2, 0.2, 0.2, 0.28);
    cairo_set_line_width(cr, 0.15);
    cairo_move_to(cr, r->x, cy);
    cairo_line_to(cr, r->x + r->w, cy);
    cairo_move_to(cr, cx, r->y);
    cairo_line_to(cr, cx, r->y + r->h);
    for (double chroma = 20; chroma < frame->most; chroma += 20) {
        cairo_new_sub_path(cr);
        cairo_arc(cr, cx, cy, chroma * r->w / (2 * frame->most), 0, two_pi);
    }
    cairo_stroke(cr);
    cairo_restore(cr);
    recede_page_frame(page, *r, 0.15);
    set_word(page, "yellow", cx, r->y - 4, RECEDE_CENTRE);
    set_word(page, "blue", cx, r->y + r->h + 0.5, RECEDE_CENTRE);
    set_word(page, "green", r->x + 1, cy - 4.4, RECEDE_LEFT);
    set_word(page, "red", r->x + r->w - 1, cy - 4.4, RECEDE_RIGHT);
}

/* --------------------------------------------------------------- marks -- */

static void ring(cairo_t *cr, double x, double y, recede_srgb colour)
{
    cairo_new_path(cr);
    cairo_arc(cr, x, y, ring_mm, 0, two_pi);
    cairo_set_source_rgb(cr, colour.r, colour.g, colour.b);
    cairo_fill_preserve(cr);
    cairo_set_source_rgb(cr, 1, 1, 1);
    cairo_set_line_width(cr, 0.55);
    cairo_stroke_preserve(cr);
    cairo_set_source_rgb(cr, 0.15, 0.15, 0.15);
    cairo_set_line_width(cr, 0.18);
    cairo_stroke(cr);
}

/* From a colour out of reach to the mix it gets. */
static void tail(cairo_t *cr, const recede_range_frame *f, recede_lab from, recede_lab to)
{
    static const double widths[] = {0.8, 0.3}, greys[] = {1, 0.15};
    for (int i = 0; i < 2; i++) {
        cairo_new_path(cr);
        cairo_move_to(cr, x_of(f, from.a), y_of(f, from.b));
        cairo_line_to(cr, x_of(f, to.a), y_of(f, to.b));
        cairo_set_source_rgb(cr, greys[i], greys[i], greys[i]);
        cairo_set_line_width(cr, widths[i]);
        cairo_stroke(cr);
    }
}

static int overlap(recede_rect a, recede_rect b)
{
    return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

/* What stands on a field already: numbers, rings and the axes' words. */
typedef struct {
    recede_rect taken[2 * RECEDE_MOST_WASH_PLACES + 2];
    size_t count;
} crowd;

static int is_free(const crowd *c, recede_rect place)
{
    for (size_t i = 0; i < c->count; i++)
        if (overlap(c->taken[i], place))
            return 0;
    return 1;
}

static void take(crowd *c, recede_rect place)
{
    c->taken[c->count++] = place;
}

static void take_words(crowd *c, const recede_range_frame *f)
{
    const recede_rect *r = &f->room;
    double cy = y_of(f, 0);
    take(c, (recede_rect){r->x, cy - 4.6, 10, 4.6});
    take(c, (recede_rect){r->x + r->w - 8, cy - 4.6, 8, 4.6});
}

/* The first free place round a ring, from near to far; 0 where all are taken: the
 * list still has the colour. */
static int find_place(const crowd *c, const recede_range_frame *f, double x, double y,
                      recede_rect *place)
{
    enum { DIRECTIONS = 12, DISTANCES = 5 };
    const recede_rect *r = &f->room;
    for (int far = 0; far < DISTANCES; far++)
        for (int i = 0; i < DIRECTIONS; i++) {
            double turn = two_pi * i / DIRECTIONS, away = 1.7 + 1.6 * far;
            double mx = x + cos(turn) * (away + 0.5 * number_w_mm - 0.4);
            double my = y - sin(turn) * (away + 0.5 * number_h_mm - 0.4);
            *place = (recede_rect){mx - 0.5 * number_w_mm, my - 0.5 * number_h_mm, number_w_mm,
                                   number_h_mm};
            if (place->x > r->x && place->y > r->y && place->x + place->w < r->x + r->w &&
                place->y + place->h < r->y + r->h && is_free(c, *place))
                return 1;
        }
    return 0;
}

/* A number on a slip of the mount's tone, to be read on any colour. */
static void set_number(const recede_page *page, size_t number, recede_rect place)
{
    char text[24];
    cairo_t *cr = page->cr;
    recede_srgb slip = recede_mount_tone;
    recede_style style = {7.5, 7, 1, RECEDE_CENTRE, {0.1, 0.1, 0.1}, 0};
    double r = 0.5 * place.h;
    cairo_new_path(cr);
    cairo_arc(cr, place.x + r, place.y + r, r, 0.25 * two_pi, 0.75 * two_pi);
    cairo_arc(cr, place.x + place.w - r, place.y + r, r, -0.25 * two_pi, 0.25 * two_pi);
    cairo_close_path(cr);
    cairo_set_source_rgba(cr, slip.r, slip.g, slip.b, 0.82);
    cairo_fill(cr);
    snprintf(text, sizeof text, "%zu", number);
    recede_type_set(page->type, cr, text, recede_type_middle(page->type, place, &style), &style);
}

void recede_range_draw_marks(const recede_range_drawing *drawing, const recede_page *page,
                             const recede_range_frame *frame, int field)
{
    crowd c = {.count = 0};
    take_words(&c, frame);
    for (size_t i = 0; i < drawing->count; i++) {
        const recede_wash *wash = drawing->marks[i].place.wash;
        double x = x_of(frame, wash->target.lab.a), y = y_of(frame, wash->target.lab.b);
        if (drawing->marks[i].field != field)
            continue;
        take(&c, (recede_rect){x - ring_mm - 0.3, y - ring_mm - 0.3, 2 * ring_mm + 0.6, 2 * ring_mm + 0.6});
        if (drawing->marks[i].warning)
            tail(page->cr, frame, wash->target.lab, wash->recipe.colour.lab);
    }
    for (size_t i = 0; i < drawing->count; i++) {
        const recede_colour *target = &drawing->marks[i].place.wash->target;
        double x = x_of(frame, target->lab.a), y = y_of(frame, target->lab.b);
        recede_rect place;
        if (drawing->marks[i].field != field)
            continue;
        ring(page->cr, x, y, target->srgb);
        if (!find_place(&c, frame, x, y, &place))
            continue;
        take(&c, place);
        set_number(page, i + 1, place);
    }
}
