/* Shows how far a long call has come: on standard error, only where that is a
 * terminal, only after a second, and wiped away at the end. */
#ifndef RECEDE_CLI_PROGRESS_H
#define RECEDE_CLI_PROGRESS_H

#include "recede.h"

typedef struct recede_cli_progress {
    recede_progress progress; /* pass its address to the library */
    const char *doing;
    double started_s;
    int shown; /* the percentage on screen, -1: none */
    int terminal;
} recede_cli_progress;

void recede_cli_progress_start(recede_cli_progress *state, const char *doing);
void recede_cli_progress_end(recede_cli_progress *state);

#endif
