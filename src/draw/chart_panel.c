/* The panel of a chart's page: squares, and the heads of rows and columns. */
#include "draw/chart_parts.h"
#include "draw/dab.h"

#include "picture/noise.h"
#include "text/words_chart.h"

static const double pad_mm = 1.9, gap_mm = 0.35, alone_width_mm = 13;

enum { STEPS = RECEDE_CHART_STEPS };

static uint32_t seed_of(int row, int column, int i, int j)
{
    return recede_seed_with(recede_seed_with((uint32_t)(row + 2) * 64 + (uint32_t)(column + 2),
                                             (uint32_t)i), (uint32_t)j);
}

static recede_rect square_at(const recede_chart_page *p, int i, int j)
{
    return (recede_rect){p->panel.x + p->head_w + j * p->square_w,
                         p->panel.y + p->head_h + i * p->square_h, p->square_w, p->square_h};
}

/* The place of a patch among the three by three of a square. */
static recede_rect patch_at(recede_rect square, int across, int down)
{
    double w = (square.w - 2 * pad_mm + gap_mm) / STEPS, h = (square.h - 2 * pad_mm + gap_mm) / STEPS;
    return (recede_rect){square.x + pad_mm + across * w, square.y + pad_mm + down * h, w - gap_mm,
                         h - gap_mm};
}

static void draw_square(const recede_chart_page *p, const recede_page *page, int i, int j)
{
    const recede_chart_drawing *d = p->drawing;
    int row = p->rows.first + i, column = p->columns.first + j;
    for (int proportion = 0; proportion < STEPS; proportion++)
        for (int strength = 0; strength < STEPS; strength++) {
            recede_chart_patch patch = recede_chart_patch_at(d->palette, d->chart, row, column,
                                                             proportion, strength);
            recede_chart_draw_patch(page, &patch, patch_at(square_at(p, i, j), proportion, strength),
                                    seed_of(row, column, proportion, strength));
        }
}

static recede_rect inset(recede_rect r)
{
    return (recede_rect){r.x + pad_mm, r.y + pad_mm, r.w - 2 * pad_mm, r.h - 2 * pad_mm};
}

/* The paint alone, its strengths one under the other as in the squares. */
static void draw_alone(const recede_chart_page *p, const recede_page *page, int row, int column,
                       recede_rect square)
{
    for (int strength = 0; strength < STEPS; strength++) {
        recede_chart_patch patch = recede_chart_patch_at(p->drawing->palette, p->drawing->chart,
                                                         row, column, 0, strength);
        recede_rect room = patch_at(square, 0, strength);
        room.x = square.x + square.w - pad_mm - alone_width_mm;
        room.w = alone_width_mm;
        recede_chart_draw_patch(page, &patch, room, seed_of(row, column, 0, strength));
    }
}

/* A paint's name and its Colour Index name, and the paint alone beside them. */
static void draw_head(const recede_chart_page *p, const recede_page *page, int row, int column,
                      recede_rect square)
{
    const recede_chart *chart = p->drawing->chart;
    int paint = 0;
    if (row >= 0)
        paint = chart->row[row];
    else if (column >= 0)
        paint = chart->column[column];
    const recede_paint *of = recede_palette_paint(p->drawing->palette, (size_t)paint);
    recede_rect room = inset(square);
    recede_style name = recede_style_body, index = recede_style_small;
    name.size_pt = 11;
    name.least_pt = 7.5;
    name.most_lines = 3;
    index.size_pt = 7.5;
    index.most_lines = 1;
    room.w -= alone_width_mm + 1;
    recede_rect taken = recede_type_set(page->type, page->cr, of->name,
                                        (recede_rect){room.x, room.y - 0.2, room.w, room.h - 3},
                                        &name);
    recede_type_set(page->type, page->cr, of->colour_index,
                    (recede_rect){room.x, taken.y + taken.h, room.w, 3.5}, &index);
    draw_alone(p, page, row, column, square);
}

static void draw_lines(const recede_chart_page *p, const recede_page *page)
{
    cairo_t *cr = page->cr;
    recede_srgb tone = recede_line_tone;
    cairo_set_source_rgba(cr, tone.r, tone.g, tone.b, 0.7);
    cairo_set_line_width(cr, 0.15);
    for (int i = 0; i < p->rows.count; i++) {
        double y = square_at(p, i, 0).y;
        cairo_move_to(cr, p->panel.x, y);
        cairo_line_to(cr, p->panel.x + p->panel.w, y);
    }
    for (int j = 0; j < p->columns.count; j++) {
        double x = square_at(p, 0, j).x;
        cairo_move_to(cr, x, p->panel.y);
        cairo_line_to(cr, x, p->panel.y + p->panel.h);
    }
    cairo_stroke(cr);
}

/* How to read a square, in the corner that rows and columns leave free: a square of
 * greys with its proportions above and its strengths beside it. */
static void set_small(const recede_page *page, recede_buffer *words, recede_rect room,
                      recede_align align)
{
    recede_style style = {7, 7, 1, align, recede_ink_pale, 0};
    recede_type_set(page->type, page->cr, recede_buffer_string(words),
                    recede_type_middle(page->type, room, &style), &style);
}

static int draw_corner(const recede_chart_page *p, const recede_page *page)
{
    static const double greys[STEPS] = {0.56, 0.70, 0.83};
    static const double labels_mm = 19, across_mm = 3.8;
    recede_medium medium = recede_palette_medium(p->drawing->palette);
    recede_rect room = inset((recede_rect){p->panel.x, p->panel.y, p->head_w, p->head_h});
    double w = (room.w - labels_mm) / STEPS, h = (room.h - across_mm) / STEPS;
    recede_buffer words;
    int failed = 0;
    recede_buffer_start(&words, NULL);
    recede_buffer_text(&words, "row : column");
    set_small(page, &words, (recede_rect){room.x, room.y, labels_mm, across_mm}, RECEDE_LEFT);
    for (int i = 0; i < STEPS; i++) {
        recede_rect across = {room.x + labels_mm + i * w, room.y, w, across_mm};
        recede_rect down = {room.x, room.y + across_mm + i * h, labels_mm, h};
        words.size = 0;
        recede_words_proportion(&words, i);
        set_small(page, &words, across, RECEDE_CENTRE);
        words.size = 0;
        recede_words_strength(&words, medium, i);
        set_small(page, &words, down, RECEDE_LEFT);
        for (int j = 0; j < STEPS; j++)
            recede_dab_square(page, (recede_rect){room.x + labels_mm + j * w, down.y, w - gap_mm, h - gap_mm},
                              seed_of(-1, -1, i, j), (recede_srgb){greys[i], greys[i], greys[i]});
    }
    failed = words.failed;
    recede_buffer_free(&words);
    return failed ? -1 : 0;
}

static recede_srgb paper_colour(const recede_palette *palette)
{
    return recede_colour_of_xyz(recede_xyz_of_reflectance(recede_palette_paper(palette))).srgb;
}

int recede_chart_draw_panel(const recede_chart_page *p, const recede_page *page)
{
    recede_page_fill(page, p->panel, paper_colour(p->drawing->palette));
    recede_page_frame(page, p->panel, 0.15);
    draw_lines(p, page);
    int failed = draw_corner(p, page);
    for (int j = 0; j < p->columns.count; j++)
        draw_head(p, page, -1, p->columns.first + j,
                  (recede_rect){square_at(p, 0, j).x, p->panel.y, p->square_w, p->head_h});
    for (int i = 0; i < p->rows.count; i++)
        draw_head(p, page, p->rows.first + i, -1,
                  (recede_rect){p->panel.x, square_at(p, i, 0).y, p->head_w, p->square_h});
    for (int i = 0; i < p->rows.count; i++)
        for (int j = 0; j < p->columns.count; j++)
            draw_square(p, page, i, j);
    return failed;
}
