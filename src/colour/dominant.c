/*
 * Chromaticity, dominant wavelength and excitation purity: CIE 015:2018, 8.2
 * and 9.
 *
 * White, colour and a monochromatic light lie on one line of the chromaticity
 * diagram where the determinant of their XYZ is 0. For a given white and colour
 * that determinant is linear in the light's XYZ, so it is found for each band
 * and its zeros are sought between bands, the colour matching functions being
 * interpolated by cubics.
 */
#include "colour/observer.h"

#include <math.h>

enum { LAST = RECEDE_BANDS - 1 };

/* Below this distance in x, y a colour counts as achromatic. */
static const double achromatic = 1e-9;

typedef struct point { double x, y; } point;

typedef struct line {
    recede_xyz white, colour;
    point from, toward; /* chromaticity of the white; the step to the colour */
    double length;
} line;

static point chromaticity(recede_xyz c)
{
    double sum = c.x + c.y + c.z;
    return (point){c.x / sum, c.y / sum};
}

void recede_uv_of_xyz(recede_xyz colour, double *u, double *v)
{
    double sum = colour.x + 15 * colour.y + 3 * colour.z;
    *u = 4 * colour.x / sum;
    *v = 9 * colour.y / sum;
}

static double determinant(recede_xyz a, recede_xyz b, recede_xyz c)
{
    return a.x * (b.y * c.z - b.z * c.y) + a.y * (b.z * c.x - b.x * c.z)
           + a.z * (b.x * c.y - b.y * c.x);
}

/* The weights of four evenly spaced points in Lagrange's cubic, at t between
 * the first (0) and the last (3). */
static void cubic_weights(double t, double weights[4])
{
    weights[0] = -(t - 1) * (t - 2) * (t - 3) / 6;
    weights[1] = t * (t - 2) * (t - 3) / 2;
    weights[2] = -t * (t - 1) * (t - 3) / 2;
    weights[3] = t * (t - 1) * (t - 2) / 6;
}

/* The observer at a place between bands, 0 to LAST. */
static recede_xyz observer_between(double place)
{
    int first = (int)place - 1;
    first = first < 0 ? 0 : first > LAST - 3 ? LAST - 3 : first;
    double weights[4];
    cubic_weights(place - first, weights);
    recede_xyz sum = {0, 0, 0};
    for (int i = 0; i < 4; i++) {
        recede_xyz band = recede_observer_at(first + i);
        sum.x += weights[i] * band.x;
        sum.y += weights[i] * band.y;
        sum.z += weights[i] * band.z;
    }
    return sum;
}

/* How far the light at a place lies from the line, signed. */
static double offset_at(const line *l, double place)
{
    return determinant(l->white, l->colour, observer_between(place));
}

/* The zero between two neighbouring bands, by halving. */
static double cross_between(const line *l, int band)
{
    double low = band, high = band + 1;
    int positive = offset_at(l, low) > 0;
    for (int step = 0; step < 50; step++) {
        double middle = low + (high - low) / 2;
        if ((offset_at(l, middle) > 0) == positive)
            low = middle;
        else
            high = middle;
    }
    return low + (high - low) / 2;
}

/* Distance of a chromaticity from the white along the line, in steps to the
 * colour: 1 is the colour itself, below 0 the other side. */
static double along(const line *l, point p)
{
    return ((p.x - l->from.x) * l->toward.x + (p.y - l->from.y) * l->toward.y)
           / (l->length * l->length);
}

/* Finds where the line meets the spectral locus on the colour's side (side 1)
 * or opposite (side -1); returns the place in bands, or -1 when it does not. */
static double meet_locus(const line *l, int side)
{
    double before = offset_at(l, 0);
    for (int i = 0; i < LAST; i++) {
        double after = offset_at(l, i + 1);
        if ((before > 0) != (after > 0)) {
            double place = cross_between(l, i);
            if (along(l, chromaticity(observer_between(place))) * side > 0)
                return place;
        }
        before = after;
    }
    return -1;
}

/* Where the line meets the purples, which join the two ends of the locus. */
static point meet_purples(const line *l)
{
    recede_xyz violet = recede_observer_at(0), red = recede_observer_at(LAST);
    double at_violet = determinant(l->white, l->colour, violet);
    double at_red = determinant(l->white, l->colour, red);
    /* mixed in these amounts the two determinants cancel */
    double v = fabs(at_red), r = fabs(at_violet);
    return chromaticity((recede_xyz){v * violet.x + r * red.x, v * violet.y + r * red.y,
                                     v * violet.z + r * red.z});
}

recede_dominant recede_dominant_of_xyz(recede_xyz colour, recede_xyz white)
{
    recede_dominant out = {0, 0, 0};
    if (!(colour.x + colour.y + colour.z > 0))
        return out;
    line l = {.white = white, .colour = colour, .from = chromaticity(white)};
    point p = chromaticity(colour);
    l.toward = (point){p.x - l.from.x, p.y - l.from.y};
    l.length = hypot(l.toward.x, l.toward.y);
    if (!(l.length > achromatic))
        return out;
    double place = meet_locus(&l, 1);
    point edge;
    if (place < 0) {
        out.complementary = 1;
        place = fmax(meet_locus(&l, -1), 0);
        edge = meet_purples(&l);
    } else {
        edge = chromaticity(observer_between(place));
    }
    out.wavelength_nm = RECEDE_FIRST_NM + RECEDE_STEP_NM * place;
    out.purity = fmin(1 / along(&l, edge), 1);
    return out;
}
