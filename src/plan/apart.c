#include "plan/apart.h"

#include <math.h>

#include "colour/difference.h"

/* Half a step of value is commonly held to be the least that carries across a
 * room (common practice, no source). */
static const double LEAST_VALUE = 0.5;

/* Half a step of value is 5 in L*, which CIEDE2000 counts as 3.5 to 5. Eyes find
 * masses by value first, so hue and chroma must do at least as much: below 4 a
 * mix is called close, and a wash strays by as much when its water does. */
static const double LEAST_HUE = 4.0;

/* Chroma and hue with their rotation term: what is left of CIEDE2000 for two
 * colours of one lightness. */
static double hue_and_chroma(recede_lab one, recede_lab other)
{
    recede_difference d = recede_difference_of(one, other);
    double square = d.c * d.c + d.h * d.h + d.turn * d.c * d.h;
    return sqrt(fmax(square, 0.0)); /* below 0 only by rounding: |turn| < 2 */
}

static recede_apart judge(const recede_step *step)
{
    if (fabs(step->value) >= LEAST_VALUE)
        return RECEDE_APART_BY_VALUE;
    return step->hue >= LEAST_HUE ? RECEDE_APART_BY_COLOUR : RECEDE_NOT_APART;
}

recede_step recede_step_between(const recede_colour *behind, const recede_colour *own)
{
    recede_step step = {0};
    step.value = behind->value - own->value;
    step.colour = recede_delta_e(behind->lab, own->lab);
    step.hue = hue_and_chroma(behind->lab, own->lab);
    step.apart = judge(&step);
    return step;
}
