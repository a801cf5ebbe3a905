/* Paints given on the command line: a palette, a medium, the rules of mixes. */
#ifndef RECEDE_CLI_PAINTS_H
#define RECEDE_CLI_PAINTS_H

#include "cli/options.h"
#include "recede.h"

/* The words as given; NULL where not. */
typedef struct recede_cli_paints {
    const char *palette, *medium, *pigments, *parts, *tie;
} recede_cli_paints;

/* A row of these for a command's options. */
#define RECEDE_CLI_PAINT_OPTIONS(p)                                                         \
    {0, "palette", "PAINTS", "a built-in palette, a palette file, or a list with commas",      \
     &(p).palette},                                                                            \
    {0, "medium", "MEDIUM", "watercolour, gouache, acrylic or oil", &(p).medium},                \
    {0, "pigments", "N", "most paints in one mix, 1 to 4 (3)", &(p).pigments},                   \
    {0, "parts", "N", "most parts in one mix, 1 to 12 (8; opaque 12)", &(p).parts},                         \
    {0, "tie", "X", "differences that count as alike, 0 to 10 (1)", &(p).tie}

/* Puts them into a scene. Returns an exit code; what is wrong has been said. An
 * opaque medium without a palette gets the built-in one for it. */
int recede_cli_paints_take(const char *command, const recede_cli_paints *given,
                           recede_scene *scene);

/* A comma-separated list of paints as indices into the scene's palette; paints that
 * it lacks are added, and its name goes. None may stand twice. */
int recede_cli_paints_find(const char *command, const char *option, const char *text,
                           recede_scene *scene, int *index, int *count);

/* Says what keeps paints from making a palette; returns the exit code. */
int recede_cli_paints_explain(const char *command, const recede_error *error);

#endif
