#include "paint/lamp.h"

recede_lamp recede_lamp_light(void)
{
    recede_spectrum perfect;
    for (int band = 0; band < RECEDE_BANDS; band++)
        perfect.at[band] = 1;
    return (recede_lamp){recede_xyz_under(&perfect, RECEDE_A)};
}

recede_xyz recede_lamp_xyz(const recede_lamp *lamp, const recede_spectrum *reflectance)
{
    return recede_cat16(recede_xyz_under(reflectance, RECEDE_A), lamp->white, recede_white(), 1);
}
