#include "air/integrals.h"

#include "support/assert_near.h"

/* M. Abramowitz and I. Stegun, Handbook of Mathematical Functions (1964), table
 * 5.4; E2 and E3 at 0.5 and 1 from memory. */
static void exponential_integrals_match_the_handbook(void **state)
{
    (void)state;
    recede_exponential_integrals zero = recede_exponential_integrals_at(0.0);
    recede_exponential_integrals half = recede_exponential_integrals_at(0.5);
    recede_exponential_integrals one = recede_exponential_integrals_at(1.0);
    assert_near(zero.e2, 1.0, 0.0);
    assert_near(zero.e3, 0.5, 0.0);
    assert_near(half.e2, 0.3266439, 1e-6);
    assert_near(half.e3, 0.2216044, 1e-6);
    assert_near(one.e2, 0.1484955, 1e-6);
    assert_near(one.e3, 0.1096920, 1e-6);
}

/* E_n(x) is the integral of m^(n - 2) exp(-x / m) for m from 0 to 1: midpoints. */
static void exponential_integrals_match_their_definition(void **state)
{
    (void)state;
    const double depths[] = {1e-4, 0.01, 0.3, 0.9999, 1.0, 1.0001, 2.0, 7.0, 30.0};
    for (size_t i = 0; i < sizeof depths / sizeof depths[0]; i++) {
        enum { STEPS = 200000 };
        double e2 = 0.0, e3 = 0.0;
        for (int k = 0; k < STEPS; k++) {
            double m = (k + 0.5) / STEPS, decay = exp(-depths[i] / m);
            e2 += decay / STEPS;
            e3 += m * decay / STEPS;
        }
        recede_exponential_integrals found = recede_exponential_integrals_at(depths[i]);
        assert_near(found.e2, e2, 1e-9);
        assert_near(found.e3, e3, 1e-9);
    }
}

static void mean_decay_holds_from_nothing_to_much(void **state)
{
    (void)state;
    assert_near(recede_mean_decay(0.0), 1.0, 0.0);
    assert_near(recede_mean_decay(1e-12), 1.0 - 0.5e-12, 1e-16);
    assert_near(recede_mean_decay(1e-4), 1.0 - 0.5e-4 + 1e-8 / 6.0, 1e-12);
    assert_near(recede_mean_decay(2.0), (1.0 - exp(-2.0)) / 2.0, 1e-15);
    assert_near(recede_mean_decay(1e300), 1e-300, 1e-310);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(exponential_integrals_match_the_handbook),
        cmocka_unit_test(exponential_integrals_match_their_definition),
        cmocka_unit_test(mean_decay_holds_from_nothing_to_much),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
