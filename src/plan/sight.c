#include "plan/sight.h"

#include <math.h>

#include "air/sky.h"

recede_view recede_view_of_plane(const recede_view_point *from, const recede_plane *plane,
                                 const recede_spectrum *irradiance, double height_m)
{
    static const double pi = 3.14159265358979323846;
    recede_spectrum radiance;
    for (int i = 0; i < RECEDE_BANDS; i++)
        radiance.at[i] = plane->own.reflectance.at[i] * irradiance->at[i] / pi;
    recede_path path = recede_path_to(from->air, height_m, plane->distance_m);
    return recede_look_through(from->light, &path, &radiance);
}

recede_sight recede_sight_of_view(const recede_view_point *from, const recede_view *view)
{
    double seen = recede_xyz_of_power(&view->seen).y;
    recede_sight sight;
    sight.adapted = recede_adapted(from->adaptation, &view->seen);
    sight.own_share = seen > 0.0 ? recede_xyz_of_power(&view->own).y / seen : 0.0;
    return sight;
}

static recede_sight sight_at(const recede_view_point *from, const recede_plane *plane,
                             const recede_spectrum *irradiance, double height_m)
{
    recede_view view = recede_view_of_plane(from, plane, irradiance, height_m);
    return recede_sight_of_view(from, &view);
}

recede_sights recede_sights_of_plane(const recede_view_point *from, const recede_plane *plane,
                                     const recede_spectrum *irradiance)
{
    recede_sights sights;
    double middle_m = 0.5 * (plane->base_m + plane->crest_m);
    sights.crest = sight_at(from, plane, irradiance, plane->crest_m);
    sights.half = sight_at(from, plane, irradiance, middle_m);
    sights.base = sight_at(from, plane, irradiance, plane->base_m);
    return sights;
}

recede_sights recede_survey_of_sky(const recede_view_point *from, double *lightest_y)
{
    enum { STEPS = 10 };
    double elevations_deg[STEPS + 1];
    recede_spectrum radiances[STEPS + 1];
    for (int i = 0; i <= STEPS; i++)
        elevations_deg[i] = RECEDE_SKY_TOP_DEG * i / STEPS;
    recede_sky_radiances(from->air, from->light, elevations_deg, STEPS + 1, radiances);
    recede_spectrum horizon = recede_horizon_radiance(from->air, from->light);
    recede_sights sights = {.base = {recede_adapted(from->adaptation, &horizon), 0.0}};
    *lightest_y = sights.base.adapted.y;
    for (int i = 0; i <= STEPS; i++) {
        recede_xyz adapted = recede_adapted(from->adaptation, &radiances[i]);
        *lightest_y = fmax(*lightest_y, adapted.y);
        if (i == STEPS / 2)
            sights.half = (recede_sight){adapted, 0.0};
        if (i == STEPS)
            sights.crest = (recede_sight){adapted, 0.0};
    }
    return sights;
}

recede_sights recede_sights_of_sky(const recede_view_point *from)
{
    double lightest_y;
    return recede_survey_of_sky(from, &lightest_y);
}
