/* The study: a plan as a sheet to paint from. First the picture, in colour and
 * in greys, then the mixes far to near, then the order of work where one is given
 * (NULL: none), then the paints. */
#ifndef RECEDE_DRAW_STUDY_H
#define RECEDE_DRAW_STUDY_H

#include "draw/sheet.h"

recede_sheet_result recede_study_pixels(const recede_plan *plan, const recede_work *work,
                                        const recede_sheet_options *options,
                                        recede_sheet_pixels *out);
recede_sheet_result recede_study_pdf(const recede_plan *plan, const recede_work *work,
                                     const recede_sheet_options *options, recede_buffer *out);

#endif
