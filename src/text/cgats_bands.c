#include "text/cgats_bands.h"

#include <math.h>

enum { POINTS = 6 };

/* The readings that surround an interval, two before its start to three behind: those
 * beyond the ends by the extrapolation that goes with the interpolation. CIE 167:2005. */
static double point_at(const double *readings, size_t count, long index)
{
    static const double beyond[2][POINTS] = {
        {508, -540, 488, -367, 144, -24},
        {884, -1960, 3033, -2648, 1080, -180},
    };
    long last = (long)count - 1, over = index < 0 ? -index : index - last;
    if (index >= 0 && index <= last)
        return readings[index];
    double sum = 0;
    for (long i = 0; i < POINTS; i++)
        sum += beyond[over - 1][i] * readings[index < 0 ? i : last - i];
    return sum / 209;
}

/* Sprague 1880, as CIE 167:2005 has it: the quintic that meets its neighbours with equal
 * first and second derivatives. share is 0 at p[2] and 1 at p[3]. */
static double sprague(const double p[POINTS], double share)
{
    static const double part[POINTS][POINTS] = {
        {0, 0, 24, 0, 0, 0},           {2, -16, 0, 16, -2, 0},
        {-1, 16, -30, 16, -1, 0},      {-9, 39, -70, 66, -33, 7},
        {13, -64, 126, -124, 61, -12}, {-5, 25, -50, 50, -25, 5},
    };
    double sum = 0;
    for (int power = POINTS - 1; power >= 0; power--) {
        double coefficient = 0;
        for (int i = 0; i < POINTS; i++)
            coefficient += part[power][i] * p[i];
        sum = sum * share + coefficient / 24;
    }
    return sum;
}

static double reading_at(const double *readings, size_t count, double place)
{
    const double same = 1e-6; /* of a step */
    double nearest = floor(place + 0.5);
    if (place <= 0)
        return readings[0];
    if (place >= (double)(count - 1))
        return readings[count - 1];
    if (fabs(place - nearest) < same)
        return readings[(size_t)nearest];
    double points[POINTS];
    for (long i = 0; i < POINTS; i++)
        points[i] = point_at(readings, count, (long)place - 2 + i);
    return sprague(points, place - floor(place));
}

recede_spectrum recede_on_bands(const double *readings, size_t count, double first_nm,
                                double step_nm)
{
    recede_spectrum out;
    for (int i = 0; i < RECEDE_BANDS; i++)
        out.at[i] = reading_at(readings, count,
                               (RECEDE_FIRST_NM + RECEDE_STEP_NM * i - first_nm) / step_nm);
    return out;
}
