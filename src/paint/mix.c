#include "paint/mix.h"

#include <math.h>

#include "paint/rule.h"

recede_blend recede_blend_of_mix(const recede_palette *palette, const recede_mix *mix)
{
    recede_blend blend = {.count = mix->count,
                          .film = recede_palette_film(palette, mix->water)};
    for (int i = 0; i < mix->count; i++) {
        blend.paint[i] = mix->paint[i];
        blend.amount[i] = mix->parts[i];
    }
    return blend;
}

recede_blend recede_blend_halves(const recede_palette *palette, const recede_mix *one,
                                 const recede_mix *other)
{
    recede_blend blend = {0};
    const recede_mix *halves[2] = {one, other};
    for (int half = 0; half < 2; half++) {
        const recede_mix *mix = halves[half];
        if (mix->count == 0)
            continue;
        double film = recede_palette_film(palette, mix->water);
        double paint = isinf(film) ? 1 : film;
        for (int i = 0; i < mix->count; i++) {
            blend.paint[blend.count] = mix->paint[i];
            blend.amount[blend.count++] = paint * mix->parts[i] / recede_mix_parts(mix);
        }
        blend.film += 0.5 * film;
    }
    return blend;
}

void recede_blend_layer(const recede_palette *palette, const recede_blend *blend,
                        recede_layer *layer)
{
    double total = 0;
    for (int i = 0; i < blend->count; i++)
        total += blend->amount[i];
    for (int band = 0; band < RECEDE_BANDS; band++)
        layer->k[band] = layer->s[band] = 0;
    for (int i = 0; i < blend->count; i++) {
        const recede_paint *paint = &palette->paints[blend->paint[i]];
        double share = blend->amount[i] / total;
        for (int band = 0; band < RECEDE_BANDS; band++) {
            layer->k[band] += share * paint->k.at[band];
            layer->s[band] += share * paint->s.at[band];
        }
    }
    recede_layer_prepare(layer);
}

recede_lab recede_blend_lab(const recede_palette *palette, const recede_blend *blend)
{
    if (blend->count == 0)
        return recede_palette_lab(palette, palette->paper.at);
    recede_layer layer;
    double seen[RECEDE_BANDS];
    recede_blend_layer(palette, blend, &layer);
    recede_layer_seen(&layer, blend->film, palette->paper_internal, seen);
    return recede_palette_lab(palette, seen);
}

static recede_spectrum blend_on(const recede_palette *palette, const recede_blend *blend,
                                const recede_spectrum *ground)
{
    if (!ground)
        ground = &palette->paper;
    if (blend->count == 0)
        return *ground;
    recede_layer layer;
    recede_spectrum seen = {{0}};
    double internal[RECEDE_BANDS];
    recede_blend_layer(palette, blend, &layer);
    for (int band = 0; band < RECEDE_BANDS; band++)
        internal[band] = recede_internal_of_seen(ground->at[band]);
    recede_layer_seen(&layer, blend->film, internal, seen.at);
    return seen;
}

recede_spectrum recede_mix_reflectance(const recede_palette *palette, const recede_mix *mix,
                                       const recede_spectrum *ground)
{
    recede_blend blend = recede_blend_of_mix(palette, mix);
    return blend_on(palette, &blend, ground);
}

recede_spectrum recede_half_and_half(const recede_palette *palette, const recede_mix *one,
                                     const recede_mix *other, const recede_spectrum *ground)
{
    recede_blend blend = recede_blend_halves(palette, one, other);
    return blend_on(palette, &blend, ground);
}
