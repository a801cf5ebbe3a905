/* What stands behind options: lengths, visibilities, colours. Each returns
 * RECEDE_EXIT_DONE, or RECEDE_EXIT_USAGE when what is wrong has been said. */
#ifndef RECEDE_CLI_VALUES_H
#define RECEDE_CLI_VALUES_H

#include "recede.h"

/* "40 km" or a word of the visibility code. */
int recede_cli_visibility(const char *command, const char *option, const char *text, double *km);

/* "10 m, 100 m, 1 km": 2 to most lengths, ascending afterwards, none twice. */
int recede_cli_distances(const char *command, const char *option, const char *text, size_t most,
                         double *metres, size_t *count);

/* The name of a foliage, the name of a surface, "#rrggbb". */
int recede_cli_own(const char *command, recede_own_kind kind, const char *text, recede_own *own);

/* "3 hansa yellow + 1 ultramarine blue + 2 water", of the scene's paints; its
 * reflectance is left to the core. */
int recede_cli_own_mix(const char *command, const char *text, const recede_scene *scene,
                       recede_own *own);

#endif
