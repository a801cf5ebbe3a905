#include "draw/skies.h"

#include "colour/memory.h"
#include "draw/skies_parts.h"
#include "text/words_media.h"
#include "text/words_skies.h"

#include <math.h>
#include <string.h>

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_skies_sheet *sheet = content;
    if (recede_skies_lay_changes(sheet, type))
        return -1;
    *pages = 1 + sheet->change_pages;
    return sheet->failed ? -1 : 0;
}

static int draw(void *content, const recede_page *page, size_t index)
{
    recede_skies_sheet *sheet = content;
    const recede_scene *scene = recede_plan_scene(sheet->skies->plan[0]);
    recede_page_foot(page, scene->title, index + 1, 1 + sheet->change_pages);
    if (index == sheet->change_pages)
        recede_page_care(page, recede_trade_of(scene->medium)->caution);
    int failed = index == 0 ? recede_skies_draw_pictures(sheet, page)
                            : recede_skies_draw_changes(sheet, page, index - 1);
    return failed || sheet->failed ? -1 : 0;
}

static recede_skies_sheet *sheet_new(const recede_skies *skies, const recede_allocator *allocator)
{
    recede_skies_sheet *sheet = recede_allocate_array(allocator, 1, sizeof *sheet);
    if (sheet) {
        memset(sheet, 0, sizeof *sheet);
        sheet->skies = skies;
        sheet->allocator = allocator;
    }
    return sheet;
}

static void sheet_free(recede_skies_sheet *sheet)
{
    recede_release(sheet->allocator, sheet->blocks);
    recede_release(sheet->allocator, sheet);
}

recede_sheet_result recede_skies_pixels(const recede_skies *skies,
                                        const recede_sheet_options *options,
                                        recede_sheet_pixels *out)
{
    memset(out, 0, sizeof *out);
    recede_skies_sheet *content = sheet_new(skies, options->allocator);
    if (!content)
        return RECEDE_SHEET_NO_MEMORY;
    const recede_sheet sheet = {content, lay, draw, ""};
    recede_sheet_result result = recede_sheet_to_pixels(&sheet, options, out);
    sheet_free(content);
    return result;
}

recede_sheet_result recede_skies_pdf(const recede_skies *skies, const recede_sheet_options *options,
                                     recede_buffer *out)
{
    recede_skies_sheet *content = sheet_new(skies, options->allocator);
    if (!content)
        return RECEDE_SHEET_NO_MEMORY;
    const recede_sheet sheet = {content, lay, draw, recede_plan_scene(skies->plan[0])->title};
    recede_sheet_result result = recede_sheet_to_pdf(&sheet, options, out);
    sheet_free(content);
    return result;
}
