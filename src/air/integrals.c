#include "air/integrals.h"

#include <math.h>

#define EULER_GAMMA 0.57721566490153286061

double recede_mean_decay(double x)
{
    return x == 0.0 ? 1.0 : -expm1(-x) / x;
}

/* Abramowitz and Stegun 5.1.11, for 0 < x <= 1. */
static double e1_series(double x)
{
    double term = 1.0, sum = 0.0;
    for (int n = 1; n <= 24; n++) {
        term *= -x / n;
        sum -= term / n;
    }
    return sum - EULER_GAMMA - log(x);
}

/* Abramowitz and Stegun 5.1.22, the even form, from its tail; for x > 1. */
static double e1_fraction(double x)
{
    double tail = 0.0;
    for (int n = 80; n >= 1; n--)
        tail = n * (double)n / (x + 2.0 * n + 1.0 - tail);
    return exp(-x) / (x + 1.0 - tail);
}

/* E(n + 1) = (exp(-x) - x E(n)) / n, Abramowitz and Stegun 5.1.14. */
recede_exponential_integrals recede_exponential_integrals_at(double x)
{
    recede_exponential_integrals at = {1.0, 0.5};
    if (x > 0.0) {
        double e1 = x <= 1.0 ? e1_series(x) : e1_fraction(x);
        at.e2 = exp(-x) - x * e1;
        at.e3 = 0.5 * (exp(-x) - x * at.e2);
    }
    return at;
}
