/* The first page of the skies: all pictures side by side, each with its light
 * and the colours it is painted with. */
#include "draw/skies_parts.h"

#include "picture/noise.h"
#include "text/words.h"
#include "text/words_skies.h"

#include <math.h>

enum { COLUMNS = 3 };

static const double top_mm = 32, bottom_mm = 196.5, across_mm = 8, between_mm = 5;
static const double name_mm = 5.6, line_mm = 4.6, strip_mm = 6.5;

static const char legend[] =
    "Under each picture the mixes from far to near: on the left of each pair the lit side, on the right the "
    "shadow side; first the top of the sky and the horizon.";

/* Dabs, or plain stripes where there are too many for that. */
static void draw_colour(const recede_page *page, recede_rect room, uint32_t seed, const recede_wash *wash)
{
    static const double narrowest_mm = 1.8;
    if (room.w < narrowest_mm)
        recede_page_fill(page, room, wash->recipe.colour.srgb);
    else
        recede_dab(page, (recede_rect){room.x, room.y, room.w - 0.15, room.h}, seed, wash->recipe.colour.srgb);
}

static void draw_pair(const recede_page *page, recede_rect room, uint32_t seed, const recede_wash *left,
                      const recede_wash *right)
{
    double w = room.w / 2;
    draw_colour(page, (recede_rect){room.x, room.y, w, room.h}, seed, left);
    draw_colour(page, (recede_rect){room.x + w, room.y, w, room.h}, seed + 1, right);
}

/* The sky's two colours, then each plane's two sides. */
static void draw_strip(const recede_page *page, const recede_plan *plan, recede_rect room)
{
    size_t count = 1 + recede_plan_count(plan);
    double pitch = fmin(room.w / (double)count, 14), gap = pitch * 0.12;
    const recede_side *sky = recede_plan_sky(plan);
    for (size_t i = 0; i < count; i++) {
        recede_rect at = {room.x + pitch * (double)i, room.y, pitch - gap, room.h};
        uint32_t seed = recede_seed_with(7, (uint32_t)(2 * i));
        if (i == 0) {
            draw_pair(page, at, seed, &sky->crest, sky->graded ? &sky->base : &sky->crest);
        } else {
            const recede_planned *planned = recede_plan_at(plan, i - 1);
            draw_pair(page, at, seed, &planned->lit.crest, &planned->shadow.crest);
        }
    }
}

static int draw_one(recede_skies_sheet *sheet, const recede_page *page, size_t plan, recede_rect room)
{
    recede_style name = recede_style_heading, line = recede_style_small;
    recede_buffer words;
    name.size_pt = 12;
    line.most_lines = 1;
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_text(&words, recede_words_sky_name(sheet->skies, plan));
    recede_skies_set(sheet, page, &words, (recede_rect){room.x, room.y, room.w, name_mm}, &name);
    recede_buffer_start(&words, sheet->allocator);
    recede_skies_light_line(sheet, &words, plan);
    recede_skies_set(sheet, page, &words, (recede_rect){room.x, room.y + name_mm, room.w, line_mm}, &line);
    double y = room.y + name_mm + line_mm;
    recede_rect taken = recede_skies_picture(sheet, page, plan,
                                             (recede_rect){room.x, y, room.w, room.y + room.h - strip_mm - y});
    if (taken.h < 0)
        return -1;
    draw_strip(page, sheet->skies->plan[plan],
               (recede_rect){room.x, taken.y + taken.h + 1.2, taken.w, strip_mm - 1.2});
    return 0;
}

static void draw_head(recede_skies_sheet *sheet, const recede_page *page)
{
    const recede_scene *scene = recede_plan_scene(sheet->skies->plan[0]);
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_style line = recede_style_body, small = recede_style_small;
    recede_buffer words;
    line.most_lines = small.most_lines = 1;
    recede_type_set(page->type, page->cr, scene->title, (recede_rect){x, 10.5, w, 9.4}, &recede_style_title);
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_text(&words, "One scene in several lights: ");
    recede_buffer_format(&words, "%s, %zu paints", recede_words_medium(scene->medium), scene->paint_count);
    recede_skies_set(sheet, page, &words, (recede_rect){x, 20.9, w, 4.6}, &line);
    recede_type_set(page->type, page->cr, legend, (recede_rect){x, 25.5, w, 4}, &small);
}

int recede_skies_draw_pictures(recede_skies_sheet *sheet, const recede_page *page)
{
    size_t count = 1 + sheet->skies->count, columns = count < COLUMNS ? count : COLUMNS;
    size_t rows = (count + columns - 1) / columns;
    double across = recede_page_width_mm - 2 * recede_page_margin_mm;
    double w = (across - across_mm * (double)(columns - 1)) / (double)columns;
    double h = (bottom_mm - top_mm - between_mm * (double)(rows - 1)) / (double)rows;
    draw_head(sheet, page);
    for (size_t i = 0; i < count; i++) {
        size_t column = i % columns, row = i / columns;
        recede_rect room = {recede_page_margin_mm + (w + across_mm) * (double)column,
                            top_mm + (h + between_mm) * (double)row, w, h};
        if (draw_one(sheet, page, i, room))
            return -1;
    }
    return 0;
}
