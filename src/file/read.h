/* Reads a whole file, or standard input for "-", up to a limit. */
#ifndef RECEDE_FILE_READ_H
#define RECEDE_FILE_READ_H

#include "file/problem.h"
#include "text/buffer.h"

/* out is started by the caller and holds the bytes afterwards. Returns 0, or
 * -1 with the problem worded: refused where there is more than most_bytes. */
int recede_file_read(const char *path, size_t most_bytes, recede_buffer *out,
                     recede_file_problem *problem);

#endif
