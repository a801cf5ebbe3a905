#include "paint/over_visit.h"

#include <math.h>
#include <string.h>

#include "paint/rule.h"

enum { AT_HIDING = -1 };

/* Lightness from level to level, and how far guesses are off in it. */
#define LEAST_SLOPE 0.05f
#define MOST_SLOPE 4.0f
#define GUESS_ERROR 0.6f

#define PROMISING 0.3
#define WIDE_STEP 8.0f

/* Takes note that something need not be looked at: 1 where the bound says so. */
static int beyond(recede_over_visit *v, double bound)
{
    if (!(bound > v->limit))
        return 0;
    v->least = fmin(v->least, bound);
    return 1;
}

/* The full bound is worth its while only where the quick one sees a difference. */
static int box_beyond(recede_over_visit *v, const recede_box *box)
{
    double quick = recede_quick_bound(&v->aim, box);
    v->boxes++;
    return beyond(v, quick) ||
           (quick > PROMISING * v->limit && beyond(v, recede_full_bound(&v->aim, box)));
}

/* -------------------------------------------------------------- films -- */

static void film_at(recede_over_visit *v, int level, recede_over_film *out)
{
    v->shades++;
    out->level = level;
    recede_shade_of_film(&v->maker, &v->films, v->maker.film[level], &out->shade);
}

static void film_hiding(recede_over_visit *v, recede_over_film *out)
{
    out->level = AT_HIDING;
    recede_shade_of_hiding(&v->maker, &v->films, &out->shade);
}

/* The film in double precision, as the reference has it. */
static void open_film(recede_over_visit *v, int level)
{
    if (!v->swept)
        recede_sweep_take(&v->sweep, &v->mix);
    v->swept = 1;
    v->doubles++;
    recede_lab lab = recede_lab_of_xyz(recede_sweep_xyz(&v->sweep, (size_t)level),
                                       v->palette->white);
    double difference = recede_millionths(recede_delta_e(lab, v->aim.target));
    v->least = fmin(v->least, difference);
    if (difference > v->limit)
        return;
    v->mix.water = recede_water_at((size_t)level);
    v->limit = v->film(v->context, &v->mix, difference);
}

static void consider(recede_over_visit *v, const recede_over_film *film)
{
    float off = fabsf(film->shade.l - v->aim.l) - RECEDE_CURVE_ERROR;
    if (beyond(v, recede_lightness_bound(&v->aim, off)))
        return;
    recede_box box = recede_shade_point(&film->shade);
    if (!box_beyond(v, &box))
        open_film(v, film->level);
}

/* 1 where every thicker film is too dark. */
static int all_thicker_too_dark(recede_over_visit *v, const recede_over_film *edge,
                                const recede_over_film *hiding)
{
    float lightest = v->darkens ? edge->shade.l + RECEDE_CURVE_ERROR
                                : recede_shade_lightest(&v->maker, &edge->shade, &hiding->shade);
    return beyond(v, recede_lightness_bound(&v->aim, v->aim.l - lightest));
}

/* 1 where every thinner film is too light. */
static int all_thinner_too_light(recede_over_visit *v, const recede_over_film *edge)
{
    float darkest = v->darkens
                        ? edge->shade.l - RECEDE_CURVE_ERROR
                        : recede_shade_darkest(&v->maker, &edge->shade, &v->ground.shade);
    return beyond(v, recede_lightness_bound(&v->aim, darkest - v->aim.l));
}

/* Twice the film, or half of it: as far as one goes from an end that lies at no film
 * or at all the film there could be. */
enum { OCTAVE = 6 };

static int between(const recede_over_visit *v, int thick, int thin)
{
    int middle = (thick + thin) / 2;
    if (thin == v->ground.level && thick + OCTAVE < middle)
        return thick + OCTAVE;
    if (thick == AT_HIDING && thin - OCTAVE > middle)
        return thin - OCTAVE;
    return middle;
}

/* From an end to a film far from it in lightness a box holds too much to be of use. */
static int too_wide(const recede_over_visit *v, const recede_over_film *thick,
                    const recede_over_film *thin)
{
    return (thick->level == AT_HIDING || thin->level == v->ground.level) &&
           thin->level - thick->level > OCTAVE &&
           fabsf(thin->shade.l - thick->shade.l) > WIDE_STEP;
}

/* What lies strictly between two films. */
static void narrow(recede_over_visit *v, const recede_over_film *thick,
                   const recede_over_film *thin)
{
    if (thin->level - thick->level < 2 ||
        (thick->level == AT_HIDING && all_thicker_too_dark(v, thin, thick)) ||
        (thin->level == v->ground.level && all_thinner_too_light(v, thick)))
        return;
    if (!too_wide(v, thick, thin)) {
        recede_box box =
            recede_shade_box(&v->maker, &thick->shade, &thin->shade, v->darkens);
        if (box_beyond(v, &box))
            return;
    }
    recede_over_film middle;
    film_at(v, between(v, thick->level, thin->level), &middle);
    consider(v, &middle);
    narrow(v, thick, &middle);
    narrow(v, &middle, thin);
}

/* -------------------------------------------------------------- guess -- */

static float clamped(float x, float low, float high)
{
    return x < low ? low : x > high ? high : x;
}

static int clamped_level(const recede_over_visit *v, float level)
{
    return (int)clamped(level, 0.0f, (float)v->ground.level - 1.0f);
}

/* The level with about as much film as this. */
static int level_of_film(const recede_over_visit *v, float film)
{
    int low = 0, high = v->ground.level - 1;
    while (low < high) {
        int middle = (low + high) / 2;
        if (-0.5f * v->maker.film[middle] > film)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

/* How thick a film would be as dark as the target, as if darkness added up. */
static float likely_film(const recede_over_visit *v)
{
    float parts = 0.0f, strength = 0.0f;
    for (int i = 0; i < v->mix.count; i++) {
        parts += (float)v->mix.parts[i];
        strength += (float)v->mix.parts[i] * v->strength[v->mix.paint[i]];
    }
    return parts / strength;
}

/* Thickness at a film; where it hides the ground, that without water. */
static float thickness(const recede_over_visit *v, const recede_over_film *film)
{
    int level = film->level > 0 ? film->level : 0;
    return level < v->ground.level ? -0.5f * v->maker.film[level] : 0.0f;
}

/* By halves, taking for granted that less film is lighter. */
static void learn_strength(recede_over_visit *v)
{
    int low = 0, high = v->ground.level - 1;
    recede_over_film film;
    while (low < high) {
        film.level = (low + high) / 2;
        film_at(v, film.level, &film);
        if (film.shade.l < v->aim.l)
            low = film.level + 1;
        else
            high = film.level;
    }
    v->strength[v->mix.paint[0]] = -2.0f / v->maker.film[low];
}

static float *off_by(recede_over_visit *v)
{
    return &v->off[v->mix.paint[0]][v->mix.paint[v->mix.count - 1]];
}

/* From where the target's lightness was found after all: thin films darken in
 * proportion. */
static void learn(recede_over_visit *v, int guessed, const recede_over_film *thick,
                  const recede_over_film *thin)
{
    float step = thin->shade.l - thick->shade.l;
    float along = clamped((thin->shade.l - v->aim.l) / step, -0.5f, 2.0f);
    float most = thickness(v, thick), least = thickness(v, thin);
    float film = least + along * (most - least);
    *off_by(v) = (float)(level_of_film(v, film) - guessed);
    v->slope = clamped(step / (float)(thin->level - thick->level), LEAST_SLOPE, MOST_SLOPE);
}

/* So many levels from the target's lightness a difference is used up, and as far
 * again as guesses are off. */
static int levels_of(const recede_over_visit *v, double difference)
{
    float off = (float)difference * (1.0f + 0.015f * fabsf(v->aim.l - 50.0f)) + GUESS_ERROR;
    return 1 + (int)clamped(off / v->slope, 1.0f, 12.0f);
}

/* -------------------------------------------------------------- visit -- */

void recede_over_visit_start(recede_over_visit *v, const recede_palette *ground,
                             recede_lab target)
{
    memset(v, 0, sizeof *v);
    v->palette = ground;
    recede_aim_at(&v->aim, target);
    recede_curve_start(&v->maker, ground);
    recede_sweep_start(&v->sweep, ground);
    v->ground.level = (int)v->maker.levels;
    recede_shade_of_ground(&v->maker, ground, &v->ground.shade);
    v->slope = 1.0f;
}

/* The films between which the mix is about as dark as the target. */
static void open_window(recede_over_visit *v, recede_over_film *thick, recede_over_film *thin)
{
    if (v->mix.count == 1)
        learn_strength(v);
    int guessed = level_of_film(v, likely_film(v));
    int likely = clamped_level(v, (float)guessed + *off_by(v));
    int wide = levels_of(v, 1e-6 * v->limit);
    if (likely - wide < 0)
        film_hiding(v, thick);
    else
        film_at(v, likely - wide, thick);
    if (likely + wide >= v->ground.level)
        *thin = v->ground;
    else
        film_at(v, likely + wide, thin);
    learn(v, guessed, thick, thin);
}

static void visit_levels(recede_over_visit *v)
{
    recede_over_film hiding, thick, thin;
    recede_curve_films_of_mix(&v->maker, &v->mix, &v->films);
    v->darkens = recede_shade_darkens(&v->films, &v->ground.shade);
    open_window(v, &thick, &thin);
    narrow(v, &thick, &thin);
    if (thin.level != v->ground.level) {
        consider(v, &thin);
        narrow(v, &thin, &v->ground);
    }
    if (thick.level != AT_HIDING) {
        consider(v, &thick);
        if (!v->darkens || !all_thicker_too_dark(v, &thick, NULL)) {
            film_hiding(v, &hiding);
            narrow(v, &hiding, &thick);
        }
    }
}

double recede_over_visit_mix(recede_over_visit *v, const recede_mix *mix, double limit)
{
    v->mix = *mix;
    v->swept = 0;
    v->limit = limit;
    v->least = INFINITY;
    visit_levels(v);
    return v->least;
}
