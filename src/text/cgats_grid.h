/* The wavelengths at which a CGATS file has readings. */
#ifndef RECEDE_TEXT_CGATS_GRID_H
#define RECEDE_TEXT_CGATS_GRID_H

#include "text/cgats_format.h"

/* One reading: which column it is in. */
typedef struct recede_cgats_node {
    double nm;
    size_t column;
} recede_cgats_node;

/* In ascending order, evenly apart. */
typedef struct recede_cgats_grid {
    recede_array nodes; /* of recede_cgats_node */
    double first_nm, step_nm;
} recede_cgats_grid;

void recede_cgats_grid_start(recede_cgats_grid *grid, const recede_allocator *allocator);
void recede_cgats_grid_free(recede_cgats_grid *grid);

/* From columns whose wavelengths are all known. Refused: gaps, a wavelength twice, steps
 * over 20 nm, a range that does not hold 400 to 700 nm. */
recede_text_status recede_cgats_grid_make(recede_cgats_grid *grid,
                                          const recede_cgats_format *format,
                                          recede_text_error *error);

/* One sample's readings, all the columns' values given, on the library's bands. room: as
 * many numbers as the grid has. */
recede_spectrum recede_cgats_grid_bands(const recede_cgats_grid *grid, const double *values,
                                        double *room);

#endif
