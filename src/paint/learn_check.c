#include "paint/learn_check.h"

#include <math.h>

#include "colour/error.h"
#include "paint/palette.h"

static const double darkest_paper = 50; /* L* */
static const double darker_allowed = 1; /* L*, of a wash than what bounds it */
static const double most_water = 1000, most_white = 100;
static const double lightest = 110, widest = 200; /* L*; a* and b* either way */

enum { LEAST_SPECTRA = 2, LEAST_COLOURS = 3 };

static recede_code check_bands(const recede_spectrum *bands, const char *path, double most,
                               recede_error *error)
{
    for (int band = 0; band < RECEDE_BANDS; band++) {
        recede_code code = recede_check_range(error, path, bands->at[band], 0, most);
        if (code)
            return code;
    }
    return RECEDE_OK;
}

static recede_code check_count(const recede_swatches *swatches, recede_error *error)
{
    size_t least = LEAST_COLOURS, most = RECEDE_MOST_SWATCHES, count = swatches->count;
    if (count > most)
        return recede_fail_count(error, RECEDE_TOO_MANY, "swatches", count, least, most);
    for (size_t i = 0; i < count; i++)
        if (swatches->of[i].has_reflectance)
            least = LEAST_SPECTRA;
    if (count < least)
        return recede_fail_count(error, RECEDE_TOO_FEW, "swatches", count, least, most);
    return RECEDE_OK;
}

/* Water is for watercolour and white for opaque media: the other has to be 0. */
static recede_code check_swatch(const recede_swatches *swatches, size_t index,
                                recede_error *error)
{
    const recede_swatch *swatch = swatches->of + index;
    int opaque = swatches->medium != RECEDE_WATERCOLOUR;
    char path[96];
    const struct {
        const char *field;
        double number, least, most;
    } figures[] = {
        {"water", swatch->water, 0, opaque ? 0 : most_water},
        {"white", swatch->white, 0, opaque ? most_white : 0},
        {"lab", swatch->lab.l, 0, lightest},
        {"lab", swatch->lab.a, -widest, widest},
        {"lab", swatch->lab.b, -widest, widest},
    };
    int count = swatch->has_reflectance ? 2 : 5;
    for (int i = 0; i < count; i++) {
        recede_path_index(path, sizeof path, "swatches", index, figures[i].field);
        recede_code code = recede_check_range(error, path, figures[i].number, figures[i].least,
                                              figures[i].most);
        if (code)
            return code;
    }
    if (!swatch->has_reflectance)
        return RECEDE_OK;
    recede_path_index(path, sizeof path, "swatches", index, "reflectance");
    return check_bands(&swatch->reflectance, path, 1, error);
}

static recede_code check_white(const recede_paint *white, recede_error *error)
{
    if (!white || !white->is_white)
        return recede_fail_name(error, RECEDE_CONFLICT, "swatches.white",
                                white ? white->name : "");
    recede_code code = check_bands(&white->k, "swatches.white", RECEDE_MOST_K_OR_S, error);
    return code ? code : check_bands(&white->s, "swatches.white", RECEDE_MOST_K_OR_S, error);
}

recede_code recede_learn_check_figures(const recede_swatches *swatches, recede_error *error)
{
    recede_code code = check_count(swatches, error);
    if (!code && swatches->medium == RECEDE_WATERCOLOUR)
        code = check_bands(&swatches->paper, "swatches.paper", 1, error);
    else if (!code)
        code = check_white(swatches->white, error);
    for (size_t i = 0; !code && i < swatches->count; i++)
        code = check_swatch(swatches, i, error);
    return code;
}

/* ---- */

static double strength_of(const recede_swatches *swatches, size_t index)
{
    const recede_swatch *swatch = swatches->of + index;
    return swatches->medium == RECEDE_WATERCOLOUR ? swatch->water : swatch->white;
}

static recede_code check_strengths(const recede_swatches *swatches, size_t *masstone,
                                   recede_error *error)
{
    char path[96];
    *masstone = swatches->count;
    for (size_t i = 0; i < swatches->count; i++) {
        for (size_t j = 0; j < i; j++)
            if (strength_of(swatches, i) == strength_of(swatches, j)) {
                recede_path_index(path, sizeof path, "swatches", i, NULL);
                return recede_fail(error, RECEDE_DUPLICATE, path);
            }
        if (strength_of(swatches, i) == 0.0)
            *masstone = i;
    }
    if (*masstone == swatches->count)
        return recede_fail_count(error, RECEDE_TOO_FEW, "swatches.masstone", 0, 1, 1);
    return RECEDE_OK;
}

static double lightness_of(const recede_spectrum *seen)
{
    return recede_lab_of_xyz(recede_xyz_of_reflectance(seen), recede_white()).l;
}

static recede_spectrum reflectance_of(const recede_swatch *swatch)
{
    if (swatch->has_reflectance)
        return swatch->reflectance;
    return recede_smooth_of_xyz(recede_xyz_of_lab(swatch->lab, recede_white())).reflectance;
}

static double swatch_lightness(const recede_swatch *swatch)
{
    return swatch->has_reflectance ? lightness_of(&swatch->reflectance) : swatch->lab.l;
}

/* Band by band a film lies between its masstone and its paper, a tint between its
 * masstone and its white, so no wash is darker than the darker of both in every band.
 * A pale opaque paint may thus grow darker toward an off-white paper. */
static double darkest_wash(const recede_swatches *swatches, size_t masstone)
{
    recede_spectrum bound = reflectance_of(swatches->of + masstone), other = swatches->paper;
    if (swatches->medium != RECEDE_WATERCOLOUR) {
        recede_spectrum none = {{0}};
        other = recede_film(&swatches->white->k, &swatches->white->s, INFINITY, &none);
    }
    for (int band = 0; band < RECEDE_BANDS; band++)
        bound.at[band] = fmin(bound.at[band], other.at[band]);
    return fmin(lightness_of(&bound), swatch_lightness(swatches->of + masstone));
}

recede_code recede_learn_check_sense(const recede_swatches *seen, recede_error *error)
{
    size_t masstone;
    recede_code code = check_strengths(seen, &masstone, error);
    if (code)
        return code;
    double paper = lightness_of(&seen->paper);
    if (seen->medium == RECEDE_WATERCOLOUR && paper < darkest_paper) {
        recede_fail_range(error, "swatches.paper", paper, darkest_paper, 100);
        if (error)
            error->code = RECEDE_CONFLICT;
        return RECEDE_CONFLICT;
    }
    double darkest = darkest_wash(seen, masstone) - darker_allowed;
    for (size_t i = 0; i < seen->count; i++) {
        double lightness = swatch_lightness(seen->of + i);
        if (i == masstone || lightness >= darkest)
            continue;
        char path[96];
        recede_path_index(path, sizeof path, "swatches", i, NULL);
        recede_fail_range(error, path, lightness, 0, swatch_lightness(seen->of + masstone));
        if (error)
            error->code = RECEDE_CONFLICT;
        return RECEDE_CONFLICT;
    }
    return RECEDE_OK;
}
