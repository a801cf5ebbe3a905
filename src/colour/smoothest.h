/* The smoothest bounded spectrum near three linear aims. */
#ifndef RECEDE_COLOUR_SMOOTHEST_H
#define RECEDE_COLOUR_SMOOTHEST_H

#include "recede.h"

enum { RECEDE_AIMS = 3 };

/* Three weighted sums over the bands and the numbers they should come to. */
typedef struct recede_aims {
    recede_spectrum weights[RECEDE_AIMS];
    double target[RECEDE_AIMS];
} recede_aims;

/* The spectrum r, every band above 0 and below 1, that makes
 *
 *     sum of squared steps between bands
 *     + sum over aims of (weights . r - target)^2 / slack
 *
 * smallest. The aims should be scaled so that 1 is a difference one sees;
 * slack is small, so steps give way to aims. */
recede_spectrum recede_smoothest(const recede_aims *aims, double slack);

#endif
