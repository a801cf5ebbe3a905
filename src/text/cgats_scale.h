/* Whether readings are shares of 1 or percent, and whether they are reflectances. */
#ifndef RECEDE_TEXT_CGATS_SCALE_H
#define RECEDE_TEXT_CGATS_SCALE_H

#include "text/cgats.h"
#include "text/cgats_header.h"

/* The least and the greatest reading. All zero at first: no readings. */
typedef struct recede_cgats_extremes {
    recede_cgats_figure least, greatest;
} recede_cgats_extremes;

void recede_cgats_extremes_note(recede_cgats_extremes *extremes, double reading,
                                recede_place place);

/* Turns reflectances as they were read into shares from 0 to 1. */
recede_text_status recede_cgats_to_shares(const recede_cgats_header *header,
                                          const recede_cgats_extremes *extremes,
                                          recede_measurements *out, recede_text_error *error);

#endif
