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

static recede_lab lab_of(const recede_sight *sight)
{
    return recede_lab_of_xyz(sight->adapted, recede_white());
}

/* Of count sights from one end of a wash to the other, the one whose colour lies
 * midway: how fast a wash turns from one puddle to the other is in the painter's
 * hand, so its middle falls where its colour does. */
static recede_sight midway(const recede_sight *row, int count)
{
    recede_lab first = lab_of(&row[0]), last = lab_of(&row[count - 1]);
    recede_lab middle = {0.5 * (first.l + last.l), 0.5 * (first.a + last.a),
                         0.5 * (first.b + last.b)};
    int best = 0;
    for (int i = 1; i < count; i++) {
        recede_lab here = lab_of(&row[i]), there = lab_of(&row[best]);
        if (recede_delta_e(here, middle) < recede_delta_e(there, middle))
            best = i;
    }
    return row[best];
}

recede_sights recede_sights_of_plane(const recede_view_point *from, const recede_plane *plane,
                                     const recede_spectrum *irradiance)
{
    enum { STEPS = 8 };
    recede_sight row[STEPS + 1];
    double rise_m = plane->crest_m - plane->base_m;
    int count = rise_m > 0.0 ? STEPS + 1 : 1;
    for (int i = 0; i < count; i++)
        row[i] = sight_at(from, plane, irradiance, plane->crest_m - rise_m * i / STEPS);
    return (recede_sights){row[0], midway(row, count), row[count - 1]};
}

recede_sights recede_survey_of_sky(const recede_view_point *from, double *lightest_y)
{
    enum { STEPS = 10 };
    double elevations_deg[STEPS];
    recede_spectrum radiances[STEPS + 1]; /* from the horizon up */
    for (int i = 0; i < STEPS; i++)
        elevations_deg[i] = RECEDE_SKY_TOP_DEG * (i + 1) / STEPS;
    radiances[0] = recede_horizon_radiance(from->air, from->light);
    recede_sky_radiances(from->air, from->light, elevations_deg, STEPS, radiances + 1);
    recede_sight row[STEPS + 1];
    *lightest_y = 0.0;
    for (int i = 0; i <= STEPS; i++) {
        row[i] = (recede_sight){recede_adapted(from->adaptation, &radiances[i]), 0.0};
        *lightest_y = fmax(*lightest_y, row[i].adapted.y);
    }
    return (recede_sights){row[STEPS], midway(row, STEPS + 1), row[0]};
}

recede_sights recede_sights_of_sky(const recede_view_point *from)
{
    double lightest_y;
    return recede_survey_of_sky(from, &lightest_y);
}
