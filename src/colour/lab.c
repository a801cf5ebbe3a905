/*
 * CIE 1976 L*a*b*: ISO/CIE 11664-4.
 *
 *     L* = 116 f(Y/Yn) - 16, a* = 500 (f(X/Xn) - f(Y/Yn)), b* = 200 (f(Y/Yn) - f(Z/Zn))
 *     f(t) = t^(1/3) above (24/116)^3, else (841/108) t + 16/116
 */
#include "colour/angle.h"
#include "recede.h"

#include <math.h>

static const double knee = 24.0 / 116.0;
static const double slope = 841.0 / 108.0;
static const double foot = 16.0 / 116.0;

static double compress(double t)
{
    return t > knee * knee * knee ? cbrt(t) : slope * t + foot;
}

static double expand(double f)
{
    return f > knee ? f * f * f : (f - foot) / slope;
}

recede_lab recede_lab_of_xyz(recede_xyz colour, recede_xyz white)
{
    double fx = compress(colour.x / white.x);
    double fy = compress(colour.y / white.y);
    double fz = compress(colour.z / white.z);
    return (recede_lab){116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
}

recede_xyz recede_xyz_of_lab(recede_lab lab, recede_xyz white)
{
    double fy = (lab.l + 16) / 116;
    return (recede_xyz){white.x * expand(fy + lab.a / 500), white.y * expand(fy),
                        white.z * expand(fy - lab.b / 200)};
}

recede_lch recede_lch_of_lab(recede_lab lab)
{
    return (recede_lch){lab.l, hypot(lab.a, lab.b), recede_direction_deg(lab.a, lab.b)};
}
