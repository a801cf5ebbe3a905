/* The system calls by which a file is written, so that a test can make each of
 * them fail. */
#ifndef RECEDE_FILE_CALLS_H
#define RECEDE_FILE_CALLS_H

#include <stddef.h>
#include <sys/types.h>

#include "file/write.h"

typedef struct recede_file_calls {
    int (*open)(const char *path, int flags, mode_t mode);
    ssize_t (*write)(int file, const void *bytes, size_t size);
    int (*sync)(int file);
    int (*close)(int file);
    int (*link)(const char *from, const char *to);
    int (*rename)(const char *from, const char *to);
} recede_file_calls;

extern const recede_file_calls recede_file_system;

int recede_file_write_by(const recede_file_calls *calls, const recede_output *outputs,
                         size_t count, recede_file_problem *problem);

#endif
