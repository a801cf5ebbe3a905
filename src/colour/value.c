/*
 * Munsell value: ASTM D1535. With Y in percent of the perfect reflector,
 *
 *     Y = 1.1914 V - 0.22533 V^2 + 0.23352 V^3 - 0.020484 V^4 + 0.00081939 V^5
 *
 * which is 100 at V = 10 and rises all the way.
 */
#include "recede.h"

static const double most = 10;

static double quintic(double v)
{
    return v * (1.1914 + v * (-0.22533 + v * (0.23352 + v * (-0.020484 + v * 0.00081939)))) / 100;
}

static double quintic_slope(double v)
{
    return (1.1914 + v * (-0.45066 + v * (0.70056 + v * (-0.081936 + v * 0.00409695)))) / 100;
}

double recede_y_of_value(double value)
{
    if (value <= 0)
        return 0;
    if (value >= most)
        return 1 + (value - most) * quintic_slope(most);
    return quintic(value);
}

/* Newton's steps, kept inside the bracket by halving it where they leave it. */
double recede_value_of_y(double y)
{
    if (y <= 0)
        return 0;
    if (y >= 1)
        return most + (y - 1) / quintic_slope(most);
    double low = 0, high = most, value = 5;
    for (int step = 0; step < 60; step++) {
        double excess = quintic(value) - y;
        if (excess > 0)
            high = value;
        else
            low = value;
        double next = value - excess / quintic_slope(value);
        if (!(next > low && next < high))
            next = low + (high - low) / 2;
        if (next == value)
            break;
        value = next;
    }
    return value;
}
