/* Pigment files: what is read, what is refused and where, and that what is written
 * reads back the same. All data are invented. */
#include "text/pigment_file.h"

#include <stdlib.h>

#include <cjson/cJSON.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/files_in_memory.h"

static recede_text_status read_text(const char *text, recede_pigment_file *out,
                                    recede_text_error *error)
{
    return recede_pigment_file_read(text, strlen(text), "box/mine.json", NULL, out, error);
}

static void every_field_is_read(void **state)
{
    static const char text[] =
        "{\"colour_index\":\"PG23\",\"name\":\"my green\",\"transparency\":\"transparent\","
        "\"permanence\":\"excellent\",\"caution\":\"a dust mask\",\"source\":\"my card\","
        "\"measured\":\"6 swatches, rms 0.4\",\"medium\":\"gouache\",\"is_white\":true,"
        "\"s\":" BANDS("1e6") ",\"k\":" BANDS("0.0625") "}";
    recede_pigment_file read;
    recede_text_error error;
    (void)state;
    if (read_text(text, &read, &error))
        fail_msg("%zu:%zu: %s", error.line, error.column, error.what);
    assert_string_equal(read.paint.name, "my green");
    assert_string_equal(read.paint.colour_index, "PG23");
    assert_string_equal(read.paint.caution, "a dust mask");
    assert_string_equal(read.paint.file, "box/mine.json");
    assert_string_equal(read.transparency, "transparent");
    assert_string_equal(read.permanence, "excellent");
    assert_string_equal(read.source, "my card");
    assert_string_equal(read.measured, "6 swatches, rms 0.4");
    assert_int_equal(read.has_medium, 1);
    assert_int_equal(read.medium, RECEDE_GOUACHE);
    assert_int_equal(read.paint.is_white, 1);
    assert_int_equal(read.paint.ingredients, 0);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        assert_near(read.paint.k.at[band], 0.0625, 0);
        assert_near(read.paint.s.at[band], 1e6, 0);
    }
}

static void a_name_and_figures_are_enough(void **state)
{
    recede_pigment_file read;
    recede_text_error error;
    (void)state;
    assert_int_equal(read_text(PIGMENT("red earth", "0"), &read, &error), RECEDE_TEXT_OK);
    assert_int_equal(read.has_medium, 0);
    assert_int_equal(read.paint.is_white, 0);
    assert_string_equal(read.paint.colour_index, "");
    assert_string_equal(read.measured, "");
}

/* The paint makes a palette, and its films are those of the same K and S. */
static void a_paint_can_be_mixed(void **state)
{
    recede_pigment_file read;
    recede_text_error error;
    recede_palette *palette;
    recede_spectrum paper = recede_paper_white();
    const recede_mix mix = {1, {0}, {1}, 3.0};
    (void)state;
    assert_int_equal(read_text(PIGMENT("red earth", "0.5"), &read, &error), RECEDE_TEXT_OK);
    assert_int_equal(recede_palette_new(&read.paint, 1, RECEDE_WATERCOLOUR, &paper, NULL, &palette,
                                        NULL), RECEDE_OK);
    recede_spectrum seen = recede_mix_reflectance(palette, &mix, NULL);
    recede_spectrum film = recede_film(&read.paint.k, &read.paint.s, 2.0, &paper);
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(seen.at[band], film.at[band], 1e-14);
    recede_palette_free(palette);
}

typedef struct {
    const char *text;
    size_t line, column;
    const char *says[2];
} fault;

#define K "\"k\":" BANDS("1")
#define S "\"s\":" BANDS("1")
static const fault faults[] = {
    {"", 1, 1, {"empty", ""}},
    {"[]", 1, 1, {"a list", "a pigment as an object"}},
    {"{" K "," S "}", 1, 1, {"no \"name\"", "add it"}},
    {"{\"name\":\"a\"," S "}", 1, 1, {"no \"k\"", "36 numbers"}},
    {"{\"name\":\"a\"," K "}", 1, 1, {"no \"s\"", "36 numbers"}},
    {"{\"name\":\" \"," K "," S "}", 1, 9, {"\" \"", "a name"}},
    {"{\"name\":\"Water\"," K "," S "}", 1, 9, {"Water", "thinned"}},
    {"{\"name\":\"a\",\n\"colour_indx\":\"PG7\"," K "," S "}", 2, 1,
     {"colour_indx", "did you mean \"colour_index\""}},
    {"{\"name\":\"a\",\"k\":[1,2]," S "}", 1, 17, {"list", "36 numbers"}},
    {"{\"name\":\"a\",\"k\":0.5," S "}", 1, 17, {"0.5", "36 numbers"}},
    {"{\"name\":\"a\",\n\"k\":" BANDS("-1") "," S "}", 2, 6, {"-1", "0 to 1000000"}},
    {"{\"name\":\"a\",\n\"k\":" BANDS("1000001") "," S "}", 2, 6, {"1000001", "0 to 1000000"}},
    {"{\"name\":\"a\",\n\"k\":" BANDS("\"1\"") "," S "}", 2, 6, {"\"1\"", "a number"}},
    {"{\"name\":\"a\",\n\"k\":" BANDS("1e999") "," S "}", 2, 6, {"1e999", "too large"}},
    {"{\"name\":\"a\",\"is_white\":1," K "," S "}", 1, 24, {"1", "true or false"}},
    {"{\"name\":\"a\",\"medium\":\"ink\"," K "," S "}", 1, 22, {"\"ink\"", "\"acrylic\""}},
    {"{\"name\":\"a\\u0007\"," K "," S "}", 1, 11, {"control", ""}},
    {"{\"name\":\"a\xE2\x80\xAE\"," K "," S "}", 1, 11, {"control", "U+202E"}},
    {"{\"name\":\"a\",\"paints\":[]}", 1, 1, {"a palette file", "not in a list"}},
    {"{\"name\":\"a\"," K "," S "} x", 1, 170, {"x", ""}},
};

static void faults_are_refused_at_their_place(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        const fault *f = &faults[i];
        recede_pigment_file read;
        recede_text_error error;
        if (read_text(f->text, &read, &error) != RECEDE_TEXT_REFUSED)
            fail_msg("%s was not refused", f->text);
        if (error.line != f->line || error.column != f->column ||
            !strstr(error.what, f->says[0]) || !strstr(error.what, f->says[1]))
            fail_msg("%s: refused at %zu:%zu with '%s'; expected %zu:%zu, '%s' and '%s'", f->text,
                     error.line, error.column, error.what, f->line, f->column, f->says[0],
                     f->says[1]);
        assert_string_equal(error.file, "box/mine.json");
    }
}

/* Numbers that need all their digits, and texts that need escapes. */
static void fill(recede_pigment_file *pigment, unsigned seed)
{
    memset(pigment, 0, sizeof *pigment);
    strcpy(pigment->paint.name, "Hooker's \"own\" \\ green");
    strcpy(pigment->paint.file, "mine.json");
    strcpy(pigment->measured, "6 swatches, \xCE\x94" "E 0.4");
    for (int band = 0; band < RECEDE_BANDS; band++) {
        seed = seed * 1664525u + 1013904223u;
        pigment->paint.k.at[band] = (double)seed / 3e9;
        pigment->paint.s.at[band] = 1.0 / (1.0 + (double)seed);
    }
}

static void what_is_written_reads_back_the_same(void **state)
{
    (void)state;
    for (unsigned seed = 1; seed < 40; seed++) {
        recede_pigment_file first, again;
        recede_text_error error;
        recede_buffer one, two;
        fill(&first, seed);
        first.has_medium = seed % 2;
        first.medium = seed % 2 ? (recede_medium)(seed % 4) : RECEDE_WATERCOLOUR;
        first.paint.is_white = seed % 3 == 0;
        recede_buffer_start(&one, NULL);
        recede_buffer_start(&two, NULL);
        recede_pigment_file_write(&first, &one);
        assert_int_equal(recede_pigment_file_read(one.bytes, one.size, "mine.json", NULL, &again,
                                                  &error), RECEDE_TEXT_OK);
        assert_memory_equal(&again.paint.k, &first.paint.k, sizeof first.paint.k);
        assert_memory_equal(&again.paint.s, &first.paint.s, sizeof first.paint.s);
        assert_string_equal(again.paint.name, first.paint.name);
        assert_string_equal(again.measured, first.measured);
        assert_int_equal(again.has_medium, first.has_medium);
        assert_int_equal(again.medium, first.medium);
        assert_int_equal(again.paint.is_white, first.paint.is_white);
        recede_pigment_file_write(&again, &two);
        assert_int_equal(one.size, two.size);
        assert_memory_equal(one.bytes, two.bytes, one.size);
        recede_buffer_free(&one);
        recede_buffer_free(&two);
    }
}

/* Another reader of JSON sees the same. */
static void what_is_written_is_json(void **state)
{
    recede_pigment_file pigment;
    recede_buffer out;
    (void)state;
    fill(&pigment, 7);
    recede_buffer_start(&out, NULL);
    recede_pigment_file_write(&pigment, &out);
    cJSON *tree = cJSON_Parse(recede_buffer_string(&out));
    assert_non_null(tree);
    assert_string_equal(cJSON_GetObjectItemCaseSensitive(tree, "name")->valuestring,
                        pigment.paint.name);
    const cJSON *k = cJSON_GetObjectItemCaseSensitive(tree, "k");
    assert_int_equal(cJSON_GetArraySize(k), RECEDE_BANDS);
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(cJSON_GetArrayItem(k, band)->valuedouble, pigment.paint.k.at[band], 0);
    assert_null(cJSON_GetObjectItemCaseSensitive(tree, "is_white"));
    assert_null(cJSON_GetObjectItemCaseSensitive(tree, "medium"));
    cJSON_Delete(tree);
    recede_buffer_free(&out);
}

static void memory_may_run_out_anywhere(void **state)
{
    static const char text[] = PIGMENT("red earth", "0.5");
    (void)state;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_pigment_file read;
        recede_text_error error;
        recede_text_status status =
            recede_pigment_file_read(text, strlen(text), "", &allocator, &read, &error);
        assert_int_equal(memory.live, 0);
        if (!status) {
            assert_true(at > 2);
            return;
        }
        assert_int_equal(status, RECEDE_TEXT_NO_MEMORY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_field_is_read),
        cmocka_unit_test(a_name_and_figures_are_enough),
        cmocka_unit_test(a_paint_can_be_mixed),
        cmocka_unit_test(faults_are_refused_at_their_place),
        cmocka_unit_test(what_is_written_reads_back_the_same),
        cmocka_unit_test(what_is_written_is_json),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
