#include "draw/study.h"

#include "colour/memory.h"
#include "draw/study_parts.h"

#include <string.h>

static size_t page_count(const recede_study *study)
{
    return 1 + study->key_pages + study->work.pages + study->note_pages;
}

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_study *study = content;
    recede_study_lay_picture(study, type);
    recede_study_lay_key(study, type);
    if (study->work.work && recede_work_pages_lay(&study->work, type))
        return -1;
    if (recede_study_lay_notes(study, type))
        return -1;
    *pages = page_count(study);
    return study->failed ? -1 : 0;
}

static int draw(void *content, const recede_page *page, size_t index)
{
    recede_study *study = content;
    size_t work_from = 1 + study->key_pages, notes_from = work_from + study->work.pages;
    recede_page_foot(page, recede_plan_scene(study->plan)->title, index + 1, page_count(study));
    if (index == 0)
        return recede_study_draw_picture(study, page);
    if (index < work_from)
        recede_study_draw_key(study, page, index - 1);
    else if (index < notes_from)
        return recede_work_pages_draw(&study->work, page, index - work_from);
    else
        recede_study_draw_notes(study, page, index - notes_from);
    return study->failed ? -1 : 0;
}

/* The study of a plan, to be freed; NULL when there is no memory. */
static recede_study *study_of(const recede_plan *plan, const recede_work *work,
                              const recede_allocator *allocator)
{
    recede_study *study = recede_allocate_array(allocator, 1, sizeof *study);
    if (study) {
        memset(study, 0, sizeof *study);
        study->plan = plan;
        study->allocator = allocator;
        study->work.plan = plan;
        study->work.work = work;
        study->work.allocator = allocator;
    }
    return study;
}

static void study_free(recede_study *study)
{
    recede_release(study->allocator, study->notes);
    recede_release(study->allocator, study);
}

static recede_sheet sheet_of(recede_study *study)
{
    const char *title = recede_plan_scene(study->plan)->title;
    return (recede_sheet){study, lay, draw, title};
}

recede_sheet_result recede_study_pixels(const recede_plan *plan, const recede_work *work,
                                        const recede_sheet_options *options,
                                        recede_sheet_pixels *out)
{
    memset(out, 0, sizeof *out);
    recede_study *study = study_of(plan, work, options->allocator);
    if (!study)
        return RECEDE_SHEET_NO_MEMORY;
    recede_sheet sheet = sheet_of(study);
    recede_sheet_result result = recede_sheet_to_pixels(&sheet, options, out);
    study_free(study);
    return result;
}

recede_sheet_result recede_study_pdf(const recede_plan *plan, const recede_work *work,
                                     const recede_sheet_options *options, recede_buffer *out)
{
    recede_study *study = study_of(plan, work, options->allocator);
    if (!study)
        return RECEDE_SHEET_NO_MEMORY;
    recede_sheet sheet = sheet_of(study);
    recede_sheet_result result = recede_sheet_to_pdf(&sheet, options, out);
    study_free(study);
    return result;
}
