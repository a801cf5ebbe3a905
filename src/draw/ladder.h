/* The ladder: one colour at many distances as a sheet to teach with. The
 * picture, then why it is so and captions to read out, then the mixes. */
#ifndef RECEDE_DRAW_LADDER_H
#define RECEDE_DRAW_LADDER_H

#include "draw/sheet.h"

/* blank: two pages instead, an exercise with empty boxes and its answers. */
recede_sheet_result recede_ladder_pixels(const recede_ladder *ladder, int blank,
                                         const recede_sheet_options *options,
                                         recede_sheet_pixels *out);
recede_sheet_result recede_ladder_pdf(const recede_ladder *ladder, int blank,
                                      const recede_sheet_options *options, recede_buffer *out);

#endif
