#include "paint/sweep.h"

#include "paint/mix.h"

void recede_sweep_start(recede_sweep *sweep, const recede_palette *palette)
{
    sweep->palette = palette;
    sweep->levels = recede_palette_levels(palette);
}

void recede_sweep_take(recede_sweep *sweep, const recede_mix *mix)
{
    recede_blend blend = recede_blend_of_mix(sweep->palette, mix);
    recede_blend_layer(sweep->palette, &blend, &sweep->layer);
}

recede_xyz recede_sweep_xyz(const recede_sweep *sweep, size_t level)
{
    double seen[RECEDE_BANDS];
    recede_layer_seen(&sweep->layer, recede_palette_film(sweep->palette, recede_water_at(level)),
                      sweep->palette->paper_internal, seen);
    return recede_palette_xyz(sweep->palette, seen);
}
