#ifndef RECEDE_PLAN_FITS_H
#define RECEDE_PLAN_FITS_H

#include "recede.h"

/* 1 where an index was made for these very paints, medium, paper and rules. */
int recede_index_fits(const recede_index *index, const recede_palette *palette,
                      const recede_rules *rules);

#endif
