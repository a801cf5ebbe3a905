/* Water: the levels a wash is thinned to, and the film each leaves. */
#include "recede.h"

/* ISO 3, the R20 series of preferred numbers, in hundredths. */
static const int r20[] = {100, 112, 125, 140, 160, 180, 200, 224, 250, 280,
                          315, 355, 400, 450, 500, 560, 630, 710, 800, 900};
enum { STEPS = sizeof r20 / sizeof r20[0], DECADES = 4 };

/* One division each, so that a level is the double nearest to its decimals. */
static const double divisor[DECADES + 1] = {1000, 100, 10, 1, 0.1};

#define MASSTONE_FILM 8.0

size_t recede_water_count(void)
{
    return 1 + DECADES * STEPS + 1;
}

double recede_water_at(size_t index)
{
    if (index == 0)
        return 0;
    size_t step = index - 1;
    return r20[step % STEPS] / divisor[step / STEPS];
}

double recede_film_of_water(double water)
{
    return MASSTONE_FILM / (1 + water);
}
