/* The swatch sheet: pages, type, and the colours of its dabs, computed here anew. */
#include "draw/swatches.h"

#include "draw/sheet_log.h"
#include "paint/paints.h"
#include "paint/strength.h"

#include <math.h>

static size_t draw(const recede_paints_told *told, recede_type_log *log,
                   recede_sheet_pixels *pixels)
{
    recede_swatches_drawing drawing = {.told = told};
    recede_sheet sheet = recede_swatches_sheet(&drawing);
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

static void the_built_in_palettes_are_clear(void **state)
{
    (void)state;
    for (size_t i = 0; i < recede_palette_entry_count(); i++) {
        const recede_palette_entry *entry = recede_palette_entry_at(i);
        recede_palette *palette =
            palette_of(entry->paints, entry->opaque ? RECEDE_OIL : RECEDE_WATERCOLOUR);
        const recede_paints_told told = {entry->name, entry->purpose, palette, NULL};
        recede_type_log log = {0};
        recede_sheet_pixels pixels;
        size_t pages = draw(&told, &log, &pixels);
        assert_int_equal(sheet_log_check(&log), pages);
        assert_int_equal(cut_texts(&log), 0);
        assert_true(pages >= (recede_palette_count(palette) + 5) / 6);
        sheet_log_free(&log);
        free(pixels.rgb);
        recede_palette_free(palette);
    }
}

/* Every pigment and every tube of the library, by itself. */
static void all_paints_of_the_library_are_clear(void **state)
{
    (void)state;
    size_t tubes = recede_tube_count(), count = tubes + recede_pigment_count();
    recede_spectrum paper = recede_paper_white();
    for (size_t at = 0; at < count; at += RECEDE_MOST_PAINTS) {
        static recede_paint paints[RECEDE_MOST_PAINTS];
        size_t some = count - at < RECEDE_MOST_PAINTS ? count - at : RECEDE_MOST_PAINTS;
        recede_palette *palette;
        recede_type_log log = {0};
        recede_sheet_pixels pixels;
        for (size_t i = 0; i < some; i++)
            paints[i] = paint_of(at + i < tubes ? recede_tube_name_at(at + i)
                                                : recede_pigment_at(at + i - tubes)->name);
        assert_int_equal(recede_palette_new(paints, some, RECEDE_WATERCOLOUR, &paper, NULL,
                                            &palette, NULL), RECEDE_OK);
        const recede_paints_told told = {"", "", palette, NULL};
        size_t pages = draw(&told, &log, &pixels);
        assert_int_equal(sheet_log_check(&log), pages);
        assert_int_equal(cut_texts(&log), 0);
        sheet_log_free(&log);
        free(pixels.rgb);
        recede_palette_free(palette);
    }
}

/* ---- the colours. Kubelka's hyperbolic solution (J. Opt. Soc. Am. 38 (1948) 448)
 * as printed, with Saunderson's correction (J. Opt. Soc. Am. 32 (1942) 727). */

static double inside(double seen)
{
    return (seen - 0.03) / (1 - 0.03 - 0.65 + 0.65 * seen);
}

static double outside(double internal)
{
    return 0.03 + 0.97 * 0.35 * internal / (1 - 0.65 * internal);
}

/* x below 0: an opaque layer. */
static double film_of(double k, double s, double x, double ground)
{
    double a = 1 + k / s, b = sqrt(a * a - 1), g = inside(ground);
    if (x < 0)
        return outside(a - b);
    double c = b / tanh(b * s * x);
    return outside((1 - g * (a - c)) / (a - g + c));
}

static recede_lab lab_of(const recede_paint *paint, const recede_paint *white, double added,
                         double x, const recede_spectrum *ground)
{
    recede_spectrum seen;
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double k = paint->k.at[i], s = paint->s.at[i];
        if (white) {
            k = (k + added * white->k.at[i]) / (1 + added);
            s = (s + added * white->s.at[i]) / (1 + added);
        }
        seen.at[i] = film_of(k, s, x, ground->at[i]);
    }
    return recede_lab_of_xyz(recede_xyz_of_reflectance(&seen), recede_white());
}

static void assert_same_lab(recede_lab a, recede_lab b)
{
    assert_near(a.l, b.l, 1e-6);
    assert_near(a.a, b.a, 1e-6);
    assert_near(a.b, b.b, 1e-6);
}

static void strengths_are_films_of_paint(void **state)
{
    (void)state;
    static const double added[] = {0, 1, 3, 8, 20};
    recede_spectrum ink, paper = recede_paper_white();
    recede_palette *water = palette_of(entry_of("landscape-twelve")->paints, RECEDE_WATERCOLOUR);
    recede_palette *oil = palette_of("titanium white|hansa yellow|ultramarine blue", RECEDE_OIL);
    const recede_paint *white = recede_palette_paint(oil, 0);
    for (int i = 0; i < RECEDE_BANDS; i++)
        ink.at[i] = 0.04;
    for (int step = 0; step < RECEDE_STRENGTHS; step++) {
        double w = added[step], x = 8 / (1 + w);
        assert_near(recede_strength_at(step), w, 0);
        for (int p = 0; p < 12; p++) {
            const recede_paint *paint = recede_palette_paint(water, (size_t)p);
            assert_same_lab(recede_strength_colour(water, p, w).lab,
                            lab_of(paint, NULL, w, x, &paper));
            assert_same_lab(recede_strength_on_ink(water, p, w).lab,
                            lab_of(paint, NULL, w, x, &ink));
        }
        for (int p = 1; p < 3; p++) {
            const recede_paint *paint = recede_palette_paint(oil, (size_t)p);
            assert_same_lab(recede_strength_colour(oil, p, w).lab,
                            lab_of(paint, white, w, -1, &paper));
            assert_same_lab(recede_strength_on_ink(oil, p, w).lab,
                            lab_of(paint, white, w, 8, &ink));
        }
    }
    assert_int_equal(recede_strength_count(oil, 0), 1);
    assert_int_equal(recede_strength_count(oil, 1), 5);
    recede_palette_free(water);
    recede_palette_free(oil);
}

static int has_colour(const recede_sheet_pixels *pixels, recede_lab lab)
{
    recede_srgb colour = recede_colour_of_xyz(recede_xyz_of_lab(lab, recede_white())).srgb;
    const double part[3] = {colour.r, colour.g, colour.b};
    size_t found = 0;
    for (size_t y = 0; y < pixels->height; y += 7)
        for (size_t x = pixels->width / 2; x < pixels->width; x += 7) {
            const unsigned char *at = pixels->rgb + y * pixels->row_bytes + 3 * x;
            int off = 0;
            for (int i = 0; i < 3; i++)
                off += abs(at[i] - (int)(part[i] * 255 + 0.5));
            found += off <= 2;
        }
    return found > 300;
}

/* Every dab stands on the sheet, in watercolour on a warm paper. */
static void dabs_have_their_colours(void **state)
{
    (void)state;
    static recede_paint paints[RECEDE_MOST_PAINTS];
    size_t count = paints_of(entry_of("landscape-six")->paints, paints);
    recede_spectrum paper;
    recede_palette *palette;
    recede_type_log log = {0};
    recede_sheet_pixels pixels;
    for (int i = 0; i < RECEDE_BANDS; i++)
        paper.at[i] = 0.7 + 0.005 * i;
    assert_int_equal(recede_palette_new(paints, count, RECEDE_WATERCOLOUR, &paper, NULL, &palette,
                                        NULL), RECEDE_OK);
    const recede_paints_told told = {"", "", palette, NULL};
    draw(&told, &log, &pixels);
    for (size_t p = 0; p < count; p++)
        for (int step = 0; step < RECEDE_STRENGTHS; step++) {
            double w = recede_strength_at(step);
            assert_true(has_colour(&pixels, lab_of(&paints[p], NULL, w, 8 / (1 + w), &paper)));
        }
    assert_false(has_colour(&pixels, (recede_lab){60, 90, -60}));
    free(pixels.rgb);
    sheet_log_free(&log);
    recede_palette_free(palette);
}

/* Paints of one's own, with the longest words there may be, each its own caution:
 * names are cut, cautions never are. */
static void long_words_stay_in_their_rooms(void **state)
{
    (void)state;
    static recede_paint paints[RECEDE_MOST_PAINTS];
    static recede_pigment_file own[RECEDE_MOST_PAINTS];
    recede_palette *palette;
    recede_type_log log = {0};
    recede_sheet_pixels pixels;
    recede_spectrum paper = recede_paper_white();
    size_t cautions = 0;
    for (size_t i = 0; i < RECEDE_MOST_PAINTS; i++) {
        paints[i] = paint_of("viridian");
        paints[i].ingredients = 0;
        strcpy(paints[i].name, i % 2 ? sheet_long_word : sheet_long_words);
        paints[i].name[0] = (char)('a' + i);
        strcpy(paints[i].colour_index, sheet_long_word);
        for (size_t at = 0; at < RECEDE_NAME_SIZE - 1; at++)
            paints[i].caution[at] = at % 10 == 9 ? ' ' : 'W';
        paints[i].caution[0] = (char)('a' + i);
        strcpy(own[i].transparency, sheet_long_words);
        strcpy(own[i].permanence, sheet_long_word);
    }
    assert_int_equal(recede_palette_new(paints, RECEDE_MOST_PAINTS, RECEDE_WATERCOLOUR, &paper,
                                        NULL, &palette, NULL), RECEDE_OK);
    const recede_paints_told told = {sheet_long_words, sheet_long_words, palette, own};
    size_t pages = draw(&told, &log, &pixels);
    assert_int_equal(sheet_log_check(&log), pages);
    assert_true(cut_texts(&log) > 0);
    for (size_t i = 0; i < log.count; i++)
        if (strncmp(log.records[i].text, "Caution ", 8) == 0) {
            assert_false(log.records[i].is_cut);
            cautions++;
        }
    assert_int_equal(cautions, RECEDE_MOST_PAINTS);
    free(pixels.rgb);
    sheet_log_free(&log);
    recede_palette_free(palette);
}

static int says(const recede_type_log *log, const char *words)
{
    for (size_t i = 0; i < log->count; i++)
        if (strstr(log->records[i].text, words))
            return 1;
    return 0;
}

/* Oil hardly changes as it dries, and would not be dry before the next day. */
static void the_guide_fits_the_medium(void **state)
{
    (void)state;
    static const recede_medium media[] = {RECEDE_WATERCOLOUR, RECEDE_GOUACHE, RECEDE_ACRYLIC,
                                          RECEDE_OIL};
    for (size_t i = 0; i < sizeof media / sizeof media[0]; i++) {
        recede_palette *palette = palette_of("titanium white|hansa yellow", media[i]);
        const recede_paints_told told = {"", "", palette, NULL};
        recede_type_log log = {0};
        recede_sheet_pixels pixels;
        draw(&told, &log, &pixels);
        assert_int_equal(says(&log, "Judge it dry."), media[i] != RECEDE_OIL);
        assert_true(says(&log, "hides black ink well"));
        assert_false(says(&log, "L* above"));
        sheet_log_free(&log);
        free(pixels.rgb);
        recede_palette_free(palette);
    }
}

static void the_same_sheet_gives_the_same_bytes(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    const recede_paints_told told = {"landscape-six", "", palette, NULL};
    recede_swatches_drawing drawing = {.told = &told};
    recede_sheet sheet = recede_swatches_sheet(&drawing);
    recede_sheet_options options = {0};
    recede_buffer pdf[2];
    for (int i = 0; i < 2; i++) {
        recede_buffer_start(&pdf[i], NULL);
        assert_int_equal(recede_sheet_to_pdf(&sheet, &options, &pdf[i]), RECEDE_SHEET_OK);
    }
    assert_int_equal(pdf[0].size, pdf[1].size);
    assert_memory_equal(pdf[0].bytes, pdf[1].bytes, pdf[0].size);
    recede_buffer_free(&pdf[0]);
    recede_buffer_free(&pdf[1]);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_built_in_palettes_are_clear),
        cmocka_unit_test(all_paints_of_the_library_are_clear),
        cmocka_unit_test(strengths_are_films_of_paint),
        cmocka_unit_test(dabs_have_their_colours),
        cmocka_unit_test(long_words_stay_in_their_rooms),
        cmocka_unit_test(the_guide_fits_the_medium),
        cmocka_unit_test(the_same_sheet_gives_the_same_bytes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
