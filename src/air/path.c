#include "air/atmosphere.h"
#include "air/integrals.h"

#include <math.h>

/* Part of a straight line: where it starts above the eye, its rise, its length. */
typedef struct stretch { double start_km, rise_km, length_km; } stretch;

/* Length of eye-level air holding as much of a constituent as the stretch does.
 * With density exp(-z / H) along a straight line that rises by r, the mean is
 * exp(-z0 / H) (1 - exp(-r / H)) / (r / H). It is taken from the denser end, so
 * that nothing overflows on the way. */
static double equal_length_km(const stretch *s, double scale_km)
{
    double lowest_km = fmin(s->start_km, s->start_km + s->rise_km);
    return s->length_km * recede_thinning(lowest_km, scale_km)
           * recede_mean_decay(fabs(s->rise_km) / scale_km);
}

static recede_segment segment_of(const recede_atmosphere *air, const stretch *s, int in_mist)
{
    double rayleigh_km = equal_length_km(s, air->rayleigh_scale_km);
    double haze_km = equal_length_km(s, air->haze_scale_km);
    double mist_km = in_mist ? s->length_km : 0.0;
    recede_segment segment;
    for (int i = 0; i < RECEDE_BANDS; i++) {
        segment.tau_rayleigh.at[i] = air->rayleigh_per_km.at[i] * rayleigh_km;
        segment.tau_haze.at[i] = air->haze_per_km.at[i] * haze_km
                                 + air->mist_per_km.at[i] * mist_km;
    }
    return segment;
}

recede_path recede_path_to(const recede_atmosphere *air, double height_m, double distance_m)
{
    double rise_m = fmax(-distance_m, fmin(distance_m, height_m - air->eye_m));
    double to_top_m = air->mist_top_m - air->eye_m;
    stretch whole = {0.0, rise_m / 1000.0, distance_m / 1000.0};
    int starts_inside = recede_eye_in_mist(air);
    int ends_inside = air->has_mist && rise_m < to_top_m;
    if (starts_inside == ends_inside)
        return (recede_path){1, {segment_of(air, &whole, starts_inside)}};

    double share = to_top_m / rise_m;
    stretch near = {0.0, to_top_m / 1000.0, share * whole.length_km};
    stretch far = {near.rise_km, whole.rise_km - near.rise_km, whole.length_km - near.length_km};
    return (recede_path){2, {segment_of(air, &near, starts_inside),
                             segment_of(air, &far, ends_inside)}};
}

recede_spectrum recede_path_transmission(const recede_path *path)
{
    recede_spectrum transmission;
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double tau = 0.0;
        for (int s = 0; s < path->segments; s++)
            tau += path->segment[s].tau_rayleigh.at[i] + path->segment[s].tau_haze.at[i];
        transmission.at[i] = exp(-tau);
    }
    return transmission;
}
