/* Colours in lamp light, as the eye that has grown used to it sees them. */
#ifndef RECEDE_PAINT_LAMP_H
#define RECEDE_PAINT_LAMP_H

#include "recede.h"

/* The light of a tungsten lamp, CIE illuminant A, and the adaptation to it. */
typedef struct recede_lamp { recede_xyz white; } recede_lamp;
recede_lamp recede_lamp_light(void);

/* Tristimulus values under the lamp, carried to recede_white() by CAT16 with full
 * adaptation, so that white paper stays white. */
recede_xyz recede_lamp_xyz(const recede_lamp *lamp, const recede_spectrum *reflectance);

#endif
