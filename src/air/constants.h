/* The air that the whole model assumes, in one place. docs/physics.md says why. */
#ifndef RECEDE_AIR_CONSTANTS_H
#define RECEDE_AIR_CONSTANTS_H

#include "recede.h"

#define RECEDE_PI 3.14159265358979323846
#define RECEDE_DEGREE (RECEDE_PI / 180.0)

#define RECEDE_REFERENCE_NM 550.0          /* where visibility is defined */
#define RECEDE_CONTRAST_AT_VISIBILITY 0.05 /* WMO-No. 8 */

#define RECEDE_RAYLEIGH_PER_KM 0.01149 /* at the reference wavelength */
#define RECEDE_RAYLEIGH_EXPONENT 4.08
#define RECEDE_RAYLEIGH_SCALE_KM 8.43
#define RECEDE_HAZE_SCALE_MOST_KM 1.25
#define RECEDE_HAZE_DEPTH_MOST 0.8 /* vertical, at the reference wavelength */

#define RECEDE_HAZE_ALBEDO 0.945 /* at 400 nm */
#define RECEDE_HAZE_ALBEDO_FALL 0.095
#define RECEDE_HAZE_ASYMMETRY 0.75

#define RECEDE_GROUND_REFLECTANCE 0.12
#define RECEDE_OZONE_ATM_CM 0.344
#define RECEDE_WATER_CM 1.42
#define RECEDE_EARTH_RADIUS_KM 6371.0

static inline double recede_band_nm(int band)
{
    return RECEDE_FIRST_NM + RECEDE_STEP_NM * (double)band;
}

#endif
