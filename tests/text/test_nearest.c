/* Edit distances worked out by hand, and what is offered for a slip. */
#include <string.h>

#include "support/assert_near.h"
#include "text/nearest.h"

static void distances_count_single_slips(void **state)
{
    static const struct { const char *one, *other; size_t distance; } cases[] = {
        {"", "", 0},           {"oak", "oak", 0},      {"oak", "OAK", 0},  {"oak", "oaks", 1},
        {"oak", "ok", 1},      {"oak", "oat", 1},      {"oak", "aok", 1},  {"", "oak", 3},
        {"kitten", "sitting", 3}, {"ca", "abc", 3},    {"willow", "wllio", 3},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_int_equal(recede_edit_distance(cases[i].one, cases[i].other), cases[i].distance);
        assert_int_equal(recede_edit_distance(cases[i].other, cases[i].one), cases[i].distance);
    }
}

static void offer(const char *found, char *out, size_t size)
{
    static const char *const known[] = {"spring beech", "summer oak", "dark conifer",
                                        "meadow grass", "willow", "heather"};
    recede_nearest nearest;
    recede_nearest_start(&nearest, found);
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++)
        recede_nearest_offer(&nearest, known[i]);
    recede_nearest_say(&nearest, out, size);
}

static void slips_are_offered_what_was_meant(void **state)
{
    char out[200], cut[12];
    (void)state;
    offer("sumer oak", out, sizeof out);
    assert_string_equal(out, "did you mean \"summer oak\"?");
    offer("Heather", out, sizeof out);
    assert_string_equal(out, "did you mean \"heather\"?");
    offer("oak", out, sizeof out); /* a word of it */
    assert_string_equal(out, "did you mean \"summer oak\"?");
    offer("baobab", out, sizeof out); /* nothing is near: three all the same */
    assert_true(strncmp(out, "the nearest known are \"", 23) == 0);
    assert_int_equal(strlen(out) - strlen(strstr(out, " and \"")) > 23, 1);
    offer("baobab", cut, sizeof cut);
    assert_true(strlen(cut) < sizeof cut);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(distances_count_single_slips),
        cmocka_unit_test(slips_are_offered_what_was_meant),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
