#include "paint/probe.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/mixes.h"
#include "paint/nearness.h"
#include "paint/rule.h"
#include "paint/sweep.h"

enum { STRETCH = RECEDE_STRETCH_LEVELS };

/* What single precision, and a band that thickens paler by less than PALER, may do
 * to L*. */
#define L_SLACK 0.02
#define PALER 1e-5f

/* One mix while its films are held against the targets. */
typedef struct {
    const recede_probe *probe;
    const recede_mix *mix;
    recede_curve_films curve;
    recede_stretch nodes; /* where darker with more paint: a stretch of nodes */
    int falls;
    int swept;
    recede_sweep sweep;
} bearing;

static int last_level(const recede_probe *probe)
{
    return (int)probe->maker.levels - 1;
}

/* Eight levels from the first to the last. */
static int node_level(const recede_probe *probe, int node)
{
    return node * last_level(probe) / (STRETCH - 1);
}

static recede_code make_set(recede_probe *probe, const recede_palette *palette,
                            const recede_spectrum *ground)
{
    probe->set = recede_allocate_array(probe->allocator, 1, sizeof *probe->set +
                                       RECEDE_MOST_IN_MIX * sizeof probe->set->paints[0]);
    if (!probe->set)
        return RECEDE_NO_MEMORY;
    *probe->set = *palette;
    probe->set->count = 0;
    probe->set->paper = *ground;
    for (int band = 0; band < RECEDE_BANDS; band++)
        probe->set->paper_internal[band] = recede_internal_of_seen(ground->at[band]);
    return RECEDE_OK;
}

recede_code recede_probe_start(recede_probe *probe, const recede_palette *palette,
                               const recede_spectrum *ground, const recede_lab *targets,
                               size_t count, const recede_allocator *allocator)
{
    memset(probe, 0, sizeof *probe);
    probe->allocator = allocator;
    probe->count = count;
    probe->aims = recede_allocate_array(allocator, count, sizeof *probe->aims);
    if (!probe->aims || make_set(probe, palette, ground)) {
        recede_probe_end(probe);
        return RECEDE_NO_MEMORY;
    }
    for (size_t i = 0; i < count; i++)
        recede_aim_at(&probe->aims[i], targets[i]);
    recede_curve_start(&probe->maker, probe->set);
    probe->nodes = probe->maker;
    for (int node = 0; node < STRETCH; node++)
        probe->nodes.film[node] = probe->maker.film[node_level(probe, node)];
    return RECEDE_OK;
}

void recede_probe_end(recede_probe *probe)
{
    recede_release(probe->allocator, probe->aims);
    recede_release(probe->allocator, probe->set);
    probe->aims = NULL;
    probe->set = NULL;
}

void recede_probe_take(recede_probe *probe, int slot, const recede_paint *paint)
{
    probe->set->paints[slot] = *paint;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        probe->maker.k[slot][band] = (float)paint->k.at[band];
        probe->maker.s[slot][band] = (float)paint->s.at[band];
    }
}

/* 1 when more paint makes every band darker. With e = exp(-2 bSX), falling as the
 * film thickens, reflectance is (A + B e) / (C + D e), which rises with e where
 * B C > A D; from e = 0 to 1 by (B C - A D) / (C (C + D)). */
static int falls(const recede_curve_films *f)
{
    int yes = 1;
    for (int band = 0; band < RECEDE_BANDS; band++)
        yes &= f->b[band] * f->c[band] - f->a[band] * f->d[band] >=
               -PALER * f->c[band] * (f->c[band] + f->d[band]);
    return yes;
}

/* One film in double precision, as the reference has it. */
static double difference_at(bearing *m, size_t target, int level)
{
    const recede_palette *set = m->probe->set;
    if (!m->swept)
        recede_sweep_take(&m->sweep, m->mix);
    m->swept = 1;
    recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&m->sweep, (size_t)level), set->white);
    return recede_millionths(recede_delta_e(lab, m->probe->aims[target].target));
}

static unsigned arc_of(const recede_stretch *stretch)
{
    recede_box box = {{0, stretch->a[0], stretch->b[0]}, {0, stretch->a[0], stretch->b[0]}};
    for (int i = 1; i < STRETCH; i++) {
        box.low[1] = fminf(box.low[1], stretch->a[i]);
        box.high[1] = fmaxf(box.high[1], stretch->a[i]);
        box.low[2] = fminf(box.low[2], stretch->b[i]);
        box.high[2] = fmaxf(box.high[2], stretch->b[i]);
    }
    for (int axis = 1; axis < 3; axis++) {
        box.low[axis] -= RECEDE_CURVE_ERROR;
        box.high[axis] += RECEDE_CURVE_ERROR;
    }
    return recede_box_arc(&box);
}

/* The films of one stretch; returns the least difference within the limit. */
static double least_of_stretch(bearing *m, size_t target, int first, int levels, double limit)
{
    recede_stretch stretch;
    float bounds[STRETCH];
    double least = INFINITY;
    recede_stretch_of_films(&m->probe->maker, &m->curve, first, &stretch);
    recede_bounds_of_colours(&m->probe->aims[target], stretch.l, stretch.a, stretch.b,
                             RECEDE_CURVE_ERROR, arc_of(&stretch), bounds);
    for (int i = 0; i < levels; i++) {
        if (1e6 * ((double)bounds[i] - 1e-4) > fmin(limit, least))
            continue;
        double difference = difference_at(m, target, first + i);
        if (difference <= limit)
            least = fmin(least, difference);
    }
    return least;
}

/* The levels, from low to high, whose L* can come within the limit. */
static void narrow(const bearing *m, double target_l, double limit, int *low, int *high)
{
    double within = 1e-6 * (limit + 1);
    for (int node = 0; node < STRETCH; node++) {
        double l = (double)m->nodes.l[node];
        int level = node_level(m->probe, node);
        if (l < target_l && recede_lightness_beyond(l + L_SLACK, target_l, within))
            *low = level + 1;
        if (l > target_l && recede_lightness_beyond(l - L_SLACK, target_l, within)) {
            *high = level - 1;
            return;
        }
    }
}

static double least_of_mix(bearing *m, size_t target, double limit)
{
    int low = 0, high = last_level(m->probe);
    double least = INFINITY;
    if (limit < 0)
        return least;
    if (m->falls)
        narrow(m, m->probe->aims[target].target.l, limit, &low, &high);
    for (int first = low; first <= high; first += STRETCH) {
        int levels = high - first + 1 < STRETCH ? high - first + 1 : STRETCH;
        least = fmin(least, least_of_stretch(m, target, first, levels, fmin(limit, least)));
    }
    return least;
}

static void start_mix(bearing *m, const recede_mix *mix)
{
    const recede_probe *probe = m->probe;
    m->mix = mix;
    m->swept = 0;
    recede_curve_films_of_mix(&probe->maker, mix, &m->curve);
    m->falls = probe->maker.levels > STRETCH && falls(&m->curve);
    if (m->falls)
        recede_stretch_of_films(&probe->nodes, &m->curve, 0, &m->nodes);
}

void recede_probe_run(recede_probe *probe, int paints, int most_parts, const double *limits,
                      double *found)
{
    static const int slots[RECEDE_MOST_IN_MIX] = {0, 1, 2, 3};
    bearing m = {.probe = probe};
    recede_mixes walk;
    probe->set->count = (size_t)paints;
    recede_sweep_start(&m.sweep, probe->set);
    for (size_t i = 0; i < probe->count; i++)
        found[i] = INFINITY;
    recede_mixes_start_set(&walk, slots, paints, most_parts);
    while (recede_mixes_next(&walk)) {
        start_mix(&m, &walk.mix);
        for (size_t i = 0; i < probe->count; i++)
            found[i] = fmin(found[i], least_of_mix(&m, i, fmin(limits[i], found[i])));
    }
}
