/* The table: every wash in it, no line too wide, long names wrapped. */
#include "text/columns.h"
#include "text/plan_write.h"
#include "text/plans.h"
#include "text/utf8.h"
#include "text/words.h"

static void assert_lines_within(const char *text, size_t width)
{
    while (*text) {
        size_t length = strcspn(text, "\n");
        if (recede_utf8_columns(text, length) > width)
            fail_msg("too wide: %.*s", (int)length, text);
        if (length && text[length - 1] == ' ')
            fail_msg("ends in a blank: %.*s", (int)length, text);
        assert_int_equal(text[length], '\n');
        text += length + 1;
    }
}

static size_t count_of(const char *text, const char *part)
{
    size_t count = 0;
    for (; (text = strstr(text, part)) != NULL; text++)
        count++;
    return count;
}

static void every_wash_has_its_row(void **state)
{
    recede_plan *plan = test_plan(test_watercolour);
    recede_buffer out;
    size_t graded_lit = 0, graded_shadow = 0, flat_lit = 0, flat_shadow = 0;
    (void)state;
    recede_buffer_start(&out, NULL);
    recede_plan_table(plan, &out);
    assert_lines_within(out.bytes, 100);
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *planned = recede_plan_at(plan, i);
        graded_lit += (size_t)planned->lit.graded;
        flat_lit += (size_t)!planned->lit.graded;
        graded_shadow += (size_t)planned->shadow.graded;
        flat_shadow += (size_t)!planned->shadow.graded;
    }
    assert_int_equal(count_of(out.bytes, "  lit crest  "), graded_lit);
    assert_int_equal(count_of(out.bytes, "  lit foot   "), graded_lit);
    assert_int_equal(count_of(out.bytes, "  lit        "), flat_lit);
    assert_int_equal(count_of(out.bytes, "  shadow     "), flat_shadow + graded_shadow);
    assert_int_equal(count_of(out.bytes, "  shadow foot  "), graded_shadow);
    assert_non_null(strstr(out.bytes, "  top of the "));
    assert_non_null(strstr(out.bytes, "horizon"));
    /* far to near */
    assert_true(strstr(out.bytes, "far ridge") < strstr(out.bytes, "tall peak"));
    assert_true(strstr(out.bytes, "tall peak") < strstr(out.bytes, "near bank"));
    assert_non_null(strstr(out.bytes, "366 m"));
    recede_buffer_free(&out);
    recede_plan_free(plan);
}

static void long_names_wrap(void **state)
{
    char text[1400], name[201];
    recede_buffer out;
    (void)state;
    memset(name, 'W', 200);
    name[200] = '\0';
    snprintf(text, sizeof text,
             "{\"title\":\"%s\",\"paint\":{\"palette\":\"landscape-six\",\"most_pigments\":1},"
             "\"planes\":[{\"name\":\"%s\",\"distance\":1,\"foliage\":\"willow\"},"
             "{\"name\":\"the \xE5\xB1\xB1\xE5\xB1\xB1\xE5\xB1\xB1\xE5\xB1\xB1\xE5\xB1\xB1"
             "\xE5\xB1\xB1\xE5\xB1\xB1\xE5\xB1\xB1 beyond\",\"distance\":2,"
             "\"foliage\":\"willow\"}]}", name, name);
    recede_plan *plan = test_plan(text);
    recede_buffer_start(&out, NULL);
    recede_plan_table(plan, &out);
    assert_lines_within(out.bytes, 100);
    assert_int_equal(count_of(out.bytes, "\nWWWWWWWWWWWWW  1 m "), 1);
    recede_buffer_free(&out);
    recede_plan_free(plan);
}

static void cells_wrap_at_blanks(void **state)
{
    static const char *const cells[] = {"one two three", "", "caf\xC3\xA9 au lait", "abcdefgh"};
    static const size_t widths[] = {7, 2, 7, 3};
    recede_buffer out;
    (void)state;
    recede_buffer_start(&out, NULL);
    recede_columns_row(&out, cells, widths, 4);
    assert_string_equal(out.bytes, "one two      caf\xC3\xA9 au  abc\n"
                                   "three        lait     def\n"
                                   "                      gh\n");
    recede_buffer_free(&out);
    recede_columns_text(&out, "- one two three four", 9, 2);
    assert_string_equal(out.bytes, "- one two\n  three\n  four\n");
    recede_buffer_free(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_wash_has_its_row),
        cmocka_unit_test(long_names_wrap),
        cmocka_unit_test(cells_wrap_at_blanks),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
