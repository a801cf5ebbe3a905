/*
 * The closest mix against a general-purpose optimiser: NLopt's DIRECT-L and its
 * controlled random search, on continuous proportions of all paints at once and
 * continuous water. It is freer than whole parts of three paints, so with time enough
 * it may come closer; a search that it beats by much, in reach, would be wrong.
 */
#include "bench/bench.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#ifdef RECEDE_NLOPT
#include <nlopt.h>

enum { TARGETS = 60 };

typedef struct {
    const recede_palette *palette;
    recede_lab target;
    double closest;
} problem;

/* x: shares of each paint, 0 to 1, then the logarithm of the film's thickness. */
static double difference(unsigned count, const double *x, double *gradient, void *data)
{
    problem *p = data;
    recede_spectrum k = {{0}}, s = {{0}};
    double sum = 1e-9;
    (void)gradient;
    for (unsigned i = 0; i + 1 < count; i++)
        sum += x[i];
    for (unsigned i = 0; i + 1 < count; i++) {
        const recede_paint *paint = recede_palette_paint(p->palette, i);
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k.at[band] += x[i] / sum * paint->k.at[band];
            s.at[band] += x[i] / sum * paint->s.at[band];
        }
    }
    recede_spectrum seen =
        recede_film(&k, &s, exp(x[count - 1]), recede_palette_paper(p->palette));
    recede_lab lab = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lab;
    double away = recede_delta_e(lab, p->target);
    p->closest = fmin(p->closest, away);
    return away;
}

static double by_nlopt(nlopt_algorithm method, problem *p, double seconds)
{
    unsigned count = (unsigned)recede_palette_count(p->palette) + 1;
    double x[RECEDE_MOST_PAINTS + 1], worst;
    nlopt_opt opt = nlopt_create(method, count);
    p->closest = INFINITY;
    nlopt_set_lower_bounds1(opt, 0);
    nlopt_set_upper_bounds1(opt, 1);
    nlopt_set_lower_bound(opt, (int)count - 1, log(0.008));
    nlopt_set_upper_bound(opt, (int)count - 1, log(8));
    nlopt_set_min_objective(opt, difference, p);
    nlopt_set_maxtime(opt, seconds);
    for (unsigned i = 0; i < count; i++)
        x[i] = 0.5;
    nlopt_srand(1);
    nlopt_optimize(opt, x, &worst);
    nlopt_destroy(opt);
    return p->closest;
}

static void compare(const char *name, nlopt_algorithm method, const recede_index *index,
                    const recede_palette *palette, const recede_wash_target *targets,
                    double times)
{
    double ours = 0, theirs = 0;
    int closer = 0, far_closer = 0;
    for (int i = 0; i < TARGETS; i++) {
        problem p = {palette, targets[i].from, 0};
        recede_wash_recipe found;
        double start_s = bench_now_s();
        if (recede_search(index, &targets[i], 1, &found, NULL, NULL, NULL))
            exit(1);
        double took_s = bench_now_s() - start_s;
        double away = by_nlopt(method, &p, times * took_s);
        ours += found.from.delta_e;
        theirs += away;
        closer += away < found.from.delta_e;
        far_closer += away < found.from.delta_e - 1;
    }
    printf("  %-28s %6.0f times the time: mean %.3f against %.3f, closer %d of %d, by over 1: %d\n",
           name, times, theirs / TARGETS, ours / TARGETS, closer, TARGETS, far_closer);
}

void bench_nlopt(const char *name)
{
    recede_palette *palette = bench_palette(name, RECEDE_MOST_PAINTS);
    recede_rules rules = {3, 8, 0};
    recede_wash_target targets[TARGETS];
    recede_index *index;
    static const double times[] = {1, 100, 1000};
    printf("\nthe closest mix (no tie) of %s against NLopt, colours in range\n", name);
    if (recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL))
        exit(1);
    bench_targets(BENCH_INSIDE, palette, TARGETS, targets);
    for (int i = 0; i < 3; i++) {
        compare("DIRECT-L", NLOPT_GN_DIRECT_L, index, palette, targets, times[i]);
        compare("controlled random search", NLOPT_GN_CRS2_LM, index, palette, targets, times[i]);
    }
    recede_index_free(index);
    recede_palette_free(palette);
}

#else

void bench_nlopt(const char *name)
{
    printf("\nNLopt (libnlopt-dev) is not here: the closest mix of %s is not held against it\n",
           name);
}

#endif
