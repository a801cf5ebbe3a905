/*
 * CIEDE2000: G. Sharma, W. Wu and E. Dalal, Color Research and Application 30
 * (2005) 21-30, kL = kC = kH = 1. Letters as there; bar: mean of the two.
 */
#include "colour/difference.h"

#include "colour/angle.h"

#include <math.h>

typedef struct polar { double c, h_deg; } polar;

/* Hues that differ by 180 degrees but for rounding count as such. */
static const double half_turn_deg = 180 + 1e-9;

/* sqrt(C^7 / (C^7 + 25^7)) */
static double saturate(double c)
{
    double seventh = pow(c / 25, 7);
    return isinf(seventh) ? 1 : sqrt(seventh / (seventh + 1));
}

static polar primed(recede_lab lab, double g)
{
    double a = (1 + g) * lab.a;
    return (polar){hypot(a, lab.b), recede_direction_deg(a, lab.b)};
}

static double hue_step_deg(polar one, polar other)
{
    double step = other.h_deg - one.h_deg;
    if (one.c * other.c == 0)
        return 0;
    if (step > half_turn_deg)
        return step - 360;
    return step < -half_turn_deg ? step + 360 : step;
}

static double mean_hue_deg(polar one, polar other)
{
    double sum = one.h_deg + other.h_deg;
    if (one.c * other.c == 0)
        return sum;
    if (fabs(one.h_deg - other.h_deg) <= half_turn_deg)
        return sum / 2;
    return (sum < 360 ? sum + 360 : sum - 360) / 2;
}

/* T, the hue's part in S_H */
static double hue_weight(double h_deg)
{
    return 1 - 0.17 * recede_cos_deg(h_deg - 30) + 0.24 * recede_cos_deg(2 * h_deg)
           + 0.32 * recede_cos_deg(3 * h_deg + 6) - 0.20 * recede_cos_deg(4 * h_deg - 63);
}

recede_difference recede_difference_of(recede_lab one, recede_lab other)
{
    double c_bar = (hypot(one.a, one.b) + hypot(other.a, other.b)) / 2;
    double g = 0.5 * (1 - saturate(c_bar));
    polar first = primed(one, g), second = primed(other, g);

    double l_step = other.l - one.l;
    double c_step = second.c - first.c;
    double h_step = 2 * sqrt(first.c * second.c)
                    * recede_sin_deg(hue_step_deg(first, second) / 2);

    double c_mean = (first.c + second.c) / 2;
    double h_mean_deg = mean_hue_deg(first, second);
    double l_off = (one.l + other.l) / 2 - 50;
    double s_l = 1 + 0.015 * l_off * l_off / sqrt(20 + l_off * l_off);
    double s_c = 1 + 0.045 * c_mean;
    double s_h = 1 + 0.015 * c_mean * hue_weight(h_mean_deg);

    double around = (h_mean_deg - 275) / 25;
    double turn_deg = 30 * exp(-around * around);
    double r_t = -recede_sin_deg(2 * turn_deg) * 2 * saturate(c_mean);

    return (recede_difference){l_step / s_l, c_step / s_c, h_step / s_h, r_t};
}

double recede_delta_e(recede_lab one, recede_lab other)
{
    recede_difference d = recede_difference_of(one, other);
    double square = d.l * d.l + d.c * d.c + d.h * d.h + d.turn * d.c * d.h;
    return sqrt(square < 0 ? 0 : square); /* |turn| <= 2 sin 60, but for rounding */
}
