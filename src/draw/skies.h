/* The skies: one scene in several lights as a sheet. First the pictures side by
 * side, then what each light changes in the mixes. */
#ifndef RECEDE_DRAW_SKIES_H
#define RECEDE_DRAW_SKIES_H

#include "draw/sheet.h"

recede_sheet_result recede_skies_pixels(const recede_skies *skies,
                                        const recede_sheet_options *options,
                                        recede_sheet_pixels *out);
recede_sheet_result recede_skies_pdf(const recede_skies *skies, const recede_sheet_options *options,
                                     recede_buffer *out);

#endif
