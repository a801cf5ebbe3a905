/* Where a palette reaches at some lightnesses, counted film by film. */
#include "recede.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "paint/curve.h"
#include "paint/mixes.h"
#include "paint/palette.h"
#include "paint/targets.h"

/* The square of the grid a coordinate falls in; -1: beyond it. */
static int place(double coordinate)
{
    double at = floor(coordinate + 0.5) + RECEDE_GAMUT_MOST;
    return at >= 0 && at < RECEDE_GAMUT_SIDE ? (int)at : -1;
}

static void count_film(recede_gamut *slices, size_t count, double l, double a, double b)
{
    int i = place(a), j = place(b);
    if (i < 0 || j < 0)
        return;
    for (size_t slice = 0; slice < count; slice++)
        if (fabs(l - slices[slice].lightness) <= RECEDE_GAMUT_BAND)
            slices[slice].films[j][i]++;
}

recede_code recede_gamut_fill(const recede_palette *palette, const recede_rules *rules,
                              recede_gamut *slices, size_t count,
                              const recede_progress *progress, recede_error *error)
{
    enum { MIXES_A_REPORT = 4096 };
    recede_curve_maker maker;
    recede_curve curve;
    recede_mixes walk;
    recede_lab bare = recede_palette_lab(palette, palette->paper.at);
    size_t done = 0, levels = recede_palette_levels(palette);
    recede_code code = recede_rules_check(rules, error);
    if (code)
        return code;
    double all = recede_mixes_count((int)palette->count, rules);
    for (size_t slice = 0; slice < count; slice++)
        memset(slices[slice].films, 0, sizeof slices[slice].films);
    if (palette->medium == RECEDE_WATERCOLOUR)
        count_film(slices, count, bare.l, bare.a, bare.b);
    recede_curve_start(&maker, palette);
    recede_mixes_start(&walk, (int)palette->count, rules);
    for (; recede_mixes_next(&walk); done++) {
        if (progress && done % MIXES_A_REPORT == 0 &&
            progress->report(progress->context, (double)done / all))
            return recede_fail(error, RECEDE_CANCELLED, "");
        recede_curve_of_mix(&maker, &walk.mix, &curve);
        for (size_t i = 0; i < levels; i++)
            count_film(slices, count, (double)curve.l[i], (double)curve.a[i],
                       (double)curve.b[i]);
    }
    return RECEDE_OK;
}
