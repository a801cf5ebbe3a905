/* The mixing chart as a sheet: pages, type, and the colours of its patches. */
#include "draw/chart.h"

#include "draw/sheet_log.h"
#include "paint/paints.h"
#include "text/words_chart.h"

/* A chart drawn as pixels with its log; returns how many pages. */
static size_t draw(recede_palette *palette, recede_chart chart, const char *name,
                   recede_type_log *log, recede_sheet_pixels *pixels)
{
    recede_chart_drawing drawing = {palette, &chart, name, 0, 0, ""};
    recede_sheet sheet = recede_chart_sheet(&drawing);
    recede_sheet_options options = {.log = log};
    assert_int_equal(recede_sheet_to_pixels(&sheet, &options, pixels), RECEDE_SHEET_OK);
    return pixels->pages;
}

static size_t cut_texts(const recede_type_log *log)
{
    size_t cut = 0;
    for (size_t i = 0; i < log->count; i++)
        cut += log->records[i].is_cut != 0;
    return cut;
}

static size_t check_drawn(recede_palette *palette, recede_chart chart, const char *name)
{
    recede_type_log log = {0};
    recede_sheet_pixels pixels;
    size_t pages = draw(palette, chart, name, &log, &pixels);
    assert_int_equal(sheet_log_check(&log), pages);
    assert_int_equal(cut_texts(&log), 0);
    sheet_log_free(&log);
    free(pixels.rgb);
    return pages;
}

static void the_built_in_palettes_are_clear(void **state)
{
    (void)state;
    static const struct { const char *name; recede_medium medium; size_t pages; } sheets[] = {
        {"landscape-six", RECEDE_WATERCOLOUR, 1},
        {"landscape-twelve", RECEDE_WATERCOLOUR, 1},
        {"landscape-twenty-four", RECEDE_WATERCOLOUR, 4}, /* 9 rows by 11 columns */
        {"opaque-sixteen", RECEDE_GOUACHE, 1}};
    for (size_t i = 0; i < sizeof sheets / sizeof sheets[0]; i++) {
        recede_palette *palette = palette_of(entry_of(sheets[i].name)->paints, sheets[i].medium);
        recede_chart chart = recede_chart_of(palette);
        chart.third = (int)recede_palette_count(palette) - 1;
        assert_int_equal(check_drawn(palette, chart, sheets[i].name), sheets[i].pages);
        recede_palette_free(palette);
    }
}

/* What is left out is told on the sheet, of the built-in palettes without a cut. */
static void paints_that_are_left_out_are_told(void **state)
{
    (void)state;
    static const struct { const char *name; recede_medium medium; } palettes[] = {
        {"landscape-six", RECEDE_WATERCOLOUR}, {"landscape-twenty-four", RECEDE_WATERCOLOUR},
        {"opaque-sixteen", RECEDE_OIL}};
    for (size_t i = 0; i < sizeof palettes / sizeof palettes[0]; i++) {
        recede_palette *palette = palette_of(entry_of(palettes[i].name)->paints,
                                             palettes[i].medium);
        recede_chart chart = recede_chart_of(palette);
        recede_type_log log = {0};
        recede_sheet_pixels pixels;
        recede_buffer words;
        size_t told = 0;
        recede_buffer_start(&words, NULL);
        recede_words_chart_left_out(&words, palette, &chart);
        recede_chart_drawing drawing = {palette, &chart, palettes[i].name, 0, 0,
                                        recede_buffer_string(&words)};
        recede_sheet sheet = recede_chart_sheet(&drawing);
        recede_sheet_options options = {.log = &log};
        assert_int_equal(recede_sheet_to_pixels(&sheet, &options, &pixels), RECEDE_SHEET_OK);
        assert_int_equal(sheet_log_check(&log), pixels.pages);
        assert_int_equal(cut_texts(&log), 0);
        for (size_t r = 0; r < log.count; r++)
            told += strstr(log.records[r].text, "Left out, being neither") != NULL;
        assert_int_equal(told, pixels.pages);
        sheet_log_free(&log);
        free(pixels.rgb);
        recede_buffer_free(&words);
        recede_palette_free(palette);
    }
}

/* From one square to as many as a palette can make. */
static void charts_of_any_size_are_clear(void **state)
{
    (void)state;
    static const struct { int rows, columns; size_t pages; } sizes[] = {
        {1, 1, 1}, {1, 7, 2}, {7, 1, 2}, {6, 6, 1}, {13, 2, 3}, {24, 24, 16}};
    recede_palette *palette =
        palette_of(entry_of("landscape-twenty-four")->paints, RECEDE_WATERCOLOUR);
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        recede_chart chart = {.rows = sizes[i].rows, .columns = sizes[i].columns, .third = -1};
        for (int j = 0; j < RECEDE_MOST_PAINTS; j++)
            chart.row[j] = chart.column[j] = j;
        assert_int_equal(check_drawn(palette, chart, ""), sizes[i].pages);
    }
    recede_palette_free(palette);
}

static int has_colour(const recede_sheet_pixels *pixels, recede_srgb colour)
{
    const double part[3] = {colour.r, colour.g, colour.b};
    unsigned char wanted[3];
    size_t found = 0;
    for (int i = 0; i < 3; i++)
        wanted[i] = (unsigned char)(part[i] * 255 + 0.5);
    for (size_t y = 0; y < pixels->height; y += 7)
        for (size_t x = 0; x < pixels->width; x += 7) {
            const unsigned char *at = pixels->rgb + y * pixels->row_bytes + 3 * x;
            int off = abs(at[0] - wanted[0]) + abs(at[1] - wanted[1]) + abs(at[2] - wanted[2]);
            found += off <= 2;
        }
    return found > 30;
}

/* Every patch stands on the sheet in the colour that the library gives it. */
static void patches_have_their_colours(void **state)
{
    (void)state;
    recede_type_log log = {0};
    recede_sheet_pixels pixels;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_chart chart = recede_chart_of(palette);
    chart.third = 3;
    draw(palette, chart, "landscape-six", &log, &pixels);
    for (int row = -1; row < chart.rows; row++)
        for (int column = -1; column < chart.columns; column++)
            for (int i = 0; i < 9 && (row >= 0 || column >= 0); i++) {
                recede_chart_patch patch =
                    recede_chart_patch_at(palette, &chart, row, column, i % 3, i / 3);
                assert_true(has_colour(&pixels, patch.colour.srgb));
            }
    assert_false(has_colour(&pixels, (recede_srgb){1, 0, 1}));
    free(pixels.rgb);
    sheet_log_free(&log);
    recede_palette_free(palette);
}

/* A paint of the painter's own may have a name of 200 bytes: it is cut, no more. */
static void long_names_stay_in_their_squares(void **state)
{
    (void)state;
    static recede_paint paints[3];
    recede_palette *palette;
    recede_type_log log = {0};
    recede_sheet_pixels pixels;
    recede_spectrum paper = recede_paper_white();
    paints_of("hansa yellow|ultramarine blue|viridian", paints);
    for (int i = 0; i < 3; i++) {
        memset(paints[i].name, 'a' + i, RECEDE_NAME_SIZE - 1);
        memset(paints[i].colour_index, 'P', RECEDE_NAME_SIZE - 1);
        for (int at = 9; i > 0 && at < RECEDE_NAME_SIZE - 1; at += 10)
            paints[i].name[at] = ' ';
    }
    assert_int_equal(recede_palette_new(paints, 3, RECEDE_WATERCOLOUR, &paper, NULL, &palette,
                                        NULL), RECEDE_OK);
    recede_chart chart = {.rows = 3, .columns = 3, .row = {0, 1, 2}, .column = {0, 1, 2},
                          .third = 0};
    draw(palette, chart, "", &log, &pixels);
    sheet_log_check(&log);
    assert_true(cut_texts(&log) > 0);
    free(pixels.rgb);
    sheet_log_free(&log);
    recede_palette_free(palette);
}

static void the_same_chart_gives_the_same_bytes(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    recede_chart chart = recede_chart_of(palette);
    recede_chart_drawing drawing = {palette, &chart, "landscape-six", 0, 0, ""};
    recede_sheet sheet = recede_chart_sheet(&drawing);
    recede_sheet_options options = {0};
    recede_buffer pdf[2];
    for (int i = 0; i < 2; i++) {
        recede_buffer_start(&pdf[i], NULL);
        assert_int_equal(recede_sheet_to_pdf(&sheet, &options, &pdf[i]), RECEDE_SHEET_OK);
    }
    assert_int_equal(pdf[0].size, pdf[1].size);
    assert_memory_equal(pdf[0].bytes, pdf[1].bytes, pdf[0].size);
    assert_memory_equal(pdf[0].bytes, "%PDF-", 5);
    recede_buffer_free(&pdf[0]);
    recede_buffer_free(&pdf[1]);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_built_in_palettes_are_clear),
        cmocka_unit_test(paints_that_are_left_out_are_told),
        cmocka_unit_test(charts_of_any_size_are_clear),
        cmocka_unit_test(patches_have_their_colours),
        cmocka_unit_test(long_names_stay_in_their_squares),
        cmocka_unit_test(the_same_chart_gives_the_same_bytes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
