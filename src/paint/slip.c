#include "paint/slip.h"

#include <math.h>

#include "paint/mix.h"

static double slipped(const recede_palette *palette, const recede_mix *mix, recede_lab target,
                      double times)
{
    recede_blend blend = recede_blend_of_mix(palette, mix);
    if (palette->medium == RECEDE_WATERCOLOUR) {
        blend.film = recede_film_of_water(times * mix->water);
    } else {
        for (int i = 0; i < blend.count; i++)
            if (palette->paints[blend.paint[i]].is_white)
                blend.amount[i] *= times;
    }
    return recede_delta_e(recede_blend_lab(palette, &blend), target);
}

double recede_slip(const recede_palette *palette, const recede_mix *mix, recede_lab target)
{
    if (mix->count == 0)
        return 0;
    return fmax(slipped(palette, mix, target, 0.75), slipped(palette, mix, target, 1.25));
}
