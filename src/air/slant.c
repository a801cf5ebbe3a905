#include "air/slant.h"

#include "air/atmosphere.h"
#include "air/constants.h"

#include <math.h>

/* Root of (R + z)^2 = R^2 + s^2 + 2 R s sin e for s, and back for z, both
 * without the difference of large numbers. */
static double distance_of_rise(double rise_km, double sine)
{
    double inward = RECEDE_EARTH_RADIUS_KM * sine;
    double outward = rise_km * (2.0 * RECEDE_EARTH_RADIUS_KM + rise_km);
    return rise_km > 0.0 ? outward / (inward + sqrt(inward * inward + outward)) : 0.0;
}

static double rise_of_distance(double distance_km, double sine)
{
    const double radius = RECEDE_EARTH_RADIUS_KM;
    double outward = distance_km * (distance_km + 2.0 * radius * sine);
    return outward / (sqrt(radius * radius + outward) + radius);
}

static double thinning_at(double distance_km, double sine, double scale_km)
{
    return recede_thinning(rise_of_distance(distance_km, sine), scale_km);
}

double recede_slant_distance_km(double low_km, double high_km, double sine)
{
    return distance_of_rise(high_km, sine) - distance_of_rise(low_km, sine);
}

/* Simpson's rule along the line. */
double recede_slant_length_km(double low_km, double high_km, double sine, double scale_km)
{
    double from = distance_of_rise(low_km, sine), to = distance_of_rise(high_km, sine);
    double middle = thinning_at((from + to) / 2.0, sine, scale_km);
    return (to - from) / 6.0
           * (thinning_at(from, sine, scale_km) + 4.0 * middle + thinning_at(to, sine, scale_km));
}
