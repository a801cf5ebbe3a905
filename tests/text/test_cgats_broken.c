/* Measurement files that are broken: a good one with one place changed, and where and with
 * what words it is refused. All figures are invented. Seen to fail with the limits on size and
 * on samples lifted: tools/mutations.txt. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/assert_near.h"
#include "text/buffer.h"
#include "text/cgats.h"
#include "text/cgats_texts.h"

#define SIXTEEN(a) a "400 " a "420 " a "440 " a "460 " a "480 " a "500 " a "520 " a "540 " \
    a "560 " a "580 " a "600 " a "620 " a "640 " a "660 " a "680 " a "700"
static const char spectra[] =
    "CGATS.17\n"                                                                   /* 1 */
    "NUMBER_OF_FIELDS 17\n"
    "BEGIN_DATA_FORMAT\n"
    "SAMPLE_ID " SIXTEEN("SPECTRAL_NM") "\n"                                       /* 4 */
    "END_DATA_FORMAT\n"
    "NUMBER_OF_SETS 2\n"
    "BEGIN_DATA\n"
    "A1 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.9 0.90\n"        /* 8 */
    "A2 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.1 0.10\n"
    "END_DATA\n";

static const char coarse[] =
    "CGATS.17\nNUMBER_OF_FIELDS 12\nNUMBER_OF_SETS 1\nBEGIN_DATA_FORMAT\n"
    "SAMPLE_ID SPEC_400 SPEC_430 SPEC_460 SPEC_490 SPEC_520 SPEC_550 SPEC_580 SPEC_610 SPEC_640 "
    "SPEC_670 SPEC_700\nEND_DATA_FORMAT\nBEGIN_DATA\n1 9 9 9 9 9 9 9 9 9 9 9\nEND_DATA\n";

#define FOUR(a) a a a a
#define IN_PAIRS "400 9 420 9 440 9 460 9 480 9 500 9 520 9 540 9 560 9 580 9 600 9 620 9 640 9 " \
    "660 9 680 9 700 9"
static const char pairs[] =
    "CGATS.17\nNUMBER_OF_FIELDS 33\nNUMBER_OF_SETS 2\nBEGIN_DATA_FORMAT\n"
    "SAMPLE_ID " FOUR(FOUR("SPECTRAL_NM SPECTRAL_PCT ")) "\nEND_DATA_FORMAT\nBEGIN_DATA\n"
    "A1 " IN_PAIRS "\nA2 " IN_PAIRS "\nEND_DATA\n";

typedef struct {
    const char *text, *old, *replacement;
    size_t line, column;
    const char *says;
} broken;

static const broken list[] = {
    /* bytes and words */
    {spectra, "A2 ", "A\xFF ", 9, 2, "0xFF, which is not UTF-8"},
    {spectra, "A2 ", "A\xE2\x80\xAE ", 9, 2, "U+202E"},
    {spectra, "A2 ", "A\x01 ", 9, 2, "U+0001"},
    {spectra, "CGATS.17\n", "\xEF\xBB\xBF" "CGATS.17 2009\n", 1, 1, "one word for the kind"},
    {spectra, "CGATS.17", "\xFF\xFE" "C", 1, 1, "saved as UTF-16; save it as UTF-8"},
    {spectra, "CGATS.17", "\x89PNG\r\n\x1A\n", 1, 1, "a PNG picture, not a text"},
    {spectra, "CGATS.17", "%PDF-1.7", 1, 1, "a PDF document"},
    {spectra, "CGATS.17", "\x1F\x8B\x08", 1, 1, "packed with gzip"},
    {colours, "?\" +1e1", "? +1e1", 10, 42, "close it with"},
    {colours, "\"?\"", "\"?\"x", 10, 45, "part them with a blank"},
    /* the header */
    {spectra, "CGATS.17\n", "", 1, 1, "one word for the kind of file"},
    {spectra, "CGATS.17\n", "CGATS.17 2009\n", 1, 1, "one word for the kind of file"},
    {spectra, "NUMBER_OF_FIELDS", "NUMBER_OF_FEILDS", 2, 1, "did you mean NUMBER_OF_FIELDS?"},
    {spectra, "NUMBER_OF_FIELDS 17\n", "", 6, 1, "before it NUMBER_OF_FIELDS"},
    {spectra, "NUMBER_OF_FIELDS 17", "NUMBER_OF_FIELDS many", 2, 18, "found many; expected"},
    {spectra, "FIELDS 17", "FIELDS 17 18", 2, 21, "found 18 behind the number"},
    {spectra, "FIELDS 17", "FIELDS 18", 2, 18, "found 18, but there are 17 columns"},
    {spectra, "FIELDS 17\n", "FIELDS 17\nNUMBER_OF_FIELDS 17\n", 3, 1, "first in line 2"},
    {spectra, "SETS 2", "SETS 4097", 6, 16, "found 4097; expected the number of samples"},
    {spectra, "SETS 2", "SETS 0", 6, 16, "found 0; expected the number of samples"},
    {spectra, "NUMBER_OF_SETS 2\n", "", 6, 1, "before it NUMBER_OF_SETS"},
    {spectra, "NUMBER_OF_SETS 2\n", "2\n", 6, 1, "expected a keyword"},
    {spectra, "BEGIN_DATA_FORMAT\n", "FORMAT\n", 5, 1, "without its beginning"},
    {spectra, "BEGIN_DATA\n", "", 9, 1, "without its beginning"},
    {spectra, "END_DATA_FORMAT\n", "", 6, 1, "found BEGIN_DATA among the columns"},
    {spectra, "FIELDS 17\n", "FIELDS 17\nKEYWORD PLAIN\n", 3, 9, "in double quotes"},
    {spectra, "FIELDS 17\n", "FIELDS 17\nSPECTRAL_NORM 255\n", 3, 15, "expected 1 (readings"},
    {colours, "ISO28178\n", "ISO28178\r\n\r5\n", 3, 1, "found 5; expected a keyword"},
    /* columns */
    {spectra, "SAMPLE_ID", "SAMPLE_NUMBER", 3, 1, "neither SAMPLE_ID nor SAMPLE_NAME"},
    {colours, "LAB_A", "LAB_L", 6, 41, "found the column LAB_L a second time"},
    {colours, "LAB_A", "XYZ_Z", 5, 1, "but not all"},
    {spectra, "SPECTRAL_NM440", "SPECTRAL_NM420", 4, 41, "a second column for 420 nm"},
    {spectra, "SPECTRAL_NM440", "SPECTRAL_NM430", 4, 26, "between 400 and 420 nm"},
    {spectra, "SPECTRAL_NM440", "DENSITY", 4, 49, "between 420 and 460 nm"},
    {spectra, "SPECTRAL_NM400", "DENSITY", 4, 19, "no reading below 420 nm"},
    {spectra, "SPECTRAL_NM700", "SPECTRAL_NM699", 4, 236, "no reading beyond 699 nm"},
    {spectra, "SPECTRAL_NM700", "SPECTRAL_NM7", 4, 236, "expected a wavelength"},
    {spectra, "SPECTRAL_NM420", "SPECTRAL_PCT", 4, 26, "without SPECTRAL_NM before"},
    {spectra, "SPECTRAL_NM420", "SPECTRAL_NM", 4, 38, "behind SPECTRAL_NM"},
    {spectra, "SPECTRAL_NM400 SPECTRAL_NM420", "SPECTRAL_PCT400 SPECTRAL_DEC420", 4, 27,
     "but others count the other way"},
    {spectra, "BEGIN_DATA_FORMAT\nSAMPLE_ID SPECTRAL_NM4",
     "SPECTRAL_NORM 100\nBEGIN_DATA_FORMAT\nSAMPLE_ID SPECTRAL_DEC4", 3, 15, "make them agree"},
    {coarse, "1 9", "1 8", 5, 20, "found readings 30 nm apart"},
    {pairs, "A1 400 9 420", "A1 400 9 430", 8, 10, "between 400 and 430"},
    {pairs, "A1 400", "A1 40", 8, 4, "found 40 as a wavelength"},
    {pairs, "A2 400", "A2 401", 9, 4, "found the wavelength 401, where the first sample has 400"},
    /* samples */
    {spectra, "0.90\n", "\n", 9, 1, "found A2; expected a number for SPECTRAL_NM700"},
    {spectra, "0.90\n", "0.90 0.9\n", 9, 1, "the sample starts in line 8;"},
    {colours, "5.e1 ", "", 11, 4, "found caf\xC3\xA9#2; expected a number for LAB_B"},
    {spectra, "0.90", "0,90", 8, 64, "found 0,90, but decimals stand behind a point"},
    {spectra, "0.90", "nan", 8, 64, "found nan"},
    {spectra, "0.90", "1e999", 8, 64, "found 1e999"},
    {spectra, "0.90", "1.201", 8, 64, "may be a share of 1 or percent"},
    {spectra, "0.90", "2", 8, 64, "may be a share of 1 or percent"},
    {spectra, "0.90", "120.1", 8, 64, "found the reading 120.1"},
    {spectra, "0.90", "-0.021", 8, 64, "found the reading -0.021"},
    {spectra, "FIELDS 17\n", "FIELDS 17\nSPECTRAL_NORM 100\n", 9, 4, "said to be percent"},
    {spectra, "A2", "A1", 9, 1, "the SAMPLE_ID A1 a second time, first in line 8"},
    {spectra, "A2", "\"\"", 9, 1, "empty name"},
    {spectra, " 0.10\nEND", "\nEND", 10, 1, "after 16 of the 17 values"},
    {spectra, "SETS 2", "SETS 3", 10, 1, "only 2 samples, but NUMBER_OF_SETS in line 6 says 3"},
    {spectra, "SETS 2", "SETS 1", 9, 1, "more than 1 samples"},
    {spectra, "END_DATA\n", "", 10, 1, "found the end of the file; expected END_DATA"},
    {spectra, "END_DATA\n", "END_DATA\n\nCGATS.17\n", 12, 1, "one table is read"},
    /* the light of colours */
    {colours, "ILLUMINANT, D65", "ILLUMINANT, F2", 6, 19, "for the illuminant F2"},
    {colours, "ILLUMINANT, D65", "STATUS, T", 6, 19, "no word of their illuminant"},
    {colours, "OBSERVER, 2 deg", "OBSERVER, 10 deg", 6, 19, "for the observer 10"},
    {colours, "OBSERVER, 2 deg", "ILLUMINANT, D50", 3, 20, "line 2 says D65"},
    {colours, "5.e1", "111", 10, 1, "found the colour 111 10 -20.5"},
};

static char *change(const broken *b)
{
    const char *at = strstr(b->text, b->old);
    if (!at)
        fail_msg("%s does not stand in the text", b->old);
    size_t before = (size_t)(at - b->text);
    size_t size = strlen(b->text) + strlen(b->replacement) + 1;
    char *text = malloc(size);
    assert_non_null(text);
    snprintf(text, size, "%.*s%s%s", (int)before, b->text, b->replacement, at + strlen(b->old));
    return text;
}

static void broken_files_are_refused(void **state)
{
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < sizeof list / sizeof list[0]; i++) {
        const broken *b = &list[i];
        char *text = change(b);
        recede_measurements found;
        recede_text_error error = {0};
        recede_text_status status =
            recede_measurements_read(text, strlen(text), NULL, &found, &error);
        if (status != RECEDE_TEXT_REFUSED || error.line != b->line ||
            error.column != b->column || !strstr(error.what, b->says)) {
            print_error("'%s' for '%s': %zu:%zu: %s; expected %zu:%zu: %s\n", b->replacement,
                        b->old, error.line, error.column, error.what, b->line, b->column,
                        b->says);
            wrong++;
        }
        assert_true(status == RECEDE_TEXT_OK || (found.count == 0 && !found.of));
        recede_measurements_free(&found);
        free(text);
    }
    assert_int_equal(wrong, 0);
}

/* Noise below 0 and brighteners above 1 are held. */
static void shares_are_held_from_0_to_1(void **state)
{
    (void)state;
    static const broken odd[] = {
        {spectra, "0.90", "1.2", 0, 0, ""}, {spectra, "0.90", "-0.02", 0, 0, ""}};
    for (int i = 0; i < 2; i++) {
        char *text = change(&odd[i]);
        recede_measurements found;
        recede_text_error error = {0};
        assert_int_equal(recede_measurements_read(text, strlen(text), NULL, &found, &error), 0);
        assert_true(found.of[0].reflectance.at[RECEDE_BANDS - 1] == 1 - i);
        assert_near(found.of[1].reflectance.at[RECEDE_BANDS - 1], 0.1, 0);
        recede_measurements_free(&found);
        free(text);
    }
}

static void a_byte_order_mark_is_passed_over(void **state)
{
    (void)state;
    static const broken marked = {spectra, "CGATS.17", "\xEF\xBB\xBF" "CGATS.17", 0, 0, ""};
    char *text = change(&marked);
    recede_measurements found;
    recede_text_error error = {0};
    assert_int_equal(recede_measurements_read(text, strlen(text), NULL, &found, &error), 0);
    assert_int_equal(found.count, 2);
    recede_measurements_free(&found);
    free(text);
}

static void no_beginning_of_a_file_is_a_file(void **state)
{
    (void)state;
    for (size_t size = 0; size < strlen(spectra) - 1; size++) {
        recede_measurements found;
        recede_text_error error = {0};
        assert_int_equal(recede_measurements_read(spectra, size, NULL, &found, &error),
                         RECEDE_TEXT_REFUSED);
        assert_true(error.line > 0 && error.column > 0 && error.what[0]);
    }
}

static recede_text_status read_repeated(const char *opening, const char *piece, size_t times,
                                        recede_text_error *error)
{
    recede_buffer text;
    recede_measurements found;
    recede_buffer_start(&text, NULL);
    recede_buffer_format(&text, "CGATS.17\n%s", opening);
    for (size_t i = 0; i < times; i++)
        recede_buffer_text(&text, piece);
    recede_text_status status =
        recede_measurements_read(text.bytes, text.size, NULL, &found, error);
    recede_measurements_free(&found);
    recede_buffer_free(&text);
    return status;
}

static void sizes_are_limited(void **state)
{
    (void)state;
    recede_text_error error = {0};
    assert_int_equal(read_repeated("", "# 16 characters\n", 1 << 18, &error), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "larger than 4 MiB"));
    assert_int_equal(read_repeated("", "# 16 characters\n", 1 << 17, &error), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "expected BEGIN_DATA"));
    assert_int_equal(error.line, (1 << 17) + 2);
    for (size_t columns = 1024; columns <= 1025; columns++) {
        assert_int_equal(read_repeated("BEGIN_DATA_FORMAT\n", "RGB_R ", columns, &error),
                         RECEDE_TEXT_REFUSED);
        assert_non_null(strstr(error.what, columns > 1024 ? "one more than 1024"
                                                          : "found the end of the file"));
    }
    char name[260] = "A2 ";
    const broken longest = {spectra, "A2 ", name, 0, 0, ""};
    for (size_t length = 200; length <= 201; length++) {
        recede_measurements found;
        memset(name, 'x', length);
        strcpy(name + length, " ");
        char *text = change(&longest);
        recede_text_status status =
            recede_measurements_read(text, strlen(text), NULL, &found, &error);
        assert_int_equal(status, length > 200 ? RECEDE_TEXT_REFUSED : RECEDE_TEXT_OK);
        recede_measurements_free(&found);
        free(text);
    }
    assert_non_null(strstr(error.what, "found a name of 201 bytes; use at most 200"));
    assert_true(error.line == 9 && error.column == 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(broken_files_are_refused),
        cmocka_unit_test(shares_are_held_from_0_to_1),
        cmocka_unit_test(a_byte_order_mark_is_passed_over),
        cmocka_unit_test(no_beginning_of_a_file_is_a_file),
        cmocka_unit_test(sizes_are_limited),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
