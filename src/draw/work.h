/* The order of work as a sheet of its own. */
#ifndef RECEDE_DRAW_WORK_H
#define RECEDE_DRAW_WORK_H

#include "draw/sheet.h"
#include "text/work_write.h"

recede_sheet_result recede_work_pixels(const recede_work_told *told,
                                       const recede_sheet_options *options,
                                       recede_sheet_pixels *out);
recede_sheet_result recede_work_pdf(const recede_work_told *told,
                                    const recede_sheet_options *options, recede_buffer *out);

#endif
