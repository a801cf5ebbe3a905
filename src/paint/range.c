/* How dark and how pale a palette goes. */
#include "recede.h"

#include <math.h>

#include "paint/mixes.h"
#include "paint/sweep.h"

/* Water brings each band nearer to the paper's, so on a paper about as pale as the
 * paints get, or paler, the bare ground and the mixes without water between them
 * hold both ends. */
void recede_palette_range(const recede_palette *palette, const recede_rules *rules,
                          double *darkest_y, double *palest_y)
{
    recede_mixes walk;
    recede_sweep sweep;
    double paper_y = recede_palette_xyz(palette, palette->paper.at).y;
    *darkest_y = *palest_y = paper_y;
    recede_mixes_start(&walk, (int)palette->count, rules);
    recede_sweep_start(&sweep, palette);
    while (recede_mixes_next(&walk)) {
        recede_sweep_take(&sweep, &walk.mix);
        double y = recede_sweep_xyz(&sweep, 0).y;
        *darkest_y = fmin(*darkest_y, y);
        *palest_y = fmax(*palest_y, y);
    }
}
