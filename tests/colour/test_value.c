/* Munsell value: ASTM D1535. */
#include "recede.h"

#include "support/assert_near.h"

/* The quintic as the standard prints it, Y in percent, in long double. */
static long double percent_of_value(long double v)
{
    return 1.1914L * v - 0.22533L * v * v + 0.23352L * v * v * v - 0.020484L * v * v * v * v
           + 0.00081939L * v * v * v * v * v;
}

static long double value_of_percent(long double percent)
{
    long double low = 0, high = 10;
    for (int i = 0; i < 100; i++) {
        long double middle = (low + high) / 2;
        if (percent_of_value(middle) < percent)
            low = middle;
        else
            high = middle;
    }
    return (low + high) / 2;
}

/* ASTM D1535: Y = 19.27 at value 5. The other whole values are those of the
 * Munsell renotation (S. Newhall, D. Nickerson and D. Judd, JOSA 33 (1943)
 * 385-418), which took magnesium oxide for white, times 0.975; from memory. */
static void whole_values_have_their_published_y(void **state)
{
    (void)state;
    static const double over_oxide[11] = {0,     1.210, 3.126, 6.555, 12.00, 19.77,
                                          30.05, 43.06, 59.10, 78.66, 102.57};
    assert_near(100 * recede_y_of_value(5), 19.27, 0.005);
    for (int v = 0; v <= 10; v++)
        assert_near(100 * recede_y_of_value(v), 0.975 * over_oxide[v], 0.02);
}

static void y_is_the_quintic(void **state)
{
    (void)state;
    for (int i = 0; i <= 1000; i++) {
        double v = i / 100.0;
        assert_near(recede_y_of_value(v), (double)(percent_of_value(v) / 100), 1e-14);
    }
}

static void value_is_its_inverse(void **state)
{
    (void)state;
    for (int i = 0; i <= 2000; i++) {
        double y = pow(i / 2000.0, 3);
        assert_near(recede_value_of_y(y), (double)value_of_percent(100 * (long double)y), 1e-12);
    }
}

static void there_and_back(void **state)
{
    (void)state;
    for (int i = 0; i <= 1300; i++) {
        double v = i / 100.0;
        assert_near(recede_value_of_y(recede_y_of_value(v)), v, 1e-12);
    }
}

static void the_ends_are_exact(void **state)
{
    (void)state;
    assert_true(recede_y_of_value(0) == 0);
    assert_true(recede_y_of_value(10) == 1);
    assert_true(recede_value_of_y(0) == 0);
    assert_true(recede_value_of_y(1) == 10);
    assert_near(recede_value_of_y(nextafter(1, 0)), 10, 1e-14);
    assert_near(recede_value_of_y(1e-300), 0, 1e-15);
}

static void below_black_is_value_0(void **state)
{
    (void)state;
    assert_true(recede_value_of_y(-0.5) == 0);
    assert_true(recede_value_of_y(-INFINITY) == 0);
    assert_true(recede_y_of_value(-3) == 0);
}

static void above_white_value_rises_in_a_straight_line(void **state)
{
    (void)state;
    long double slope = (percent_of_value(10) - percent_of_value(10 - 1e-6L)) / 1e-6L / 100;
    for (int i = 1; i <= 10; i++) {
        assert_near(recede_y_of_value(10 + i), (double)(1 + i * slope), 1e-6);
        assert_near(recede_value_of_y((double)(1 + i * slope)), 10 + i, 1e-5);
    }
}

static void value_rises_with_y(void **state)
{
    (void)state;
    double before = -1;
    for (int i = 0; i <= 1500; i++) {
        double value = recede_value_of_y(i / 1000.0);
        assert_true(value > before);
        before = value;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(whole_values_have_their_published_y),
        cmocka_unit_test(y_is_the_quintic),
        cmocka_unit_test(value_is_its_inverse),
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(the_ends_are_exact),
        cmocka_unit_test(below_black_is_value_0),
        cmocka_unit_test(above_white_value_rises_in_a_straight_line),
        cmocka_unit_test(value_rises_with_y),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
