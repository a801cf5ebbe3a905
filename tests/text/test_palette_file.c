/* Palette files: a painter's box, with files beside it. All data are invented. */
#include "text/palette_file.h"

#include <stdlib.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/files_in_memory.h"

static recede_palette_file read_in; /* big: kept off the stack */

static const test_file kept[] = {
    {"boxes/green.json", PIGMENT("my green", "0.5")},
    {"boxes/more/red.json", PIGMENT("my red", "0.25")},
    {"boxes/twin.json", PIGMENT("My Green", "0.75")},
    {"boxes/broken.json", "{\"name\":\"a\",\n \"k\":[1,]}"},
    {"boxes/box.json", "{\"paints\":[\"PB29\"]}"},
    {"green.json", PIGMENT("another green", "2")},
    {NULL, NULL},
};

static recede_text_status read_named(const char *text, const char *name, test_folder *folder,
                                     recede_text_error *error)
{
    recede_files files = test_files(folder);
    return recede_palette_file_read(text, strlen(text), name, &files, NULL, &read_in, error);
}

static recede_text_status read_text(const char *text, recede_text_error *error)
{
    test_folder folder = {.files = kept};
    return read_named(text, "boxes/mine.json", &folder, error);
}

static void every_field_is_read(void **state)
{
    static const char text[] =
        "{\"purpose\":\"for the moor\",\"medium\":\"oil\",\"paper\":{\"colour\":\"#f0ead8\"},"
        "\"paints\":[\"ultramarine blue\",\"PW6\",\"green.json\",\"more/red.json\"," PIGMENT(
            "a made one", "3") "]}";
    recede_text_error error;
    (void)state;
    if (read_text(text, &error))
        fail_msg("%s:%zu:%zu: %s", error.file, error.line, error.column, error.what);
    assert_string_equal(read_in.purpose, "for the moor");
    assert_int_equal(read_in.has_medium, 1);
    assert_int_equal(read_in.medium, RECEDE_OIL);
    assert_int_equal(read_in.has_paper, 1);
    assert_int_equal(read_in.paper.kind, RECEDE_OWN_COLOUR);
    recede_xyz white = recede_xyz_of_reflectance(&read_in.paper.reflectance);
    assert_near(recede_srgb_of_xyz(white).g, 0xea / 255.0, 1e-3);
    assert_int_equal(read_in.count, 5);
    assert_string_equal(read_in.paints[0].paint.name, "ultramarine blue");
    assert_int_equal(read_in.paints[0].paint.ingredients, 1);
    assert_int_equal(read_in.paints[1].paint.is_white, 1);
    assert_string_equal(read_in.paints[2].paint.name, "my green"); /* that beside the palette */
    assert_string_equal(read_in.paints[2].paint.file, "boxes/green.json");
    assert_string_equal(read_in.paints[3].paint.file, "boxes/more/red.json");
    assert_string_equal(read_in.paints[4].paint.file, "");
    assert_near(read_in.paints[4].paint.k.at[35], 3, 0);
}

static void a_pigment_file_is_a_palette_of_one(void **state)
{
    recede_text_error error;
    (void)state;
    assert_int_equal(read_text(PIGMENT("my red", "0.25"), &error), RECEDE_TEXT_OK);
    assert_int_equal(read_in.count, 1);
    assert_int_equal(read_in.has_medium, 0);
    assert_int_equal(read_in.has_paper, 0);
    assert_string_equal(read_in.paints[0].paint.name, "my red");
    assert_string_equal(read_in.paints[0].paint.file, "boxes/mine.json");
}

typedef struct {
    const char *text, *file;
    size_t line, column;
    const char *says[2];
} fault;

static const char own[] = "boxes/mine.json";
static const fault faults[] = {
    {"", own, 1, 1, {"empty", ""}},
    {"{}", own, 1, 1, {"no \"paints\"", "add it"}},
    {"{\"paints\":[]}", own, 1, 11, {"empty", "1 to 24"}},
    {"{\"paints\":\"PB29\"}", own, 1, 11, {"PB29", "a list"}},
    {"{\"paints\":[\"PB29\",7]}", own, 1, 19, {"7", "name of a paint"}},
    {"{\"paints\":[\"ultramarin blue\"]}", own, 1, 12, {"ultramarin", "did you mean"}},
    {"{\"paints\":[\"PB29\",\"ultramarine blue\"]}", own, 1, 19, {"twice", "keep one"}},
    {"{\"paints\":[\"green.json\",\"twin.json\"]}", own, 1, 25, {"My Green", "twice"}},
    {"{\"paints\":[\"PB29\"],\"paints_\":1}", own, 1, 20, {"paints_", "did you mean \"paints\""}},
    {"{\"paints\":[\"PB29\"],\"medium\":\"ink\"}", own, 1, 29, {"ink", "gouache"}},
    {"{\"paints\":[\"PB29\"],\"paper\":{}}", own, 1, 28, {"the paper has no colour", "add"}},
    {"{\"paints\":[\"PB29\"],\"paper\":3}", own, 1, 28, {"3", "object in braces"}},
    {"{\"paints\":[\"PB29\"],\"paper\":{\"lab\":[90,0,0],\"colour\":\"#ffffff\"}}", own, 1, 44,
     {"\"colour\" beside \"lab\"", "keep one"}},
    {"{\"paints\":[\"PB29\"],\"paper\":{\"lab\":[90,140,-140]}}", own, 1, 35,
     {"no surface has that colour", "expected"}},
    {"{\"paints\":[\"PB29\"],\"paper\":{\"reflectance\":" BANDS("1.5") "}}", own, 1, 44,
     {"1.5", "0 to 1"}},
    {"{\"paints\":[\"nix.json\"]}", own, 1, 12, {"nix.json", "put it there"}},
    {"{\"paints\":[\"../green.json\"]}", own, 1, 12, {"..", "same folder"}},
    {"{\"paints\":[\"/green.json\"]}", own, 1, 12, {"root", "same folder"}},
    {"{\"paints\":[\"PB29\",\"broken.json\"]}", "boxes/broken.json", 2, 9, {"]", ""}},
    {"{\"paints\":[\"box.json\"]}", "boxes/box.json", 1, 1, {"palette file", "not in a list"}},
    {"{\"paints\":[{\"name\":\"a\"}]}", own, 1, 12, {"no \"k\"", "add it"}},
};

static void faults_are_refused_at_their_place(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        const fault *f = &faults[i];
        recede_text_error error;
        if (!read_text(f->text, &error))
            fail_msg("%s was not refused", f->text);
        if (error.line != f->line || error.column != f->column || strcmp(error.file, f->file) ||
            !strstr(error.what, f->says[0]) || !strstr(error.what, f->says[1]))
            fail_msg("%s: refused at %s:%zu:%zu with '%s'; expected %s:%zu:%zu, '%s' and '%s'",
                     f->text, error.file, error.line, error.column, error.what, f->file, f->line,
                     f->column, f->says[0], f->says[1]);
    }
}

/* Names that are refused are never asked for. */
static void refused_names_are_not_opened(void **state)
{
    static const char *const texts[] = {"{\"paints\":[\"../green.json\"]}",
                                        "{\"paints\":[\"/green.json\"]}",
                                        "{\"paints\":[\"c:green.json\"]}",
                                        "{\"paints\":[\"more\\\\red.json\"]}"};
    (void)state;
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        test_folder folder = {.files = kept};
        recede_text_error error;
        assert_int_equal(read_named(texts[i], own, &folder, &error), RECEDE_TEXT_REFUSED);
        assert_int_equal(folder.asked, 0);
    }
}

/* With the most paints there may be, and not one more. */
static void a_palette_holds_24(void **state)
{
    char text[2000], *end = text + sprintf(text, "{\"paints\":[\"%s\"",
                                           recede_pigment_at(0)->name);
    recede_text_error error;
    (void)state;
    for (size_t i = 1; i < RECEDE_MOST_PAINTS; i++)
        end += sprintf(end, ",\n\"%s\"", recede_pigment_at(i)->name);
    strcpy(end, "]}");
    assert_int_equal(read_text(text, &error), RECEDE_TEXT_OK);
    assert_int_equal(read_in.count, 24);
    strcpy(end, ",\n\"green.json\"]}");
    assert_int_equal(read_text(text, &error), RECEDE_TEXT_REFUSED);
    assert_int_equal(error.line, 25);
    assert_non_null(strstr(error.what, "at most 24"));
}

static void too_large_a_file_is_refused(void **state)
{
    char *large = malloc(RECEDE_FILE_MOST_BYTES + 2);
    const test_file files[] = {{"large.json", large}, {NULL, NULL}};
    test_folder folder = {.files = files};
    recede_text_error error;
    (void)state;
    memset(large, ' ', RECEDE_FILE_MOST_BYTES + 1);
    large[RECEDE_FILE_MOST_BYTES + 1] = '\0';
    assert_int_equal(read_named("{\"paints\":[\n\"large.json\"]}", "", &folder, &error),
                     RECEDE_TEXT_REFUSED);
    assert_int_equal(error.line, 2);
    assert_non_null(strstr(error.what, "at most"));
    free(large);
}

static const char round_trip[] =
    "{\"purpose\":\"a \\\"small\\\" box\",\"medium\":\"gouache\","
    "\"paper\":{\"lab\":[93.25,0.5,-3]},"
    "\"paints\":[\"hansa yellow\",\"PW6\",\"green.json\"," PIGMENT(
        "a made one", "0.12345678901234567") "]}";

static void what_is_written_reads_back_the_same(void **state)
{
    static const char *const papers[] = {"{\"lab\":[93.25,0.5,-3]}", "{\"colour\":\"#fefdf0\"}",
                                         "{\"reflectance\":" BANDS("0.1") "}"};
    test_folder folder = {.files = kept};
    recede_text_error error;
    (void)state;
    for (size_t i = 0; i < 3; i++) {
        char text[4000];
        recede_buffer one, two;
        recede_buffer_start(&one, NULL);
        recede_buffer_start(&two, NULL);
        const char *at = strstr(round_trip, "{\"lab\"");
        snprintf(text, sizeof text, "%.*s%s%s", (int)(at - round_trip), round_trip, papers[i],
                 strchr(at, '}') + 1);
        assert_int_equal(read_named(text, "", &folder, &error), RECEDE_TEXT_OK);
        recede_palette_file_write(&read_in, &one);
        recede_palette_file before = read_in;
        if (read_named(recede_buffer_string(&one), "", &folder, &error))
            fail_msg("%zu:%zu: %s", error.line, error.column, error.what);
        recede_palette_file_write(&read_in, &two);
        assert_string_equal(one.bytes, two.bytes);
        assert_memory_equal(&before.paper.reflectance, &read_in.paper.reflectance,
                            sizeof before.paper.reflectance);
        assert_int_equal(read_in.paper.kind, before.paper.kind);
        assert_int_equal(read_in.count, 4);
        for (size_t p = 0; p < 4; p++)
            assert_memory_equal(&before.paints[p].paint.k, &read_in.paints[p].paint.k,
                                sizeof before.paints[p].paint.k);
        recede_buffer_free(&one);
        recede_buffer_free(&two);
    }
}

static void memory_may_run_out_anywhere(void **state)
{
    test_folder folder = {.files = kept};
    recede_files files = test_files(&folder);
    (void)state;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_text_error error;
        recede_text_status status =
            recede_palette_file_read(round_trip, strlen(round_trip), "", &files, &allocator,
                                     &read_in, &error);
        assert_int_equal(memory.live, 0);
        if (!status) {
            assert_true(at > 4);
            return;
        }
        assert_int_equal(status, RECEDE_TEXT_NO_MEMORY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_field_is_read),
        cmocka_unit_test(a_pigment_file_is_a_palette_of_one),
        cmocka_unit_test(faults_are_refused_at_their_place),
        cmocka_unit_test(refused_names_are_not_opened),
        cmocka_unit_test(a_palette_holds_24),
        cmocka_unit_test(too_large_a_file_is_refused),
        cmocka_unit_test(what_is_written_reads_back_the_same),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
