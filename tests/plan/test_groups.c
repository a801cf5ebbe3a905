/* A few values for many, against every way there is to divide them. Values are
 * invented: by a linear congruential generator (Numerical Recipes' constants,
 * from memory). */
#include <stdint.h>
#include <stdlib.h>

#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

enum { MOST = 9 };

static double next_random(uint32_t *state)
{
    *state = *state * 1664525u + 1013904223u;
    return (double)(*state >> 8) / 16777216.0;
}

/* Weighted squared error of one way to divide: block[i] is the block of i. */
static double error_of(const double *values, const double *weights, const int *block, int count)
{
    double sum[MOST] = {0}, weight[MOST] = {0}, total = 0, error = 0;
    for (int i = 0; i < count; i++) {
        sum[block[i]] += weights[i] * values[i];
        weight[block[i]] += weights[i];
        total += weights[i];
    }
    for (int i = 0; i < count; i++) {
        if (weights[i] == 0)
            continue;
        double off = values[i] - sum[block[i]] / weight[block[i]];
        error += weights[i] * off * off;
    }
    return error / total;
}

/* The least over all set partitions into at most so many blocks, neighbours or
 * not, by counting through the restricted growth strings. */
static double least_error(const double *values, const double *weights, int *block, int count,
                          int at, int used, int most)
{
    if (at == count)
        return error_of(values, weights, block, count);
    double least = INFINITY;
    for (int b = 0; b <= used && b < most; b++) {
        block[at] = b;
        double error = least_error(values, weights, block, count, at + 1,
                                   b == used ? used + 1 : used, most);
        if (error < least)
            least = error;
    }
    return least;
}

static void check_groups(const double *values, const double *weights, int count,
                         const recede_groups *groups, const int *group_of)
{
    double share = 0;
    assert_near(groups->error * groups->error, error_of(values, weights, group_of, count), 1e-12);
    for (int g = 0; g < groups->count; g++) {
        double sum = 0, weight = 0, total = 0;
        for (int i = 0; i < count; i++) {
            total += weights[i];
            sum += group_of[i] == g ? weights[i] * values[i] : 0;
            weight += group_of[i] == g ? weights[i] : 0;
        }
        assert_near(groups->value[g], sum / weight, 1e-12);
        assert_near(groups->share[g], weight / total, 1e-12);
        assert_true(g == 0 || groups->value[g] > groups->value[g - 1]);
        share += groups->share[g];
    }
    assert_near(share, 1.0, 1e-12);
}

static void no_other_division_is_better(void **state)
{
    (void)state;
    uint32_t random = 7;
    int cases = 0;
    for (int count = 1; count <= MOST; count++) {
        for (int wanted = 3; wanted <= 5; wanted++) {
            for (int turn = 0; turn < 12; turn++) {
                double values[MOST], weights[MOST];
                int group_of[MOST], block[MOST];
                recede_groups groups;
                for (int i = 0; i < count; i++) {
                    values[i] = 10 * next_random(&random);
                    if (turn % 4 == 1) /* many alike */
                        values[i] = floor(values[i] / 2);
                    weights[i] = turn % 3 == 0 ? 1 : next_random(&random);
                    if (turn % 5 == 4 && i > 0 && next_random(&random) < 0.3)
                        weights[i] = 0;
                }
                assert_int_equal(recede_group_values(values, turn % 3 ? weights : NULL,
                                                     (size_t)count, wanted, group_of, &groups,
                                                     NULL, NULL),
                                 RECEDE_OK);
                if (turn % 3 == 0)
                    for (int i = 0; i < count; i++)
                        weights[i] = 1;
                assert_true(groups.count >= 1 && groups.count <= wanted);
                check_groups(values, weights, count, &groups, group_of);
                double least = least_error(values, weights, block, count, 0, 0, wanted);
                assert_near(groups.error * groups.error, least, 1e-12);
                cases++;
            }
        }
    }
    assert_int_equal(cases, MOST * 3 * 12);
}

/* The means that a hand finds at once. */
static void plain_groups_are_found(void **state)
{
    (void)state;
    const double values[] = {8.4, 2.0, 5.1, 8.6, 2.2, 4.9};
    int group_of[6];
    recede_groups groups;
    assert_int_equal(recede_group_values(values, NULL, 6, 3, group_of, &groups, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(groups.count, 3);
    assert_near(groups.value[0], 2.1, 1e-12);
    assert_near(groups.value[1], 5.0, 1e-12);
    assert_near(groups.value[2], 8.5, 1e-12);
    assert_near(groups.error, 0.1, 1e-12);
    const int expected[] = {2, 0, 1, 2, 0, 1};
    assert_memory_equal(group_of, expected, sizeof expected);
}

/* The stated rule: the fewest from 3 whose error is 0.5 at most, else 5. */
static void left_open_it_takes_as_few_as_will_do(void **state)
{
    (void)state;
    uint32_t random = 99;
    int seen[RECEDE_MOST_GROUPS + 1] = {0};
    for (int turn = 0; turn < 300; turn++) {
        double values[40], error[RECEDE_MOST_GROUPS + 1];
        int group_of[40], expected = RECEDE_MOST_GROUPS;
        recede_groups groups;
        size_t count = 6 + (size_t)(34 * next_random(&random));
        double range = 1 + 12 * next_random(&random);
        for (size_t i = 0; i < count; i++)
            values[i] = range * next_random(&random);
        for (int g = RECEDE_MOST_GROUPS; g >= RECEDE_LEAST_GROUPS; g--) {
            recede_group_values(values, NULL, count, g, group_of, &groups, NULL, NULL);
            error[g] = groups.error;
            if (error[g] <= 0.5)
                expected = g;
        }
        assert_int_equal(recede_group_values(values, NULL, count, 0, group_of, &groups, NULL, NULL),
                         RECEDE_OK);
        assert_int_equal(groups.count, expected);
        assert_near(groups.error, error[expected], 0.0);
        seen[groups.count]++;
    }
    for (int g = RECEDE_LEAST_GROUPS; g <= RECEDE_MOST_GROUPS; g++)
        assert_true(seen[g] > 10);
}

static void what_weighs_nothing_joins_the_nearest(void **state)
{
    (void)state;
    const double values[] = {1, 3, 5, 7, 9, 4.4}, weights[] = {1, 1, 1, 1, 1, 0};
    const double none[] = {0, 0, 0, 0, 0, 0};
    int group_of[6], all_alike[6];
    recede_groups groups, alike;
    recede_group_values(values, weights, 6, 5, group_of, &groups, NULL, NULL);
    assert_int_equal(group_of[5], 2);
    assert_near(groups.error, 0.0, 1e-12);
    recede_group_values(values, none, 6, 3, group_of, &groups, NULL, NULL);
    recede_group_values(values, NULL, 6, 3, all_alike, &alike, NULL, NULL);
    assert_memory_equal(group_of, all_alike, sizeof group_of);
    assert_near(groups.error, alike.error, 0.0);
}

static void wrong_input_is_refused(void **state)
{
    (void)state;
    const double values[] = {1, 2, 3}, odd[] = {1, NAN, 3}, negative[] = {1, -1, 1};
    int group_of[3];
    recede_groups groups;
    recede_error error;
    assert_int_equal(recede_group_values(values, NULL, 0, 3, group_of, &groups, NULL, &error),
                     RECEDE_TOO_FEW);
    assert_int_equal(recede_group_values(values, NULL, 3, 2, group_of, &groups, NULL, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "groups");
    assert_int_equal(recede_group_values(values, NULL, 3, 6, group_of, &groups, NULL, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_int_equal(recede_group_values(odd, NULL, 3, 3, group_of, &groups, NULL, &error),
                     RECEDE_NOT_FINITE);
    assert_string_equal(error.path, "values");
    assert_int_equal(recede_group_values(values, negative, 3, 3, group_of, &groups, NULL, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "weights");
    for (size_t nth = 1; nth <= 3; nth++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, nth);
        recede_code code = recede_group_values(values, NULL, 3, 3, group_of, &groups, &allocator,
                                               &error);
        assert_int_equal(code, nth <= 2 ? RECEDE_NO_MEMORY : RECEDE_OK);
        assert_int_equal(memory.live, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_other_division_is_better),
        cmocka_unit_test(plain_groups_are_found),
        cmocka_unit_test(left_open_it_takes_as_few_as_will_do),
        cmocka_unit_test(what_weighs_nothing_joins_the_nearest),
        cmocka_unit_test(wrong_input_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
