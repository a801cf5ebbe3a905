/* What each light changes in the mixes, in columns: a light's head with its
 * small picture, then the sky and the planes far to near. */
#include "draw/skies_parts.h"

#include "colour/memory.h"
#include "picture/noise.h"
#include "text/skies_write.h"
#include "text/words.h"
#include "text/words_let_down.h"
#include "text/words_ladder_parts.h"
#include "text/words_media.h"
#include "text/words_skies.h"

#include <math.h>

enum { COLUMNS = 3 };

/* What a block is: a plane, the head of a light, the same after a break, and the
 * note at the end. */
enum { PLANE, HEAD, HEAD_AGAIN, NOTE };

static const double top_mm = 24, gutter_mm = 7.5, between_mm = 6;
static const double thumb_w_mm = 25, thumb_h_mm = 19, dab_w_mm = 9.5, dab_h_mm = 5, text_x_mm = 12;

static const char legend[] =
    "Each light against the scene as planned. The middle of a dab is the new mix, its rim the colour wanted; "
    "a step is one Munsell value";

static const char *const note[] = {
    "These are changes, not whole recipes. To paint in one of these lights, put its air and light into the "
    "scene and draw the study: that has every mix in full, and a box to try it in.",
    "Between mixes that come out alike the simplest is taken. So a paint may change places with another "
    "where the colour hardly moves: keep the old one if you like it better, and look at the dab.",
    "Never look into the sun. Wear a hat, drink, and move with the shade.",
};

static double bottom_mm(const recede_skies_sheet *sheet)
{
    recede_medium medium = recede_plan_scene(sheet->skies->plan[0])->medium;
    return recede_page_bottom_mm(197.4, recede_trade_of(medium)->caution);
}

static double column_width(void)
{
    return (recede_page_width_mm - 2 * recede_page_margin_mm - gutter_mm * (COLUMNS - 1)) / COLUMNS;
}

static recede_style name_style(double size_pt)
{
    recede_style style = recede_style_heading;
    style.size_pt = size_pt;
    style.least_pt = 8;
    style.most_lines = 2;
    return style;
}

static recede_style change_style(const recede_skies_sheet *sheet)
{
    recede_style style = recede_style_body;
    style.size_pt = style.least_pt = sheet->change_pt;
    return style;
}

/* Where something is put, or only measured: page NULL. */
typedef struct {
    recede_skies_sheet *sheet;
    recede_type *type;
    const recede_page *page;
    double x, y, w;
} pen;

static void put_text(pen *p, const char *text, double indent, const recede_style *style, double after)
{
    double high = recede_type_height(p->type, text, p->w - indent, style);
    if (p->page)
        recede_type_set(p->type, p->page->cr, text,
                        (recede_rect){p->x + indent, p->y, p->w - indent, high + 0.05}, style);
    p->y += high + after;
}

static void put(pen *p, recede_buffer *words, double indent, const recede_style *style, double after)
{
    put_text(p, recede_buffer_string(words), indent, style, after);
    p->sheet->failed |= words->failed;
    recede_buffer_free(words);
}

/* ---- the head of a light */

/* Cautions about the sun come first of all. */
static void put_cautions(pen *p, size_t light)
{
    const recede_plan *plan = p->sheet->skies->plan[1 + light];
    const recede_style style = change_style(p->sheet);
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
        const recede_warning *warning = recede_plan_warning(plan, i);
        recede_buffer words;
        if (warning->kind != RECEDE_WARN_INTO_SUN && warning->kind != RECEDE_WARN_LOW_SUN)
            continue;
        recede_buffer_start(&words, p->sheet->allocator);
        recede_words_warning(&words, recede_plan_scene(plan), warning);
        recede_words_capital(&words, 0);
        put(p, &words, 0, &style, 0.5);
    }
}

static int put_head(pen *p, size_t light)
{
    const recede_style name = name_style(12);
    double left = p->x, top = p->y, width = p->w;
    recede_buffer words;
    if (p->page) {
        recede_rect taken = recede_skies_picture(p->sheet, p->page, 1 + light,
                                                 (recede_rect){left, top, thumb_w_mm, thumb_h_mm});
        if (taken.h < 0)
            return -1;
    }
    p->x += thumb_w_mm + 3;
    p->w -= thumb_w_mm + 3;
    put_text(p, p->sheet->skies->light[light].name, 0, &name, 0.6);
    recede_buffer_start(&words, p->sheet->allocator);
    recede_skies_light_line(p->sheet, &words, 1 + light);
    put(p, &words, 0, &recede_style_small, 0.8);
    put_cautions(p, light);
    p->x = left;
    p->w = width;
    p->y = fmax(p->y, top + thumb_h_mm) + 1.5;
    return 0;
}

static void put_head_again(pen *p, size_t light)
{
    const recede_style name = name_style(12);
    recede_buffer words;
    recede_buffer_start(&words, p->sheet->allocator);
    recede_buffer_format(&words, "%s, going on", p->sheet->skies->light[light].name);
    put(p, &words, 0, &name, 2);
}

/* ---- a plane */

static void put_told(pen *p, size_t light, const recede_told *told, uint32_t seed)
{
    const recede_palette *palette = recede_plan_palette(p->sheet->skies->plan[1 + light]);
    const recede_style style = change_style(p->sheet);
    double top = p->y;
    recede_buffer words;
    if (p->page)
        recede_dab_ringed(p->page, (recede_rect){p->x, top + 0.3, dab_w_mm, dab_h_mm}, seed,
                          told->to->recipe.colour.srgb, told->to->target.srgb);
    recede_buffer_start(&words, p->sheet->allocator);
    recede_buffer_format(&words, "%s: ", told->label);
    recede_words_change(&words, palette, told->from, told->to);
    put(p, &words, text_x_mm, &style, 0);
    p->y = fmax(p->y, top + dab_h_mm + 0.4) + 0.3;
}

static void put_plane(pen *p, size_t light, size_t plane)
{
    const recede_style name = name_style(9.5);
    recede_told told[RECEDE_MOST_TOLD];
    size_t count = recede_skies_told(p->sheet->skies, light, plane, told);
    if (p->page)
        recede_page_rule(p->page, p->x, p->y, p->w);
    p->y += 0.5;
    put_text(p, told[0].plane, 0, &name, 0.1);
    for (size_t i = 0; i < count; i++)
        put_told(p, light, &told[i], recede_seed_with((uint32_t)(light * 97 + plane), (uint32_t)i));
    p->y += 0.4;
}

static void put_note(pen *p)
{
    const recede_style name = name_style(12), style = change_style(p->sheet);
    put_text(p, "To paint from this", 0, &name, 1);
    for (size_t i = 0; i < sizeof note / sizeof note[0]; i++)
        put_text(p, note[i], 0, &style, 1.5);
}

static int put_block(pen *p, const recede_skies_block *block)
{
    switch (block->kind) {
    case HEAD:
        return put_head(p, block->light);
    case HEAD_AGAIN:
        put_head_again(p, block->light);
        return 0;
    case NOTE:
        put_note(p);
        return 0;
    default:
        put_plane(p, block->light, block->plane);
        return 0;
    }
}

/* ---- columns */

typedef struct {
    size_t column;
    double y;
} place;

static double height_of(recede_skies_sheet *sheet, recede_type *type, const recede_skies_block *block)
{
    pen p = {sheet, type, NULL, 0, 0, column_width()};
    put_block(&p, block);
    return p.y;
}

static void add(recede_skies_sheet *sheet, recede_skies_block block, double height, place *at)
{
    block.height = height;
    block.page = at->column / COLUMNS;
    block.x = recede_page_margin_mm + (column_width() + gutter_mm) * (double)(at->column % COLUMNS);
    block.y = at->y;
    at->y += height;
    sheet->blocks[sheet->block_count++] = block;
}

static void next_column(place *at)
{
    at->column++;
    at->y = top_mm;
}

/* The height of a light's head and of its first blocks. */
static double height_with(recede_skies_sheet *sheet, recede_type *type, size_t light, size_t blocks)
{
    recede_skies_block head = {.light = light, .kind = HEAD};
    double all = height_of(sheet, type, &head);
    for (size_t i = 0; i < blocks; i++) {
        recede_skies_block block = {.light = light, .plane = i};
        all += height_of(sheet, type, &block);
    }
    return all;
}

/* How much of a light must stand together: all of it where a column holds it,
 * else its head and three blocks. */
static double together(recede_skies_sheet *sheet, recede_type *type, size_t light, size_t blocks)
{
    double all = height_with(sheet, type, light, blocks);
    return all <= bottom_mm(sheet) - top_mm ? all : height_with(sheet, type, light, blocks < 3 ? blocks : 3);
}

/* The largest size at which every light has a column to itself; where none
 * does it, an easy one to read. */
static double size_of_changes(recede_skies_sheet *sheet, recede_type *type, size_t blocks)
{
    static const double sizes_pt[] = {9, 8.5, 8, 7.5, 7.25}, else_pt = 8;
    for (size_t s = 0; s < sizeof sizes_pt / sizeof sizes_pt[0]; s++) {
        double highest = 0;
        sheet->change_pt = sizes_pt[s];
        for (size_t i = 0; i < sheet->skies->count; i++)
            highest = fmax(highest, height_with(sheet, type, i, blocks));
        if (highest <= bottom_mm(sheet) - top_mm)
            return sizes_pt[s];
    }
    return else_pt;
}

static void lay_light(recede_skies_sheet *sheet, recede_type *type, size_t light, place *at)
{
    size_t planes = recede_plan_count(sheet->skies->plan[0]);
    recede_skies_block head = {.light = light, .kind = HEAD}, again = {.light = light, .kind = HEAD_AGAIN};
    if (at->y > top_mm)
        at->y += between_mm;
    if (at->y + together(sheet, type, light, planes + 1) > bottom_mm(sheet) && at->y > top_mm)
        next_column(at);
    add(sheet, head, height_of(sheet, type, &head), at);
    for (size_t i = 0; i <= planes; i++) {
        recede_skies_block block = {.light = light, .plane = i};
        double height = height_of(sheet, type, &block);
        if (at->y + height > bottom_mm(sheet)) {
            next_column(at);
            add(sheet, again, height_of(sheet, type, &again), at);
        }
        add(sheet, block, height, at);
    }
}

/* The note stands in what is left of the last page, if it has the room. */
static void lay_note(recede_skies_sheet *sheet, recede_type *type, place *at)
{
    recede_skies_block block = {.kind = NOTE};
    double height = height_of(sheet, type, &block);
    if (at->column % COLUMNS + 1 < COLUMNS)
        next_column(at);
    else
        at->y += between_mm;
    if (at->y + height <= bottom_mm(sheet))
        add(sheet, block, height, at);
}

int recede_skies_lay_changes(recede_skies_sheet *sheet, recede_type *type)
{
    place at = {0, top_mm};
    size_t planes = recede_plan_count(sheet->skies->plan[0]);
    sheet->blocks = recede_allocate_array(sheet->allocator, sheet->skies->count * 2 * (planes + 2) + 1,
                                          sizeof *sheet->blocks);
    if (!sheet->blocks)
        return -1;
    sheet->block_count = 0;
    sheet->change_pt = size_of_changes(sheet, type, planes + 1);
    for (size_t i = 0; i < sheet->skies->count; i++)
        lay_light(sheet, type, i, &at);
    lay_note(sheet, type, &at);
    sheet->change_pages = at.column / COLUMNS + 1;
    return 0;
}

static void put_legend(recede_skies_sheet *sheet, const recede_page *page, recede_rect room)
{
    recede_medium medium = recede_plan_scene(sheet->skies->plan[0])->medium;
    recede_style small = recede_style_small;
    recede_buffer words;
    small.most_lines = 1;
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_format(&words, "%s%s.%s", legend, recede_medium_takes_water(medium)
                                                        ? "; water is for one part of paint" : "",
                         recede_words_let_down_note(recede_plan_palette(sheet->skies->plan[0])));
    recede_skies_set(sheet, page, &words, room, &small);
}

int recede_skies_draw_changes(recede_skies_sheet *sheet, const recede_page *page, size_t index)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_type_set(page->type, page->cr, "What each light changes in the mixes", (recede_rect){x, 10.5, w, 6},
                    &recede_style_heading);
    put_legend(sheet, page, (recede_rect){x, 17.2, w, 4});
    for (size_t i = 0; i < sheet->block_count; i++) {
        const recede_skies_block *block = &sheet->blocks[i];
        pen p = {sheet, page->type, page, block->x, block->y, column_width()};
        if (block->page == index && put_block(&p, block))
            return -1;
    }
    return 0;
}
