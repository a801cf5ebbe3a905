/* Reading: whole files, up to the limit and not a byte more. */
#include "file/folder.h"
#include "file/read.h"
#include "support/allocator.h"

static recede_file_problem problem;

static void files_are_read_up_to_the_limit(void **state)
{
    recede_buffer out;
    (void)state;
    put_file("a.txt", "0123456789");
    recede_buffer_start(&out, NULL);
    assert_int_equal(recede_file_read("a.txt", 10, &out, &problem), 0);
    assert_int_equal(out.size, 10);
    assert_string_equal(out.bytes, "0123456789");
    recede_buffer_free(&out);
    assert_int_equal(recede_file_read("a.txt", 9, &out, &problem), -1);
    assert_int_equal(problem.refused, 1);
    assert_string_equal(problem.text, "a.txt: the file is larger than the 9 bytes that are read; "
                                      "shorten it");
    recede_buffer_free(&out);
    put_file("a.txt", "");
    assert_int_equal(recede_file_read("a.txt", 9, &out, &problem), 0);
    assert_int_equal(out.size, 0);
    recede_buffer_free(&out);
}

static void an_endless_file_ends_at_the_limit(void **state)
{
    recede_buffer out;
    (void)state;
    recede_buffer_start(&out, NULL);
    assert_int_equal(recede_file_read("/dev/zero", 1 << 20, &out, &problem), -1);
    assert_int_equal(problem.refused, 1);
    recede_buffer_free(&out);
}

static void what_cannot_be_read_is_no_fault_of_the_content(void **state)
{
    static const struct { const char *path, *says; } cases[] = {
        {"none.txt", "none.txt: cannot be read: No such file or directory; check the name"},
        {".", ".: cannot be read: Is a directory; name a file"},
        {"a.txt/b", "Not a directory"},
        {"bad\nname\x1B", "bad?name?: cannot be read"},
    };
    recede_buffer out;
    (void)state;
    put_file("a.txt", "x");
    recede_buffer_start(&out, NULL);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_int_equal(recede_file_read(cases[i].path, 9, &out, &problem), -1);
        assert_int_equal(problem.refused, 0);
        if (!strstr(problem.text, cases[i].says))
            fail_msg("'%s', expected '%s'", problem.text, cases[i].says);
    }
    recede_buffer_free(&out);
}

static void memory_may_run_out(void **state)
{
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 1);
    recede_buffer out;
    (void)state;
    put_file("a.txt", "x");
    recede_buffer_start(&out, &allocator);
    assert_int_equal(recede_file_read("a.txt", 9, &out, &problem), -1);
    assert_int_equal(problem.refused, 0);
    recede_buffer_free(&out);
    assert_int_equal(memory.live, 0);
}

#define IN_FOLDER(test) cmocka_unit_test_setup_teardown(test, enter_folder, leave_folder)

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_FOLDER(files_are_read_up_to_the_limit),
        IN_FOLDER(an_endless_file_ends_at_the_limit),
        IN_FOLDER(what_cannot_be_read_is_no_fault_of_the_content),
        IN_FOLDER(memory_may_run_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
