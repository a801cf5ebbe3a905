/* Samples of a measurement file, by their names. */
#ifndef RECEDE_CLI_SAMPLES_H
#define RECEDE_CLI_SAMPLES_H

#include "text/cgats.h"
#include "text/words_swatch.h"

/* path NULL: empty. Returns an exit code; what is wrong has been said. To be freed in
 * any case. */
int recede_cli_samples_read(const char *path, recede_measurements *out);

/* The sample that a source names: its spectrum where the file has one, else its
 * colour, which will not do where the surface's own reflection is left out. */
recede_text_status recede_cli_samples_take(const recede_measurements *samples,
                                           const recede_source *source, int surface_excluded,
                                           recede_metered *out, recede_text_error *error);

#endif
