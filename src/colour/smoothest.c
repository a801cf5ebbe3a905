/*
 * A convex quadratic programme with bounds, solved by a primal-dual interior
 * point method with Mehrotra's predictor and corrector (S. Mehrotra, SIAM
 * Journal on Optimization 2 (1992) 575-601). With L the matrix of squared
 * steps, G the aims' weights and g their targets,
 *
 *     minimise  f(r) = r'Lr / 2 + |Gr - g|^2 / (2 slack),   0 <= r <= 1.
 *
 * z_low and z_high are the bounds' multipliers, mu the mean of r z_low and
 * (1 - r) z_high, which goes to 0. Each step solves
 *
 *     (L + D + G'G / slack) dr = -grad f + a,  D = z_low / r + z_high / (1 - r)
 *
 * whose matrix is tridiagonal but for a few rows: linear in the bands.
 */
#include "colour/smoothest.h"

#include <math.h>

enum { BANDS = RECEDE_BANDS, ROWS = RECEDE_AIMS + 1, PIN = RECEDE_BANDS / 2, MOST_STEPS = 60 };

/* L alone gives way to adding a constant, and D may vanish. So band PIN is held
 * with weight 1 inside the tridiagonal part, and row PINNED takes it off again. */
enum { PINNED = RECEDE_AIMS };

/* Relative gap between f and its least value at which to stop. */
static const double gap_enough = 1e-15;

/* Share of the way to the nearest bound that a step may take. */
static const double short_of_bound = 0.995;

typedef struct state {
    double r[BANDS], room[BANDS]; /* room is 1 - r, kept apart for its digits */
    double z_low[BANDS], z_high[BANDS];
} state;

typedef struct step {
    double r[BANDS], z_low[BANDS], z_high[BANDS];
} step;

/* Tridiagonal matrix as L D L', and what corrects it. */
typedef struct newton {
    double pivot[BANDS], below[BANDS];
    double rows[ROWS][BANDS];    /* aims, then the pin */
    double solved[ROWS][BANDS];  /* tridiagonal inverse times each row */
    double core[ROWS][ROWS];     /* diag(slack, ..., -1) + rows . solved */
} newton;

static double dot(const double *one, const double *other)
{
    double sum = 0;
    for (int i = 0; i < BANDS; i++)
        sum += one[i] * other[i];
    return sum;
}

static void factor(newton *n, const state *s)
{
    for (int i = 0; i < BANDS; i++) {
        double steps = i == 0 || i == BANDS - 1 ? 1 : 2;
        double bounds = s->z_low[i] / s->r[i] + s->z_high[i] / s->room[i];
        n->pivot[i] = steps + bounds + (i == PIN ? 1 : 0);
        n->below[i] = 0;
        if (i > 0) {
            n->below[i] = -1 / n->pivot[i - 1];
            n->pivot[i] += n->below[i];
        }
    }
}

static void solve_tridiagonal(const newton *n, const double *right, double *out)
{
    out[0] = right[0];
    for (int i = 1; i < BANDS; i++)
        out[i] = right[i] - n->below[i] * out[i - 1];
    out[BANDS - 1] /= n->pivot[BANDS - 1];
    for (int i = BANDS - 2; i >= 0; i--)
        out[i] = out[i] / n->pivot[i] - n->below[i + 1] * out[i + 1];
}

static void prepare(newton *n, const recede_aims *aims, double slack, const state *s)
{
    factor(n, s);
    for (int j = 0; j < ROWS; j++) {
        for (int i = 0; i < BANDS; i++)
            n->rows[j][i] = j == PINNED ? i == PIN : aims->weights[j].at[i];
        solve_tridiagonal(n, n->rows[j], n->solved[j]);
    }
    for (int j = 0; j < ROWS; j++)
        for (int k = 0; k < ROWS; k++)
            n->core[j][k] = dot(n->rows[j], n->solved[k]) + (j != k ? 0 : j == PINNED ? -1 : slack);
}

static void swap_rows(double a[ROWS][ROWS + 1], int one, int other)
{
    for (int k = 0; k <= ROWS; k++) {
        double kept = a[one][k];
        a[one][k] = a[other][k];
        a[other][k] = kept;
    }
}

/* Gaussian elimination with row pivoting; x holds the right side, then the
 * solution. The core is indefinite. */
static void solve_core(const double core[ROWS][ROWS], double x[ROWS])
{
    double a[ROWS][ROWS + 1];
    for (int j = 0; j < ROWS; j++) {
        for (int k = 0; k < ROWS; k++)
            a[j][k] = core[j][k];
        a[j][ROWS] = x[j];
    }
    for (int p = 0; p < ROWS; p++) {
        int best = p;
        for (int j = p + 1; j < ROWS; j++)
            if (fabs(a[j][p]) > fabs(a[best][p]))
                best = j;
        swap_rows(a, p, best);
        for (int j = p + 1; j < ROWS; j++) {
            double times = a[j][p] / a[p][p];
            for (int k = p; k <= ROWS; k++)
                a[j][k] -= times * a[p][k];
        }
    }
    for (int p = ROWS - 1; p >= 0; p--) {
        x[p] = a[p][ROWS];
        for (int k = p + 1; k < ROWS; k++)
            x[p] -= a[p][k] * x[k];
        x[p] /= a[p][p];
    }
}

/* The inverse of tridiagonal + rows' diag(...)^-1 rows by the Sherman, Morrison
 * and Woodbury formula. */
static void solve(const newton *n, const double *right, double *out)
{
    double amounts[ROWS];
    solve_tridiagonal(n, right, out);
    for (int j = 0; j < ROWS; j++)
        amounts[j] = dot(n->rows[j], out);
    solve_core(n->core, amounts);
    for (int i = 0; i < BANDS; i++)
        for (int j = 0; j < ROWS; j++)
            out[i] -= n->solved[j][i] * amounts[j];
}

/* f and its gradient */
static double objective(const recede_aims *aims, double slack, const double *r, double *gradient)
{
    double f = 0;
    for (int i = 0; i < BANDS; i++)
        gradient[i] = 0;
    for (int i = 1; i < BANDS; i++) {
        double rise = r[i] - r[i - 1];
        f += rise * rise / 2;
        gradient[i] += rise;
        gradient[i - 1] -= rise;
    }
    for (int j = 0; j < RECEDE_AIMS; j++) {
        double miss = dot(aims->weights[j].at, r) - aims->target[j];
        f += miss * miss / (2 * slack);
        for (int i = 0; i < BANDS; i++)
            gradient[i] += aims->weights[j].at[i] * miss / slack;
    }
    return f;
}

/* One Newton step toward the products r z = mu. The corrector knows the
 * predictor's step and makes up for the products of its parts. */
static void find_step(const newton *n, const state *s, const double *gradient, double mu,
                      const step *predictor, step *out)
{
    double right[BANDS], low[BANDS], high[BANDS];
    for (int i = 0; i < BANDS; i++) {
        low[i] = high[i] = mu;
        if (predictor) {
            low[i] -= predictor->r[i] * predictor->z_low[i];
            high[i] += predictor->r[i] * predictor->z_high[i];
        }
        right[i] = -gradient[i] + low[i] / s->r[i] - high[i] / s->room[i];
    }
    solve(n, right, out->r);
    for (int i = 0; i < BANDS; i++) {
        out->z_low[i] = (low[i] - s->z_low[i] * out->r[i]) / s->r[i] - s->z_low[i];
        out->z_high[i] = (high[i] + s->z_high[i] * out->r[i]) / s->room[i] - s->z_high[i];
    }
}

static double room_for(double length, double value, double change)
{
    return change < 0 ? fmin(length, -value / change) : length;
}

/* How much of a step keeps everything above 0, at most 1. */
static double longest(const state *s, const step *d, double share)
{
    double length = 1 / share;
    for (int i = 0; i < BANDS; i++) {
        length = room_for(length, s->r[i], d->r[i]);
        length = room_for(length, s->room[i], -d->r[i]);
        length = room_for(length, s->z_low[i], d->z_low[i]);
        length = room_for(length, s->z_high[i], d->z_high[i]);
    }
    return share * length;
}

static void go(state *s, const step *d, double length)
{
    for (int i = 0; i < BANDS; i++) {
        s->r[i] += length * d->r[i];
        s->room[i] -= length * d->r[i];
        s->z_low[i] += length * d->z_low[i];
        s->z_high[i] += length * d->z_high[i];
    }
}

static double mean_product(const state *s)
{
    return (dot(s->r, s->z_low) + dot(s->room, s->z_high)) / (2 * BANDS);
}

static void start(state *s, const double *gradient)
{
    double scale = 1;
    for (int i = 0; i < BANDS; i++)
        scale = fmax(scale, fabs(gradient[i]));
    for (int i = 0; i < BANDS; i++) {
        s->r[i] = s->room[i] = 0.5;
        s->z_low[i] = s->z_high[i] = scale;
    }
}

recede_spectrum recede_smoothest(const recede_aims *aims, double slack)
{
    state now;
    newton n;
    step predictor, corrector;
    double gradient[BANDS];
    recede_spectrum out;
    for (int i = 0; i < BANDS; i++)
        now.r[i] = 0.5;
    objective(aims, slack, now.r, gradient);
    start(&now, gradient);
    for (int steps = 0; steps < MOST_STEPS; steps++) {
        double f = objective(aims, slack, now.r, gradient);
        double mu = mean_product(&now);
        if (mu <= gap_enough * (1 + f))
            break;
        prepare(&n, aims, slack, &now);
        find_step(&n, &now, gradient, 0, NULL, &predictor);
        state ahead = now;
        go(&ahead, &predictor, longest(&now, &predictor, 1));
        double shrink = mean_product(&ahead) / mu;
        find_step(&n, &now, gradient, shrink * shrink * shrink * mu, &predictor, &corrector);
        go(&now, &corrector, longest(&now, &corrector, short_of_bound));
    }
    for (int i = 0; i < BANDS; i++)
        out.at[i] = fmin(fmax(now.r[i], 0), 1);
    return out;
}
