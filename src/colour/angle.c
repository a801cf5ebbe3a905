#include "colour/angle.h"

#include <math.h>

static const double degree = 0.017453292519943295; /* pi / 180 */

double recede_direction_deg(double x, double y)
{
    if (x == 0 && y == 0)
        return 0;
    double angle = atan2(y, x) / degree;
    if (angle < 0)
        angle += 360;
    return angle < 360 ? angle : 0; /* a tiny negative angle rounds up to 360 */
}

double recede_sin_deg(double angle_deg)
{
    return sin(angle_deg * degree);
}

double recede_cos_deg(double angle_deg)
{
    return cos(angle_deg * degree);
}
