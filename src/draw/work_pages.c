#include "draw/work_pages.h"

#include <math.h>

#include "draw/dab.h"
#include "text/words.h"
#include "text/words_let_down.h"
#include "text/words_media.h"
#include "text/words_work.h"

enum { COLUMNS = 2 };

static const double top_mm = 24, bottom_mm = 196, gutter_mm = 9, after_mm = 3;
static const double dab_width_mm = 17, dab_height_mm = 10, number_mm = 7, text_x_mm = 27;

static const recede_trade *trade_of(const recede_work_pages *pages)
{
    return recede_trade_of(recede_plan_scene(pages->plan)->medium);
}

static double column_width(void)
{
    return (recede_page_width_mm - 2 * recede_page_margin_mm - gutter_mm * (COLUMNS - 1)) /
           COLUMNS;
}

/* Where something is put, or only measured: page NULL. */
typedef struct {
    recede_work_pages *pages;
    recede_type *type;
    const recede_page *page;
    double x, y, w;
} pen;

static void put(pen *p, recede_buffer *words, const recede_style *style, double after)
{
    const char *text = recede_buffer_string(words);
    if (words->size) {
        double height = recede_type_height(p->type, text, p->w, style);
        if (p->page)
            recede_type_set(p->type, p->page->cr, text,
                            (recede_rect){p->x, p->y, p->w, height + 0.05}, style);
        p->y += height + after;
    }
    p->pages->failed |= words->failed;
    recede_buffer_free(words);
}

static recede_style name_style(void)
{
    recede_style style = recede_style_heading;
    style.size_pt = 11;
    style.least_pt = 8;
    return style;
}

static recede_style doing_style(void)
{
    recede_style style = recede_style_body;
    style.size_pt = style.least_pt = 11;
    return style;
}

static recede_buffer *begin(const pen *p, recede_buffer *words)
{
    recede_buffer_start(words, p->pages->allocator);
    return words;
}

/* ---- a step */

/* Its number, the dab and the well. */
static void put_dab(const pen *p, size_t index)
{
    const recede_work_step *step = &p->pages->work->steps[index];
    recede_style number = name_style(), well = recede_style_small;
    recede_rect dab = {p->x + number_mm, p->y + 0.5, dab_width_mm, dab_height_mm};
    recede_buffer words;
    pen at = *p;
    number.ink = recede_ink_pale;
    at.w = number_mm;
    recede_buffer_format(begin(p, &words), "%d", (int)index + 1);
    put(&at, &words, &number, 0);
    recede_dab(p->page, dab, (uint32_t)index * 53 + 11, step->colour.srgb);
    if (step->well < 0)
        return;
    well.align = RECEDE_CENTRE;
    at = (pen){p->pages, p->type, p->page, dab.x, dab.y + dab.h + 0.4, dab.w};
    recede_buffer_format(begin(p, &words), "%s %d", trade_of(p->pages)->well, step->well + 1);
    put(&at, &words, &well, 0);
}

static void put_volume(pen *p, const recede_work_step *step, size_t index)
{
    const recede_scene *scene = recede_plan_scene(p->pages->plan);
    recede_buffer words, rest;
    begin(p, &words);
    if (step->kind != RECEDE_STEP_BARE) {
        recede_words_ml(&words, step->mixed_ml);
        recede_buffer_text(&words, ", of which you need ");
        recede_words_ml(&words, step->need_ml);
        recede_words_step_rest(begin(p, &rest), scene, p->pages->work, index);
        if (rest.size)
            recede_buffer_format(&words, "; %s", rest.bytes);
        words.failed |= rest.failed;
        recede_buffer_free(&rest);
        const char *wet = recede_words_step_wet(recede_plan_palette(p->pages->plan),
                                                p->pages->work, index);
        if (*wet)
            recede_buffer_format(&words, "; %s", wet);
    }
    put(p, &words, &recede_style_small, 0.2);
}

/* Its name with what the paper must be, what to pour, and how much there is then. */
static void put_words(pen *p, size_t index)
{
    const recede_plan *plan = p->pages->plan;
    const recede_work_step *step = &p->pages->work->steps[index];
    const recede_style name = name_style(), doing = doing_style();
    recede_buffer words;
    recede_words_step_label(begin(p, &words), recede_plan_scene(plan), step);
    put(p, &words, &name, 0.2);
    recede_words_step_mix(begin(p, &words), recede_plan_palette(plan), step);
    put(p, &words, &doing, 0.2);
    put_volume(p, step, index);
    recede_words_step_far(begin(p, &words), step);
    if (words.size)
        words.bytes[0] = 'M';
    put(p, &words, &doing, 0.2);
    recede_words_step_paper(begin(p, &words), plan, p->pages->work, index);
    put(p, &words, &recede_style_small, 0);
}

static double put_step(pen p, size_t index)
{
    double top = p.y;
    if (p.page)
        put_dab(&p, index);
    p.x += text_x_mm;
    p.w -= text_x_mm;
    put_words(&p, index);
    return fmax(p.y - top, dab_height_mm + 5);
}

/* ---- what comes before the steps, and the notes at the end */

/* Nothing, where nothing is let down. */
static double put_beforehand(pen p)
{
    const recede_style name = name_style(), doing = doing_style();
    double top = p.y;
    recede_buffer all, head;
    recede_words_beforehand_all(begin(&p, &all), p.pages->plan, p.pages->work);
    begin(&p, &head);
    if (all.size)
        recede_buffer_text(&head, "Before all else");
    put(&p, &head, &name, 0.2);
    put(&p, &all, &doing, 0);
    return p.y - top;
}

static double put_notes(pen p)
{
    double top = p.y;
    recede_buffer words;
    recede_words_amounts(begin(&p, &words), p.pages->plan);
    put(&p, &words, &recede_style_small, 1);
    recede_words_order(begin(&p, &words), p.pages->plan, p.pages->work);
    put(&p, &words, &recede_style_small, 1);
    recede_buffer_text(begin(&p, &words), trade_of(p.pages)->caution);
    put(&p, &words, &recede_style_small, 0);
    return p.y - top;
}

/* ---- pages */

static void put_legend(recede_work_pages *pages, const recede_page *page, recede_rect room)
{
    const recede_trade *trade = trade_of(pages);
    recede_buffer words;
    recede_buffer_start(&words, pages->allocator);
    recede_buffer_format(&words, "%c%s are added to, never taken from; the first number is the "
                                 "step, the dab what the %s then is.",
                         trade->puddles[0] - 'a' + 'A', trade->puddles + 1, trade->puddle);
    recede_type_set(page->type, page->cr, recede_buffer_string(&words), room,
                    &recede_style_small);
    pages->failed |= words.failed;
    recede_buffer_free(&words);
}

static size_t block_count(const recede_work_pages *pages)
{
    return pages->work->count + 2;
}

static double put_block(pen p, size_t block)
{
    return block == 0                      ? put_beforehand(p)
           : block <= p.pages->work->count ? put_step(p, block - 1)
                                           : put_notes(p);
}

int recede_work_pages_lay(recede_work_pages *pages, recede_type *type)
{
    size_t column = 0;
    double y = top_mm;
    for (size_t i = 0; i < block_count(pages); i++) {
        recede_work_block *block = &pages->blocks[i];
        block->height = put_block((pen){pages, type, NULL, 0, 0, column_width()}, i);
        if (y + block->height > bottom_mm && y > top_mm) {
            column++;
            y = top_mm;
        }
        block->page = column / COLUMNS;
        block->x = recede_page_margin_mm +
                   (double)(column % COLUMNS) * (column_width() + gutter_mm);
        block->y = y;
        y += block->height + (block->height > 0 ? after_mm : 0);
    }
    pages->pages = column / COLUMNS + 1;
    return pages->failed ? -1 : 0;
}

int recede_work_pages_draw(recede_work_pages *pages, const recede_page *page, size_t index)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_type_set(page->type, page->cr, "The order of work, far to near",
                    (recede_rect){x, 9.5, w, 6}, &recede_style_heading);
    put_legend(pages, page, (recede_rect){x, 16, w, 4});
    recede_page_rule(page, x, 21.5, w);
    for (size_t i = 0; i < block_count(pages); i++) {
        const recede_work_block *block = &pages->blocks[i];
        if (block->page == index)
            put_block((pen){pages, page->type, page, block->x, block->y, column_width()}, i);
    }
    return pages->failed ? -1 : 0;
}
