/* The order of work. */
#include <math.h>
#include <stdlib.h>

#include "page/page.h"
#include "text/words_let_down.h"
#include "text/words_media.h"
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

static void add_beforehand(recede_buffer *out, const recede_plan *plan, const recede_work *work)
{
    recede_buffer words;
    recede_buffer_start(&words, out->allocator);
    recede_words_beforehand_all(&words, plan, work);
    if (words.size)
        recede_buffer_format(out, " %s", recede_buffer_string(&words));
    out->failed |= words.failed;
    recede_buffer_free(&words);
}

static void write_sum(recede_json *json, const recede_plan *plan, const recede_work *work)
{
    static const char *const times[] = {"never", "once", "twice"};
    const recede_trade *trade = recede_trade_of(recede_plan_scene(plan)->medium);
    double farther = work->difference - work->planned_difference;
    recede_buffer words;
    recede_buffer_start(&words, NULL);
    recede_buffer_format(&words, "%d %s, %d %s; a %s is %s ", work->tubes,
                         work->tubes == 1 ? "tube" : "tubes", work->additions,
                         trade->to_pour[work->additions != 1], trade->well, trade->washed);
    if (work->washings < 3)
        recede_buffer_text(&words, times[work->washings]);
    else
        recede_buffer_format(&words, "%d times", work->washings);
    recede_buffer_format(&words, ". Over all %s this order is ", trade->washes);
    recede_buffer_fixed(&words, fabs(farther), 1);
    recede_buffer_format(&words, " %s mixing each by itself.",
                         farther < 0 ? "nearer than" : "farther off than");
    recede_page_words(json, "sum", &words);
}

static void write_work(recede_json *json, const recede_plan *plan, const recede_work *work)
{
    recede_buffer words;
    write_sum(json, plan, work);
    recede_buffer_start(&words, NULL);
    recede_words_amounts(&words, plan);
    add_beforehand(&words, plan, work);
    recede_page_words(json, "amounts", &words);
    recede_json_array(json, "steps");
    for (size_t i = 0; i < work->count; i++)
        write_step(json, plan, work, i);
    recede_json_end_array(json);
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
