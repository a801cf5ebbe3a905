/* A row of the swatch sheet. */
#include <math.h>

#include "draw/chart_parts.h"
#include "draw/dab.h"
#include "draw/swatches_parts.h"
#include "paint/strength.h"
#include "text/words.h"

const double recede_swatches_row_mm = 23.6;

enum { STOPS = 32 };

static const double words_mm = 57, strip_mm = 58, strip_gap_mm = 7, dab_gap_mm = 2.2;
static const double cell_mm = 10.2, cell_gap_mm = 0.7, pad_mm = 1.2;
static const double ink_mm = 2.6, ink_over_mm = 2.6, swell_mm = 0.4;

static double strip_x(void)
{
    return recede_page_margin_mm + words_mm + ink_over_mm;
}

/* The room of one strength, above (0) or of the painter's own, below (1). */
static recede_rect dab_at(int step, int below, double y)
{
    double x = strip_x() + strip_mm + strip_gap_mm;
    double w = (recede_page_width_mm - recede_page_margin_mm - x + dab_gap_mm) / RECEDE_STRENGTHS;
    return (recede_rect){x + step * w, y + pad_mm + below * (cell_mm + cell_gap_mm),
                         w - dab_gap_mm, cell_mm};
}

static recede_rect strip_at(int below, double y)
{
    return (recede_rect){strip_x(), y + pad_mm + below * (cell_mm + cell_gap_mm), strip_mm,
                         cell_mm};
}

/* Where the ink lies across a strip. */
static recede_rect ink_at(recede_rect strip)
{
    return (recede_rect){strip.x - ink_over_mm, strip.y + (strip.h - ink_mm) / 2,
                         strip.w + 2 * ink_over_mm, ink_mm};
}

/* ---- the strip */

/* Evenly spread in the logarithm, from masstone to the last strength. */
static double added_at(int stop)
{
    return expm1(log1p(recede_strength_at(RECEDE_STRENGTHS - 1)) * stop / (STOPS - 1));
}

static void strip_colours(const recede_palette *palette, int paint, int on_ink,
                          recede_srgb colours[STOPS])
{
    int single = recede_strength_count(palette, paint) == 1;
    for (int i = 0; i < STOPS; i++) {
        double added = single ? 0 : added_at(i);
        colours[i] = on_ink ? recede_strength_on_ink(palette, paint, added).srgb
                            : recede_strength_colour(palette, paint, added).srgb;
    }
}

/* The brush goes over the ink, which shows at both ends. */
static void draw_strip(const recede_page *page, const recede_palette *palette, int paint, double y)
{
    recede_srgb colours[STOPS];
    recede_rect strip = strip_at(0, y), ink = ink_at(strip);
    strip_colours(palette, paint, 0, colours);
    recede_dab_graded(page, strip, (uint32_t)paint * 31 + 7, colours, STOPS);
    recede_page_fill(page, ink, recede_strength_ink().srgb);
    strip_colours(palette, paint, 1, colours);
    cairo_save(page->cr);
    cairo_rectangle(page->cr, ink.x, ink.y, ink.w, ink.h);
    cairo_clip(page->cr);
    recede_dab_graded(page, strip, (uint32_t)paint * 31 + 7, colours, STOPS);
    cairo_restore(page->cr);
}

/* ---- boxes that stay empty: white, so that a printer leaves the paper bare */

static void draw_box(const recede_page *page, recede_rect room)
{
    recede_page_fill(page, room, (recede_srgb){1, 1, 1});
    recede_page_frame(page, room, 0.15);
}

static void draw_strip_box(const recede_page *page, double y)
{
    recede_rect strip = strip_at(1, y);
    draw_box(page, strip);
    recede_page_fill(page, ink_at(strip), recede_strength_ink().srgb);
}

static void draw_dabs(const recede_page *page, const recede_palette *palette, int paint, double y)
{
    for (int step = 0; step < recede_strength_count(palette, paint); step++) {
        recede_chart_patch patch = {
            .colour = recede_strength_colour(palette, paint, recede_strength_at(step))};
        recede_chart_draw_patch(page, &patch, dab_at(step, 0, y),
                                (uint32_t)paint * 61 + (uint32_t)step * 17 + 3);
        draw_box(page, dab_at(step, 1, y));
    }
}

/* ---- words */

/* The general warning sign's triangle (ISO 7010, W001), in outline. */
static void draw_sign(const recede_page *page, double x, double y, double size)
{
    cairo_t *cr = page->cr;
    double h = size * 0.87;
    cairo_save(cr);
    cairo_set_source_rgb(cr, recede_style_body.ink.r, recede_style_body.ink.g,
                         recede_style_body.ink.b);
    cairo_set_line_width(cr, 0.26);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
    cairo_move_to(cr, x + size / 2, y);
    cairo_line_to(cr, x + size, y + h);
    cairo_line_to(cr, x, y + h);
    cairo_close_path(cr);
    cairo_move_to(cr, x + size / 2, y + 0.36 * h);
    cairo_line_to(cr, x + size / 2, y + 0.66 * h);
    cairo_move_to(cr, x + size / 2, y + 0.78 * h);
    cairo_line_to(cr, x + size / 2, y + 0.84 * h);
    cairo_stroke(cr);
    cairo_restore(cr);
}

/* "PB28", and where there are cautions the sign with their numbers. */
static int set_index(const recede_paints_told *told, size_t paint, recede_swatches_notes *notes,
                     const recede_page *page, recede_rect room)
{
    static const double sign_mm = 2.9;
    const char *cautions[RECEDE_MOST_IN_MIX];
    size_t count = recede_paint_cautions(told, paint, cautions);
    const char *index = recede_palette_paint(told->palette, paint)->colour_index;
    recede_style style = {8, 7, 1, RECEDE_LEFT, recede_style_body.ink, 0};
    recede_rect left = room;
    recede_buffer words;
    int failed = 0;
    left.w -= count ? 22 : 0;
    recede_type_set(page->type, page->cr, index, left, &style);
    if (!count)
        return 0;
    double x = room.x + (*index ? fmin(recede_type_width(page->type, index, &style), left.w) + 2.4
                                : 0);
    draw_sign(page, x, room.y + 0.4, sign_mm);
    recede_buffer_start(&words, NULL);
    recede_buffer_text(&words, "caution ");
    for (size_t i = 0; i < count; i++)
        recede_buffer_format(&words, "%s%d", i ? ", " : "",
                             (int)recede_swatches_note(notes, cautions[i]));
    x += sign_mm + 0.9;
    recede_page_set(page, &words, (recede_rect){x, room.y, room.x + room.w - x, room.h}, &style,
                    &failed);
    return failed;
}

/* On two lines where it is long and the room has lines to spare: so many are owed to
 * what comes after. The words are freed. */
static int set_fact(const recede_page *page, recede_buffer *words, recede_rect *room, int owed)
{
    recede_style style = {7.5, 7, 1, RECEDE_LEFT, recede_ink_pale, 0};
    double line = recede_type_line(page->type, style.size_pt);
    int failed = 0;
    style.most_lines = room->h >= (2 + owed) * line ? 2 : 1;
    recede_rect taken = recede_page_set(page, words, *room, &style, &failed);
    room->y += taken.h;
    room->h -= taken.h;
    return failed;
}

static int set_facts(const recede_paints_told *told, size_t paint, const recede_page *page,
                     recede_rect room)
{
    recede_colour colour = recede_strength_colour(told->palette, (int)paint, 0);
    recede_buffer words, permanence;
    recede_buffer_start(&words, NULL);
    recede_buffer_text(&words, "masstone ");
    recede_words_lch(&words, &colour);
    int failed = set_fact(page, &words, &room, 2);
    recede_buffer_start(&words, NULL);
    recede_words_trait_short(&words, told, paint, RECEDE_TRAIT_TRANSPARENCY);
    if (words.size)
        recede_buffer_text(&words, "; ");
    recede_words_covering(&words, told->palette, paint);
    failed |= set_fact(page, &words, &room, 1);
    recede_buffer_start(&words, NULL);
    recede_buffer_start(&permanence, NULL);
    recede_words_trait_short(&permanence, told, paint, RECEDE_TRAIT_PERMANENCE);
    if (permanence.size)
        recede_buffer_format(&words, "permanence %s", permanence.bytes);
    failed |= permanence.failed;
    recede_buffer_free(&permanence);
    return failed | set_fact(page, &words, &room, 0);
}

static int set_words(const recede_paints_told *told, size_t paint, recede_swatches_notes *notes,
                     const recede_page *page, double y)
{
    const recede_paint *of = recede_palette_paint(told->palette, paint);
    recede_rect room = {recede_page_margin_mm, y + 0.6, words_mm - 2, 8.4};
    recede_style name = recede_style_body;
    name.size_pt = 11;
    name.least_pt = 8;
    name.most_lines = 2;
    recede_rect taken = recede_type_set(page->type, page->cr, of->name, room, &name);
    room = (recede_rect){room.x, taken.y + taken.h + 0.1, room.w, 3.9};
    int failed = set_index(told, paint, notes, page, room);
    room.y += 3.9;
    room.h = y + recede_swatches_row_mm - 0.4 - room.y;
    return failed | set_facts(told, paint, page, room);
}

/* ---- the row, and what stands over it */

static recede_srgb paper_colour(const recede_palette *palette)
{
    return recede_colour_of_xyz(recede_xyz_of_reflectance(recede_palette_paper(palette))).srgb;
}

int recede_swatches_draw_row(const recede_paints_told *told, size_t paint,
                             recede_swatches_notes *notes, const recede_page *page, double y)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_rect panel = {x + words_mm - swell_mm, y, w - words_mm + 2 * swell_mm,
                         pad_mm + cell_mm + cell_gap_mm / 2};
    recede_page_fill(page, panel, paper_colour(told->palette));
    draw_strip(page, told->palette, (int)paint, y);
    draw_strip_box(page, y);
    draw_dabs(page, told->palette, (int)paint, y);
    return set_words(told, paint, notes, page, y);
}

static void set_head(const recede_page *page, recede_buffer *words, recede_rect room)
{
    const recede_style style = {7.5, 7, 1, RECEDE_CENTRE, recede_ink_pale, 0};
    recede_type_set(page->type, page->cr, recede_buffer_string(words),
                    (recede_rect){room.x, room.y, room.w, 4}, &style);
}

/* "8 water: milk" in watercolour, "8 white" in an opaque medium. */
static void head_words(recede_buffer *words, recede_medium medium, int step)
{
    int water = recede_medium_takes_water(medium);
    double added = recede_strength_at(step);
    words->size = 0;
    if (added > 0)
        recede_buffer_number(words, added, 0);
    else
        recede_buffer_text(words, "no");
    recede_buffer_text(words, water ? " water" : " white");
    if (water)
        recede_buffer_format(words, ": %s", recede_words_consistency(added));
}

int recede_swatches_draw_heads(const recede_paints_told *told, const recede_page *page, double y)
{
    recede_medium medium = recede_palette_medium(told->palette);
    recede_rect strip = strip_at(0, y);
    recede_buffer words;
    recede_buffer_start(&words, NULL);
    recede_buffer_format(&words, "masstone %s, over a bar of black ink",
                         recede_medium_takes_water(medium) ? "to wash" : "let down with white");
    strip.y = y;
    set_head(page, &words, strip);
    for (int step = 0; step < RECEDE_STRENGTHS; step++) {
        recede_rect room = dab_at(step, 0, y);
        room.y = y;
        head_words(&words, medium, step);
        set_head(page, &words, room);
    }
    int failed = words.failed;
    recede_buffer_free(&words);
    return failed;
}
