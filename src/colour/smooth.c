/*
 * Smooth reflectances: the smoothest of all that have a colour.
 *
 * recede_smoothest is given three aims that say how far a colour is from the
 * one wanted, in steps as one sees them. It may miss them by a little, so the
 * miss is added to the wanted colour and the fit repeated, which goes to the
 * exact solution where there is one (the method of multipliers). Where there is
 * none, Gauss-Newton steps lead to the nearest colour by CIEDE2000: the aims
 * are its parts, linear around the best reflectance so far.
 */
#include "colour/difference.h"
#include "colour/observer.h"
#include "colour/smoothest.h"

#include <math.h>

enum { REFINEMENTS = 3, APPROACHES = 20, HALVINGS = 12 };

static const double slack = 1e-6;
static const double reached_below = 0.1;
static const double gain_enough = 1e-4; /* of an approach, to make another */

/* Colours farther out than this many times the white are sought as if there. */
static const double farthest = 10;

/* X, Y and Z, each over that of white. */
typedef struct ratios { double at[3]; } ratios;

/* Three aims at one colour, and how they change with its ratios. */
typedef struct view {
    double aim[3];
    double slope[3][3];
} view;

typedef void measure(recede_lab wanted, ratios colour, double aim[3]);

static ratios ratios_of(recede_xyz colour)
{
    recede_xyz white = recede_white();
    return (ratios){{colour.x / white.x, colour.y / white.y, colour.z / white.z}};
}

static ratios ratios_of_reflectance(const recede_spectrum *reflectance)
{
    return ratios_of(recede_xyz_of_reflectance(reflectance));
}

static recede_lab lab_of(ratios colour)
{
    recede_xyz unit = {1, 1, 1};
    return recede_lab_of_xyz((recede_xyz){colour.at[0], colour.at[1], colour.at[2]}, unit);
}

/* L*, and a* and b* as chroma and hue about the wanted colour, weighed as CIE
 * 116-1995 does. Smooth everywhere, also about grey. */
static void measure_nearby(recede_lab wanted, ratios colour, double aim[3])
{
    recede_lab lab = lab_of(colour);
    double c = hypot(wanted.a, wanted.b);
    double along_a = c > 0 ? wanted.a / c : 1, along_b = c > 0 ? wanted.b / c : 0;
    double a = lab.a - wanted.a, b = lab.b - wanted.b;
    aim[0] = lab.l - wanted.l;
    aim[1] = (along_a * a + along_b * b) / (1 + 0.045 * c);
    aim[2] = (along_a * b - along_b * a) / (1 + 0.015 * c);
}

/* Three numbers whose squares add up to CIEDE2000 squared. */
static void measure_ciede2000(recede_lab wanted, ratios colour, double aim[3])
{
    recede_difference d = recede_difference_of(wanted, lab_of(colour));
    aim[0] = d.l;
    aim[1] = d.c + d.turn * d.h / 2;
    aim[2] = d.h * sqrt(1 - d.turn * d.turn / 4);
}

static view look(measure *by, recede_lab wanted, ratios from)
{
    static const double step = 1e-6;
    view v;
    by(wanted, from, v.aim);
    for (int i = 0; i < 3; i++) {
        double above[3], below[3];
        ratios up = from, down = from;
        up.at[i] += step;
        down.at[i] -= step;
        by(wanted, up, above);
        by(wanted, down, below);
        for (int j = 0; j < 3; j++)
            v.slope[j][i] = (above[j] - below[j]) / (2 * step);
    }
    return v;
}

/* The smoothest reflectance for which all aims of a view from a colour come to
 * 0. */
static recede_spectrum fit(const view *v, ratios from)
{
    recede_spectrum weights[3];
    recede_aims aims;
    ratios unit = ratios_of((recede_xyz){1, 1, 1});
    recede_reflectance_weights(&weights[0], &weights[1], &weights[2]);
    for (int j = 0; j < RECEDE_AIMS; j++) {
        aims.target[j] = -v->aim[j];
        for (int k = 0; k < RECEDE_BANDS; k++)
            aims.weights[j].at[k] = 0;
        for (int i = 0; i < 3; i++) {
            double slope = v->slope[j][i];
            aims.target[j] += slope * from.at[i];
            for (int k = 0; k < RECEDE_BANDS; k++)
                aims.weights[j].at[k] += slope * unit.at[i] * weights[i].at[k];
        }
    }
    return recede_smoothest(&aims, slack);
}

/* Takes a reflectance over where it is nearer; says whether it is. */
static int take(recede_smooth *best, recede_lab wanted, const recede_spectrum *reflectance)
{
    double miss = recede_delta_e(wanted, lab_of(ratios_of_reflectance(reflectance)));
    if (!(miss < best->delta_e))
        return 0;
    best->delta_e = miss;
    best->reflectance = *reflectance;
    return 1;
}

static void refine(recede_smooth *best, ratios colour, const view *v)
{
    recede_lab wanted = lab_of(colour);
    ratios aim = colour;
    recede_spectrum found = best->reflectance;
    for (int pass = 0; pass < REFINEMENTS; pass++) {
        ratios got = ratios_of_reflectance(&found);
        for (int i = 0; i < 3; i++)
            aim.at[i] += colour.at[i] - got.at[i];
        found = fit(v, aim);
        take(best, wanted, &found);
    }
}

/* Takes the whole step, or the half, or the quarter ...: the first that is nearer. */
static void step_toward(recede_smooth *best, recede_lab wanted, const recede_spectrum *goal)
{
    recede_spectrum from = best->reflectance, trial = *goal;
    for (int i = 0; i < HALVINGS && !take(best, wanted, &trial); i++)
        for (int k = 0; k < RECEDE_BANDS; k++)
            trial.at[k] = (from.at[k] + trial.at[k]) / 2;
}

static void approach(recede_smooth *best, recede_lab wanted)
{
    double gain = INFINITY;
    for (int i = 0; i < APPROACHES && gain > gain_enough; i++) {
        double before = best->delta_e;
        ratios from = ratios_of_reflectance(&best->reflectance);
        view v = look(measure_ciede2000, wanted, from);
        recede_spectrum goal = fit(&v, from);
        step_toward(best, wanted, &goal);
        gain = before - best->delta_e;
    }
}

/* The differences of far colours have several least places: start from three,
 * with lightness taken more or less seriously than the other two. */
static recede_smooth nearest(ratios near, recede_lab wanted)
{
    static const double lightness[] = {1, 3, 0.3};
    recede_smooth best = {.delta_e = INFINITY};
    for (int start = 0; start < 3; start++) {
        recede_smooth one = {.delta_e = INFINITY};
        view v = look(measure_nearby, lab_of(near), near);
        for (int i = 0; i < 3; i++)
            v.slope[0][i] *= lightness[start];
        recede_spectrum first = fit(&v, near);
        take(&one, wanted, &first);
        approach(&one, wanted);
        if (one.delta_e < best.delta_e)
            best = one;
    }
    return best;
}

recede_smooth recede_smooth_of_xyz(recede_xyz xyz)
{
    recede_smooth best = {.delta_e = INFINITY};
    ratios colour = ratios_of(xyz), near;
    recede_lab wanted = lab_of(colour);
    for (int i = 0; i < 3; i++)
        near.at[i] = fmin(fmax(colour.at[i], -farthest), farthest);
    view v = look(measure_nearby, lab_of(near), near);
    recede_spectrum first = fit(&v, near);
    take(&best, wanted, &first);
    if (best.delta_e <= reached_below)
        refine(&best, colour, &v);
    else
        best = nearest(near, wanted);
    best.reached = best.delta_e <= reached_below;
    return best;
}
