#include "draw/ladder.h"

#include "colour/memory.h"
#include "draw/ladder_parts.h"
#include "text/words_ladder.h"

#include <string.h>

static size_t page_count(const recede_ladder_sheet *sheet)
{
    return sheet->blank ? 2 : 2 + sheet->mix_pages;
}

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_ladder_sheet *sheet = content;
    if (!sheet->blank)
        recede_ladder_lay_mixes(sheet, type);
    *pages = page_count(sheet);
    return sheet->failed ? -1 : 0;
}

static int draw(void *content, const recede_page *page, size_t index)
{
    recede_ladder_sheet *sheet = content;
    recede_buffer title;
    recede_buffer_start(&title, sheet->allocator);
    recede_words_ladder_title(&title, sheet->ladder);
    recede_page_foot(page, recede_buffer_string(&title), index + 1, page_count(sheet));
    sheet->failed |= title.failed;
    recede_buffer_free(&title);
    if (index + 1 == page_count(sheet))
        recede_page_care(page, recede_ladder_caution(sheet));
    if (sheet->blank)
        recede_ladder_draw_picture(sheet, page, index == 1);
    else if (index == 0)
        recede_ladder_draw_picture(sheet, page, 1);
    else if (index == 1)
        recede_ladder_draw_reading(sheet, page);
    else
        recede_ladder_draw_mixes(sheet, page, index - 2);
    return sheet->failed ? -1 : 0;
}

static recede_ladder_sheet *sheet_new(const recede_ladder *ladder, int blank,
                                      const recede_allocator *allocator)
{
    recede_ladder_sheet *sheet = recede_allocate_array(allocator, 1, sizeof *sheet);
    if (sheet) {
        memset(sheet, 0, sizeof *sheet);
        sheet->ladder = ladder;
        sheet->allocator = allocator;
        sheet->blank = blank;
    }
    return sheet;
}

recede_sheet_result recede_ladder_pixels(const recede_ladder *ladder, int blank,
                                         const recede_sheet_options *options,
                                         recede_sheet_pixels *out)
{
    memset(out, 0, sizeof *out);
    recede_ladder_sheet *content = sheet_new(ladder, blank, options->allocator);
    if (!content)
        return RECEDE_SHEET_NO_MEMORY;
    const recede_sheet sheet = {content, lay, draw, ""};
    recede_sheet_result result = recede_sheet_to_pixels(&sheet, options, out);
    recede_release(options->allocator, content);
    return result;
}

recede_sheet_result recede_ladder_pdf(const recede_ladder *ladder, int blank,
                                      const recede_sheet_options *options, recede_buffer *out)
{
    recede_ladder_sheet *content = sheet_new(ladder, blank, options->allocator);
    recede_sheet_result result = RECEDE_SHEET_NO_MEMORY;
    recede_buffer title;
    if (!content)
        return result;
    recede_buffer_start(&title, options->allocator);
    recede_words_ladder_title(&title, ladder);
    const recede_sheet sheet = {content, lay, draw, recede_buffer_string(&title)};
    if (!title.failed)
        result = recede_sheet_to_pdf(&sheet, options, out);
    recede_buffer_free(&title);
    recede_release(options->allocator, content);
    return result;
}
