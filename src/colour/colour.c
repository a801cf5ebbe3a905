/* One colour in every form, relative to the white of the paper's world. */
#include "recede.h"

#include <math.h>

static double clip(double number, double most)
{
    return fmin(fmax(number, 0), most);
}

recede_colour recede_colour_of_xyz(recede_xyz xyz)
{
    recede_colour colour = {.xyz = xyz};
    recede_srgb srgb = recede_srgb_of_xyz(xyz);
    colour.lab = recede_lab_of_xyz(xyz, recede_white());
    colour.lch = recede_lch_of_lab(colour.lab);
    colour.srgb = (recede_srgb){clip(srgb.r, 1), clip(srgb.g, 1), clip(srgb.b, 1)};
    colour.value = clip(recede_value_of_y(xyz.y), 10);
    return colour;
}
