#include "air/atmosphere.h"

#include "air/constants.h"
#include "colour/error.h"

#include <math.h>

#define MOST_GROWTH 600.0 /* exp(600) times any path stays finite */

double recede_thinning(double rise_km, double scale_km)
{
    return exp(fmin(-rise_km / scale_km, MOST_GROWTH));
}

int recede_eye_in_mist(const recede_atmosphere *air)
{
    return air->has_mist && air->eye_m < air->mist_top_m;
}

double recede_haze_at_eye(const recede_atmosphere *air, int band)
{
    double mist = recede_eye_in_mist(air) ? air->mist_per_km.at[band] : 0.0;
    return air->haze_per_km.at[band] + mist;
}

/* Koschmieder 1924: contrast falls as exp(-extinction distance). */
static double extinction_of_visibility(double visibility_km)
{
    return -log(RECEDE_CONTRAST_AT_VISIBILITY) / visibility_km;
}

static recede_code check_air(const recede_air *air, recede_error *error)
{
    const struct { const char *path; double number, least, most; } limits[] = {
        {"air.visibility", air->visibility_km, 0.02, 250.0},
        {"air.haze", air->angstrom, 0.0, 2.5},
        {"air.eye", air->eye_m, -500.0, 9000.0},
        {"air.mist.top", air->mist_top_m, -500.0, 9000.0},
    };
    for (size_t i = 0; i < sizeof limits / sizeof limits[0]; i++) {
        recede_code code = recede_check_range(error, limits[i].path, limits[i].number,
                                              limits[i].least, limits[i].most);
        if (code != RECEDE_OK)
            return code;
    }
    return RECEDE_OK;
}

/* Mist adds water drops, grey for all light, to the air at its own height: at
 * the eye where the eye is in the mist, else at the mist's top. There, air and
 * mist together give the visibility asked for. */
static recede_code add_mist(const recede_air *air, recede_atmosphere *out, recede_error *error)
{
    double rise_km = (fmin(air->eye_m, air->mist_top_m) - air->eye_m) / 1000.0;
    double clear = RECEDE_RAYLEIGH_PER_KM * recede_thinning(rise_km, out->rayleigh_scale_km)
                   + (extinction_of_visibility(air->visibility_km) - RECEDE_RAYLEIGH_PER_KM)
                         * recede_thinning(rise_km, out->haze_scale_km);
    double clearest_km = extinction_of_visibility(1.0) / clear;
    recede_code code = recede_check_range(error, "air.mist.visibility", air->mist_visibility_km,
                                          0.02, clearest_km);
    if (code != RECEDE_OK)
        return code;
    out->has_mist = 1;
    for (int i = 0; i < RECEDE_BANDS; i++)
        out->mist_per_km.at[i] =
            fmax(0.0, extinction_of_visibility(air->mist_visibility_km) - clear);
    return RECEDE_OK;
}

recede_code recede_atmosphere_of(const recede_air *air, recede_atmosphere *out,
                                 recede_error *error)
{
    recede_code code = check_air(air, error);
    if (code != RECEDE_OK)
        return code;
    double haze = extinction_of_visibility(air->visibility_km) - RECEDE_RAYLEIGH_PER_KM;
    *out = (recede_atmosphere){
        .rayleigh_scale_km = RECEDE_RAYLEIGH_SCALE_KM,
        .haze_scale_km = fmin(RECEDE_HAZE_SCALE_MOST_KM, RECEDE_HAZE_DEPTH_MOST / haze),
        .eye_m = air->eye_m,
        .mist_top_m = air->mist_top_m,
    };
    for (int i = 0; i < RECEDE_BANDS; i++) {
        double nm = recede_band_nm(i), from_400 = log(nm / 400.0);
        double ratio = RECEDE_REFERENCE_NM / nm;
        out->rayleigh_per_km.at[i] = RECEDE_RAYLEIGH_PER_KM * pow(ratio, RECEDE_RAYLEIGH_EXPONENT);
        out->haze_per_km.at[i] = haze * pow(ratio, air->angstrom);
        out->albedo.at[i] = RECEDE_HAZE_ALBEDO
                            * exp(-RECEDE_HAZE_ALBEDO_FALL * from_400 * from_400);
    }
    return air->mist_visibility_km == 0.0 ? RECEDE_OK : add_mist(air, out, error);
}
