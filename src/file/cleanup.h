/* Temporary files that must not outlive the process.
 *
 * A signal handler gets no context, so the names stand in static memory: the
 * only state of this kind in the program. Names are added and dropped by
 * recede_file_write alone. */
#ifndef RECEDE_FILE_CLEANUP_H
#define RECEDE_FILE_CLEANUP_H

#include <signal.h>

/* From now on SIGINT, SIGTERM and SIGHUP (unless ignored) remove the temporary
 * files and then end the process as the signal would have. SIGPIPE and SIGXFSZ
 * are ignored: the write that failed reports it. */
void recede_cleanup_install(void);

/* Holds the first three back, and lets them through again. */
void recede_cleanup_hold(sigset_t *before);
void recede_cleanup_release(const sigset_t *before);

/* Call while signals are held. Returns a slot, or -1 when all are taken or the
 * path is too long. */
int recede_cleanup_add(const char *path);
void recede_cleanup_drop(int slot);

#endif
