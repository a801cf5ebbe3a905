/* What an error says. */
#include "colour/error.h"

#include "support/assert_near.h"

#include <stdint.h>
#include <string.h>

/* An error full of remains. */
static recede_error used(void)
{
    recede_error error;
    memset(&error, 0x55, sizeof error);
    return error;
}

static void a_failure_sets_every_field(void **state)
{
    (void)state;
    recede_error error = used();
    assert_int_equal(recede_fail(&error, RECEDE_CONFLICT, "planes[2].crest"), RECEDE_CONFLICT);
    assert_int_equal(error.code, RECEDE_CONFLICT);
    assert_string_equal(error.path, "planes[2].crest");
    assert_string_equal(error.found, "");
    assert_near(error.number, 0, 0);
    assert_near(error.least, 0, 0);
    assert_near(error.most, 0, 0);
}

static void a_number_out_of_range_comes_with_its_limits(void **state)
{
    (void)state;
    recede_error error = used();
    assert_int_equal(recede_fail_range(&error, "air.visibility", 300, 0.02, 250),
                     RECEDE_OUT_OF_RANGE);
    assert_int_equal(error.code, RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "air.visibility");
    assert_near(error.number, 300, 0);
    assert_near(error.least, 0.02, 0);
    assert_near(error.most, 250, 0);
}

static void what_is_no_number_is_not_finite(void **state)
{
    (void)state;
    const double bad[] = {NAN, INFINITY, -INFINITY};
    for (size_t i = 0; i < 3; i++) {
        recede_error error = used();
        assert_int_equal(recede_fail_range(&error, "x", bad[i], 0, 1), RECEDE_NOT_FINITE);
        assert_int_equal(recede_check_range(&error, "x", bad[i], -INFINITY, INFINITY),
                         RECEDE_NOT_FINITE);
        assert_int_equal(error.code, RECEDE_NOT_FINITE);
    }
}

static void a_range_holds_both_its_ends(void **state)
{
    (void)state;
    recede_error error = used(), before = error;
    assert_int_equal(recede_check_range(&error, "x", 1, 1, 2), RECEDE_OK);
    assert_int_equal(recede_check_range(&error, "x", 2, 1, 2), RECEDE_OK);
    assert_memory_equal(&error, &before, sizeof error);
    assert_int_equal(recede_check_range(&error, "x", nextafter(1, 0), 1, 2), RECEDE_OUT_OF_RANGE);
    assert_int_equal(recede_check_range(&error, "x", nextafter(2, 3), 1, 2), RECEDE_OUT_OF_RANGE);
}

static void a_name_is_kept(void **state)
{
    (void)state;
    recede_error error = used();
    assert_int_equal(recede_fail_name(&error, RECEDE_UNKNOWN_NAME, "planes[0].foliage", "elmm"),
                     RECEDE_UNKNOWN_NAME);
    assert_string_equal(error.path, "planes[0].foliage");
    assert_string_equal(error.found, "elmm");
}

static void a_count_is_kept(void **state)
{
    (void)state;
    recede_error error = used();
    assert_int_equal(recede_fail_count(&error, RECEDE_TOO_MANY, "planes", 65, 1, 64),
                     RECEDE_TOO_MANY);
    assert_near(error.number, 65, 0);
    assert_near(error.least, 1, 0);
    assert_near(error.most, 64, 0);
}

static void no_error_wanted_is_no_harm(void **state)
{
    (void)state;
    assert_int_equal(recede_fail(NULL, RECEDE_NO_MEMORY, "x"), RECEDE_NO_MEMORY);
    assert_int_equal(recede_fail_range(NULL, "x", 2, 0, 1), RECEDE_OUT_OF_RANGE);
    assert_int_equal(recede_fail_range(NULL, "x", NAN, 0, 1), RECEDE_NOT_FINITE);
    assert_int_equal(recede_fail_name(NULL, RECEDE_DUPLICATE, "x", "y"), RECEDE_DUPLICATE);
    assert_int_equal(recede_fail_count(NULL, RECEDE_TOO_FEW, "x", 0, 1, 2), RECEDE_TOO_FEW);
    assert_int_equal(recede_check_range(NULL, "x", 2, 0, 1), RECEDE_OUT_OF_RANGE);
}

static void long_texts_are_cut(void **state)
{
    (void)state;
    char text[400];
    memset(text, 'a', sizeof text - 1);
    text[sizeof text - 1] = '\0';
    recede_error error = used();
    recede_fail_name(&error, RECEDE_UNKNOWN_NAME, text, text);
    assert_int_equal(strlen(error.path), sizeof error.path - 1);
    assert_int_equal(strlen(error.found), sizeof error.found - 1);
}

/* A text is never cut inside a character, whatever its length in bytes. */
static void characters_stay_whole(void **state)
{
    (void)state;
    const char *text = "a\xC3\xA9\xE2\x82\xAC\xF0\x9F\x8C\xB3"; /* 1, 2, 3 and 4 bytes */
    const size_t ends[] = {0, 1, 1, 3, 3, 3, 6, 6, 6, 6, 10, 10};
    for (size_t room = 0; room <= 11; room++) {
        char out[16];
        memset(out, 'x', sizeof out);
        size_t length = recede_copy_text(out, room + 1, text);
        assert_int_equal(length, ends[room]);
        assert_memory_equal(out, text, length);
        assert_int_equal(out[length], '\0');
        assert_int_equal(out[room + 1], 'x');
    }
    char untouched = 'x';
    assert_int_equal(recede_copy_text(&untouched, 0, text), 0);
    assert_int_equal(untouched, 'x');
}

static void paths_are_built_from_parts(void **state)
{
    (void)state;
    char path[96];
    recede_path_index(path, sizeof path, "planes", 2, "distance");
    assert_string_equal(path, "planes[2].distance");
    recede_path_index(path, sizeof path, "planes", 0, NULL);
    assert_string_equal(path, "planes[0]");
    recede_path_index(path, sizeof path, "planes", 63, "");
    assert_string_equal(path, "planes[63]");
    recede_path_index(path, sizeof path, "p", SIZE_MAX, "x");
    char expected[96];
    snprintf(expected, sizeof expected, "p[%zu].x", (size_t)SIZE_MAX);
    assert_string_equal(path, expected);
    recede_path_field(path, sizeof path, "light", "sun_height");
    assert_string_equal(path, "light.sun_height");
}

static void paths_are_cut_at_the_room_there_is(void **state)
{
    (void)state;
    const char *whole = "planes[12].share";
    for (size_t size = 0; size <= strlen(whole) + 2; size++) {
        char path[32];
        memset(path, 'x', sizeof path);
        recede_path_index(path, size, "planes", 12, "share");
        if (size) {
            size_t length = size - 1 < strlen(whole) ? size - 1 : strlen(whole);
            assert_int_equal(strlen(path), length);
            assert_memory_equal(path, whole, length);
        }
        assert_int_equal(path[size], 'x');
    }
    char untouched = 'x';
    recede_path_field(&untouched, 0, "light", "sun_height");
    assert_int_equal(untouched, 'x');
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_failure_sets_every_field),
        cmocka_unit_test(a_number_out_of_range_comes_with_its_limits),
        cmocka_unit_test(what_is_no_number_is_not_finite),
        cmocka_unit_test(a_range_holds_both_its_ends),
        cmocka_unit_test(a_name_is_kept),
        cmocka_unit_test(a_count_is_kept),
        cmocka_unit_test(no_error_wanted_is_no_harm),
        cmocka_unit_test(long_texts_are_cut),
        cmocka_unit_test(characters_stay_whole),
        cmocka_unit_test(paths_are_built_from_parts),
        cmocka_unit_test(paths_are_cut_at_the_room_there_is),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
