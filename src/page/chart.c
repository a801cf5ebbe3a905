/* The mixing chart of a scene's paints. */
#include "page/page.h"
#include "text/words_chart.h"

static void write_patch(recede_json *json, const recede_palette *palette,
                        const recede_chart *chart, int row, int column)
{
    recede_json_array(json, NULL);
    for (int s = 0; s < RECEDE_CHART_STEPS; s++) {
        for (int p = 0; p < RECEDE_CHART_STEPS; p++) {
            recede_chart_patch patch =
                recede_chart_patch_at(palette, chart, row, column, p, s);
            recede_json_object(json, NULL);
            recede_page_hex(json, "hex", patch.colour.srgb);
            recede_json_number(json, "value",
                               (double)(long)(patch.colour.value * 10 + 0.5) / 10);
            recede_json_end_object(json);
        }
    }
    recede_json_end_array(json);
}

static void write_names(recede_json *json, const char *key, const recede_palette *palette,
                        const int *paints, int count)
{
    recede_json_array(json, key);
    for (int i = 0; i < count; i++)
        recede_json_string(json, NULL, recede_palette_paint(palette, (size_t)paints[i])->name);
    recede_json_end_array(json);
}

/* How a square is read. */
static void write_how(recede_json *json, recede_medium medium)
{
    recede_buffer words;
    recede_buffer_start(&words, NULL);
    recede_buffer_text(&words, "In each square, left to right, the paint of the row to that of the "
                               "column: ");
    for (int p = 0; p < RECEDE_CHART_STEPS; p++) {
        recede_buffer_text(&words, p ? ", " : "");
        recede_words_proportion(&words, p);
    }
    recede_buffer_text(&words, ". Downward: ");
    for (int s = 0; s < RECEDE_CHART_STEPS; s++) {
        recede_buffer_text(&words, s ? "; " : "");
        recede_words_strength(&words, medium, s);
    }
    recede_buffer_text(&words, " to 1 of paint.");
    recede_page_words(json, "how", &words);
}

static void write_left_out(recede_json *json, const recede_palette *palette,
                           const recede_chart *chart)
{
    recede_buffer words;
    recede_buffer_start(&words, NULL);
    recede_words_chart_left_out(&words, palette, chart);
    recede_page_words(json, "left_out", &words);
}

static void write_chart(recede_json *json, const recede_palette *palette,
                        const recede_chart *chart)
{
    write_how(json, recede_palette_medium(palette));
    write_left_out(json, palette, chart);
    write_names(json, "rows", palette, chart->row, chart->rows);
    write_names(json, "columns", palette, chart->column, chart->columns);
    recede_json_array(json, "cells");
    for (int row = 0; row < chart->rows; row++) {
        recede_json_array(json, NULL);
        for (int column = 0; column < chart->columns; column++)
            write_patch(json, palette, chart, row, column);
        recede_json_end_array(json);
    }
    recede_json_end_array(json);
}

RECEDE_PAGE_CALL(page_chart) int recede_page_chart(recede_page *page, int third)
{
    const recede_scene *scene = &page->scene;
    recede_palette *palette;
    recede_error error;
    if (!page->has_scene)
        return recede_page_refuse(page, 0, 0, "there is no scene");
    if (recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper, NULL,
                           &palette, &error))
        return recede_page_refuse_core(page, &error);
    recede_json json = recede_page_reply_start(page);
    recede_chart chart = recede_chart_of(palette);
    if (third < (int)scene->paint_count)
        chart.third = third;
    write_chart(&json, palette, &chart);
    recede_palette_free(palette);
    return recede_page_reply_end(page, &json);
}
