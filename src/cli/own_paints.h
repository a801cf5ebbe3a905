/* Files of the painter's own paints, named on the command line: any path will do. */
#ifndef RECEDE_CLI_OWN_PAINTS_H
#define RECEDE_CLI_OWN_PAINTS_H

#include "recede.h"

/* Reads a pigment file. Returns an exit code; what is wrong has been said. */
int recede_cli_pigment_file(const char *command, const char *option, const char *path,
                            recede_paint *paint);

/* Puts a palette file (or a pigment file, as a palette of one) into the scene: its
 * paints, and its medium and paper where it has them. Likewise. */
int recede_cli_palette_file(const char *command, const char *option, const char *path,
                            recede_scene *scene);

#endif
