/* Files that the program reads, so that no output takes the place of one. */
#ifndef RECEDE_CLI_INPUTS_H
#define RECEDE_CLI_INPUTS_H

#include "file/read.h"

/* As recede_file_read; a file that was read is remembered. */
int recede_cli_read(const char *path, size_t most_bytes, recede_buffer *out,
                    recede_file_problem *problem);

/* 1 where the path leads to a file that was read, by whatever name. */
int recede_cli_was_read(const char *path);

#endif
