/* The ladder's second page: why it is so, the spectra, captions to read out. */
#include "draw/ladder_parts.h"

#include "plan/ladder.h"
#include "text/words.h"
#include "text/words_ladder.h"

#include <math.h>

static const double top_mm = 33, bottom_mm = 197, gutter_mm = 9, plot_mm = 33, swatch_mm = 3;

/* The highest of all curves, so that the plots of both airs compare. */
static double most_radiance(const recede_ladder *ladder, const size_t *rungs, size_t count)
{
    double most = 0;
    for (size_t air = 0; air < ladder->wish.air_count; air++)
        for (size_t i = 0; i < count; i++)
            for (int band = 0; band < RECEDE_BANDS; band++) {
                const recede_rung *rung = &ladder->air[air].rung[rungs[i]];
                most = fmax(most, rung->own[RECEDE_ROW_LIT].at[band] + rung->air[RECEDE_ROW_LIT].at[band]);
            }
    return 1.06 * most;
}

static void draw_plots(recede_ladder_sheet *sheet, const recede_page *page, size_t air, recede_rect room)
{
    size_t rungs[3], count = recede_ladder_telling_rungs(sheet->ladder, rungs);
    double most = most_radiance(sheet->ladder, rungs, count), gap = 4, w = (room.w - 2 * gap) / 3;
    for (size_t i = 0; i < count; i++)
        recede_ladder_draw_plot(sheet, page, air, rungs[i], most,
                                (recede_rect){room.x + (w + gap) * (double)i, room.y, w, room.h});
}

static void draw_key(recede_ladder_sheet *sheet, const recede_page *page, size_t air, recede_rect room)
{
    const recede_ladder_air *in = &sheet->ladder->air[air];
    recede_style style = recede_style_small;
    style.most_lines = 1;
    recede_page_fill(page, (recede_rect){room.x, room.y + 0.3, swatch_mm * 1.4, swatch_mm},
                     in->rung[0].row[RECEDE_ROW_LIT].target.srgb);
    recede_type_set(page->type, page->cr, "what is left of the plane's own light",
                    (recede_rect){room.x + 5.5, room.y, 52, 4}, &style);
    recede_page_fill(page, (recede_rect){room.x + 62, room.y + 0.3, swatch_mm * 1.4, swatch_mm}, in->horizon.srgb);
    recede_type_set(page->type, page->cr, "the air's light upon it",
                    (recede_rect){room.x + 67.5, room.y, 40, 4}, &style);
}

/* The captions of an air beneath each other, measured only where draw is 0.
 * Returns how high they are. */
static double put_captions(recede_ladder_sheet *sheet, const recede_page *page, size_t air, double size,
                           recede_rect room, int draw)
{
    static const double between_mm = 1.9, least_mm = 4;
    recede_style style = recede_style_body;
    double y = room.y, bottom = room.y + room.h;
    style.size_pt = style.least_pt = size;
    for (size_t i = 0; i < sheet->ladder->wish.rung_count; i++) {
        recede_buffer words;
        recede_buffer_start(&words, sheet->allocator);
        recede_words_rung(&words, sheet->ladder, air, i);
        const char *text = recede_buffer_string(&words);
        double high = recede_type_height(page->type, text, room.w, &style);
        if (draw)
            recede_type_set(page->type, page->cr, text,
                            (recede_rect){room.x, y, room.w, fmax(least_mm, fmin(high + 0.05, bottom - y))},
                            &style);
        sheet->failed |= words.failed;
        recede_buffer_free(&words);
        y += high + between_mm;
    }
    return y - room.y;
}

/* A size at which the captions of either air fit. */
static double caption_size(recede_ladder_sheet *sheet, const recede_page *page, double width, double height)
{
    static const double largest_pt = 10.5, least_pt = 7, step_pt = 0.5;
    const recede_rect room = {0, 0, width, height};
    double size = largest_pt;
    for (size_t air = 0; air < sheet->ladder->wish.air_count; air++)
        while (size > least_pt && put_captions(sheet, page, air, size, room, 0) > height)
            size -= step_pt;
    return size;
}

static void draw_air(recede_ladder_sheet *sheet, const recede_page *page, size_t air, double size,
                     recede_rect room)
{
    recede_style head = recede_style_heading;
    recede_buffer words;
    double y = room.y;
    recede_buffer_start(&words, sheet->allocator);
    recede_buffer_format(&words, "%s, visibility ", recede_words_ladder_air(sheet->ladder, air));
    recede_words_distance(&words, 1000 * sheet->ladder->air[air].visibility_km);
    recede_ladder_set(sheet, page, &words, (recede_rect){room.x, y, room.w, 6}, &head);
    draw_plots(sheet, page, air, (recede_rect){room.x, y + 7.5, room.w, plot_mm});
    draw_key(sheet, page, air, (recede_rect){room.x, y + 7.5 + plot_mm + 1.2, room.w, 4});
    y += 7.5 + plot_mm + 8.4;
    put_captions(sheet, page, air, size, (recede_rect){room.x, y, room.w, bottom_mm - y}, 1);
}

void recede_ladder_draw_reading(recede_ladder_sheet *sheet, const recede_page *page)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x, column = (w - gutter_mm) / 2;
    double size = caption_size(sheet, page, column, bottom_mm - top_mm - 7.5 - plot_mm - 8.4);
    recede_style style = recede_style_body;
    recede_buffer words;
    style.least_pt = 8;
    recede_type_set(page->type, page->cr, "Why: the light of the lit side, and the ladder to read out",
                    (recede_rect){x, 10.5, w, 6}, &recede_style_heading);
    recede_buffer_start(&words, sheet->allocator);
    recede_words_why(&words, sheet->ladder);
    recede_ladder_set(sheet, page, &words, (recede_rect){x, 17.5, w, 13}, &style);
    recede_page_rule(page, x, top_mm - 1.8, w);
    for (size_t air = 0; air < sheet->ladder->wish.air_count; air++)
        draw_air(sheet, page, air, size,
                 (recede_rect){x + (column + gutter_mm) * (double)air, top_mm, column, bottom_mm - top_mm});
}
