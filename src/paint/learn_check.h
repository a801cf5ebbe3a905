/* What a paint cannot be learnt from. */
#ifndef RECEDE_PAINT_LEARN_CHECK_H
#define RECEDE_PAINT_LEARN_CHECK_H

#include "recede.h"

/* Errors of recede_paint_learn that the swatches themselves are the reason of; spectra
 * as they were read. */
recede_code recede_learn_check_figures(const recede_swatches *swatches, recede_error *error);

/* Strengths and lightness; spectra as seen. */
recede_code recede_learn_check_sense(const recede_swatches *seen, recede_error *error);

#endif
