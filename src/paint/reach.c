#include "paint/reach.h"

#include <math.h>

/* CIEDE2000: twice a plain difference; on a sheet seen alone it passes for the
 * colour wanted. Chosen for this work. */
#define REACHED_WITHIN 2.0

/* The lightness term of CIEDE2000, signed: above 0 where the mix is paler. */
static double lightness_term(recede_lab target, recede_lab mix)
{
    double m = 0.5 * (target.l + mix.l) - 50;
    return (mix.l - target.l) / (1 + 0.015 * m * m / sqrt(20 + m * m));
}

recede_reach recede_reach_of(double closest, recede_lab target, recede_lab mix, double delta_e)
{
    if (closest <= REACHED_WITHIN)
        return RECEDE_REACHABLE;
    double lightness = lightness_term(target, mix);
    if (2 * lightness * lightness < delta_e * delta_e)
        return RECEDE_TOO_VIVID;
    return lightness > 0 ? RECEDE_TOO_DARK : RECEDE_TOO_PALE;
}
