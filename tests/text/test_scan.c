/* The scanner against cases written for it from the grammar of RFC 8259 and
 * the limits of the design: what passes, what does not, and exactly where. Seen to fail with
 * UTF-16 not known by its first bytes: tools/mutations.txt. */
#include <stdlib.h>
#include <string.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/scan.h"

typedef struct {
    const char *text;
    size_t line, column;
    const char *says; /* part of the message */
} bad;

static recede_text_status scan(const char *text, size_t size, recede_text_error *error)
{
    recede_scan scanned;
    recede_text_status status = recede_scan_bytes(text, size, NULL, &scanned, error);
    recede_scan_free(&scanned);
    return status;
}

#define BYTE_ORDER_MARK "\xEF\xBB\xBF"

static void good_documents_pass(void **state)
{
    static const char *const documents[] = {
        "{}", "[]", "null", "true", "false", "\"\"", "0", "-0", "1", "-1", "10", "1.5", "0.5",
        "-0.25e-3", "1e3", "1E+3", "1e-3", "1.7976931348623157e308", "5e-324", "1e-999",
        BYTE_ORDER_MARK "{}", BYTE_ORDER_MARK "1", /* is passed over */
        " \t\r\n{ \"a\" : [ 1 , 2 ] } \n",
        "{\"\":0}", "{\"a\":{\"a\":{\"a\":1}}}", "[{\"a\":1},{\"a\":1}]",
        "\"\\\"\\\\\\/\"", "\"\\u00e9\"", "\"\\u00E9\"", "\"\\ud83d\\ude00\"",
        "\"\xF0\x9F\x98\x80\"",
        "\"caf\xC3\xA9\"", "\"\xEF\xBF\xBF\"", "\"\xEF\xBB\xBF\"",
        "[1,[2,[3,[4]]]]", "{\"a\":1,\"A\":2}", "[[],{},\"\",0]",
        "[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]", /* 16 deep */
        "1234567890123456789012345678901234567890", /* 40 characters */
    };
    (void)state;
    for (size_t i = 0; i < sizeof documents / sizeof documents[0]; i++) {
        recede_text_error error = {0};
        if (scan(documents[i], strlen(documents[i]), &error))
            fail_msg("%s was refused: %s", documents[i], error.what);
    }
}

static void check_bad(const bad *b, size_t size)
{
    recede_text_error error = {0};
    if (scan(b->text, size, &error) != RECEDE_TEXT_REFUSED)
        fail_msg("%s was not refused", b->text);
    if (error.line != b->line || error.column != b->column || !strstr(error.what, b->says))
        fail_msg("%s: refused at %zu:%zu with '%s', expected %zu:%zu and '%s'", b->text,
                 error.line, error.column, error.what, b->line, b->column, b->says);
    assert_null(strchr(error.what, '\n'));
}

static void check_all(const bad *list, size_t count)
{
    for (size_t i = 0; i < count; i++)
        check_bad(&list[i], strlen(list[i].text));
}
#define CHECK_ALL(list) check_all(list, sizeof(list) / sizeof((list)[0]))

static void structure_is_checked(void **state)
{
    static const bad list[] = {
        {"", 1, 1, "empty"},
        {" ", 1, 2, "end of the file"},
        {"\n\n", 3, 1, "end of the file"},
        {"{", 1, 2, "expected a key"},
        {"[", 1, 2, "expected a value"},
        {"[1", 1, 3, "expected ']', or a comma"},
        {"{\"a\":1", 1, 7, "expected '}', or a comma"},
        {"[1,]", 1, 4, "comma"},
        {"[,1]", 1, 2, "expected a value"},
        {"[1,,2]", 1, 4, "expected a value"},
        {"{\"a\":1,}", 1, 8, "comma"},
        {"{,}", 1, 2, "expected a key"},
        {"{\"a\"}", 1, 5, "expected ':'"},
        {"{\"a\" 1}", 1, 6, "expected ':'"},
        {"{\"a\":}", 1, 6, "expected a value"},
        {"{\"a\"::1}", 1, 6, "expected a value"},
        {"{a:1}", 1, 2, "key in double quotes"},
        {"{'a':1}", 1, 2, "key in double quotes"},
        {"{1:1}", 1, 2, "key in double quotes"},
        {"['a']", 1, 2, "double quotes"},
        {"[1 2]", 1, 4, "expected ']', or a comma"},
        {"[1;2]", 1, 3, "expected ']', or a comma"},
        {"[1}", 1, 3, "expected ']', or a comma"},
        {"{\"a\":1]", 1, 7, "expected '}', or a comma"},
        {"]", 1, 1, "expected a value"},
        {"{}{}", 1, 3, "nothing may follow"},
        {"{} x", 1, 4, "nothing may follow"},
        {"1 2", 1, 3, "nothing may follow"},
        {"// no\n{}", 1, 1, "no comments"},
        {"{ /* no */ }", 1, 3, "no comments"},
        {"{} // no", 1, 4, "no comments"},
        {"[1, // no\n2]", 1, 5, "no comments"},
        {"{\n  \"a\": 1,\n  \"b\": tru\n}", 3, 8, "tru"},
        {"\n\t\t[1,\n\t x]", 3, 3, "found x"},
        {"[True]", 1, 2, "True"},
        {"[nul]", 1, 2, "nul"},
        {"[undefined]", 1, 2, "undefined"},
        {"\xEF\xBB\xBF", 1, 1, "end of the file"},
        {"\xEF\xBB\xBF{\"a\":tru}", 1, 6, "found tru"},
        {"\xEF\xBB\xBF\xEF\xBB\xBF{}", 1, 1, "expected a value"},
        {"\xFF\xFD{", 1, 1, "0xFF"},
        {"[\f1]", 1, 2, "U+000C"},
        {"[\xC2\xA0" "1]", 1, 2, "\xC2\xA0"}, /* a no-break space is no blank of JSON's */
        {"\xE2\x80\xAE{}", 1, 1, "U+202E"},
        {"[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]", 1, 17, "deeper than 16"},
        {"[[[[[[[[[[[[[[[[{}]]]]]]]]]]]]]]]]", 1, 17, "deeper than 16"},
    };
    (void)state;
    CHECK_ALL(list);
}

static void numbers_are_checked(void **state)
{
    static const bad list[] = {
        {"[NaN]", 1, 2, "NaN"},         {"[nan]", 1, 2, "finite"},
        {"[Infinity]", 1, 2, "finite"}, {"[-Infinity]", 1, 2, "finite"},
        {"[01]", 1, 2, "01"},           {"[-01]", 1, 2, "-01"},
        {"[+1]", 1, 2, "+1"},           {"[.5]", 1, 2, ".5"},
        {"[-.5]", 1, 2, "-.5"},         {"[1.]", 1, 2, "1."},
        {"[1.e3]", 1, 2, "1.e3"},       {"[1e]", 1, 2, "1e"},
        {"[1e+]", 1, 2, "1e+"},         {"[0x10]", 1, 2, "0x10"},
        {"[-]", 1, 2, "found -"},       {"[--1]", 1, 2, "--1"},
        {"[1_000]", 1, 2, "1_000"},     {"[1e999]", 1, 2, "too large"},
        {"[-1e400]", 1, 2, "too large"}, {"[1.2.3]", 1, 2, "1.2.3"},
        {"[00]", 1, 2, "00"},           {"[1a]", 1, 2, "1a"},
        {"[12345678901234567890123456789012345678901]", 1, 2, "41 characters"},
        {"[0.0000000000000000000000000000000000000001]", 1, 2, "42 characters"},
    };
    (void)state;
    CHECK_ALL(list);
}

/* "3,5" is a member's end and no key; digits behind the comma tell what was meant. */
static void decimal_commas_are_named(void **state)
{
    static const bad list[] = {
        {"{\"a\":3,5}", 1, 6, "found 3,5; a decimal takes a point: write 3.5"},
        {"{\"a\": -45,05, \"b\":1}", 1, 7, "write -45.05"},
        {"{\n \"b\":0,\n \"a\":\n0,25}", 4, 1, "write 0.25"},
        {"{\"b\":{},\"a\":[{\"c\":1,2}]}", 1, 19, "write 1.2"},
        {"{\"a\":3, 5}", 1, 9, "found '5'; expected a key"},
        {"{\"a\":3,x}", 1, 8, "found 'x'; expected a key"},
        {"{\"a\":3.5,5}", 1, 10, "found '5'; expected a key"},
        {"{\"a\":1e3,5}", 1, 10, "found '5'; expected a key"},
        {"{\"a\":\"3\",5}", 1, 10, "found '5'; expected a key"},
        {"{\"a\":3,-5}", 1, 8, "found '-'; expected a key"},
        {"{5}", 1, 2, "found '5'; expected a key"},
    };
    (void)state;
    CHECK_ALL(list);
}

/* First bytes from the standards that src/text/first_bytes.c names. */
static void what_is_no_text_is_named(void **state)
{
    static const bad list[] = {
        {"\xFF\xFE{", 1, 1, "saved as UTF-16; save it as UTF-8"},
        {"\xFE\xFF", 1, 1, "saved as UTF-16; save it as UTF-8"},
        {"\x89PNG\r\n\x1A\n", 1, 1, "a PNG picture, not a text; is it meant for --photo"},
        {"\xFF\xD8\xFF\xE0", 1, 1, "a JPEG picture"},
        {"%PDF-1.7", 1, 1, "a PDF document"},
        {"\x1F\x8B\x08", 1, 1, "packed with gzip; unpack it"},
        {"PK\x03\x04", 1, 1, "a ZIP archive or a spreadsheet"},
        {"\x89PN", 1, 1, "0x89"},
        {"%PDF", 1, 1, "found '%'"},
    };
    (void)state;
    CHECK_ALL(list);
}

static void strings_are_checked(void **state)
{
    static const bad list[] = {
        {"[\"a", 1, 2, "without an end"},
        {"[\"a\\\"]", 1, 2, "without an end"},
        {"[\"a\nb\"]", 1, 4, "U+000A"},
        {"[\"a\tb\"]", 1, 4, "U+0009"},
        {"[\"\x1F\"]", 1, 3, "U+001F"},
        {"[\"\x7F\"]", 1, 3, "U+007F"},
        {"[\"\xC2\x80\"]", 1, 3, "U+0080"},
        {"[\"\xC2\x9F\"]", 1, 3, "U+009F"},
        {"[\"\xC2\x85\"]", 1, 3, "U+0085"},
        {"[\"ab\xE2\x80\xAE\"]", 1, 5, "U+202E"},
        {"[\"\xD8\x9C\"]", 1, 3, "U+061C"},
        {"[\"\xE2\x80\x8E\"]", 1, 3, "U+200E"},
        {"[\"\xE2\x81\xA6\"]", 1, 3, "U+2066"},
        {"[\"\xE2\x81\xA9\"]", 1, 3, "U+2069"},
        {"[\"\xE2\x80\xA8\"]", 1, 3, "U+2028"},
        {"[\"\\u0000\"]", 1, 3, "U+0000"},
        {"[\"\\u001f\"]", 1, 3, "U+001F"},
        {"[\"a\\u0085\"]", 1, 4, "U+0085"},
        {"[\"\\u202e\"]", 1, 3, "U+202E"},
        {"[\"\\n\"]", 1, 3, "\\n"},
        {"[\"\\t\"]", 1, 3, "\\t"},
        {"[\"\\b\"]", 1, 3, "\\b"},
        {"[\"\\x41\"]", 1, 3, "escape"},
        {"[\"\\'\"]", 1, 3, "escape"},
        {"[\"\\\n\"]", 1, 3, "escape"},
        {"[\"\\u12\"]", 1, 3, "hexadecimal"},
        {"[\"\\u12g4\"]", 1, 3, "hexadecimal"},
        {"[\"\\ud800\"]", 1, 3, "surrogate"},
        {"[\"\\udc00\"]", 1, 3, "surrogate"},
        {"[\"\\ud800\\ud800\"]", 1, 3, "surrogate"},
        {"[\"\\ud800x\"]", 1, 3, "surrogate"},
        {"[\"\\ud800\\u0041\"]", 1, 3, "surrogate"},
        {"[\"\x80\"]", 1, 3, "0x80"},         /* a continuation alone */
        {"[\"\xC3\"]", 1, 3, "0xC3"},         /* cut short */
        {"[\"\xC0\x80\"]", 1, 3, "0xC0"},     /* overlong NUL */
        {"[\"\xE0\x80\xAF\"]", 1, 3, "0xE0"}, /* overlong '/' */
        {"[\"\xED\xA0\x80\"]", 1, 3, "0xED"}, /* a surrogate */
        {"[\"\xF4\x90\x80\x80\"]", 1, 3, "0xF4"}, /* beyond U+10FFFF */
        {"[\"\xF8\x88\x80\x80\x80\"]", 1, 3, "0xF8"},
        {"[\"\xC3\xA9\xC3\xA9\", x]", 1, 8, "found x"}, /* columns count characters */
        {"[\"\xF0\x9F\x98\x80\", x]", 1, 7, "found x"},
        {"[\"\\u00e9\", x]", 1, 12, "found x"},
    };
    (void)state;
    CHECK_ALL(list);
}

static void a_nul_is_refused(void **state)
{
    static const bad list[] = {{"[1,\0 2]", 1, 4, "U+0000"}, {"[\"a\0\"]", 1, 4, "U+0000"}};
    (void)state;
    check_bad(&list[0], 7);
    check_bad(&list[1], 6);
}

static void keys_that_stand_twice_are_refused(void **state)
{
    static const bad list[] = {
        {"{\"a\":1,\"a\":2}", 1, 8, "\"a\""},
        {"{\"a\":1,\n \"b\":2,\n \"a\":3}", 3, 2, "line 1"},
        {"{\"a\":1,\"\\u0061\":2}", 1, 8, "second time"},
        {"{\"x\":{\"a\":1,\"a\":1}}", 1, 13, "\"a\""},
        {"{\"b\":{},\"a\":{\"b\":1},\"b\":2}", 1, 21, "\"b\""},
        {"{\"b\":0,\"a\":0,\"a\":0,\"b\":0}", 1, 14, "\"a\""}, /* the first of two pairs */
        {"{\"\":1,\"\":2}", 1, 7, "\"\""},
    };
    (void)state;
    CHECK_ALL(list);
}

static void many_keys_take_no_time_to_speak_of(void **state)
{
    enum { KEYS = 60000 };
    char *text = malloc(KEYS * 16 + 16), *end = text;
    recede_text_error error;
    (void)state;
    *end++ = '{';
    for (int i = 0; i < KEYS; i++)
        end += sprintf(end, "\"%d\":0,", i);
    end += sprintf(end, "\"7\":0}");
    assert_int_equal(scan(text, (size_t)(end - text), &error), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "\"7\""));
    assert_int_equal(error.column, end - text - 5);
    free(text);
}

static void long_strings_are_refused_by_bytes(void **state)
{
    char text[600];
    recede_text_error error;
    (void)state;
    sprintf(text, "[\"%0200d\"]", 0);
    assert_int_equal(scan(text, strlen(text), &error), RECEDE_TEXT_OK);
    sprintf(text, "[\"%0201d\"]", 0);
    assert_int_equal(scan(text, strlen(text), &error), RECEDE_TEXT_REFUSED);
    assert_int_equal(error.column, 2);
    assert_non_null(strstr(error.what, "201 bytes"));
    sprintf(text, "{\"%0201d\":1}", 0);
    assert_int_equal(scan(text, strlen(text), &error), RECEDE_TEXT_REFUSED);
    sprintf(text, "[\"%0198d\\u00e9\"]", 0); /* the escape makes two bytes */
    assert_int_equal(scan(text, strlen(text), &error), RECEDE_TEXT_OK);
    sprintf(text, "[\"%0199d\\u00e9\"]", 0);
    assert_int_equal(scan(text, strlen(text), &error), RECEDE_TEXT_REFUSED);
}

static void places_are_recorded(void **state)
{
    static const char text[] = "{\n \"a\": [1, true],\n\t\"\xC3\xA9\":{\"b\":\"x\"}\n}";
    static const struct { size_t line, column, key_column, span; } expected[] = {
        {1, 1, 0, 6}, {2, 7, 2, 3}, {2, 8, 0, 1}, {2, 11, 0, 1}, {3, 6, 2, 2}, {3, 11, 7, 1},
    };
    recede_scan scanned;
    recede_text_error error;
    (void)state;
    assert_int_equal(recede_scan_bytes(text, strlen(text), NULL, &scanned, &error), 0);
    assert_int_equal(recede_scan_count(&scanned), 6);
    for (size_t i = 0; i < 6; i++) {
        const recede_scanned *at = recede_scan_at(&scanned, i);
        assert_int_equal(at->value.line, expected[i].line);
        assert_int_equal(at->value.column, expected[i].column);
        assert_int_equal(at->key.column, expected[i].key_column);
        assert_int_equal(at->span, expected[i].span);
    }
    recede_scan_free(&scanned);
}

static void memory_may_run_out_anywhere(void **state)
{
    char text[4000], *end = text;
    (void)state;
    *end++ = '{';
    for (int i = 0; i < 100; i++)
        end += sprintf(end, "%s\"k%d\":[%d,\"v\"]", i ? "," : "", i, i);
    *end++ = '}';
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_scan scanned;
        recede_text_error error;
        recede_text_status status =
            recede_scan_bytes(text, (size_t)(end - text), &allocator, &scanned, &error);
        recede_scan_free(&scanned);
        assert_int_equal(memory.live, 0);
        if (status == RECEDE_TEXT_OK) {
            assert_true(at > 5);
            return;
        }
        assert_int_equal(status, RECEDE_TEXT_NO_MEMORY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(good_documents_pass),
        cmocka_unit_test(structure_is_checked),
        cmocka_unit_test(numbers_are_checked),
        cmocka_unit_test(decimal_commas_are_named),
        cmocka_unit_test(what_is_no_text_is_named),
        cmocka_unit_test(strings_are_checked),
        cmocka_unit_test(a_nul_is_refused),
        cmocka_unit_test(keys_that_stand_twice_are_refused),
        cmocka_unit_test(many_keys_take_no_time_to_speak_of),
        cmocka_unit_test(long_strings_are_refused_by_bytes),
        cmocka_unit_test(places_are_recorded),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
