/*
 * Levenberg and Marquardt's way down (D. W. Marquardt, J. Soc. Ind. Appl. Math. 11
 * (1963) 431): each step solves
 *
 *     (J'J + damping diag(J'J)) step = -gradient
 *
 * by Cholesky's method; the damping falls while steps lead down and rises where one does
 * not. Bounds: an unknown at its bound that would leave is held for that step, and what
 * goes beyond is set back. From a thin and a dense S, the better end wins.
 */
#include "paint/learn_solve.h"

#include <math.h>

enum { N = RECEDE_UNKNOWNS, MOST_STEPS = 120 };

/* Of K and of S relative to titanium white's scattering. */
static const double least_k = 1e-5, most_k = 100, least_s = 1e-4, most_s = 10;

static const double starts_s[] = {0.03, 0.5};
enum { STARTS = sizeof starts_s / sizeof starts_s[0] };

static const double first_damping = 1e-2, least_damping = 1e-9, most_damping = 1e9;
static const double gain_enough = 1e-6; /* of the sum, in one step */

static double least_of(int i)
{
    return log(i < RECEDE_BANDS ? least_k : least_s);
}

static double most_of(int i)
{
    return log(i < RECEDE_BANDS ? most_k : most_s);
}

static double within(int i, double value)
{
    return fmin(fmax(value, least_of(i)), most_of(i));
}

/* The upper triangle of a becomes U of a = U'U, x the solution of a x = right; row by
 * row, so that the inner loops run along rows. 0 where a is not positive definite. */
static int solve(double a[N][N], double x[N])
{
    for (int p = 0; p < N; p++) {
        if (!(a[p][p] > 0))
            return 0;
        double root = sqrt(a[p][p]);
        for (int j = p; j < N; j++)
            a[p][j] /= root;
        for (int i = p + 1; i < N; i++) {
            double times = a[p][i];
            for (int j = i; j < N; j++)
                a[i][j] -= times * a[p][j];
        }
    }
    for (int p = 0; p < N; p++) {
        x[p] /= a[p][p];
        for (int j = p + 1; j < N; j++)
            x[j] -= a[p][j] * x[p];
    }
    for (int p = N - 1; p >= 0; p--) {
        for (int j = p + 1; j < N; j++)
            x[p] -= a[p][j] * x[j];
        x[p] /= a[p][p];
    }
    return 1;
}

/* Where a damped step from paint leads. */
static int step(recede_learn_room *room, const recede_unknowns *paint, double damping,
                recede_unknowns *to)
{
    const recede_squares *squares = &room->squares;
    double change[N];
    int held[N];
    for (int i = 0; i < N; i++) {
        double down = -squares->gradient[i];
        held[i] = (down < 0 && paint->at[i] <= least_of(i))
               || (down > 0 && paint->at[i] >= most_of(i));
        change[i] = held[i] ? 0 : down;
    }
    for (int i = 0; i < N; i++)
        for (int j = 0; j < N; j++)
            room->damped[i][j] = held[i] || held[j] ? i == j
                               : squares->matrix[i][j] * (i == j ? 1 + damping : 1);
    if (!solve(room->damped, change))
        return 0;
    for (int i = 0; i < N; i++)
        to->at[i] = within(i, paint->at[i] + change[i]);
    return 1;
}

/* Goes one step down, as damped as it takes; the share of the sum gained, 0 at the end. */
static double descend(recede_learn_room *room, recede_unknowns *paint, double *damping)
{
    recede_lesson_squares(&room->lesson, paint, &room->squares);
    for (; *damping < most_damping; *damping *= 4) {
        recede_unknowns to;
        if (!step(room, paint, *damping, &to))
            continue;
        double half_sum = recede_lesson_half_sum(&room->lesson, &to);
        if (!(half_sum < room->squares.half_sum))
            continue;
        double gained = 1 - half_sum / room->squares.half_sum;
        *paint = to;
        *damping = fmax(*damping / 8, least_damping);
        return gained;
    }
    return 0;
}

static recede_code go_down(recede_learn_room *room, const recede_progress *progress, int start,
                           recede_unknowns *paint)
{
    double damping = first_damping;
    for (int i = 0; i < N; i++)
        paint->at[i] = within(i, room->lesson.start.at[i] + log(starts_s[start]));
    for (int steps = 0; steps < MOST_STEPS; steps++) {
        double done = (start + (double)steps / MOST_STEPS) / STARTS;
        if (progress && progress->report(progress->context, done))
            return RECEDE_CANCELLED;
        if (descend(room, paint, &damping) < gain_enough)
            break;
    }
    return RECEDE_OK;
}

recede_code recede_learn_solve(recede_learn_room *room, const recede_progress *progress,
                               recede_unknowns *paint)
{
    double least = INFINITY;
    for (int start = 0; start < STARTS; start++) {
        recede_unknowns end;
        recede_code code = go_down(room, progress, start, &end);
        if (code)
            return code;
        double half_sum = recede_lesson_half_sum(&room->lesson, &end);
        if (half_sum < least) {
            least = half_sum;
            *paint = end;
        }
    }
    return RECEDE_OK;
}
