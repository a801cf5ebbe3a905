/* The sheet of the order of work: its type, and what the medium calls for at its end.
 * Plans of small palettes. */
#include "draw/work.h"

#include "draw/sheet_log.h"
#include "text/plans.h"

/* How many texts of the sheet begin so. */
static size_t beginning(const char *scene, const char *start)
{
    recede_type_log log = {0};
    const recede_sheet_options options = {.log = &log};
    const recede_work_wish wish = {RECEDE_MOST_WELLS, 0};
    static recede_work work;
    double shares[RECEDE_MOST_PLANES + 1];
    size_t count = 0;
    recede_plan *plan = test_plan(scene);
    recede_buffer pdf;
    assert_int_equal(recede_picture_shares(plan, shares, NULL, NULL), RECEDE_OK);
    assert_int_equal(recede_work_of(plan, shares, &wish, NULL, NULL, NULL, &work, NULL), RECEDE_OK);
    const recede_work_told told = {plan, &work, NULL, 0};
    recede_buffer_start(&pdf, NULL);
    assert_int_equal(recede_work_pdf(&told, &options, &pdf), RECEDE_SHEET_OK);
    assert_true(sheet_log_check(&log) >= 1);
    for (size_t i = 0; i < log.count; i++)
        count += strncmp(log.records[i].text, start, strlen(start)) == 0;
    recede_buffer_free(&pdf);
    sheet_log_free(&log);
    recede_plan_free(plan);
    return count;
}

static void oil_tells_of_solvents_once_and_no_other_medium_does(void **state)
{
    (void)state;
    assert_int_equal(beginning(test_oil, "Solvents, mediums and drying oils"), 1);
    assert_int_equal(beginning(test_watercolour, "Solvents"), 0);
}

static void the_sky_has_a_top(void **state)
{
    (void)state;
    assert_int_equal(beginning(test_watercolour, "top of the sky"), 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(oil_tells_of_solvents_once_and_no_other_medium_does),
        cmocka_unit_test(the_sky_has_a_top),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
