#include "text/words_amounts.h"

#include <math.h>
#include <stddef.h>

/* A pea of paint and a drop of water: common practice, no source. */
static const double pea_ml = 0.25, drop_ml = 0.05, most_drops = 60;

double recede_water_to_a_pea_ml(double water)
{
    return water * pea_ml;
}

void recede_words_two_figures(recede_buffer *out, double number)
{
    double unit = 1;
    while (number / unit >= 99.5)
        unit *= 10;
    if (unit > 1)
        number = unit * floor(number / unit + 0.5);
    recede_buffer_number(out, number, number < 0.995 ? 2 : number < 9.95 ? 1 : 0);
}

/* ---- paint */

/* What peas are called up to a limit, half of the way to the next. Less than a fifth of
 * a pea cannot be measured out, and a fiftieth is hardly seen on the brush: our own. */
typedef struct {
    double below;
    const char *words;
} portion;

static const portion portions[] = {
    {0.02, "a speck"},
    {0.2, "a brush tip"},
    {7.0 / 24, "a quarter of a pea"},
    {5.0 / 12, "a third of a pea"},
    {7.0 / 12, "half a pea"},
    {17.0 / 24, "two thirds of a pea"},
    {7.0 / 8, "three quarters of a pea"},
    {1.25, "a pea"},
};

/* Halves up to three, then whole ones. */
static double rounded(double number)
{
    return number < 3.0 ? floor(2.0 * number + 0.5) / 2.0 : floor(number + 0.5);
}

void recede_words_paint_amount(recede_buffer *out, double ml, const char *name)
{
    const size_t count = sizeof portions / sizeof portions[0];
    double peas = ml / pea_ml;
    size_t i = 0;
    while (i < count && peas >= portions[i].below)
        i++;
    if (i < count) {
        recede_buffer_format(out, "%s of %s", portions[i].words, name);
        return;
    }
    recede_words_two_figures(out, rounded(peas));
    recede_buffer_format(out, " peas of %s", name);
}

/* ---- water */

void recede_words_drops(recede_buffer *out, double ml)
{
    double drops = rounded(ml / drop_ml);
    if (drops < 1.0) {
        recede_buffer_text(out, "half a drop");
    } else if (drops <= most_drops) {
        recede_buffer_number(out, drops, 1);
        recede_buffer_text(out, drops == 1.0 ? " drop" : " drops");
    } else {
        recede_words_two_figures(out, ml);
        recede_buffer_text(out, " ml");
    }
}
