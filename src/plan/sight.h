/* What reaches the adapted eye from each wash of the picture, before it is
 * scaled to the paper. */
#ifndef RECEDE_PLAN_SIGHT_H
#define RECEDE_PLAN_SIGHT_H

#include "plan/tone.h"
#include "recede.h"

/* The picture's top stands this high above the horizon. */
#define RECEDE_SKY_TOP_DEG 30.0

typedef struct recede_sight {
    recede_xyz adapted;
    double own_share; /* of the luminance, from the plane itself; the sky: 0 */
} recede_sight;

/* From one end of a wash to the other. For the sky: top, middle, horizon. */
typedef struct recede_sights {
    recede_sight crest, half, base;
} recede_sights;

typedef struct recede_view_point {
    const recede_atmosphere *air;
    const recede_light *light;
    const recede_adaptation *adaptation;
} recede_view_point;

/* A plane's own light and the air's before it, at one of its heights. */
recede_view recede_view_of_plane(const recede_view_point *from, const recede_plane *plane,
                                 const recede_spectrum *irradiance, double height_m);
recede_sight recede_sight_of_view(const recede_view_point *from, const recede_view *view);

recede_sights recede_sights_of_plane(const recede_view_point *from, const recede_plane *plane,
                                     const recede_spectrum *irradiance);
recede_sights recede_sights_of_sky(const recede_view_point *from);

/* The same with the largest luminance of the sky between horizon and picture's
 * top. */
recede_sights recede_survey_of_sky(const recede_view_point *from, double *lightest_y);

#endif
