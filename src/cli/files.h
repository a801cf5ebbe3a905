/* Files that a scene names, or a palette on the command line: from one folder. */
#ifndef RECEDE_CLI_FILES_H
#define RECEDE_CLI_FILES_H

#include "text/files.h"

/* Holds what it is given by reference: the path must outlive it. */
typedef struct recede_cli_files {
    recede_files files; /* to hand on */
    const char *beside; /* a path whose folder is meant; "": the current folder */
} recede_cli_files;

/* path NULL or "-": the current folder, else that of the file at path. */
void recede_cli_files_start(recede_cli_files *files, const char *path);

/* Says what is wrong with a text, or a file that it names: "NAME:LINE:COLUMN: ...".
 * Returns the exit code. */
int recede_cli_say_text_error(const char *name, recede_text_status status,
                              const recede_text_error *error);

#endif
