#include "file/cleanup.h"

#include <limits.h>
#include <signal.h>
#include <string.h>
#include <unistd.h>

enum { SLOTS = 16 };

static struct {
    volatile sig_atomic_t used;
    char path[PATH_MAX];
} slots[SLOTS];

static const int ending[] = {SIGINT, SIGTERM, SIGHUP};
enum { ENDING = sizeof ending / sizeof ending[0] };

/* unlink, sigaction and raise may be called in a handler (POSIX.1-2008). */
static void clean_and_end(int number)
{
    struct sigaction usual;
    for (int i = 0; i < SLOTS; i++)
        if (slots[i].used)
            unlink(slots[i].path);
    memset(&usual, 0, sizeof usual);
    usual.sa_handler = SIG_DFL;
    sigaction(number, &usual, NULL);
    raise(number); /* comes through when this handler returns */
}

static void set_of_ending(sigset_t *set)
{
    sigemptyset(set);
    for (int i = 0; i < ENDING; i++)
        sigaddset(set, ending[i]);
}

void recede_cleanup_install(void)
{
    struct sigaction action, before;
    memset(&action, 0, sizeof action);
    action.sa_handler = clean_and_end;
    set_of_ending(&action.sa_mask);
    for (int i = 0; i < ENDING; i++)
        if (sigaction(ending[i], NULL, &before) == 0 && before.sa_handler != SIG_IGN)
            sigaction(ending[i], &action, NULL);
    signal(SIGPIPE, SIG_IGN);
    signal(SIGXFSZ, SIG_IGN);
}

void recede_cleanup_hold(sigset_t *before)
{
    sigset_t set;
    set_of_ending(&set);
    sigprocmask(SIG_BLOCK, &set, before);
}

void recede_cleanup_release(const sigset_t *before)
{
    sigprocmask(SIG_SETMASK, before, NULL);
}

int recede_cleanup_add(const char *path)
{
    if (strlen(path) >= PATH_MAX)
        return -1;
    for (int i = 0; i < SLOTS; i++) {
        if (!slots[i].used) {
            strcpy(slots[i].path, path);
            slots[i].used = 1;
            return i;
        }
    }
    return -1;
}

void recede_cleanup_drop(int slot)
{
    if (slot >= 0)
        slots[slot].used = 0;
}
