/* Measurement files, written here in the spellings that CGATS.17 and ISO 28178 allow and
 * that are common. All figures in them are invented. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/buffer.h"
#include "text/cgats.h"
#include "text/cgats_texts.h"

/* ---- well-formed files */

/* How a file of spectra is written. */
typedef struct {
    const char *name, *header; /* lines behind the identifier */
    const char *end, *blank;   /* of lines; between values */
    const char *column;        /* printf format of a wavelength in thousandths and whole nm */
    int thousandths, backwards, id_last, every_value_on_a_line, in_pairs;
    double first_nm, step_nm;
    int count;
    double scale;
    double tolerance;
} variant;

static const variant variants[] = {
    {"percent, 10 nm", "ORIGINATOR \"a \"\"test\"\"\" # not a file of an instrument\n"
     "# a comment\n\nKEYWORD \"OWN_WORD\"\nOWN_WORD \"1\"\nCREATED 2020-01-02 10:00\n",
     "\n", " ", "SPECTRAL_NM%03d", 0, 0, 0, 0, 0, 380, 10, 36, 100, 1e-7},
    {"shares, CRLF, tabs, backwards", "SPECTRAL_NORM 1.0\nSPECTRAL_BANDS\t71\n",
     "\r\n", "\t", "SPEC_%d", 0, 1, 1, 0, 0, 380, 5, 71, 1, 1e-7},
    {"pairs, CR, a value a line", "\n", "\r", " \t ", "SPECTRAL_PCT", 0, 0, 0, 1, 1, 360, 10,
     42, 100, 1e-7},
    {"20 nm", "INSTRUMENTATION \"none\"\n", "\n", " ", "spectral_%dnm", 0, 0, 1, 0, 0, 380, 20,
     19, 100, 2e-3},
    {"thirds of 10 nm, names rounded", "", "\n", "  ", "NM_%d", 0, 0, 0, 0, 0, 380, 10 / 3.0,
     106, 100, 1e-7},
    {"1 nm, thousandths", "SPECTRAL_NORM \"100\"\n", "\n", " ", "SPEC_%d", 1, 0, 0, 0, 0, 350, 1,
     431, 100, 1e-7},
    {"shares by the columns' names", "", "\r\n", " ", "SPECTRAL_DEC%d", 0, 0, 0, 0, 0, 380, 10,
     36, 1, 1e-7},
};

enum { SAMPLES = 3, VARIANTS = sizeof variants / sizeof variants[0] };

/* An invented paint, lighter from sample to sample. */
static double reflectance(int sample, double nm)
{
    return 0.05 + 0.02 * sample + (0.4 + 0.1 * sample) / (1 + exp((560 - nm) / 18));
}

static double nm_of(const variant *v, int index)
{
    return v->first_nm + v->step_nm * (v->backwards ? v->count - 1 - index : index);
}

static void put_column(recede_buffer *out, const variant *v, int index)
{
    char name[40];
    int number = (int)floor(nm_of(v, index) * (v->thousandths ? 1000 : 1) + 0.5);
    const char *digits = strchr(v->column, '%');
    size_t opening = digits ? (size_t)(digits - v->column) : strlen(v->column);
    snprintf(name, sizeof name, "%.*s%d%s", (int)opening, v->column, number,
             digits ? strchr(digits, 'd') + 1 : "");
    if (v->in_pairs)
        recede_buffer_format(out, "SPECTRAL_NM%s%s%s", v->blank, v->column, v->blank);
    else
        recede_buffer_format(out, "%s%s", name, v->blank);
}

static void put_sample(recede_buffer *out, const variant *v, int sample)
{
    const char *gap = v->every_value_on_a_line ? "\n" : v->blank;
    if (!v->id_last)
        recede_buffer_format(out, "A%d%s", sample, gap);
    for (int i = 0; i < v->count; i++) {
        if (v->in_pairs)
            recede_buffer_format(out, "%g%s", nm_of(v, i), v->blank);
        recede_buffer_format(out, "%.9f%s", v->scale * reflectance(sample, nm_of(v, i)), gap);
    }
    recede_buffer_format(out, v->id_last ? "\"A%d\"\n" : "\n", sample);
}

/* Its line ends, LF so far, exchanged. */
static void exchange_line_ends(recede_buffer *out, const char *end)
{
    recede_buffer plain = *out;
    recede_buffer_start(out, NULL);
    for (size_t i = 0; i < plain.size; i++)
        if (plain.bytes[i] == '\n')
            recede_buffer_text(out, end);
        else
            recede_buffer_add(out, plain.bytes + i, 1);
    recede_buffer_free(&plain);
}

static void write_variant(recede_buffer *out, const variant *v)
{
    recede_buffer_start(out, NULL);
    recede_buffer_format(out, "CGATS.17\n%sNUMBER_OF_FIELDS %d\nBEGIN_DATA_FORMAT\n", v->header,
                         v->count * (v->in_pairs ? 2 : 1) + 1);
    if (!v->id_last)
        recede_buffer_format(out, "SAMPLE_ID%s", v->blank);
    for (int i = 0; i < v->count; i++)
        put_column(out, v, i);
    recede_buffer_format(out, "%s\nEND_DATA_FORMAT\nNUMBER_OF_SETS %d\nBEGIN_DATA\n",
                         v->id_last ? "SAMPLE_ID" : "", SAMPLES);
    for (int sample = 0; sample < SAMPLES; sample++)
        put_sample(out, v, sample);
    recede_buffer_text(out, "END_DATA\n# nothing more\n");
    exchange_line_ends(out, v->end);
}

static void check_sample(const variant *v, const recede_measurements *found, int sample)
{
    char id[16];
    const recede_measurement *m = NULL;
    snprintf(id, sizeof id, "A%d", sample);
    assert_int_equal(recede_measurements_named(found, id, &m), 1);
    assert_true(m->has_reflectance && !m->has_lab);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double nm = RECEDE_FIRST_NM + RECEDE_STEP_NM * band;
        double last = v->first_nm + v->step_nm * (v->count - 1);
        assert_near(m->reflectance.at[band], reflectance(sample, fmin(nm, last)), v->tolerance);
    }
}

static void variants_are_read(void **state)
{
    (void)state;
    for (int i = 0; i < VARIANTS; i++) {
        recede_buffer text;
        recede_measurements found;
        recede_text_error error = {0};
        write_variant(&text, &variants[i]);
        if (recede_measurements_read(text.bytes, text.size, NULL, &found, &error))
            fail_msg("%s: %zu:%zu: %s", variants[i].name, error.line, error.column, error.what);
        assert_int_equal(found.count, SAMPLES);
        for (int sample = 0; sample < SAMPLES; sample++)
            check_sample(&variants[i], &found, sample);
        recede_measurements_free(&found);
        recede_buffer_free(&text);
    }
}

static void colours_are_read(void **state)
{
    (void)state;
    recede_measurements found;
    recede_text_error error = {0};
    const recede_measurement *m = NULL;
    assert_int_equal(recede_measurements_read(colours, strlen(colours), NULL, &found, &error), 0);
    assert_int_equal(found.count, 2);
    assert_int_equal(recede_measurements_named(&found, "ultramarine \"deep\", 1:3", &m), 1);
    assert_true(m == &found.of[0] && m->has_lab && !m->has_reflectance && m->place.line == 10);
    assert_true(m->lab.l == 50 && m->lab.a == 10 && m->lab.b == -20.5);
    assert_int_equal(recede_measurements_named(&found, "2", &m), 1);
    assert_string_equal(m->name, "caf\xC3\xA9#2");
    assert_true(m->lab.l == 90 && m->lab.a == -0.25 && m->lab.b == 0.5);
    assert_int_equal(recede_measurements_named(&found, "3", &m), 0);
    assert_int_equal(recede_measurements_named(&found, "", &m), 0);
    recede_measurements_free(&found);
}

static void memory_may_run_out(void **state)
{
    (void)state;
    for (int i = 0; i < VARIANTS; i += 2) {
        recede_buffer text;
        recede_text_status status = RECEDE_TEXT_NO_MEMORY;
        write_variant(&text, &variants[i]);
        size_t failures = 0;
        for (size_t fail_at = 1; status; fail_at++) {
            test_memory memory;
            recede_allocator allocator = test_allocator(&memory, fail_at);
            recede_measurements found;
            recede_text_error error = {0};
            status = recede_measurements_read(text.bytes, text.size, &allocator, &found, &error);
            assert_true(status == RECEDE_TEXT_OK || status == RECEDE_TEXT_NO_MEMORY);
            failures += status != RECEDE_TEXT_OK;
            recede_measurements_free(&found);
            assert_int_equal(memory.live, 0);
        }
        assert_true(failures >= 4);
        recede_buffer_free(&text);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(variants_are_read),
        cmocka_unit_test(colours_are_read),
        cmocka_unit_test(memory_may_run_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
