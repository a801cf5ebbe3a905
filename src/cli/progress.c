#include "cli/progress.h"

#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

static double now_s(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

static int report(void *context, double share_done)
{
    static const double patience_s = 1.0;
    recede_cli_progress *state = context;
    int percent = (int)(100.0 * share_done);
    if (!state->terminal || percent == state->shown || now_s() - state->started_s < patience_s)
        return 0;
    state->shown = percent;
    fprintf(stderr, "\r%s %3d %%", state->doing, percent);
    return 0;
}

void recede_cli_progress_start(recede_cli_progress *state, const char *doing)
{
    *state = (recede_cli_progress){.progress = {report, state},
                                   .doing = doing,
                                   .started_s = now_s(),
                                   .shown = -1,
                                   .terminal = isatty(STDERR_FILENO)};
}

void recede_cli_progress_end(recede_cli_progress *state)
{
    static const int number_width = 6; /* " 100 %" */
    if (state->shown >= 0)
        fprintf(stderr, "\r%*s\r", (int)strlen(state->doing) + number_width, "");
    state->shown = -1;
}
