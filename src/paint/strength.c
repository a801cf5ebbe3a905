#include "paint/strength.h"

#include "paint/palette.h"

static const double steps[RECEDE_STRENGTHS] = {0, 1, 3, 8, 20};
static const double ink_reflectance = 0.04;

double recede_strength_at(int step)
{
    return steps[step];
}

static int first_white(const recede_palette *palette)
{
    size_t white = 0;
    while (white < palette->count && !palette->paints[white].is_white)
        white++;
    return (int)white;
}

static int is_opaque(const recede_palette *palette)
{
    return palette->medium != RECEDE_WATERCOLOUR;
}

int recede_strength_count(const recede_palette *palette, int paint)
{
    return is_opaque(palette) && palette->paints[paint].is_white ? 1 : RECEDE_STRENGTHS;
}

static recede_spectrum flat(double reflectance)
{
    recede_spectrum s;
    for (int band = 0; band < RECEDE_BANDS; band++)
        s.at[band] = reflectance;
    return s;
}

/* K and S are the parts' weighted means (Duncan 1940); water adds nothing to them. */
static recede_colour film(const recede_palette *palette, int paint, double added, double x,
                          const recede_spectrum *ground)
{
    const recede_paint *of = &palette->paints[paint];
    recede_spectrum k = of->k, s = of->s;
    if (is_opaque(palette) && added > 0) {
        const recede_paint *white = &palette->paints[first_white(palette)];
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k.at[band] = (of->k.at[band] + added * white->k.at[band]) / (1 + added);
            s.at[band] = (of->s.at[band] + added * white->s.at[band]) / (1 + added);
        }
    }
    recede_spectrum seen = recede_film(&k, &s, x, ground);
    return recede_colour_of_xyz(recede_xyz_of_reflectance(&seen));
}

recede_colour recede_strength_colour(const recede_palette *palette, int paint, double added)
{
    return film(palette, paint, added, recede_palette_film(palette, added), &palette->paper);
}

recede_colour recede_strength_on_ink(const recede_palette *palette, int paint, double added)
{
    recede_spectrum ink = flat(ink_reflectance);
    double x = recede_film_of_water(is_opaque(palette) ? 0 : added);
    return film(palette, paint, added, x, &ink);
}

recede_colour recede_strength_ink(void)
{
    recede_spectrum ink = flat(ink_reflectance);
    return recede_colour_of_xyz(recede_xyz_of_reflectance(&ink));
}
