#include "draw/swatches.h"

#include <string.h>

#include "draw/swatches_parts.h"
#include "text/words.h"
#include "text/words_media.h"

enum { MOST_ROWS = 6 };

static const double heads_top_mm = 29, rows_top_mm = 33.6;
static const double after_rows_mm = 1.6;

/* How to use the sheet. */
static int guide_words(recede_buffer *words, const recede_paints_told *told)
{
    recede_medium medium = recede_palette_medium(told->palette);
    recede_buffer_start(words, NULL);
    recede_buffer_format(words,
                         "Paint your own in the empty boxes, under what was computed, across the "
                         "printed ink. %s Where you took another measure, write it there. Print "
                         "and screen only guide, and paints of one name differ from maker to "
                         "maker.", recede_trade_of(medium)->judge);
    return words->failed;
}

size_t recede_swatches_note(recede_swatches_notes *notes, const char *caution)
{
    for (size_t i = 0; i < notes->count; i++)
        if (strcmp(notes->caution[i], caution) == 0)
            return i + 1;
    notes->caution[notes->count++] = caution;
    return notes->count;
}

static void take_notes(const recede_paints_told *told, size_t paint, recede_swatches_notes *notes)
{
    const char *cautions[RECEDE_MOST_IN_MIX];
    size_t count = recede_paint_cautions(told, paint, cautions);
    for (size_t i = 0; i < count; i++)
        recede_swatches_note(notes, cautions[i]);
}

static double width(void)
{
    return recede_page_width_mm - 2 * recede_page_margin_mm;
}

static const char *caution_of(const recede_paints_told *told)
{
    return recede_trade_of(recede_palette_medium(told->palette))->caution;
}

static double notes_bottom_mm(const recede_paints_told *told)
{
    return recede_page_bottom_mm(197.5, caution_of(told));
}

/* ---- the lines under the rows: how to use the sheet, and the cautions */

static recede_style note_style(void)
{
    recede_style style = recede_style_small;
    style.size_pt = style.least_pt = 7;
    return style;
}

static int note_words(recede_buffer *words, const recede_swatches_notes *notes, size_t note)
{
    recede_buffer_start(words, NULL);
    recede_buffer_format(words, "Caution %d: %s", (int)note + 1, notes->caution[note]);
    return words->failed;
}

static int notes_height(const recede_paints_told *told, const recede_swatches_notes *notes,
                        recede_type *type, double *height)
{
    const recede_style style = note_style();
    recede_buffer words;
    int failed = guide_words(&words, told);
    *height = recede_type_height(type, recede_buffer_string(&words), width(), &style);
    recede_buffer_free(&words);
    for (size_t i = 0; i < notes->count; i++) {
        failed |= note_words(&words, notes, i);
        *height += recede_type_height(type, recede_buffer_string(&words), width(), &style);
        recede_buffer_free(&words);
    }
    return failed;
}

static int draw_notes(const recede_paints_told *told, const recede_swatches_notes *notes,
                      const recede_page *page, double y)
{
    const recede_style style = note_style();
    recede_rect room = {recede_page_margin_mm, y, width(), notes_bottom_mm(told) - y + 1};
    recede_buffer words;
    int failed = guide_words(&words, told);
    recede_rect taken = recede_page_set(page, &words, room, &style, &failed);
    for (size_t i = 0; i < notes->count; i++) {
        failed |= note_words(&words, notes, i);
        room.y += taken.h;
        room.h -= taken.h;
        taken = recede_page_set(page, &words, room, &style, &failed);
    }
    return failed;
}

/* ---- pages */

/* As many rows as leave room for the cautions of their paints; one at least. */
static int fill_page(const recede_paints_told *told, recede_type *type, size_t *next)
{
    size_t count = recede_palette_count(told->palette), rows = 0;
    recede_swatches_notes notes = {0};
    int failed = 0;
    while (*next < count && rows < MOST_ROWS) {
        double height, top = rows_top_mm + (double)(rows + 1) * recede_swatches_row_mm;
        take_notes(told, *next, &notes);
        failed |= notes_height(told, &notes, type, &height);
        if (rows > 0 && top + after_rows_mm + height > notes_bottom_mm(told))
            break;
        rows++;
        (*next)++;
    }
    return failed;
}

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_swatches_drawing *drawing = content;
    size_t count = recede_palette_count(drawing->told->palette), next = 0;
    int failed = 0;
    drawing->pages = 0;
    while (next < count) {
        drawing->first[drawing->pages++] = next;
        failed |= fill_page(drawing->told, type, &next);
    }
    drawing->first[drawing->pages] = count;
    *pages = drawing->pages;
    return failed ? -1 : 0;
}

static int draw_title(const recede_paints_told *told, const recede_page *page)
{
    double x = recede_page_margin_mm;
    recede_medium medium = recede_palette_medium(told->palette);
    recede_style line = recede_style_body;
    recede_buffer words;
    int failed = 0;
    line.most_lines = 1;
    recede_type_set(page->type, page->cr, "Swatches", (recede_rect){x, 10, 100, 10},
                    &recede_style_title);
    recede_buffer_start(&words, NULL);
    recede_buffer_format(&words, "%s, %s; masstone, and with ",
                         *told->name ? told->name : "a palette of your own",
                         recede_words_medium(medium));
    recede_words_strengths(&words, medium);
    recede_page_set(page, &words, (recede_rect){x, 21, width(), 5}, &line, &failed);
    recede_page_rule(page, x, 27.5, width());
    return failed;
}

static int draw(void *content, const recede_page *page, size_t index)
{
    const recede_swatches_drawing *drawing = content;
    const recede_paints_told *told = drawing->told;
    recede_swatches_notes notes = {0};
    recede_buffer foot;
    double y = rows_top_mm;
    int failed = draw_title(told, page) | recede_swatches_draw_heads(told, page, heads_top_mm);
    for (size_t i = drawing->first[index]; i < drawing->first[index + 1]; i++) {
        failed |= recede_swatches_draw_row(told, i, &notes, page, y);
        y += recede_swatches_row_mm;
    }
    failed |= draw_notes(told, &notes, page, y + after_rows_mm);
    recede_buffer_start(&foot, NULL);
    recede_buffer_format(&foot, "swatches, %s", *told->name ? told->name : "a palette of your own");
    recede_page_foot(page, recede_buffer_string(&foot), index + 1, drawing->pages);
    if (index + 1 == drawing->pages)
        recede_page_care(page, caution_of(told));
    failed |= foot.failed;
    recede_buffer_free(&foot);
    return failed ? -1 : 0;
}

recede_sheet recede_swatches_sheet(recede_swatches_drawing *drawing)
{
    return (recede_sheet){drawing, lay, draw, "Swatches"};
}
