#ifndef RECEDE_PLAN_FITS_H
#define RECEDE_PLAN_FITS_H

#include "recede.h"

/* 1 where all bands, or all that a mix takes from a paint, are alike. */
int recede_same_spectrum(const recede_spectrum *one, const recede_spectrum *other);
int recede_same_paint(const recede_paint *one, const recede_paint *other);

/* 1 where an index was made for these very paints, medium, paper and rules. */
int recede_index_fits(const recede_index *index, const recede_palette *palette,
                      const recede_rules *rules);

#endif
