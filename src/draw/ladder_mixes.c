/* The ladder's last pages: the mixes of every rung, to paint it from. */
#include "draw/ladder_parts.h"

#include "draw/study_parts.h"
#include "picture/noise.h"
#include "text/words.h"
#include "text/words_let_down.h"
#include "text/words_media.h"
#include "text/words_ladder.h"

#include <math.h>

static const double top_mm = 24.5, gap_mm = 2, head_height_mm = 6.5;
static const double label_mm = 19, between_mm = 3.5, dab_width_mm = 17, dab_height_mm = 9.5,
                    after_dab_mm = 2.5;
static const double dot_pitch_mm = 2.35, dot_share = 0.92;

static const char legend[] =
    "The middle of each dab is the mix, its rim the colour wanted; the dots are its parts. ";
static const char legend_water[] = "Water is told in parts to one part of paint. ";

static double column_width(void)
{
    return (recede_page_width_mm - 2 * recede_page_margin_mm - label_mm - 2 * between_mm) / RECEDE_LADDER_ROWS;
}

static int takes_water(const recede_ladder_sheet *sheet)
{
    return recede_medium_takes_water(recede_palette_medium(sheet->ladder->palette));
}

/* "3 yellow ochre + 4 cobalt blue" */
static void words_of_paints(const recede_ladder_sheet *sheet, const recede_mix *mix, recede_buffer *words)
{
    const recede_palette *palette = sheet->ladder->palette;
    if (mix->count == 0)
        recede_buffer_text(words, recede_trade_of(recede_palette_medium(palette))->bare);
    for (int i = 0; i < mix->count; i++) {
        const char *name = recede_palette_paint(palette, (size_t)mix->paint[i])->name;
        if (mix->count == 1)
            recede_buffer_format(words, "%s alone", name);
        else
            recede_buffer_format(words, "%s%d %s", i ? " + " : "", mix->parts[i], name);
    }
}

/* "milk, 3.5 to 1"; nothing where there is no water to tell. */
static void words_of_water(const recede_ladder_sheet *sheet, const recede_mix *mix, recede_buffer *words)
{
    if (mix->count == 0 || !takes_water(sheet))
        return;
    recede_buffer_format(words, "%s, ", recede_words_consistency(mix->water));
    if (mix->water > 0)
        recede_buffer_number(words, mix->water, mix->water < 1 ? 2 : mix->water < 20 ? 1 : 0);
    recede_buffer_text(words, mix->water > 0 ? " to 1" : "no water");
}

/* A line of a recipe, measured only where page is NULL; the words are freed.
 * Returns how high it is. */
static double put_line(recede_ladder_sheet *sheet, recede_type *type, const recede_page *page,
                       recede_buffer *words, double x, double y)
{
    double w = column_width() - dab_width_mm - after_dab_mm;
    const char *text = recede_buffer_string(words);
    recede_style style = recede_style_recipe;
    style.most_lines = 60; /* a recipe is never cut */
    double high = *text ? recede_type_height(type, text, w, &style) : 0;
    if (page && *text)
        recede_type_set(type, page->cr, text, (recede_rect){x, y, w, high + 0.05}, &style);
    sheet->failed |= words->failed;
    recede_buffer_free(words);
    return high;
}

static double put_recipe(recede_ladder_sheet *sheet, recede_type *type, const recede_page *page,
                         const recede_mix *mix, double x, double y)
{
    recede_buffer words;
    recede_buffer_start(&words, sheet->allocator);
    words_of_paints(sheet, mix, &words);
    double high = put_line(sheet, type, page, &words, x, y);
    words_of_water(sheet, mix, &words);
    return high + put_line(sheet, type, page, &words, x, y + high);
}

static double wash_height(recede_ladder_sheet *sheet, recede_type *type, const recede_wash *wash)
{
    return fmax(put_recipe(sheet, type, NULL, &wash->recipe.mix, 0, 0), dab_height_mm + dot_pitch_mm + 1.3);
}

static double rung_height(recede_ladder_sheet *sheet, recede_type *type, const recede_rung *rung)
{
    double height = 0;
    for (int row = 0; row < RECEDE_LADDER_ROWS; row++)
        height = fmax(height, wash_height(sheet, type, &rung->row[row]));
    return height;
}

static void add(recede_ladder_sheet *sheet, recede_ladder_mixes row, double *y)
{
    row.page = sheet->mix_pages - 1;
    row.y = *y;
    *y += row.height + gap_mm;
    sheet->mixes[sheet->mix_count++] = row;
}

/* Every page and every air starts with a heading. */
static void add_heading(recede_ladder_sheet *sheet, size_t air, double *y)
{
    add(sheet, (recede_ladder_mixes){.air = air, .heading = 1, .height = head_height_mm}, y);
}

static void turn_page(recede_ladder_sheet *sheet, double *y)
{
    sheet->mix_pages++;
    *y = top_mm;
}

/* An air stands on the page of the one before it where all of it fits there. */
static void lay_air(recede_ladder_sheet *sheet, recede_type *type, size_t air, double *y)
{
    const recede_ladder *ladder = sheet->ladder;
    double heights[RECEDE_MOST_RUNGS], all = 3 + head_height_mm + gap_mm;
    for (size_t i = 0; i < ladder->wish.rung_count; i++) {
        heights[i] = rung_height(sheet, type, &ladder->air[air].rung[i]);
        all += heights[i] + gap_mm;
    }
    if (air == 0 || *y + all > recede_ladder_bottom_mm(sheet))
        turn_page(sheet, y);
    else
        *y += 3;
    add_heading(sheet, air, y);
    for (size_t i = 0; i < ladder->wish.rung_count; i++) {
        if (*y + heights[i] > recede_ladder_bottom_mm(sheet)) {
            turn_page(sheet, y);
            add_heading(sheet, air, y);
        }
        add(sheet, (recede_ladder_mixes){.air = air, .rung = i, .height = heights[i]}, y);
    }
}

void recede_ladder_lay_mixes(recede_ladder_sheet *sheet, recede_type *type)
{
    double y = top_mm;
    sheet->mix_count = sheet->mix_pages = 0;
    for (size_t air = 0; air < sheet->ladder->wish.air_count; air++)
        lay_air(sheet, type, air, &y);
}

static int parts_of(const recede_mix *mix)
{
    int parts = mix->count == 0;
    for (int i = 0; i < mix->count; i++)
        parts += mix->parts[i];
    return parts;
}

static void draw_dots(recede_ladder_sheet *sheet, const recede_page *page, const recede_mix *mix, double x,
                      double y)
{
    uint32_t seed = 1;
    double pitch = fmin(dot_pitch_mm, (dab_width_mm - 0.5) / parts_of(mix)), size = pitch * dot_share;
    for (int i = 0; i < mix->count; i++) {
        recede_srgb colour = recede_study_paint_colour(sheet->ladder->palette, mix->paint[i]);
        for (int part = 0; part < mix->parts[i]; part++, x += pitch, seed++)
            recede_dab_round(page, (recede_rect){x, y, size, size}, recede_seed_with((uint32_t)mix->paint[i],
                                                                                     seed), colour);
    }
}

static void draw_wash(recede_ladder_sheet *sheet, const recede_page *page, const recede_wash *wash, uint32_t seed,
                      recede_rect room)
{
    recede_rect dab = {room.x, room.y + 0.2, dab_width_mm, dab_height_mm};
    recede_dab_ringed(page, dab, seed, wash->recipe.colour.srgb, wash->target.srgb);
    draw_dots(sheet, page, &wash->recipe.mix, room.x + 0.5, dab.y + dab.h + 0.9);
    put_recipe(sheet, page->type, page, &wash->recipe.mix, room.x + dab_width_mm + after_dab_mm, room.y);
}

static double column_x(int row)
{
    return recede_page_margin_mm + label_mm + (column_width() + between_mm) * row;
}

static void draw_heading(recede_ladder_sheet *sheet, const recede_page *page, const recede_ladder_mixes *at)
{
    const recede_ladder *ladder = sheet->ladder;
    recede_style style = recede_style_heading;
    recede_buffer words;
    style.size_pt = 11;
    style.least_pt = 8;
    recede_type_set(page->type, page->cr, recede_words_ladder_air(ladder, at->air),
                    (recede_rect){recede_page_margin_mm, at->y, label_mm - 1, 5.4}, &style);
    for (int row = 0; row < RECEDE_LADDER_ROWS; row++) {
        recede_buffer_start(&words, sheet->allocator);
        recede_words_ladder_row(&words, ladder, (recede_ladder_row)row);
        recede_ladder_set(sheet, page, &words, (recede_rect){column_x(row), at->y, column_width(), 5.4}, &style);
    }
}

static void draw_rung(recede_ladder_sheet *sheet, const recede_page *page, const recede_ladder_mixes *at)
{
    const recede_rung *rung = &sheet->ladder->air[at->air].rung[at->rung];
    recede_style style = recede_style_recipe;
    recede_buffer words;
    style.is_recipe = 0;
    style.most_lines = 1;
    style.least_pt = 9;
    recede_page_rule(page, recede_page_margin_mm, at->y - gap_mm * 0.55,
                     recede_page_width_mm - 2 * recede_page_margin_mm);
    recede_buffer_start(&words, sheet->allocator);
    recede_words_distance(&words, rung->distance_m);
    recede_ladder_set(sheet, page, &words, (recede_rect){recede_page_margin_mm, at->y, label_mm - 2, 5.2}, &style);
    for (int row = 0; row < RECEDE_LADDER_ROWS; row++)
        draw_wash(sheet, page, &rung->row[row], recede_ladder_seed(at->air, at->rung, row),
                  (recede_rect){column_x(row), at->y, column_width(), at->height});
}

static void put_legend(recede_ladder_sheet *sheet, const recede_page *page, recede_rect room)
{
    recede_style small = recede_style_small;
    recede_buffer words;
    small.most_lines = 1;
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_format(&words, "%s%s%s.%s", legend, takes_water(sheet) ? legend_water : "",
                         recede_trade_of(recede_palette_medium(sheet->ladder->palette))->scrap,
                         recede_words_let_down_note(sheet->ladder->palette));
    recede_ladder_set(sheet, page, &words, room, &small);
}

void recede_ladder_draw_mixes(recede_ladder_sheet *sheet, const recede_page *page, size_t index)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_type_set(page->type, page->cr, "The mixes, rung by rung", (recede_rect){x, 10.5, w, 6},
                    &recede_style_heading);
    put_legend(sheet, page, (recede_rect){x, 17.2, w, 4});
    for (size_t i = 0; i < sheet->mix_count; i++) {
        const recede_ladder_mixes *at = &sheet->mixes[i];
        if (at->page == index && at->heading)
            draw_heading(sheet, page, at);
        else if (at->page == index)
            draw_rung(sheet, page, at);
    }
}
