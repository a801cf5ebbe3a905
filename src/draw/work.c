#include "draw/work.h"

#include <string.h>

#include "colour/memory.h"
#include "draw/work_pages.h"

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_work_pages *work = content;
    int failed = recede_work_pages_lay(work, type);
    *pages = work->pages;
    return failed;
}

static int draw(void *content, const recede_page *page, size_t index)
{
    recede_work_pages *work = content;
    recede_page_foot(page, recede_plan_scene(work->plan)->title, index + 1, work->pages);
    return recede_work_pages_draw(work, page, index);
}

static recede_work_pages *pages_new(const recede_work_told *told,
                                    const recede_allocator *allocator)
{
    recede_work_pages *pages = recede_allocate_array(allocator, 1, sizeof *pages);
    if (pages)
        *pages = (recede_work_pages){.plan = told->plan, .work = told->work,
                                     .allocator = allocator};
    return pages;
}

static recede_sheet sheet_of(recede_work_pages *pages)
{
    return (recede_sheet){pages, lay, draw, recede_plan_scene(pages->plan)->title};
}

recede_sheet_result recede_work_pixels(const recede_work_told *told,
                                       const recede_sheet_options *options,
                                       recede_sheet_pixels *out)
{
    memset(out, 0, sizeof *out);
    recede_work_pages *pages = pages_new(told, options->allocator);
    if (!pages)
        return RECEDE_SHEET_NO_MEMORY;
    const recede_sheet sheet = sheet_of(pages);
    recede_sheet_result result = recede_sheet_to_pixels(&sheet, options, out);
    recede_release(options->allocator, pages);
    return result;
}

recede_sheet_result recede_work_pdf(const recede_work_told *told,
                                    const recede_sheet_options *options, recede_buffer *out)
{
    recede_work_pages *pages = pages_new(told, options->allocator);
    if (!pages)
        return RECEDE_SHEET_NO_MEMORY;
    const recede_sheet sheet = sheet_of(pages);
    recede_sheet_result result = recede_sheet_to_pdf(&sheet, options, out);
    recede_release(options->allocator, pages);
    return result;
}
