/* The mixing chart: which paints stand where, and what every patch of it is. */
#include "recede.h"

#include <math.h>
#include <stddef.h>

#include "paint/palette.h"
#include "paint/rule.h"

/* ------------------------------------------------------------- families -- */

/* By hue angle from (included) to to, and chroma likewise: the first that fits. */
static const struct family {
    double from_deg, to_deg, least_chroma, most_chroma;
    recede_paint_family family;
} families[] = {
    {60, 115, 50, INFINITY, RECEDE_FAMILY_YELLOW},
    {25, 115, 4, 50, RECEDE_FAMILY_EARTH},
    {115, 225, 8, INFINITY, RECEDE_FAMILY_GREEN},
    {225, 300, 12, INFINITY, RECEDE_FAMILY_BLUE},
};

/* Washes are compared where paints, pale and dark, show their hue. */
#define FAMILY_LIGHTNESS 60.0

static recede_lab wash_lab(const recede_palette *palette, const recede_paint *paint, double water)
{
    recede_spectrum seen = recede_film(&paint->k, &paint->s, recede_film_of_water(water),
                                       &palette->paper);
    return recede_palette_lab(palette, seen.at);
}

static recede_lab nearest_wash(const recede_palette *palette, const recede_paint *paint)
{
    recede_lab nearest = wash_lab(palette, paint, recede_water_at(0));
    for (size_t level = 1; level < recede_water_count(); level++) {
        recede_lab lab = wash_lab(palette, paint, recede_water_at(level));
        if (fabs(lab.l - FAMILY_LIGHTNESS) < fabs(nearest.l - FAMILY_LIGHTNESS))
            nearest = lab;
    }
    return nearest;
}

recede_paint_family recede_paint_family_of(const recede_palette *palette, int paint)
{
    recede_lch wash = recede_lch_of_lab(nearest_wash(palette, &palette->paints[paint]));
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++) {
        const struct family *f = &families[i];
        if (wash.h_deg >= f->from_deg && wash.h_deg < f->to_deg && wash.c >= f->least_chroma &&
            wash.c < f->most_chroma)
            return f->family;
    }
    return RECEDE_FAMILY_OTHER;
}

static int add_family(const recede_palette *palette, recede_paint_family family, int *list,
                      int count)
{
    for (int i = 0; i < (int)palette->count; i++)
        if (!palette->paints[i].let_down && recede_paint_family_of(palette, i) == family)
            list[count++] = i;
    return count;
}

recede_chart recede_chart_of(const recede_palette *palette)
{
    recede_chart chart = {.third = -1};
    chart.rows = add_family(palette, RECEDE_FAMILY_YELLOW, chart.row, 0);
    chart.rows = add_family(palette, RECEDE_FAMILY_EARTH, chart.row, chart.rows);
    chart.columns = add_family(palette, RECEDE_FAMILY_BLUE, chart.column, 0);
    chart.columns = add_family(palette, RECEDE_FAMILY_GREEN, chart.column, chart.columns);
    return chart;
}

/* -------------------------------------------------------------- patches -- */

/* Parts of the row's and of the column's paint, four together; a third is one
 * more. */
static const int proportions[RECEDE_CHART_STEPS][2] = {{3, 1}, {2, 2}, {1, 3}};

static const double waters[RECEDE_CHART_STEPS] = {1, 4, 16};
static const int whites[RECEDE_CHART_STEPS] = {0, 1, 4}; /* to 1 of the rest */

/* Adds parts of a paint where they belong: paints ascend, each stands once. */
static void add(recede_mix *mix, int paint, int parts)
{
    int at = 0;
    while (at < mix->count && mix->paint[at] < paint)
        at++;
    if (at == mix->count || mix->paint[at] != paint) {
        for (int i = mix->count++; i > at; i--) {
            mix->paint[i] = mix->paint[i - 1];
            mix->parts[i] = mix->parts[i - 1];
        }
        mix->paint[at] = paint;
        mix->parts[at] = 0;
    }
    mix->parts[at] += parts;
}

static int divides_all(const recede_mix *mix, int divisor)
{
    for (int i = 0; i < mix->count; i++)
        if (mix->parts[i] % divisor)
            return 0;
    return 1;
}

static void to_lowest_terms(recede_mix *mix)
{
    for (int divisor = mix->parts[0]; divisor > 1; divisor--)
        if (divides_all(mix, divisor))
            for (int i = 0; i < mix->count; i++)
                mix->parts[i] /= divisor;
}

static int first_white(const recede_palette *palette)
{
    int white = 0;
    while (!palette->paints[white].is_white)
        white++;
    return white;
}

static void thin(const recede_palette *palette, recede_mix *mix, int strength)
{
    if (palette->medium == RECEDE_WATERCOLOUR)
        mix->water = waters[strength];
    else if (whites[strength])
        add(mix, first_white(palette), whites[strength] * recede_mix_parts(mix));
}

recede_chart_patch recede_chart_patch_at(const recede_palette *palette,
                                         const recede_chart *chart, int row, int column,
                                         int proportion, int strength)
{
    recede_chart_patch patch = {.mix = {0}};
    if (row >= 0)
        add(&patch.mix, chart->row[row], proportions[proportion][0]);
    if (column >= 0)
        add(&patch.mix, chart->column[column], proportions[proportion][1]);
    if (row >= 0 && column >= 0 && chart->third >= 0)
        add(&patch.mix, chart->third, 1);
    thin(palette, &patch.mix, strength);
    to_lowest_terms(&patch.mix);
    recede_spectrum seen = recede_mix_reflectance(palette, &patch.mix, NULL);
    patch.colour = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen));
    return patch;
}
