/* Readings on an even grid of wavelengths, brought onto the library's bands. */
#ifndef RECEDE_TEXT_CGATS_BANDS_H
#define RECEDE_TEXT_CGATS_BANDS_H

#include "recede.h"

#define RECEDE_GRID_LEAST 6 /* readings */

/* A reading that the grid has at a band's middle is taken as it is; between readings,
 * Sprague's interpolation; beyond the ends, the end held. The grid has at least
 * RECEDE_GRID_LEAST readings. Nothing is clipped. */
recede_spectrum recede_on_bands(const double *readings, size_t count, double first_nm,
                                double step_nm);

#endif
