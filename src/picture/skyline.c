#include "picture/skyline.h"

#include "colour/memory.h"
#include "picture/houses.h"
#include "picture/noise.h"

#include <math.h>

/* A rise that falls off to both sides, more steeply on one. */
static double rise(double x, double summit, double left, double right)
{
    double t = (x - summit) / (x < summit ? left : right);
    return 1 / (1 + t * t * (1 + 0.6 * t * t));
}

/* A long ridge: a main summit, a shoulder and the small ups and downs of a
 * skyline, quieter with distance. */
static double ridge_at(const recede_look *look, double x, double span)
{
    uint32_t s = look->seed;
    double summit = recede_chance(s, 1, 0.12, 0.88) * span;
    double shoulder = recede_chance(s, 2, -0.25, 1.25) * span;
    double main_rise = rise(x, summit, recede_chance(s, 3, 0.22, 0.5),
                            recede_chance(s, 4, 0.22, 0.5));
    double side_rise = rise(x, shoulder, recede_chance(s, 5, 0.15, 0.4),
                            recede_chance(s, 6, 0.15, 0.4));
    double line = recede_noise_octaves(s + 11, x * 2.3, 5, 0.40 + 0.08 * look->nearness);
    return 0.95 * main_rise + 0.45 * side_rise + 0.42 * line;
}

/* Near ground: a slope that comes in from one side, and swells. */
static double bank_at(const recede_look *look, double x, double span)
{
    double tilt = recede_chance(look->seed, 8, 0, 1) < 0.5 ? 1 : -1;
    double across = span > 0 ? x / span - 0.5 : 0;
    return tilt * across * (0.9 + 0.8 * tilt * across)
         + 0.5 * recede_noise_octaves(look->seed + 12, x * 1.5, 3, 0.4);
}

static double ground_at(const recede_look *look, double x, double span)
{
    switch (look->form) {
    case RECEDE_LANDFORM_HILL:
        return ridge_at(look, x, span);
    case RECEDE_LANDFORM_BANK:
    case RECEDE_LANDFORM_FIELD:
    case RECEDE_LANDFORM_HOUSES:
        return 1.4 * bank_at(look, x, span);
    case RECEDE_LANDFORM_WATER:
        return 0;
    default:
        return 0.8 * recede_noise_octaves(look->seed + 13, x * 1.7, 3, 0.45);
    }
}

void recede_skyline_ground(const recede_terrain *t, const recede_band *band, float *height)
{
    double span = (double)t->width / t->size;
    for (size_t x = 0; x < t->width; x++) {
        double at = ((double)x + 0.5) / t->size;
        height[x] = (float)(band->relief * ground_at(&band->look, at, span));
    }
}

/* Underwood closes the gaps between trees. */
static void add_underwood(const recede_terrain *t, const recede_band *band, float *height)
{
    for (size_t x = 0; x < t->width; x++) {
        double at = ((double)x + 0.5) / band->growth;
        double uneven = recede_noise_octaves(band->look.seed + 24, at * 2.2, 3, 0.5);
        height[x] += (float)(band->growth * (0.30 + 0.10 * uneven));
    }
}

/* Grass along open ground: ragged, in patches, with bare stretches between. */
static void add_tufts(const recede_terrain *t, const recede_band *band, float *height)
{
    uint32_t s = band->look.seed;
    int bank = band->look.form == RECEDE_LANDFORM_BANK;
    double tuft = fmax(bank ? 0.4 * band->growth : band->growth, 1);
    for (size_t x = 0; x < t->width; x++) {
        double at = ((double)x + 0.5) / tuft;
        double patch = 0.45 + 0.8 * recede_noise_octaves(s + 21, at * 0.12, 2, 0.5);
        double blade = fabs(recede_noise_octaves(s + 22, at * 0.9, 4, 0.62));
        height[x] += (float)(0.5 * tuft * fmax(patch, 0.08) * blade);
    }
}

/* The outline of a clump, in radii above its centre, `across` radii from it: a
 * half round, then skirts that fall steeply to the ground. */
static double clump_outline(double across)
{
    double out = fabs(across);
    return out < 0.96 ? sqrt(1 - out * out) : 0.28 - 5 * (out - 0.96);
}

/* The upper outline of a heap of clumps, with the raggedness of leaves. */
static void add_crowns(const recede_terrain *t, const recede_band *band,
                       const recede_crowns *crowns, float *height)
{
    for (size_t i = 0; i < crowns->count; i++) {
        const recede_clump *c = &crowns->clumps[i];
        double r = (double)c->r, centre = (double)c->x, reach = 1.4 * r;
        double first = fmax(0, floor(centre - reach - 0.5) + 1);
        for (size_t x = (size_t)first; x < t->width && (double)x <= centre + reach; x++) {
            double outline = clump_outline(((double)x + 0.5 - centre) / r);
            if (r * (outline + 0.2) - (double)c->y <= (double)height[x])
                continue;
            double leaf = recede_noise_octaves(band->look.seed + 23, (double)x / r * 2.5, 3, 0.6);
            double top = r * (outline + 0.10 * leaf) - (double)c->y;
            height[x] = (float)fmax((double)height[x], top);
        }
    }
}

/* A moving mean as wide as the edge is soft: a soft edge has no sharp leaves. */
static recede_code soften(const recede_terrain *t, double edge, float *height)
{
    size_t reach = (size_t)(edge / 2), width = t->width;
    if (reach == 0 || width < 2)
        return RECEDE_OK;
    double *sums = recede_allocate_array(t->allocator, width + 1, sizeof *sums);
    if (!sums)
        return RECEDE_NO_MEMORY;
    sums[0] = 0;
    for (size_t x = 0; x < width; x++)
        sums[x + 1] = sums[x] + (double)height[x];
    for (size_t x = 0; x < width; x++) {
        size_t from = x > reach ? x - reach : 0;
        size_t to = x + reach + 1 < width ? x + reach + 1 : width;
        height[x] = (float)((sums[to] - sums[from]) / (double)(to - from));
    }
    recede_release(t->allocator, sums);
    return RECEDE_OK;
}

static recede_code add_growth(const recede_terrain *t, const recede_band *band, float *height)
{
    recede_crowns crowns;
    recede_code code = recede_terrain_crowns(t, band, &crowns);
    if (code)
        return code;
    add_crowns(t, band, &crowns, height);
    recede_release(t->allocator, crowns.clumps);
    return RECEDE_OK;
}

recede_code recede_skyline_draw(const recede_terrain *t, const recede_band *band, float *height)
{
    recede_code code = RECEDE_OK;
    recede_skyline_ground(t, band, height);
    recede_landform form = band->look.form;
    if (form == RECEDE_LANDFORM_BANK || form == RECEDE_LANDFORM_FIELD)
        add_tufts(t, band, height);
    else if (form == RECEDE_LANDFORM_HOUSES)
        recede_houses_raise(t, band, height);
    else if (band->growth > 0)
        add_underwood(t, band, height);
    if (recede_band_has_crowns(band))
        code = add_growth(t, band, height);
    return code ? code : soften(t, band->edge, height);
}
