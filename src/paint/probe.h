/*
 * How near a set of paints comes to some targets at best, one set after another,
 * when no index holds them: for paints that are not in the palette.
 *
 * Single precision and bounds say which films cannot matter; a film's difference is
 * that of the reference, in double precision.
 */
#ifndef RECEDE_PAINT_PROBE_H
#define RECEDE_PAINT_PROBE_H

#include "paint/box.h"
#include "paint/curve.h"
#include "paint/palette.h"

typedef struct recede_probe {
    const recede_allocator *allocator;
    recede_palette *set;     /* the paints at hand, RECEDE_MOST_IN_MIX at most */
    recede_curve_maker maker;
    recede_curve_maker nodes; /* the same at a few water levels spread over all */
    recede_aim *aims;
    size_t count;
} recede_probe;

/* ground: what the films lie on, as seen. The probe is large: keep it off small
 * stacks. RECEDE_NO_MEMORY leaves nothing behind. */
recede_code recede_probe_start(recede_probe *probe, const recede_palette *palette,
                               const recede_spectrum *ground, const recede_lab *targets,
                               size_t count, const recede_allocator *allocator);
void recede_probe_end(recede_probe *probe);

void recede_probe_take(recede_probe *probe, int slot, const recede_paint *paint);

/* All films of mixes that contain each of the first so many slots' paints. For
 * every target, limits has the largest difference that matters and found gets the
 * least there is up to it, else INFINITY; all in millionths. */
void recede_probe_run(recede_probe *probe, int paints, int most_parts, const double *limits,
                      double *found);

#endif
