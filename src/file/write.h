/* The one way out: everything recede writes goes through recede_file_write. */
#ifndef RECEDE_FILE_WRITE_H
#define RECEDE_FILE_WRITE_H

#include <stddef.h>

#include "file/problem.h"

#define RECEDE_MOST_OUTPUTS 8

typedef struct recede_output {
    const char *path;  /* "-" for standard output */
    const void *bytes;
    size_t size;
} recede_output;

/* Writes all outputs or, as far as the system allows, none. Regular files go
 * to a temporary file beside the target, complete and on disk before the first
 * target is replaced; if a later replacement fails the earlier ones are taken
 * back. Devices, pipes and standard output are written to directly, after the
 * temporary files and before the replacements. A symbolic link stays a link:
 * what it points to is replaced. Two outputs to one place are refused. Returns
 * 0, or -1 with the problem worded. */
int recede_file_write(const recede_output *outputs, size_t count, recede_file_problem *problem);

#endif
