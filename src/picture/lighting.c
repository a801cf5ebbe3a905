#include "picture/lighting.h"

#include <math.h>

static const double degree = 3.14159265358979323846 / 180;

/* Under an overcast the whole sky lights from above and nothing is sharp. With
 * a sun, it stands to the left (the light over the left shoulder: common
 * practice, no source); the more it stands before the painter, the more of each
 * mass is in shadow. Lower than 18 degrees it would leave the tops of things
 * dark, which no longer reads as sunlight. A painted sky says nothing about a
 * sun and is taken as one at the side. */
recede_lighting recede_lighting_of(const recede_sky *sky)
{
    recede_lighting light = {0, 0.94, 0.34, 0.52, 1.0};
    if (sky->kind == RECEDE_SKY_OVERCAST)
        return light;
    int clear = sky->kind == RECEDE_SKY_CLEAR;
    double ahead = cos((clear ? sky->sun_side_deg : 75) * degree);
    double up = sin(fmax(18, clear ? sky->sun_height_deg : 35) * degree), level = sqrt(1 - up * up);
    light.x = -level * sqrt(fmax(0, 1 - ahead * ahead));
    light.y = up;
    light.z = -level * ahead;
    light.lit_part = 0.55 - 0.13 * ahead;
    light.softness = 0.3;
    return light;
}
