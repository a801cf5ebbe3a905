/* The order of work. */
#include <stdlib.h>

#include "page/page.h"
#include "text/words_let_down.h"
#include "text/words_work.h"

static void write_step(recede_json *json, const recede_plan *plan, const recede_work *work,
                       size_t at)
{
    const recede_work_step *step = &work->steps[at];
    recede_buffer words;
    recede_json_object(json, NULL);
    recede_buffer_start(&words, NULL);
    recede_words_step_label(&words, recede_plan_scene(plan), step);
    recede_page_words(json, "label", &words);
    recede_page_hex(json, "hex", step->colour.srgb);
    recede_json_string(json, "kind", recede_words_step_kind(step->kind));
    recede_json_whole(json, "well", step->well + 1);
    recede_buffer_start(&words, NULL);
    recede_words_step(&words, plan, work, at);
    recede_page_words(json, "sentences", &words);
    recede_json_number(json, "delta_e", step->delta_e);
    recede_json_end_object(json);
}

/* In the order in which the command line tells it: what comes before the first step, the
 * steps, and what they come to. */
static void write_work(recede_json *json, const recede_plan *plan, const recede_work *work)
{
    recede_buffer words;
    recede_buffer_start(&words, NULL);
    recede_words_beforehand_all(&words, plan, work);
    recede_page_words(json, "beforehand", &words);
    recede_json_array(json, "steps");
    for (size_t i = 0; i < work->count; i++)
        write_step(json, plan, work, i);
    recede_json_end_array(json);
    recede_buffer_start(&words, NULL);
    recede_words_order(&words, plan, work);
    recede_page_words(json, "sum", &words);
    recede_buffer_start(&words, NULL);
    recede_words_amounts(&words, plan);
    recede_page_words(json, "amounts", &words);
}

static recede_code find(const recede_page *page, int wells, recede_work *out, recede_error *error)
{
    const recede_work_wish wish = {wells, 0};
    recede_progress progress = recede_page_progress();
    double shares[RECEDE_MOST_PLANES + 1];
    recede_code code = recede_picture_shares(page->plan, shares, NULL, error);
    if (!code)
        code = recede_work_of(page->plan, shares, &wish, page->box.index, NULL, &progress, out,
                              error);
    return code;
}

RECEDE_PAGE_CALL(page_work) int recede_page_work(recede_page *page, int wells)
{
    recede_error error;
    if (!page->plan)
        return recede_page_refuse(page, 0, 0, "there is no plan to work from");
    recede_work *work = malloc(sizeof *work);
    if (!work)
        return recede_page_refuse(page, 0, 0, "not enough memory");
    if (find(page, wells, work, &error)) {
        free(work);
        return recede_page_refuse_core(page, &error);
    }
    recede_json json = recede_page_reply_start(page);
    write_work(&json, page->plan, work);
    free(work);
    return recede_page_reply_end(page, &json);
}
