/* A page's life: scene in, box mixed, plan out. */
#include <stdlib.h>
#include <string.h>

#include "page/page.h"
#include "plan/fits.h"
#include "plan/plan.h"
#include "text/plan_write.h"
#include "text/scene_read.h"
#include "text/scene_write.h"

#ifdef __wasm__
__attribute__((import_module("page"), import_name("report"))) void recede_page_report(double);

static int report(void *context, double share_done)
{
    (void)context;
    recede_page_report(share_done);
    return 0;
}
#else
static int report(void *context, double share_done)
{
    (void)context;
    (void)share_done;
    return 0;
}
#endif

recede_progress recede_page_progress(void)
{
    return (recede_progress){report, NULL};
}

RECEDE_PAGE_CALL(page_new) recede_page *recede_page_new(void)
{
    recede_page *page = calloc(1, sizeof *page);
    if (page)
        recede_buffer_start(&page->reply, NULL);
    return page;
}

RECEDE_PAGE_CALL(page_room) char *recede_page_room(recede_page *page, size_t size)
{
    if (size <= page->room_size)
        return page->room;
    char *room = realloc(page->room, size);
    if (!room)
        return NULL;
    page->room = room;
    page->room_size = size;
    return room;
}

RECEDE_PAGE_CALL(page_reply) const char *recede_page_reply(const recede_page *page)
{
    return recede_buffer_string(&page->reply);
}

RECEDE_PAGE_CALL(page_reply_size) size_t recede_page_reply_size(const recede_page *page)
{
    return page->reply.size;
}

RECEDE_PAGE_CALL(page_read) int recede_page_read(recede_page *page, size_t size)
{
    recede_text_error error;
    recede_files files = recede_page_files(page);
    page->bytes = size;
    page->has_scene = 0;
    recede_text_status status =
        recede_scene_read(page->room, size, &files, NULL, &page->scene, &error);
    if (status)
        return recede_page_refuse_text(page, status, &error);
    page->has_scene = 1;
    return 1;
}

static int without_scene(recede_page *page)
{
    return recede_page_refuse(page, 0, 0, "there is no scene to plan");
}

RECEDE_PAGE_CALL(page_scene) int recede_page_scene(recede_page *page)
{
    if (!page->has_scene)
        return without_scene(page);
    recede_buffer_free(&page->reply);
    recede_buffer_start(&page->reply, NULL);
    recede_scene_write(&page->scene, &page->reply);
    return page->reply.failed ? recede_page_refuse(page, 0, 0, "not enough memory") : 1;
}

static int box_fits(const recede_page_box *box, const recede_scene *scene)
{
    if (!box->index || recede_palette_count(box->palette) != scene->paint_count ||
        box->medium != scene->medium || box->rules.most_pigments != scene->rules.most_pigments ||
        box->rules.most_parts != scene->rules.most_parts || box->rules.tie != scene->rules.tie ||
        !recede_same_spectrum(recede_palette_paper(box->palette), &scene->paper))
        return 0;
    for (size_t i = 0; i < scene->paint_count; i++)
        if (!recede_same_paint(recede_palette_paint(box->palette, i), &scene->paints[i]))
            return 0;
    return 1;
}

static void empty_box(recede_page_box *box)
{
    recede_index_free(box->index);
    recede_palette_free(box->palette);
    memset(box, 0, sizeof *box);
}

RECEDE_PAGE_CALL(page_mix) int recede_page_mix(recede_page *page)
{
    recede_scene *scene = &page->scene;
    recede_page_box *box = &page->box;
    recede_progress progress = recede_page_progress();
    recede_error error;
    if (!page->has_scene)
        return without_scene(page);
    if (box_fits(box, scene))
        return 1;
    recede_plan_free(page->plan);
    page->plan = NULL;
    empty_box(box);
    box->rules = scene->rules;
    box->medium = scene->medium;
    if (recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper, NULL,
                           &box->palette, &error) ||
        recede_index_new(box->palette, &scene->rules, 0, NULL, &progress, &box->index, &error)) {
        empty_box(box);
        return recede_page_refuse_core(page, &error);
    }
    return 1;
}

void recede_page_free(recede_page *page)
{
    if (!page)
        return;
    recede_plan_free(page->plan);
    empty_box(&page->box);
    recede_sketch_free(page->sketch[0]);
    recede_sketch_free(page->sketch[1]);
    recede_buffer_free(&page->reply);
    recede_page_files_free(page);
    free(page->skylines);
    free(page->rgba);
    free(page->rgb);
    free(page->room);
    free(page);
}

RECEDE_PAGE_CALL(page_plan) int recede_page_plan(recede_page *page)
{
    recede_error error;
    recede_plan *plan;
    if (!page->has_scene)
        return without_scene(page);
    if (!box_fits(&page->box, &page->scene))
        return recede_page_refuse(page, 0, 0, "the box of paints is not ready");
    if (recede_plan_after(page->plan, &page->scene, page->box.index, NULL, NULL, &plan, &error))
        return recede_page_refuse_core(page, &error);
    recede_plan_free(page->plan);
    page->plan = plan;
    return 1;
}

RECEDE_PAGE_CALL(page_advise) int recede_page_advise(recede_page *page)
{
    recede_error error;
    if (!page->plan)
        return without_scene(page);
    if (recede_plan_advise(page->plan, NULL, &error))
        return recede_page_refuse_core(page, &error);
    return 1;
}

RECEDE_PAGE_CALL(page_plan_json) int recede_page_plan_json(recede_page *page)
{
    if (!page->plan)
        return without_scene(page);
    recede_buffer_free(&page->reply);
    recede_buffer_start(&page->reply, NULL);
    recede_plan_write(page->plan, &page->reply);
    return page->reply.failed ? recede_page_refuse(page, 0, 0, "not enough memory") : 1;
}
