#include "paint/reach.h"

#include <math.h>

/* The lightness term of CIEDE2000, signed: above 0 where the mix is paler. */
static double lightness_term(recede_lab target, recede_lab mix)
{
    double m = 0.5 * (target.l + mix.l) - 50;
    return (mix.l - target.l) / (1 + 0.015 * m * m / sqrt(20 + m * m));
}

recede_reach recede_reach_of(double closest, recede_lab target, recede_lab mix, double delta_e)
{
    if (closest <= 1e-6 * RECEDE_REACHED_MILLIONTHS)
        return RECEDE_REACHABLE;
    double lightness = lightness_term(target, mix);
    int duller = hypot(mix.a, mix.b) < hypot(target.a, target.b);
    if (duller && 2 * lightness * lightness < delta_e * delta_e)
        return RECEDE_TOO_VIVID;
    return lightness > 0 ? RECEDE_TOO_DARK : RECEDE_TOO_PALE;
}
