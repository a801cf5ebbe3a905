/* The list of a range sheet: under each field the colours that stand on it. */
#include "draw/range_parts.h"

#include "text/words.h"
#include "text/words_chart.h"
#include "text/words_match.h"

#include <stdio.h>

static const double first_top_mm = 133, other_top_mm = 34, bottom_mm = 188.5;
static const double number_mm = 6.5, after_mm = 0.9;

static recede_style style_of(void)
{
    recede_style style = recede_style_small;
    style.least_pt = 7;
    style.most_lines = 4;
    style.ink = (recede_srgb){0.17, 0.165, 0.16};
    return style;
}

static void put_advice(recede_buffer *words, const recede_warning *warning)
{
    const recede_addition addition = {warning->pigment, warning->number[1], warning->number[0],
                                      warning->let_down, warning->number[2]};
    recede_buffer advice;
    recede_buffer_start(&advice, words->allocator);
    if (recede_words_best_addition(&advice, &addition))
        recede_buffer_format(words, "; %s", recede_buffer_string(&advice));
    words->failed |= advice.failed;
    recede_buffer_free(&advice);
}

/* "far ridge, lit side: value 6.2, close", and for one out of reach what is wrong
 * and which pigment would help. */
static void put_words(recede_range_drawing *drawing, const recede_range_mark *mark,
                      recede_buffer *words)
{
    const recede_wash *wash = mark->place.wash;
    const recede_warning *warning = mark->warning;
    recede_buffer_start(words, drawing->allocator);
    recede_words_place(words, recede_plan_scene(drawing->plan), &mark->place);
    recede_buffer_text(words, ": value ");
    recede_buffer_fixed(words, wash->target.value, 1);
    recede_buffer_text(words, ", ");
    if (!warning) {
        recede_buffer_text(words, recede_words_difference(wash->recipe.delta_e));
    } else {
        recede_buffer_format(words, "%s, ", recede_words_missed(wash->recipe.reach));
        recede_buffer_fixed(words, wash->recipe.delta_e, 1);
        recede_buffer_text(words, " off");
        put_advice(words, warning);
    }
    drawing->failed |= words->failed;
}

static double height_of(recede_range_drawing *drawing, recede_type *type,
                        const recede_range_mark *mark)
{
    recede_style style = style_of();
    recede_buffer words;
    put_words(drawing, mark, &words);
    double height = recede_type_height(type, recede_buffer_string(&words),
                                       recede_range_column_mm - number_mm, &style);
    recede_buffer_free(&words);
    return height;
}

void recede_range_lay_list(recede_range_drawing *drawing, recede_type *type)
{
    drawing->pages = 1;
    for (int field = 0; field < RECEDE_RANGE_FIELDS; field++) {
        size_t page = 0;
        double y = first_top_mm;
        for (size_t i = 0; i < drawing->count; i++) {
            recede_range_mark *mark = &drawing->marks[i];
            if (mark->field != field)
                continue;
            mark->height = height_of(drawing, type, mark);
            if (y + mark->height > bottom_mm) {
                page++;
                y = other_top_mm;
            }
            mark->page = page;
            mark->y = y;
            y += mark->height + after_mm;
        }
        if (page + 1 > drawing->pages)
            drawing->pages = page + 1;
    }
}

static void draw_entry(recede_range_drawing *drawing, const recede_page *page, size_t i)
{
    const recede_range_mark *mark = &drawing->marks[i];
    double x = recede_range_column_x(mark->field);
    recede_style style = style_of(), number = style;
    recede_buffer words;
    char text[24];
    number.align = RECEDE_RIGHT;
    snprintf(text, sizeof text, "%zu", i + 1);
    recede_type_set(page->type, page->cr, text, (recede_rect){x, mark->y, number_mm - 1.6, 4},
                    &number);
    put_words(drawing, mark, &words);
    recede_type_set(page->type, page->cr, recede_buffer_string(&words),
                    (recede_rect){x + number_mm, mark->y, recede_range_column_mm - number_mm,
                                  mark->height + 0.05}, &style);
    recede_buffer_free(&words);
}

void recede_range_draw_list(recede_range_drawing *drawing, const recede_page *page, size_t index)
{
    for (size_t i = 0; i < drawing->count; i++)
        if (drawing->marks[i].page == index)
            draw_entry(drawing, page, i);
}
