#include "paint/over_visit.h"

#include <math.h>
#include <string.h>

#include "paint/rule.h"

/* Lightness from level to level, and how far guesses are off in it. */
#define LEAST_SLOPE 0.05f
#define MOST_SLOPE 4.0f
#define GUESS_ERROR 0.3f

/* As far outside a window, counted by its width, as it is used to guess the next. */
#define LEAST_ALONG (-0.5f)
#define MOST_ALONG 2.0f

/* Twice the film in levels of water, or half of it; and one level's share of the film. */
enum { OCTAVE = 6 };
#define A_LEVEL 0.115f

/* Farther apart in lightness than this, two films have too much between them for a
 * bound to be of use. */
#define WIDE_STEP 12.0f

enum { AT_HIDING = -1 };

/* -------------------------------------------------------------- films -- */

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
    if (difference > v->limit)
        return;
    v->mix.water = recede_water_at((size_t)level);
    v->limit = v->film(v->context, &v->mix, difference);
}

static void find_film(recede_over_visit *v, int level, recede_over_film *out)
{
    v->shades++;
    out->level = level;
    recede_shade_of_film(&v->maker, &v->films, v->maker.film[level], &out->shade);
}

static void find_hiding(recede_over_visit *v, recede_over_film *out)
{
    out->level = AT_HIDING;
    recede_shade_of_hiding(&v->maker, &v->films, &out->shade);
}

static void consider(recede_over_visit *v, const recede_over_film *film)
{
    if (!(recede_shade_bound(&v->aim, &film->shade, v->limit) > v->limit))
        open_film(v, film->level);
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

static int is_end(const recede_over_visit *v, const recede_over_film *film)
{
    return film->level == AT_HIDING || film->level == v->ground.level;
}

/* From an end, at no film or at all the film there could be, one goes by halves or
 * doubles of it; otherwise by the middle level. */
static int level_between(const recede_over_visit *v, const recede_over_film *thick,
                         const recede_over_film *thin)
{
    int middle = (thick->level + thin->level) / 2;
    if (thin->level == v->ground.level && thick->level + OCTAVE < middle)
        return thick->level + OCTAVE;
    if (thick->level == AT_HIDING && thin->level - OCTAVE > middle)
        return thin->level - OCTAVE;
    return middle;
}

/* By lightness where the films lie far apart, else by colour too. */
static double bound_between(recede_over_visit *v, const recede_over_film *thick,
                            const recede_over_film *thin)
{
    const recede_shade *from = &thick->shade, *to = &thin->shade;
    if ((is_end(v, thick) || is_end(v, thin)) && fabsf(to->l - from->l) > WIDE_STEP)
        return recede_shade_lightness_bound(&v->maker, &v->aim, from, to, v->darkens);
    v->betweens++;
    return recede_shade_bound_between(&v->maker, &v->aim, from, to, v->darkens, v->limit);
}

/* What lies strictly between two films. */
static void narrow(recede_over_visit *v, const recede_over_film *thick,
                   const recede_over_film *thin)
{
    recede_over_film film;
    if (thin->level - thick->level < 2 || bound_between(v, thick, thin) > v->limit)
        return;
    find_film(v, level_between(v, thick, thin), &film);
    consider(v, &film);
    narrow(v, thick, &film);
    narrow(v, &film, thin);
}

/* -------------------------------------------------------------- guess -- */

static float clamped(float x, float low, float high)
{
    return !(x > low) ? low : x > high ? high : x;
}

/* By halves, taking for granted that less film is lighter. */
static void learn_strength(recede_over_visit *v, int paint)
{
    const recede_mix alone = {1, {paint}, {1}, 0};
    int low = 0, high = v->ground.level - 1;
    recede_curve_films_of_mix(&v->maker, &alone, &v->films);
    recede_over_film film = v->ground;
    while (low < high) {
        int middle = (low + high) / 2;
        find_film(v, middle, &film);
        if (film.shade.l < v->aim.l)
            low = middle + 1;
        else
            high = middle;
    }
    v->strength[paint] = -2.0f / v->maker.film[low];
    v->alone[paint][0] = 500.0f * (film.shade.root[0] - film.shade.root[1]);
    v->alone[paint][1] = 200.0f * (film.shade.root[1] - film.shade.root[2]);
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

static float *thicker(recede_over_visit *v)
{
    return &v->thicker[v->mix.paint[0]][v->mix.paint[v->mix.count - 1]];
}

/* Thickness; where it hides the ground, that without water. */
static float thickness(const recede_over_visit *v, const recede_over_film *film)
{
    int level = film->level > 0 ? film->level : 0;
    return level < v->ground.level ? -0.5f * v->maker.film[level] : 0.0f;
}

/* From where the target's lightness was found after all: thin films darken in
 * proportion. */
static void learn(recede_over_visit *v, float likely, const recede_over_film *thick,
                  const recede_over_film *thin)
{
    float step = thin->shade.l - thick->shade.l, least = thickness(v, thin);
    float way = thickness(v, thick) - least;
    float along = clamped((thin->shade.l - v->aim.l) / step, LEAST_ALONG, MOST_ALONG);
    float film = least + way * along;
    if (film > 0.0f)
        *thicker(v) = film / likely;
    v->slope = clamped(A_LEVEL * film * step / way, LEAST_SLOPE, MOST_SLOPE);
}

/* So many levels from the target's lightness the limit is used up, and as far again as
 * guesses are off. */
static int levels_of_limit(const recede_over_visit *v)
{
    float off = 1e-6f * (float)v->limit * (1.0f + 0.015f * fabsf(v->aim.l - 50.0f));
    return 1 + (int)clamped((off + GUESS_ERROR) / v->slope, 1.0f, 12.0f);
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
    for (int i = 0; i < RECEDE_MOST_PAINTS; i++)
        for (int j = 0; j < RECEDE_MOST_PAINTS; j++)
            v->thicker[i][j] = 1.0f;
    for (size_t i = 0; i < ground->count; i++)
        learn_strength(v, (int)i);
}

/* The films between which the mix is about as dark as the target. */
static void open_window(recede_over_visit *v, recede_over_film *thick, recede_over_film *thin)
{
    float likely = likely_film(v);
    int level = level_of_film(v, likely * *thicker(v)), wide = levels_of_limit(v);
    if (level - wide < 0)
        find_hiding(v, thick);
    else
        find_film(v, level - wide, thick);
    if (level + wide >= v->ground.level)
        *thin = v->ground;
    else
        find_film(v, level + wide, thin);
    learn(v, likely, thick, thin);
}

/* Where every thicker film is too dark, that goes without saying how dark. */
static void search_thicker(recede_over_visit *v, const recede_over_film *thick)
{
    recede_over_film hiding = {AT_HIDING, {.l = -INFINITY}};
    if (v->darkens && recede_shade_lightness_bound(&v->maker, &v->aim, &hiding.shade,
                                                   &thick->shade, 1) > v->limit)
        return;
    find_hiding(v, &hiding);
    narrow(v, &hiding, thick);
}

void recede_over_visit_mix(recede_over_visit *v, const recede_mix *mix, double limit)
{
    recede_over_film thick, thin;
    v->mix = *mix;
    v->swept = 0;
    v->limit = limit;
    recede_curve_films_of_mix(&v->maker, mix, &v->films);
    v->darkens = recede_shade_darkens(&v->films, &v->ground.shade);
    open_window(v, &thick, &thin);
    narrow(v, &thick, &thin);
    if (!is_end(v, &thin)) {
        consider(v, &thin);
        narrow(v, &thin, &v->ground);
    }
    if (!is_end(v, &thick)) {
        consider(v, &thick);
        search_thicker(v, &thick);
    }
}
