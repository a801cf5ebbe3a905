#include "draw/range.h"

#include "colour/memory.h"
#include "draw/range_parts.h"
#include "text/words_chart.h"

#include <string.h>

static const double fields_top_mm = 43;

static const char guide[] =
    "A field holds the colours that mixes reach at its value; its circles are 20 apart in C*, CIELAB chroma. A spot is a colour that "
    "the picture wants, numbered as in the list; its own value may lie a little off the field's. From one out of reach a "
    "line leads to the mix chosen for it. Print and screen only guide: paints of one name differ from maker to maker.";

/* ------------------------------------------------------------- content -- */

static const recede_warning *warning_of(const recede_plan *plan, const recede_wash_place *place)
{
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
        const recede_warning *w = recede_plan_warning(plan, i);
        if (w->kind == RECEDE_WARN_NOT_REACHED && w->plane == place->plane &&
            w->shadow == place->shadow && w->base == place->base)
            return w;
    }
    return NULL;
}

static void take_marks(recede_range_drawing *drawing)
{
    recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    drawing->count = recede_plan_washes(drawing->plan, places);
    for (size_t i = 0; i < drawing->count; i++)
        drawing->marks[i] = (recede_range_mark){
            .place = places[i], .warning = warning_of(drawing->plan, &places[i])};
}

/* The values that the marks gather about, where they make out three groups: those
 * out of reach count for many, so that they stand on a field of their own value. */
static recede_code choose_values(recede_range_drawing *drawing, recede_error *error)
{
    static const double usual[RECEDE_RANGE_FIELDS] = {3, 5.5, 8};
    static const double beyond_reach = 15;
    double values[RECEDE_MOST_WASH_PLACES], weights[RECEDE_MOST_WASH_PLACES];
    int group[RECEDE_MOST_WASH_PLACES];
    recede_groups groups;
    for (size_t i = 0; i < drawing->count; i++) {
        values[i] = drawing->marks[i].place.wash->target.value;
        weights[i] = drawing->marks[i].warning ? beyond_reach : 1;
    }
    recede_code code = recede_group_values(values, weights, drawing->count, RECEDE_RANGE_FIELDS,
                                           group, &groups, drawing->allocator, error);
    if (code)
        return code;
    int enough = groups.count == RECEDE_RANGE_FIELDS;
    memcpy(drawing->value, enough ? groups.value : usual, sizeof drawing->value);
    return RECEDE_OK;
}

static double away(const recede_range_drawing *drawing, int field, double value)
{
    double off = drawing->value[field] - value;
    return off < 0 ? -off : off;
}

static void sort_marks(recede_range_drawing *drawing)
{
    for (size_t i = 0; i < drawing->count; i++) {
        recede_range_mark *mark = &drawing->marks[i];
        double value = mark->place.wash->target.value;
        for (int field = 1; field < RECEDE_RANGE_FIELDS; field++)
            if (away(drawing, field, value) < away(drawing, mark->field, value))
                mark->field = field;
    }
}

static double lightness_of_value(double value)
{
    recede_xyz white = recede_white();
    double y = recede_y_of_value(value);
    return recede_lab_of_xyz((recede_xyz){white.x * y, y, white.z * y}, white).l;
}

static recede_code fill_fields(recede_range_drawing *drawing, const recede_progress *progress,
                               recede_error *error)
{
    drawing->fields = recede_allocate_array(drawing->allocator, RECEDE_RANGE_FIELDS,
                                            sizeof *drawing->fields);
    if (!drawing->fields) {
        if (error)
            *error = (recede_error){.code = RECEDE_NO_MEMORY};
        return RECEDE_NO_MEMORY;
    }
    for (int field = 0; field < RECEDE_RANGE_FIELDS; field++)
        drawing->fields[field].lightness = lightness_of_value(drawing->value[field]);
    return recede_gamut_fill(recede_plan_palette(drawing->plan),
                             &recede_plan_scene(drawing->plan)->rules, drawing->fields,
                             RECEDE_RANGE_FIELDS, progress, error);
}

recede_code recede_range_start(recede_range_drawing *drawing, const recede_plan *plan,
                               const recede_allocator *allocator,
                               const recede_progress *progress, recede_error *error)
{
    memset(drawing, 0, sizeof *drawing);
    drawing->plan = plan;
    drawing->allocator = recede_allocator_or_default(allocator);
    take_marks(drawing);
    recede_code code = choose_values(drawing, error);
    if (!code)
        code = fill_fields(drawing, progress, error);
    if (code)
        recede_range_end(drawing);
    else
        sort_marks(drawing);
    return code;
}

void recede_range_end(recede_range_drawing *drawing)
{
    recede_release(drawing->allocator, drawing->fields);
    drawing->fields = NULL;
}

/* --------------------------------------------------------------- sheet -- */

static void set_words(recede_range_drawing *drawing, const recede_page *page,
                      recede_buffer *words, recede_rect room, const recede_style *style)
{
    recede_page_set(page, words, room, style, &drawing->failed);
}

static void draw_title(recede_range_drawing *drawing, const recede_page *page)
{
    const recede_scene *scene = recede_plan_scene(drawing->plan);
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_style line = recede_style_body;
    recede_buffer words;
    line.most_lines = 1;
    recede_type_set(page->type, page->cr, "What these paints reach", (recede_rect){x, 10.5, w, 11},
                    &recede_style_title);
    recede_buffer_start(&words, drawing->allocator);
    recede_words_chart_paints(&words, recede_plan_palette(drawing->plan), scene->palette);
    recede_buffer_text(&words, ", ");
    recede_words_rules(&words, &scene->rules);
    if (*scene->title)
        recede_buffer_format(&words, "; with the colours of %s", scene->title);
    set_words(drawing, page, &words, (recede_rect){x, 22.5, w, 5}, &line);
}

static int draw_field(recede_range_drawing *drawing, const recede_page *page, int field)
{
    recede_range_frame frame = {
        {recede_range_column_x(field), fields_top_mm, recede_range_column_mm,
         recede_range_column_mm}, recede_range_most(drawing)};
    recede_buffer words;
    recede_buffer_start(&words, drawing->allocator);
    recede_buffer_text(&words, "Value ");
    recede_buffer_fixed(&words, drawing->value[field], 1);
    set_words(drawing, page, &words,
              (recede_rect){frame.room.x, frame.room.y - 8.5, frame.room.w, 6},
              &recede_style_heading);
    int failed = recede_range_draw_reach(drawing, page, &frame, field);
    recede_range_draw_axes(page, &frame);
    recede_range_draw_marks(drawing, page, &frame, field);
    return failed;
}

static int draw(void *content, const recede_page *page, size_t index)
{
    recede_range_drawing *drawing = content;
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    int failed = 0;
    draw_title(drawing, page);
    for (int field = 0; index == 0 && field < RECEDE_RANGE_FIELDS; field++)
        failed |= draw_field(drawing, page, field);
    recede_range_draw_list(drawing, page, index);
    if (index == 0)
        recede_type_set(page->type, page->cr, guide, (recede_rect){x, 190.5, w, 7.5},
                        &recede_style_small);
    recede_page_foot(page, "what these paints reach", index + 1, drawing->pages);
    return failed || drawing->failed ? -1 : 0;
}

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_range_drawing *drawing = content;
    recede_range_lay_list(drawing, type);
    *pages = drawing->pages;
    return drawing->failed ? -1 : 0;
}

recede_sheet recede_range_sheet(recede_range_drawing *drawing)
{
    return (recede_sheet){drawing, lay, draw, "What these paints reach"};
}
