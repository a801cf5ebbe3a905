#include "paint/range.h"

#include <math.h>

#include "paint/curve.h"
#include "paint/mixes.h"

/* Beyond what two lightnesses in single precision may be off. */
#define L_SLACK (3 * (double)RECEDE_CURVE_ERROR)

static double lightness(const recede_palette *palette, double y)
{
    return recede_lab_of_xyz((recede_xyz){0, y, 0}, palette->white).l;
}

static void take_y(recede_extremes *e, double y)
{
    e->darkest_y = fmin(e->darkest_y, y);
    e->palest_y = fmax(e->palest_y, y);
    e->dark_l = lightness(e->sweep.palette, e->darkest_y) + L_SLACK;
    e->pale_l = lightness(e->sweep.palette, e->palest_y) - L_SLACK;
}

void recede_extremes_start(recede_extremes *e, const recede_palette *palette)
{
    e->darkest_y = e->dark_l = INFINITY;
    e->palest_y = e->pale_l = -INFINITY;
    recede_sweep_start(&e->sweep, palette);
    if (palette->medium == RECEDE_WATERCOLOUR)
        take_y(e, recede_palette_xyz(palette, palette->paper.at).y);
}

void recede_extremes_take(recede_extremes *e, const recede_mix *mix, float curve_l)
{
    if ((double)curve_l > e->dark_l && (double)curve_l < e->pale_l)
        return;
    recede_sweep_take(&e->sweep, mix);
    take_y(e, recede_sweep_xyz(&e->sweep, 0).y);
}

/* Water brings each band nearer to the paper's, so on a paper about as pale as the
 * paints get, or paler, the bare ground and the mixes without water between them
 * hold both ends. */
void recede_palette_range(const recede_palette *palette, const recede_rules *rules,
                          double *darkest_y, double *palest_y)
{
    recede_mixes walk;
    recede_curve_maker maker;
    recede_extremes e;
    int curves = recede_curve_holds(palette);
    recede_extremes_start(&e, palette);
    recede_curve_start(&maker, palette);
    recede_mixes_start(&walk, (int)palette->count, rules);
    while (recede_mixes_next(&walk))
        recede_extremes_take(&e, &walk.mix,
                             curves ? recede_curve_first_l(&maker, &walk.mix) : -INFINITY);
    *darkest_y = e.darkest_y;
    *palest_y = e.palest_y;
}
