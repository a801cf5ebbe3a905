#include "draw/chart.h"

#include "draw/chart_parts.h"
#include "text/words_chart.h"
#include "text/words_media.h"

enum { MOST_ROWS = 6, MOST_COLUMNS = 6 }; /* a page; more and the squares grow too small */

static const double panel_top_mm = 32.5, panel_bottom_mm = 189.5;
static const double left_out_top_mm = 27.6, left_out_height_mm = 7.2, after_mm = 0.8;
static const double head_width_mm = 47, head_height_mm = 22;
static const double most_width_mm = 110, most_height_mm = 60;

static const char guide[] =
    "The number in a patch is its Munsell value. Colours are computed from measured pigments; print and screen "
    "only guide, and paints of one name differ from maker to maker: ";

/* Even blocks: 7 go as 4 and 3. */
static size_t blocks_of(int count, int most)
{
    return (size_t)((count + most - 1) / most);
}

static recede_span span_of(int count, size_t blocks, size_t block)
{
    int size = (int)blocks, at = (int)block;
    int first = count * at / size;
    return (recede_span){first, count * (at + 1) / size - first};
}

static recede_chart_page page_of(const recede_chart_drawing *drawing, size_t index)
{
    const recede_chart *chart = drawing->chart;
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    double below = left_out_top_mm + left_out_height_mm + after_mm;
    double top = *drawing->left_out ? below : panel_top_mm;
    double h = panel_bottom_mm - top;
    recede_chart_page p = {.drawing = drawing};
    p.rows = span_of(chart->rows, drawing->row_blocks, index / drawing->column_blocks);
    p.columns = span_of(chart->columns, drawing->column_blocks, index % drawing->column_blocks);
    p.square_w = (w - head_width_mm) / p.columns.count;
    p.square_h = (h - head_height_mm) / p.rows.count;
    p.square_w = p.square_w < most_width_mm ? p.square_w : most_width_mm;
    p.square_h = p.square_h < most_height_mm ? p.square_h : most_height_mm;
    p.head_w = head_width_mm;
    p.head_h = head_height_mm;
    p.panel = (recede_rect){x, top, head_width_mm + p.columns.count * p.square_w,
                            head_height_mm + p.rows.count * p.square_h};
    return p;
}

static int set_words(const recede_page *page, recede_buffer *words, recede_rect room,
                     const recede_style *style)
{
    int failed = words->failed;
    recede_type_set(page->type, page->cr, recede_buffer_string(words), room, style);
    recede_buffer_free(words);
    return failed;
}

static int draw_title(const recede_chart_drawing *drawing, const recede_page *page)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_style line = recede_style_body;
    recede_buffer words;
    line.most_lines = 1;
    recede_type_set(page->type, page->cr, "Mixing chart", (recede_rect){x, 10.5, 100, 11},
                    &recede_style_title);
    recede_buffer_start(&words, NULL);
    recede_words_chart_paints(&words, drawing->palette, drawing->palette_name);
    recede_buffer_text(&words, "; ");
    recede_words_chart(&words, drawing->palette, drawing->chart);
    recede_type_set(page->type, page->cr, drawing->left_out,
                    (recede_rect){x, left_out_top_mm, w, left_out_height_mm}, &recede_style_small);
    return set_words(page, &words, (recede_rect){x, 22.5, w, 5}, &line);
}

static int draw(void *content, const recede_page *page, size_t index)
{
    const recede_chart_drawing *drawing = content;
    recede_chart_page p = page_of(drawing, index);
    size_t pages = drawing->row_blocks * drawing->column_blocks;
    recede_buffer foot;
    int failed = draw_title(drawing, page);
    failed |= recede_chart_draw_panel(&p, page);
    recede_buffer_start(&foot, NULL);
    recede_buffer_format(&foot, "%s%s.", guide,
                         recede_trade_of(recede_palette_medium(drawing->palette))->beside);
    failed |= set_words(page, &foot,
                        (recede_rect){recede_page_margin_mm, p.panel.y + p.panel.h + 2.2,
                                      recede_page_width_mm - 2 * recede_page_margin_mm, 7.5},
                        &recede_style_small);
    recede_buffer_start(&foot, NULL);
    recede_buffer_text(&foot, "mixing chart, ");
    recede_words_chart_paints(&foot, drawing->palette, drawing->palette_name);
    failed |= foot.failed;
    recede_page_foot(page, recede_buffer_string(&foot), index + 1, pages);
    if (index + 1 == pages)
        recede_page_care(page,
                         recede_trade_of(recede_palette_medium(drawing->palette))->caution);
    recede_buffer_free(&foot);
    return failed ? -1 : 0;
}

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_chart_drawing *drawing = content;
    (void)type;
    drawing->row_blocks = blocks_of(drawing->chart->rows, MOST_ROWS);
    drawing->column_blocks = blocks_of(drawing->chart->columns, MOST_COLUMNS);
    *pages = drawing->row_blocks * drawing->column_blocks;
    return 0;
}

recede_sheet recede_chart_sheet(recede_chart_drawing *drawing)
{
    return (recede_sheet){drawing, lay, draw, "Mixing chart"};
}
