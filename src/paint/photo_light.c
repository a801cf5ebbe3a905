/*
 * What the camera gives for a card of reflectance R at x, y is in each channel
 *
 *     R (white + across x + down y) + offset
 *
 * linear in what is sought, so least squares give it. Light errs by a share of
 * itself, stray light by an amount: each patch has the weight 1 / (R^2 + 0.1^2).
 *
 * The offset is sought where the lightest card reflects at least twice what the
 * darkest does, and is 0 else. The slope is sought where patches of one reflectance
 * lie about so that at no patch of the photograph is the plane through them less
 * sure than one card patch by itself, and there are more patches than unknowns;
 * else it is 0. "Less sure": the leverage (Hoaglin and Welsch, The American
 * Statistician 32 (1978) 17) exceeds 1.
 */
#include "paint/photo_light.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"

static const double least_light = 1e-3;   /* of the camera's scale */
static const double steps_apart = 2.0;    /* ratio of two reflectances */
static const double same_card = 1e-6;
static const double stray = 0.1;

enum { WHITE, OFFSET, ACROSS, DOWN, TERMS };

/* The card's patches and what is to be found from them. */
typedef struct card {
    const recede_photo *photo;
    const recede_patch *patches;
    const recede_photo_mean *means;
    size_t count;          /* of all patches */
    int sought[TERMS];
} card;

typedef struct place { double x, y; } place;

static place middle_of(double width, double height, const recede_patch *patch)
{
    double x = (double)patch->left + (double)patch->width / 2;
    double y = (double)patch->top + (double)patch->height / 2;
    return (place){2 * x / width - 1, 2 * y / height - 1};
}

static place middle(const card *c, size_t i)
{
    return middle_of((double)c->photo->width, (double)c->photo->height, c->patches + i);
}

static int is_of(const card *c, size_t i, double reflectance)
{
    return fabs(c->patches[i].reflectance - reflectance) < same_card;
}

/* The reflectance that most patches have; the first of several. */
static double commonest(const card *c)
{
    double best = 0.0;
    size_t most = 0;
    for (size_t i = 0; i < c->count; i++) {
        size_t alike = 0;
        if (c->patches[i].reflectance <= 0)
            continue;
        for (size_t j = 0; j < c->count; j++)
            alike += (size_t)is_of(c, j, c->patches[i].reflectance);
        if (alike > most) {
            most = alike;
            best = c->patches[i].reflectance;
        }
    }
    return best;
}

/* The greatest leverage that a plane through the patches of one reflectance has at
 * any patch; infinite where they lie in a line. */
static double worst_leverage(const card *c, double reflectance)
{
    double count = 0, x = 0, y = 0, xx = 0, xy = 0, yy = 0, worst = 0;
    for (size_t i = 0; i < c->count; i++)
        if (is_of(c, i, reflectance)) {
            place p = middle(c, i);
            count++;
            x += p.x;
            y += p.y;
            xx += p.x * p.x;
            xy += p.x * p.y;
            yy += p.y * p.y;
        }
    x /= count;
    y /= count;
    xx -= count * x * x;
    xy -= count * x * y;
    yy -= count * y * y;
    double area = xx * yy - xy * xy;
    if (area <= 1e-9)
        return INFINITY;
    for (size_t i = 0; i < c->count; i++) {
        place p = middle(c, i);
        double dx = p.x - x, dy = p.y - y;
        double at = 1 / count + (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / area;
        worst = fmax(worst, at);
    }
    return worst;
}

static void choose_terms(card *c)
{
    double darkest = INFINITY, lightest = 0.0;
    size_t patches = 0;
    for (size_t i = 0; i < c->count; i++)
        if (c->patches[i].reflectance > 0) {
            darkest = fmin(darkest, c->patches[i].reflectance);
            lightest = fmax(lightest, c->patches[i].reflectance);
            patches++;
        }
    c->sought[WHITE] = 1;
    c->sought[OFFSET] = lightest >= steps_apart * darkest;
    size_t needed = (size_t)c->sought[OFFSET] + 4;
    c->sought[ACROSS] = c->sought[DOWN] =
        patches >= needed && worst_leverage(c, commonest(c)) <= 1 + 1e-9;
}

/* Gauss and Jordan on a matrix that is positive definite: no pivoting is needed. */
static void solve(double matrix[TERMS][TERMS], double vector[TERMS])
{
    for (int k = 0; k < TERMS; k++) {
        double pivot = matrix[k][k];
        for (int j = 0; j < TERMS; j++)
            matrix[k][j] /= pivot;
        vector[k] /= pivot;
        for (int i = 0; i < TERMS; i++) {
            double factor = matrix[i][k];
            if (i == k)
                continue;
            for (int j = 0; j < TERMS; j++)
                matrix[i][j] -= factor * matrix[k][j];
            vector[i] -= factor * vector[k];
        }
    }
}

/* What is not sought comes out as 0. */
static void fit_channel(const card *c, int channel, double found[TERMS])
{
    double matrix[TERMS][TERMS] = {{0}};
    memset(found, 0, TERMS * sizeof *found);
    for (size_t i = 0; i < c->count; i++) {
        double r = c->patches[i].reflectance;
        if (r <= 0)
            continue;
        place p = middle(c, i);
        double term[TERMS] = {[WHITE] = r, [OFFSET] = 1, [ACROSS] = r * p.x, [DOWN] = r * p.y};
        double weight = 1 / (r * r + stray * stray);
        for (int a = 0; a < TERMS; a++) {
            if (!c->sought[a])
                continue;
            for (int b = 0; b < TERMS; b++)
                matrix[a][b] += c->sought[b] ? weight * term[a] * term[b] : 0.0;
            found[a] += weight * term[a] * c->means[i].at[channel];
        }
    }
    for (int a = 0; a < TERMS; a++)
        if (!c->sought[a])
            matrix[a][a] = 1;
    solve(matrix, found);
}

static double brightness(recede_photo_mean mean)
{
    return mean.at[0] + mean.at[1] + mean.at[2];
}

static recede_code check_order(const card *c, recede_error *error)
{
    for (size_t i = 0; i < c->count; i++)
        for (size_t j = 0; j < c->count; j++) {
            double dark = c->patches[i].reflectance, light = c->patches[j].reflectance;
            if (dark <= 0 || light < steps_apart * dark ||
                brightness(c->means[i]) < brightness(c->means[j]))
                continue;
            recede_fail(error, RECEDE_CONFLICT, "patches.card");
            if (error) {
                error->number = dark;
                error->most = light;
            }
            return RECEDE_CONFLICT;
        }
    return RECEDE_OK;
}

static recede_code check_light(const card *c, const recede_photo_light *light, recede_error *error)
{
    for (size_t i = 0; i < c->count; i++) {
        recede_photo_scale scale = recede_photo_scale_at(light, c->patches + i);
        for (int k = 0; k < RECEDE_PHOTO_CHANNELS; k++)
            if (!(scale.white[k] >= least_light))
                return recede_fail(error, RECEDE_CONFLICT, "patches.card");
    }
    return RECEDE_OK;
}

recede_photo_scale recede_photo_scale_at(const recede_photo_light *light,
                                         const recede_patch *patch)
{
    recede_photo_scale scale;
    place p = middle_of(light->width, light->height, patch);
    for (int k = 0; k < RECEDE_PHOTO_CHANNELS; k++) {
        scale.white[k] = light->white[k] + light->across[k] * p.x + light->down[k] * p.y;
        scale.offset[k] = light->offset[k];
    }
    return scale;
}

recede_code recede_photo_light_of(const recede_photo *photo, const recede_patch *patches,
                                  const recede_photo_mean *means, size_t count,
                                  recede_photo_light *out, recede_error *error)
{
    card c = {photo, patches, means, count, {0}};
    if (commonest(&c) <= 0)
        return recede_fail_count(error, RECEDE_TOO_FEW, "patches.card", 0, 1, RECEDE_MOST_PATCHES);
    if (check_order(&c, error))
        return RECEDE_CONFLICT;
    choose_terms(&c);
    out->width = (double)photo->width;
    out->height = (double)photo->height;
    for (int k = 0; k < RECEDE_PHOTO_CHANNELS; k++) {
        double found[TERMS];
        fit_channel(&c, k, found);
        out->white[k] = found[WHITE];
        out->offset[k] = found[OFFSET];
        out->across[k] = found[ACROSS];
        out->down[k] = found[DOWN];
    }
    return check_light(&c, out, error);
}
