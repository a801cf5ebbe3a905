/*
 * The sum of squares whose least place is the paint:
 *
 *     sum over spectra and bands   ((L - L_read) / band_spread)^2
 *   + sum over colours             |Lab - Lab_read|^2 / colour_spread^2
 *   + sum over bands               ((ln K_i - ln K_i-1) / k_step)^2
 *   + sum over bands               ((ln S_i - ln S_i-1) / s_step)^2
 *   + sum over bands               ((ln S_i - ln s_usual) / s_spread)^2
 *
 * L is L* of one band's reflectance, so that dark bands count as the eye counts them.
 * The last three lines say what is known of any paint beforehand: K may fall steeply at
 * the edge of a colour, S changes slowly, and the last does no more than settle S where
 * the swatches say nothing of it. The figures were chosen on paints of the library, from
 * colours that were off by 0.5: less smoothness follows the noise, more blunts the edges.
 * Tints in white settle S band by band from K / S and K, and allow it larger steps.
 */
#include "paint/learn_model.h"

#include <math.h>

#include "colour/observer.h"
#include "paint/film.h"

static const double band_spread = 0.5, colour_spread = 0.5;
static const double k_step = 0.6, s_step_film = 0.25, s_step_opaque = 0.5;
static const double s_usual = 0.15, s_spread = 6;

static const double slope_step = 1e-4; /* in ln K and ln S */

static double lightness_of(double reflectance)
{
    return 116 * cbrt(reflectance) - 16;
}

static recede_layer layer_of(const recede_lesson *lesson, const recede_reading *reading,
                             const recede_unknowns *paint)
{
    recede_layer layer;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        layer.k[band] = reading->paint * exp(paint->at[band])
                      + reading->white * lesson->white_k.at[band];
        layer.s[band] = reading->paint * exp(paint->at[RECEDE_BANDS + band])
                      + reading->white * lesson->white_s.at[band];
    }
    recede_layer_prepare(&layer);
    return layer;
}

recede_spectrum recede_lesson_seen(const recede_lesson *lesson, const recede_reading *reading,
                                   const recede_unknowns *paint)
{
    recede_spectrum seen = {{0}};
    recede_layer layer = layer_of(lesson, reading, paint);
    recede_layer_seen(&layer, reading->film, lesson->ground, seen.at);
    return seen;
}

static recede_xyz xyz_of(const recede_lesson *lesson, const recede_spectrum *seen)
{
    recede_xyz sum = {0, 0, 0};
    for (int band = 0; band < RECEDE_BANDS; band++) {
        sum.x += lesson->x.at[band] * seen->at[band];
        sum.y += lesson->y.at[band] * seen->at[band];
        sum.z += lesson->z.at[band] * seen->at[band];
    }
    return sum;
}

recede_lab recede_lesson_lab(const recede_lesson *lesson, const recede_spectrum *seen)
{
    return recede_lab_of_xyz(xyz_of(lesson, seen), lesson->adapted);
}

/* ---- residuals */

static void colour_off(const recede_lesson *lesson, const recede_reading *reading,
                       const recede_spectrum *seen, double off[3])
{
    recede_lab lab = recede_lesson_lab(lesson, seen);
    const double d[3] = {lab.l - reading->lab.l, lab.a - reading->lab.a, lab.b - reading->lab.b};
    for (int j = 0; j < 3; j++)
        off[j] = d[j] / colour_spread;
}

static double band_off(const recede_reading *reading, const recede_spectrum *seen, int band)
{
    return (lightness_of(seen->at[band]) - reading->lightness[band]) / band_spread;
}

/* What is known beforehand: differences of two unknowns, or of one and a figure. */
typedef struct habit { int one, other; double usual, spread; } habit;

enum { HABITS = 2 * (RECEDE_BANDS - 1) + RECEDE_BANDS };

static habit habit_at(const recede_lesson *lesson, int index)
{
    int steps = RECEDE_BANDS - 1;
    if (index < steps)
        return (habit){index + 1, index, 0, k_step};
    if (index < 2 * steps)
        return (habit){index + 2, index + 1, 0, lesson->s_step};
    return (habit){index - 2 * steps + RECEDE_BANDS, -1, log(s_usual), s_spread};
}

static double habit_off(const habit *h, const recede_unknowns *paint)
{
    double other = h->other < 0 ? h->usual : paint->at[h->other];
    return (paint->at[h->one] - other) / h->spread;
}

double recede_lesson_half_sum(const recede_lesson *lesson, const recede_unknowns *paint)
{
    double sum = 0;
    for (size_t i = 0; i < lesson->count; i++) {
        const recede_reading *reading = lesson->of + i;
        recede_spectrum seen = recede_lesson_seen(lesson, reading, paint);
        double off[3];
        colour_off(lesson, reading, &seen, off);
        for (int j = 0; j < 3 && !reading->spectral; j++)
            sum += off[j] * off[j];
        for (int band = 0; band < RECEDE_BANDS && reading->spectral; band++)
            sum += band_off(reading, &seen, band) * band_off(reading, &seen, band);
    }
    for (int i = 0; i < HABITS; i++) {
        habit h = habit_at(lesson, i);
        sum += habit_off(&h, paint) * habit_off(&h, paint);
    }
    return sum / 2;
}

/* ---- slopes */

/* A band's reflectance depends on its own K and S alone: one film with every ln K moved
 * gives the slopes of all bands. */
static void slopes(const recede_lesson *lesson, const recede_reading *reading,
                   const recede_unknowns *paint, recede_unknowns *out)
{
    for (int part = 0; part < RECEDE_UNKNOWNS; part += RECEDE_BANDS) {
        recede_unknowns above = *paint, below = *paint;
        for (int band = 0; band < RECEDE_BANDS; band++) {
            above.at[part + band] += slope_step;
            below.at[part + band] -= slope_step;
        }
        recede_spectrum high = recede_lesson_seen(lesson, reading, &above);
        recede_spectrum low = recede_lesson_seen(lesson, reading, &below);
        for (int band = 0; band < RECEDE_BANDS; band++)
            out->at[part + band] = (high.at[band] - low.at[band]) / (2 * slope_step);
    }
}

static void add_row(recede_squares *squares, double off, const double row[RECEDE_UNKNOWNS])
{
    squares->half_sum += off * off / 2;
    for (int i = 0; i < RECEDE_UNKNOWNS; i++) {
        squares->gradient[i] += off * row[i];
        for (int j = 0; j <= i; j++)
            squares->matrix[i][j] += row[i] * row[j];
    }
}

/* Slopes of the three by the reflectance of each band, through X, Y and Z. */
static void colour_slopes(const recede_lesson *lesson, const recede_spectrum *seen,
                          double out[3][RECEDE_BANDS])
{
    static const double move = 1e-5;
    const recede_spectrum *weights[3] = {&lesson->x, &lesson->y, &lesson->z};
    recede_xyz at = xyz_of(lesson, seen);
    for (int i = 0; i < RECEDE_BANDS * 3; i++)
        out[i / RECEDE_BANDS][i % RECEDE_BANDS] = 0;
    for (int i = 0; i < 3; i++) {
        double x = i == 0 ? move : 0, y = i == 1 ? move : 0, z = i == 2 ? move : 0;
        recede_lab high = recede_lab_of_xyz((recede_xyz){at.x + x, at.y + y, at.z + z},
                                            lesson->adapted);
        recede_lab low = recede_lab_of_xyz((recede_xyz){at.x - x, at.y - y, at.z - z},
                                           lesson->adapted);
        double scale = 1 / (2 * move * colour_spread);
        double slope[3] = {high.l - low.l, high.a - low.a, high.b - low.b};
        for (int j = 0; j < 3; j++)
            for (int band = 0; band < RECEDE_BANDS; band++)
                out[j][band] += scale * slope[j] * weights[i]->at[band];
    }
}

static void add_colour(const recede_lesson *lesson, const recede_reading *reading,
                       const recede_spectrum *seen, const recede_unknowns *slope,
                       recede_squares *squares)
{
    double off[3], per_band[3][RECEDE_BANDS], row[RECEDE_UNKNOWNS];
    colour_off(lesson, reading, seen, off);
    colour_slopes(lesson, seen, per_band);
    for (int j = 0; j < 3; j++) {
        for (int i = 0; i < RECEDE_UNKNOWNS; i++)
            row[i] = per_band[j][i % RECEDE_BANDS] * slope->at[i];
        add_row(squares, off[j], row);
    }
}

static void add_spectrum(const recede_reading *reading, const recede_spectrum *seen,
                         const recede_unknowns *slope, recede_squares *squares)
{
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double root = cbrt(seen->at[band]), per = 116 / (3 * root * root) / band_spread;
        double off = band_off(reading, seen, band);
        int k = band, s = RECEDE_BANDS + band;
        double by_k = per * slope->at[k], by_s = per * slope->at[s];
        squares->half_sum += off * off / 2;
        squares->gradient[k] += off * by_k;
        squares->gradient[s] += off * by_s;
        squares->matrix[k][k] += by_k * by_k;
        squares->matrix[s][k] += by_k * by_s;
        squares->matrix[s][s] += by_s * by_s;
    }
}

static void add_habits(const recede_lesson *lesson, const recede_unknowns *paint,
                       recede_squares *squares)
{
    for (int i = 0; i < HABITS; i++) {
        habit h = habit_at(lesson, i);
        double off = habit_off(&h, paint), per = 1 / h.spread;
        squares->half_sum += off * off / 2;
        squares->gradient[h.one] += off * per;
        squares->matrix[h.one][h.one] += per * per;
        if (h.other < 0)
            continue;
        squares->gradient[h.other] -= off * per;
        squares->matrix[h.other][h.other] += per * per;
        squares->matrix[h.one][h.other] -= per * per;
    }
}

void recede_lesson_squares(const recede_lesson *lesson, const recede_unknowns *paint,
                           recede_squares *out)
{
    *out = (recede_squares){0};
    for (size_t i = 0; i < lesson->count; i++) {
        const recede_reading *reading = lesson->of + i;
        recede_spectrum seen = recede_lesson_seen(lesson, reading, paint);
        recede_unknowns slope;
        slopes(lesson, reading, paint, &slope);
        if (reading->spectral)
            add_spectrum(reading, &seen, &slope, out);
        else
            add_colour(lesson, reading, &seen, &slope, out);
    }
    add_habits(lesson, paint, out);
    for (int i = 0; i < RECEDE_UNKNOWNS; i++)
        for (int j = i + 1; j < RECEDE_UNKNOWNS; j++)
            out->matrix[i][j] = out->matrix[j][i];
}

/* ---- swatches to readings */

static recede_reading reading_of(const recede_lesson *lesson, const recede_swatch *swatch,
                                 int opaque)
{
    recede_reading out = {.film = opaque ? INFINITY : recede_film_of_water(swatch->water)};
    double white = opaque ? swatch->white : 0;
    out.paint = 1 / (1 + white);
    out.white = white / (1 + white);
    out.spectral = swatch->has_reflectance;
    out.lab = swatch->lab;
    if (out.spectral) {
        out.lab = recede_lesson_lab(lesson, &swatch->reflectance);
        for (int band = 0; band < RECEDE_BANDS; band++)
            out.lightness[band] = lightness_of(swatch->reflectance.at[band]);
    }
    return out;
}

static recede_spectrum reflectance_of(const recede_swatch *swatch)
{
    if (swatch->has_reflectance)
        return swatch->reflectance;
    recede_xyz xyz = recede_xyz_of_lab(swatch->lab, recede_white());
    return recede_smooth_of_xyz(xyz).reflectance;
}

/* Kubelka and Munk 1931: K / S = (1 - R)^2 / (2 R). */
static void begin(recede_lesson *lesson, const recede_swatch *masstone)
{
    recede_spectrum seen = reflectance_of(masstone);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double r = fmin(fmax(recede_internal_of_seen(seen.at[band]), 0.005), 0.98);
        lesson->start.at[band] = log((1 - r) * (1 - r) / (2 * r));
        lesson->start.at[RECEDE_BANDS + band] = 0;
    }
}

void recede_lesson_of(const recede_swatches *swatches, recede_lesson *lesson)
{
    int opaque = swatches->medium != RECEDE_WATERCOLOUR;
    *lesson = (recede_lesson){.count = swatches->count};
    lesson->s_step = opaque ? s_step_opaque : s_step_film;
    recede_reflectance_weights(&lesson->x, &lesson->y, &lesson->z);
    lesson->adapted = recede_white();
    for (int band = 0; band < RECEDE_BANDS; band++)
        lesson->ground[band] = fmax(recede_internal_of_seen(swatches->paper.at[band]), 0);
    if (opaque) {
        lesson->white_k = swatches->white->k;
        lesson->white_s = swatches->white->s;
    }
    for (size_t i = 0; i < swatches->count; i++) {
        const recede_swatch *swatch = swatches->of + i;
        lesson->of[i] = reading_of(lesson, swatch, opaque);
        if ((opaque ? swatch->white : swatch->water) == 0.0)
            begin(lesson, swatch);
    }
}
