#include "plan/tone.h"

#include <math.h>

/* A hole with no light at all must not flatten the whole picture. */
static const double BLACKEST_Y = 1e-4;

static recede_xyz scaled(recede_xyz c, double by)
{
    return (recede_xyz){c.x * by, c.y * by, c.z * by};
}

recede_adaptation recede_adaptation_to(const recede_light *light, double degree)
{
    static const double pi = 3.14159265358979323846;
    recede_xyz power = recede_xyz_of_power(&light->sphere);
    recede_adaptation a;
    a.white = scaled(power, 1.0 / power.y);
    a.luminance = power.y / pi;
    a.degree = degree;
    return a;
}

recede_xyz recede_adapted(const recede_adaptation *a, const recede_spectrum *radiance)
{
    recede_xyz relative = scaled(recede_xyz_of_power(radiance), 1.0 / a->luminance);
    return recede_cat16(relative, a->white, recede_white(), a->degree);
}

recede_tone recede_tone_for(double horizon_y, double sky_y, double paper_y, double lightest_y,
                            double darkest_y, double darkest_paint_y, int fitted)
{
    recede_tone tone;
    tone.scale = fmin(sky_y / horizon_y, paper_y / lightest_y);
    tone.lightest_y = tone.scale * lightest_y;
    tone.darkest_y = tone.scale * darkest_y;
    tone.gamma = 1.0;
    if (fitted && tone.darkest_y < darkest_paint_y && darkest_paint_y < tone.lightest_y)
        tone.gamma = log(tone.lightest_y / darkest_paint_y) /
                     log(tone.lightest_y / fmax(tone.darkest_y, BLACKEST_Y));
    return tone;
}

recede_xyz recede_toned_as_seen(const recede_tone *tone, recede_xyz adapted)
{
    return scaled(adapted, tone->scale);
}

recede_xyz recede_toned_as_painted(const recede_tone *tone, recede_xyz adapted)
{
    recede_xyz seen = recede_toned_as_seen(tone, adapted);
    if (tone->gamma == 1.0 || seen.y <= 0.0)
        return seen;
    double y = tone->lightest_y * pow(seen.y / tone->lightest_y, tone->gamma);
    return scaled(seen, y / seen.y);
}
