/* What the tables say of handling paint: cautions of the paints in use, each once, of
 * the medium, and of the sun where the scene looks toward it. */
#include <string.h>

#include "support/assert_near.h"
#include "text/plan_write.h"
#include "text/plans.h"
#include "text/words_media.h"

static recede_buffer out;

/* The end of a plan's table, from "Take care:" on, its lines joined. */
static const char *care_of(const char *scene)
{
    recede_plan *plan = test_plan(scene);
    recede_buffer_free(&out);
    recede_buffer_start(&out, NULL);
    recede_plan_table(plan, &out);
    recede_plan_free(plan);
    char *care = strstr(out.bytes, "\nTake care:\n");
    if (!care)
        fail_msg("nothing is said of care: %s", out.bytes);
    for (char *at = care; *at; at++)
        if (at[0] == '\n' && at[1] == ' ')
            memmove(at, at + 1, strlen(at));
        else if (at[0] == '\n')
            at[0] = '|';
    for (char *two; (two = strstr(care, "  "));)
        memmove(two, two + 1, strlen(two));
    return care;
}

static size_t count_of(const char *text, const char *part)
{
    size_t count = 0;
    for (; (text = strstr(text, part)); text++)
        count++;
    return count;
}

static const char *caution_of(const char *name)
{
    for (size_t i = 0; i < recede_pigment_count(); i++)
        if (strcmp(recede_pigment_at(i)->name, name) == 0)
            return recede_pigment_at(i)->caution;
    fail_msg("no %s", name);
    return "";
}

static void oil_tells_of_its_white_and_of_rags(void **state)
{
    (void)state;
    char white[300];
    const char *care = care_of(test_oil);
    snprintf(white, sizeof white, "|- titanium white: %s|", caution_of("titanium white"));
    assert_non_null(strstr(care, white));
    assert_int_equal(count_of(care, caution_of("titanium white")), 1);
    assert_int_equal(count_of(care, recede_trade_of(RECEDE_OIL)->caution), 1);
    assert_null(strstr(care, "the sun:"));
}

/* One paint, which has a caution, and one that the picture has no use for. */
static void only_paints_in_use_are_told_of(void **state)
{
    (void)state;
    const char *care = care_of("{\"light\":{\"sun_height\":40,\"sun_side\":150},"
                               "\"paint\":{\"palette\":[\"cobalt blue\",\"viridian\"],"
                               "\"most_pigments\":1,\"most_parts\":1},\"planes\":[{\"name\":\"a\","
                               "\"distance\":20000,\"colour\":\"#3040a0\"}]}");
    assert_non_null(strstr(care, "|- cobalt blue: cobalt"));
    assert_null(strstr(care, "viridian"));
    assert_null(strstr(care, "Rags"));
    assert_null(strstr(care, "the sun:"));
}

static void who_looks_toward_the_sun_is_told(void **state)
{
    (void)state;
    assert_non_null(strstr(care_of(test_watercolour), "|- the sun: never look into it"));
}

static int stop(void **state)
{
    (void)state;
    recede_buffer_free(&out);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(oil_tells_of_its_white_and_of_rags),
        cmocka_unit_test(only_paints_in_use_are_told_of),
        cmocka_unit_test(who_looks_toward_the_sun_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, stop);
}
