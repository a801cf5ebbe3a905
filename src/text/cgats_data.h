/* The samples of a CGATS file. */
#ifndef RECEDE_TEXT_CGATS_DATA_H
#define RECEDE_TEXT_CGATS_DATA_H

#include "text/cgats.h"
#include "text/cgats_header.h"

/* From BEGIN_DATA, the scanner's token, to the end of the file. out->allocator is set;
 * what is read until a failure is left in out. */
recede_text_status recede_cgats_data_read(recede_cgats_header *header,
                                          recede_cgats_scanner *scanner,
                                          recede_measurements *out);

#endif
