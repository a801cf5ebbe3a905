/* What a CGATS file says before its data. */
#ifndef RECEDE_TEXT_CGATS_HEADER_H
#define RECEDE_TEXT_CGATS_HEADER_H

#include "text/cgats_format.h"
#include "text/cgats_light.h"

/* A number behind a keyword; line 0: not there. */
typedef struct recede_cgats_figure {
    double number;
    recede_place place;
} recede_cgats_figure;

typedef struct recede_cgats_header {
    recede_cgats_figure fields, sets, norm; /* NUMBER_OF_..., SPECTRAL_NORM: 1 or 100 */
    recede_cgats_light light;
    recede_cgats_format format;
} recede_cgats_header;

void recede_cgats_header_start(recede_cgats_header *header, const recede_allocator *allocator);
void recede_cgats_header_free(recede_cgats_header *header);

/* From the start of the file to BEGIN_DATA, which is then the scanner's token. */
recede_text_status recede_cgats_header_read(recede_cgats_header *header,
                                            recede_cgats_scanner *scanner);

#endif
