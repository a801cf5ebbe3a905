/* The ladder's first page: rows of dabs in each air, and what they show. */
#include "draw/ladder_parts.h"

#include "text/words.h"
#include "text/words_ladder.h"

#include <math.h>

static const double bands_top_mm = 34.5, lessons_top_mm = 174.5;
static const double label_mm = 28, air_mm = 19;
static const double head_mm = 8.6, row_mm = 19.2, dab_mm = 11, line_mm = 3.7, bar_mm = 2.2;

static const char legend[] =
    "The middle of each dab is the mix, its rim the colour wanted. Beneath: its value, and how much of "
    "its light is still its own; the rest of the bar is air.";
static const char task[] =
    "Mix the nearest colour and the air's. Then fill the empty boxes with mixes between the two: write the "
    "value and the share of own light beneath, and mark on the bar where air begins.";

static const char *const questions[RECEDE_LESSONS] = {
    "What shows first, and where?",
    "Where is a third of its colour gone?",
    "Where does the air's colour win?",
    "Which side goes first? Why?",
    "What becomes of the white? Why?",
};

static recede_style one_line(recede_style style, recede_align align)
{
    style.most_lines = 1;
    style.align = align;
    return style;
}

/* ---- one cell */

/* How cells stand: as many as there are rungs, and the air itself at the end. */
typedef struct cells {
    double x, width, dab_width;
} cells;

static cells cells_of(const recede_ladder *ladder)
{
    double room = recede_page_width_mm - 2 * recede_page_margin_mm - label_mm - air_mm;
    cells c = {recede_page_margin_mm + label_mm, room / (double)ladder->wish.rung_count, 0};
    c.width = fmin(c.width, 34);
    c.dab_width = c.width - 3;
    return c;
}

/* Where the air alone stands, after all rungs. */
static double air_x(void)
{
    return recede_page_width_mm - recede_page_margin_mm - air_mm + 3;
}

static recede_srgb grey_of_value(double value)
{
    recede_xyz white = recede_white();
    double y = recede_y_of_value(value);
    return recede_colour_of_xyz((recede_xyz){white.x * y, y, white.z * y}).srgb;
}

/* Under the dab: a grey of that value, the value, and the own share. */
static void draw_numbers(recede_ladder_sheet *sheet, const recede_page *page, const recede_wash *wash,
                         recede_rect room)
{
    recede_style style = one_line(recede_style_small, RECEDE_LEFT);
    recede_buffer words;
    style.ink = recede_style_body.ink;
    style.least_pt = 7;
    recede_rect chip = {room.x + 0.3, room.y + 0.25, 3.4, room.h - 1};
    recede_page_fill(page, chip, grey_of_value(wash->target.value));
    recede_page_frame(page, chip, 0.1);
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_fixed(&words, wash->target.value, 1);
    recede_ladder_set(sheet, page, &words, (recede_rect){room.x + 4.3, room.y, 5, room.h}, &style);
    style = one_line(recede_style_small, RECEDE_RIGHT);
    style.least_pt = 7;
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_fixed(&words, 100 * wash->own_share, 0);
    recede_buffer_text(&words, " %");
    recede_ladder_set(sheet, page, &words, (recede_rect){room.x + room.w - 7.7, room.y, 7.7, room.h}, &style);
}

static void draw_bar(const recede_page *page, const recede_ladder_air *air, int row, double own_share,
                     recede_rect bar)
{
    recede_rect own = bar;
    own.w = bar.w * own_share;
    recede_page_fill(page, bar, air->horizon.srgb);
    recede_page_fill(page, own, air->rung[0].row[row].target.srgb);
    recede_page_frame(page, bar, 0.12);
}

/* For the student: a box for the colour, a line for the value, an empty bar. */
static void draw_open(const recede_page *page, recede_rect dab, recede_rect numbers, recede_rect bar)
{
    recede_rect box = {dab.x + 0.3, dab.y + 0.3, dab.w - 0.6, dab.h - 0.4};
    recede_page_fill(page, box, recede_mount_tone);
    recede_page_frame(page, box, 0.18);
    recede_page_rule(page, numbers.x + 0.3, numbers.y + numbers.h - 0.5, 6);
    recede_page_rule(page, numbers.x + numbers.w - 6.3, numbers.y + numbers.h - 0.5, 6);
    recede_page_fill(page, bar, recede_mount_tone);
    recede_page_frame(page, bar, 0.12);
}

static void draw_cell(recede_ladder_sheet *sheet, const recede_page *page, size_t air, size_t rung, int row,
                      int open, recede_rect room)
{
    const recede_ladder_air *in = &sheet->ladder->air[air];
    const recede_wash *wash = &in->rung[rung].row[row];
    recede_rect dab = {room.x, room.y, room.w, dab_mm};
    recede_rect numbers = {room.x, dab.y + dab.h + 0.4, room.w, line_mm};
    recede_rect bar = {room.x + 0.3, numbers.y + numbers.h + 0.3, room.w - 0.6, bar_mm};
    if (open) {
        draw_open(page, dab, numbers, bar);
        return;
    }
    recede_dab_ringed(page, dab, recede_ladder_seed(air, rung, row), wash->recipe.colour.srgb, wash->target.srgb);
    draw_numbers(sheet, page, wash, numbers);
    draw_bar(page, in, row, wash->own_share, bar);
}

/* ---- a band: one air */

static void draw_band_head(recede_ladder_sheet *sheet, const recede_page *page, size_t air, double y)
{
    const recede_ladder *ladder = sheet->ladder;
    cells c = cells_of(ladder);
    recede_style name = one_line(recede_style_heading, RECEDE_LEFT);
    recede_style small = one_line(recede_style_small, RECEDE_LEFT);
    recede_style far = one_line(recede_style_heading, RECEDE_CENTRE);
    recede_buffer words;
    far.size_pt = 11;
    far.least_pt = 8;
    recede_type_set(page->type, page->cr, recede_words_ladder_air(ladder, air),
                    (recede_rect){recede_page_margin_mm, y - 0.1, label_mm - 1, 5.4}, &name);
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_text(&words, "visibility ");
    recede_words_distance(&words, 1000 * ladder->air[air].visibility_km);
    recede_ladder_set(sheet, page, &words, (recede_rect){recede_page_margin_mm, y + 5, label_mm - 1, 3.6}, &small);
    for (size_t i = 0; i < ladder->wish.rung_count; i++) {
        recede_buffer_start(&words, sheet->allocator);
        recede_words_distance(&words, ladder->wish.distance_m[i]);
        recede_ladder_set(sheet, page, &words,
                          (recede_rect){c.x + c.width * (double)i, y + 2.6, c.dab_width, 5}, &far);
    }
    small.align = RECEDE_CENTRE;
    recede_type_set(page->type, page->cr, "air alone", (recede_rect){air_x(), y + 3.6, air_mm - 3, 3.6}, &small);
}

/* The name of a row, and what the numbers under its dabs are. */
static void draw_row_label(recede_ladder_sheet *sheet, const recede_page *page, int row, double y)
{
    recede_style name = recede_style_body, small = one_line(recede_style_small, RECEDE_LEFT);
    recede_buffer words;
    name.size_pt = 11;
    name.least_pt = 8;
    name.most_lines = 2;
    small.size_pt = 7.5;
    recede_buffer_start(&words, sheet->allocator);
    recede_words_ladder_row(&words, sheet->ladder, (recede_ladder_row)row);
    recede_ladder_set(sheet, page, &words,
                      (recede_rect){recede_page_margin_mm, y + 1.5, label_mm - 2, dab_mm - 1.5}, &name);
    recede_type_set(page->type, page->cr, "value, own light",
                    (recede_rect){recede_page_margin_mm, y + dab_mm + 0.4, label_mm - 2, line_mm}, &small);
}

/* Where every row ends: the air without anything in it. */
static void draw_air_alone(recede_ladder_sheet *sheet, const recede_page *page, size_t air, int row, double y)
{
    const recede_colour *horizon = &sheet->ladder->air[air].horizon;
    double x = air_x();
    recede_style style = one_line(recede_style_small, RECEDE_CENTRE);
    recede_buffer words;
    style.ink = recede_style_body.ink;
    recede_dab(page, (recede_rect){x, y, air_mm - 3, dab_mm}, recede_ladder_seed(air, RECEDE_MOST_RUNGS, row),
               horizon->srgb);
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_fixed(&words, horizon->value, 1);
    recede_ladder_set(sheet, page, &words, (recede_rect){x, y + dab_mm + 0.4, air_mm - 3, line_mm}, &style);
}

static void draw_band(recede_ladder_sheet *sheet, const recede_page *page, size_t air, double y, int answers)
{
    cells c = cells_of(sheet->ladder);
    draw_band_head(sheet, page, air, y);
    y += head_mm;
    for (int row = 0; row < RECEDE_LADDER_ROWS; row++) {
        double top = y + row_mm * row;
        draw_row_label(sheet, page, row, top);
        for (size_t i = 0; i < sheet->ladder->wish.rung_count; i++)
            draw_cell(sheet, page, air, i, row, !answers && i > 0,
                      (recede_rect){c.x + c.width * (double)i, top, c.dab_width, row_mm});
        draw_air_alone(sheet, page, air, row, top);
    }
}

/* ---- the lessons, and the questions in their place */

static void draw_lesson(recede_ladder_sheet *sheet, const recede_page *page, size_t i, int answers,
                        recede_rect room)
{
    recede_style head = one_line(recede_style_heading, RECEDE_LEFT), text = recede_style_body;
    recede_buffer words;
    head.size_pt = 11;
    text.size_pt = 8.5;
    text.least_pt = 7;
    if (!answers) {
        recede_rect taken = recede_type_set(page->type, page->cr, questions[i],
                                            (recede_rect){room.x, room.y, room.w, 8.4}, &text);
        for (double y = taken.y + taken.h + 5; y < room.y + room.h; y += 6)
            recede_page_rule(page, room.x, y, room.w);
        return;
    }
    recede_buffer_start(&words, sheet->allocator);
    recede_words_lesson_heading(&words, sheet->ladder, i);
    recede_ladder_set(sheet, page, &words, (recede_rect){room.x, room.y, room.w, 5}, &head);
    recede_buffer_start(&words, sheet->allocator);
    recede_words_lesson(&words, sheet->ladder, i);
    recede_ladder_set(sheet, page, &words, (recede_rect){room.x, room.y + 5.4, room.w, room.h - 5.4}, &text);
}

static void draw_head(recede_ladder_sheet *sheet, const recede_page *page, int answers)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_style line = one_line(recede_style_body, RECEDE_LEFT), small = one_line(recede_style_small, RECEDE_LEFT);
    recede_buffer words;
    line.least_pt = 7;
    recede_buffer_start(&words, sheet->allocator);
    recede_words_ladder_title(&words, sheet->ladder);
    recede_ladder_set(sheet, page, &words, (recede_rect){x, 10.5, w, 9.4}, &recede_style_title);
    recede_buffer_start(&words, sheet->allocator);
    recede_words_ladder_subject(&words, sheet->ladder);
    recede_ladder_set(sheet, page, &words, (recede_rect){x, 21, w, 4.6}, &line);
    recede_type_set(page->type, page->cr, answers ? legend : task, (recede_rect){x, 26.2, w, 4}, &small);
}

void recede_ladder_draw_picture(recede_ladder_sheet *sheet, const recede_page *page, int answers)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x, gap = 4.5;
    double lesson_w = (w - gap * (RECEDE_LESSONS - 1)) / RECEDE_LESSONS;
    draw_head(sheet, page, answers);
    for (size_t air = 0; air < sheet->ladder->wish.air_count; air++) {
        double y = bands_top_mm + (double)air * (head_mm + RECEDE_LADDER_ROWS * row_mm + 3);
        recede_page_rule(page, x, y - 1.9, w);
        draw_band(sheet, page, air, y, answers);
    }
    recede_page_rule(page, x, lessons_top_mm - 1.9, w);
    for (size_t i = 0; i < RECEDE_LESSONS; i++) {
        recede_rect room = {x + (lesson_w + gap) * (double)i, lessons_top_mm, lesson_w,
                            recede_ladder_bottom_mm(sheet) - lessons_top_mm};
        draw_lesson(sheet, page, i, answers, room);
    }
}
