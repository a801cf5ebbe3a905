/*
 * Spectra to tristimulus values: CIE 015:2018, 7.1.
 *
 *     X = k sum(P x), Y = k sum(P y), Z = k sum(P z)
 *
 * P is the power of a light, or reflectance times an illuminant's power. For
 * reflectances k = 1 / sum(illuminant y), so that Y = 1 is the perfect
 * reflector; for powers k is the band width.
 */
#include "colour/observer.h"

#include "data/tables.h"

/* The order of the records in cie.txt. */
enum { TABLE_X, TABLE_Y, TABLE_Z, TABLE_ILLUMINANTS };

static const double *table(int record)
{
    return recede_table_cie[record].values.at;
}

static const double *power_of(recede_illuminant which)
{
    return table(TABLE_ILLUMINANTS + (int)which);
}

recede_spectrum recede_illuminant_power(recede_illuminant which)
{
    return recede_table_cie[TABLE_ILLUMINANTS + (int)which].values;
}

recede_xyz recede_observer_at(int band)
{
    return (recede_xyz){table(TABLE_X)[band], table(TABLE_Y)[band], table(TABLE_Z)[band]};
}

recede_xyz recede_xyz_under(const recede_spectrum *reflectance, recede_illuminant light)
{
    const double *power = power_of(light);
    const double *x = table(TABLE_X), *y = table(TABLE_Y), *z = table(TABLE_Z);
    recede_xyz sum = {0, 0, 0};
    double white = 0;
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double reflected = reflectance->at[i] * power[i];
        sum.x += reflected * x[i];
        sum.y += reflected * y[i];
        sum.z += reflected * z[i];
        white += power[i] * y[i];
    }
    return (recede_xyz){sum.x / white, sum.y / white, sum.z / white};
}

recede_xyz recede_xyz_of_reflectance(const recede_spectrum *reflectance)
{
    return recede_xyz_under(reflectance, RECEDE_D65);
}

recede_xyz recede_xyz_of_power(const recede_spectrum *power)
{
    const double *x = table(TABLE_X), *y = table(TABLE_Y), *z = table(TABLE_Z);
    recede_xyz sum = {0, 0, 0};
    for (int i = 0; i < RECEDE_BANDS; i++) {
        sum.x += power->at[i] * x[i];
        sum.y += power->at[i] * y[i];
        sum.z += power->at[i] * z[i];
    }
    return (recede_xyz){sum.x * RECEDE_STEP_NM, sum.y * RECEDE_STEP_NM, sum.z * RECEDE_STEP_NM};
}

recede_xyz recede_white(void)
{
    recede_spectrum perfect;
    for (int i = 0; i < RECEDE_BANDS; i++)
        perfect.at[i] = 1;
    return recede_xyz_of_reflectance(&perfect);
}

void recede_reflectance_weights(recede_spectrum *x, recede_spectrum *y, recede_spectrum *z)
{
    const double *power = power_of(RECEDE_D65);
    double white = 0;
    for (int i = 0; i < RECEDE_BANDS; i++)
        white += power[i] * table(TABLE_Y)[i];
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double share = power[i] / white;
        x->at[i] = share * table(TABLE_X)[i];
        y->at[i] = share * table(TABLE_Y)[i];
        z->at[i] = share * table(TABLE_Z)[i];
    }
}
