/* One line, whatever the file is called. Seen to fail with control characters let through in
 * the name of a file: tools/mutations.txt. */
#include <string.h>

#include "support/assert_near.h"
#include "text/json.h"
#include "text/message.h"

static void the_line_names_file_line_and_column(void **state)
{
    recede_text_error error;
    recede_buffer out;
    (void)state;
    recede_buffer_start(&out, NULL);
    assert_int_equal(recede_text_refuse(&error, 3, 7, "found %s; expected %d", "that", 4),
                     RECEDE_TEXT_REFUSED);
    recede_message_line(&out, "my scene.json", &error);
    assert_string_equal(out.bytes, "my scene.json:3:7: found that; expected 4\n");
    recede_buffer_free(&out);
    assert_int_equal(recede_text_no_memory(&error), RECEDE_TEXT_NO_MEMORY);
    recede_message_line(&out, "a", &error);
    assert_true(strncmp(out.bytes, "a: not enough memory", 20) == 0);
    recede_buffer_free(&out);
}

static void names_cannot_upset_a_terminal(void **state)
{
    recede_text_error error;
    recede_buffer out;
    (void)state;
    recede_text_refuse(&error, 1, 1, "x");
    recede_buffer_start(&out, NULL);
    recede_message_line(&out, "a\n\x1B[31m\xFF\xC2\x9B\xE2\x80\xAE\xC3\xA9", &error);
    assert_string_equal(out.bytes, "a??[31m???\xC3\xA9:1:1: x\n");
    recede_buffer_free(&out);
}

static void too_long_a_message_is_cut_between_characters(void **state)
{
    recede_text_error error;
    char text[2000];
    (void)state;
    for (int shift = 0; shift < 3; shift++) {
        memset(text, 'x', sizeof text);
        for (size_t i = (size_t)shift; i + 2 < sizeof text - 1; i += 2)
            memcpy(text + i, "\xC3\xA9", 2);
        text[sizeof text - 1] = '\0';
        recede_text_refuse(&error, 1, 1, "%s", text);
        size_t length = strlen(error.what);
        assert_true(length >= sizeof error.what - 2);
        assert_int_equal((length - (size_t)shift) % 2, 0);
    }
}

static void strings_are_escaped(void **state)
{
    recede_json json;
    recede_buffer out;
    const double numbers[] = {1.5, -0.25, NAN};
    (void)state;
    recede_buffer_start(&out, NULL);
    recede_json_start(&json, &out);
    recede_json_object(&json, NULL);
    recede_json_string(&json, "a\"", "\\\x01\xC3\xA9");
    recede_json_array(&json, "empty");
    recede_json_end_array(&json);
    recede_json_numbers(&json, "n", numbers, 3);
    recede_json_bool(&json, "t", 1);
    recede_json_end_object(&json);
    assert_string_equal(out.bytes, "{\n  \"a\\\"\": \"\\\\\\u0001\xC3\xA9\",\n  \"empty\": [],\n"
                                   "  \"n\": [1.5, -0.25, null],\n  \"t\": true\n}");
    recede_buffer_free(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_line_names_file_line_and_column),
        cmocka_unit_test(names_cannot_upset_a_terminal),
        cmocka_unit_test(too_long_a_message_is_cut_between_characters),
        cmocka_unit_test(strings_are_escaped),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
