#include "picture/modelling.h"

#include "colour/memory.h"
#include "picture/grid.h"
#include "picture/houses.h"
#include "picture/sketch.h"

#include <math.h>
#include <string.h>

/* A band being modelled: what the steps below share. */
typedef struct work {
    const recede_terrain *terrain;
    const recede_band *band;
    const recede_lighting *light;
    recede_grid *grid;
} work;

static void fill(const work *w, recede_relief *relief)
{
    recede_grid *g = w->grid;
    if (recede_sketch_recall(w->band, relief, g))
        return;
    for (size_t r = 0; r < g->rows; r++)
        for (size_t c = 0; c < g->columns; c++)
            if (r >= g->first[c] && r < g->end[c])
                g->light[r * g->columns + c] =
                    (float)relief(w->terrain, w->band, recede_grid_spot(g, c, r));
    recede_sketch_keep(w->terrain, w->band, relief, g);
}

/* From heights to light: what rises toward the sun's side is lit. */
static void slope_to_light(const work *w)
{
    recede_grid *g = w->grid;
    double cells = w->terrain->size / (double)g->step / 12;
    for (size_t r = 0; r < g->rows; r++) {
        float *row = g->light + r * g->columns;
        const float *under = r + 1 < g->rows ? row + g->columns : row;
        for (size_t c = 0; c < g->columns; c++) {
            double right = c + 1 < g->columns ? (double)(row[c + 1] - row[c]) : 0;
            double down = (double)(under[c] - row[c]);
            row[c] = (float)(cells * (-right * w->light->x + down * w->light->y));
        }
    }
}

/* How fast the ground rises to the right at a column of the grid, the small
 * ups and downs left out; beyond the grid as at its end. */
static double slope_at(const work *w, double column, size_t span)
{
    const recede_grid *g = w->grid;
    size_t c = column < 0 ? 0 : column < (double)g->columns ? (size_t)column : g->columns - 1;
    size_t from = c > span ? c - span : 0, to = c + span < g->columns ? c + span : g->columns - 1;
    return (double)(g->ground[from] - g->ground[to]) / (double)((to - from) * g->step);
}

/* A ridge's own slope tells on the ground beneath it, less and less downward,
 * along spurs that come down aslant, away from the light. */
static void add_skyline_slope(const work *w)
{
    recede_grid *g = w->grid;
    double step = (double)g->step, reach = 0.06 * w->terrain->size + w->band->depth * 0.4;
    double aslant = w->light->x < 0 ? 0.7 : 0, fading = exp(-step / reach);
    size_t span = (size_t)(0.03 * w->terrain->size / step) + 1;
    for (size_t c = 0; c < g->columns; c++) {
        double strength = 4.5;
        for (size_t r = g->first[c]; r < g->end[c]; r++) {
            double below = fmax(0, recede_grid_spot(g, c, r).below);
            double slope = slope_at(w, (double)c - aslant * below / step, span);
            g->light[r * g->columns + c] -= (float)(strength * slope * w->light->x);
            if (below > 0)
                strength *= fading;
        }
    }
}

static double dot(const recede_lighting *l, double x, double y, double z)
{
    return x * l->x + y * l->y + z * l->z;
}

/* The light on a place of a clump, a ball of leaves on the ball of its crown. */
static double light_on_clump(const work *w, const recede_clump *c, double x, double y,
                             double across, double up)
{
    double cx = (x - (double)c->crown_x) / (double)c->crown_rx;
    double cy = (w->band->base_y + (double)c->crown_y - y) / (double)c->crown_ry;
    double whole = dot(w->light, cx, cy, sqrt(fmax(0, 1 - fmin(1, cx * cx + cy * cy))));
    double part = dot(w->light, across, up, sqrt(fmax(0, 1 - across * across - up * up)));
    return 0.32 * part + 0.85 * whole;
}

/* Leaves push a clump's rim out or in; beyond 1.3 radii there are none. Above
 * a clump stray leaves take its light where no other clump does. */
static int is_of_clump(double across, double up, double leaf, float under)
{
    double rim = across * across + up * up;
    return rim <= 1 + 0.9 * leaf || (up > 0.2 && rim < 1.6 && under == (float)RECEDE_UNDER_TREES);
}

static void model_clump(const work *w, const recede_clump *c, const float *leaves)
{
    recede_grid *g = w->grid;
    double step = (double)g->step, centre_y = w->band->base_y + (double)c->y, r = (double)c->r;
    double first_row = fmax(0, floor((centre_y - 1.3 * r - g->top) / step) + 1);
    double first_column = fmax(0, floor(((double)c->x - 1.3 * r) / step) + 1);
    for (size_t row = (size_t)first_row; row < g->rows; row++) {
        double y = g->top + (double)row * step, up = (centre_y - y) / r;
        if (up < -1.3)
            break;
        for (size_t column = (size_t)first_column; column < g->columns; column++) {
            double x = (double)column * step, across = (x - (double)c->x) / r;
            if (across > 1.3)
                break;
            double leaf = (double)leaves[row * g->columns + column];
            float *cell = &g->light[row * g->columns + column];
            if (is_of_clump(across, up, leaf, *cell))
                *cell = (float)(light_on_clump(w, c, x, y, across, up) + 0.30 * leaf);
        }
    }
}

/* Crowns over what lies under them: among trees the floor of the wood, on a
 * bank the ground. */
static recede_code model_crowns(const work *w)
{
    recede_crowns crowns;
    recede_grid *g = w->grid;
    size_t cells = g->rows * g->columns;
    float *leaves = recede_allocate_array(w->terrain->allocator, cells, sizeof *leaves);
    if (!leaves)
        return RECEDE_NO_MEMORY;
    recede_code code = recede_terrain_crowns(w->terrain, w->band, &crowns);
    if (!code) {
        fill(w, recede_relief_leaves);
        memcpy(leaves, g->light, cells * sizeof *leaves);
        int bank = w->band->look.form == RECEDE_LANDFORM_BANK;
        fill(w, bank ? recede_relief_ground : recede_relief_wood_floor);
        for (size_t i = 0; i < crowns.count; i++)
            model_clump(w, &crowns.clumps[i], leaves);
        recede_release(w->terrain->allocator, crowns.clumps);
    }
    recede_release(w->terrain->allocator, leaves);
    return code;
}

static recede_code model(const work *w)
{
    recede_landform form = w->band->look.form;
    if (recede_band_has_crowns(w->band))
        return model_crowns(w);
    if (form == RECEDE_LANDFORM_WATER) {
        fill(w, recede_relief_water);
    } else if (form == RECEDE_LANDFORM_BANK || form == RECEDE_LANDFORM_FIELD) {
        fill(w, recede_relief_ground);
    } else if (form == RECEDE_LANDFORM_HOUSES) {
        fill(w, recede_relief_ground);
        recede_houses_model(w->terrain, w->band, w->light, w->grid);
    } else {
        fill(w, recede_relief_hill);
        slope_to_light(w);
        add_skyline_slope(w);
    }
    return RECEDE_OK;
}

recede_code recede_modelling(const recede_terrain *t, const recede_band *band,
                             const recede_lighting *light, recede_grid *out)
{
    work w = {t, band, light, out};
    recede_code code = recede_grid_lay(t, band, out);
    if (code)
        return code;
    code = model(&w);
    if (!code)
        code = recede_grid_divide(t, band, light, out);
    if (code)
        recede_grid_clear(t, out);
    return code;
}
