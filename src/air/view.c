#include "air/atmosphere.h"
#include "air/integrals.h"

#include <math.h>

/* Airlight of one segment in one band, J (1 - T) with J weighed by the optical
 * depths, written so that no air at all is not a division by zero. */
static double airlight(const recede_light *light, const recede_segment *segment, int band)
{
    double rayleigh = segment->tau_rayleigh.at[band], haze = segment->tau_haze.at[band];
    return (rayleigh * light->rayleigh_source.at[band] + haze * light->haze_source.at[band])
           * recede_mean_decay(rayleigh + haze);
}

recede_view recede_look_through(const recede_light *light, const recede_path *path,
                                const recede_spectrum *radiance)
{
    recede_view view;
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double open = 1.0, air = 0.0;
        for (int s = 0; s < path->segments; s++) {
            const recede_segment *segment = &path->segment[s];
            air += open * airlight(light, segment, i);
            open *= exp(-(segment->tau_rayleigh.at[i] + segment->tau_haze.at[i]));
        }
        view.own.at[i] = radiance->at[i] * open;
        view.seen.at[i] = view.own.at[i] + air;
    }
    return view;
}

recede_spectrum recede_horizon_radiance(const recede_atmosphere *air, const recede_light *light)
{
    recede_spectrum horizon;
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double rayleigh = air->rayleigh_per_km.at[i], haze = recede_haze_at_eye(air, i);
        horizon.at[i] = (rayleigh * light->rayleigh_source.at[i]
                         + haze * light->haze_source.at[i]) / (rayleigh + haze);
    }
    return horizon;
}
