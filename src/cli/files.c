#include "cli/files.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/inputs.h"
#include "cli/load.h"

/* The path of a name beside another path; NULL: no memory. */
static char *path_beside(const char *beside, const char *name)
{
    const char *slash = strrchr(beside, '/');
    size_t folder = slash ? (size_t)(slash + 1 - beside) : 0, size = strlen(name) + 1;
    char *path = malloc(folder + size);
    if (!path)
        return NULL;
    memcpy(path, beside, folder);
    memcpy(path + folder, name, size);
    return path;
}

static recede_text_status read_file(void *context, const char *name, recede_buffer *out,
                                    recede_text_error *error)
{
    const recede_cli_files *files = context;
    recede_file_problem problem;
    char *path = path_beside(files->beside, name);
    if (!path)
        return recede_text_no_memory(error);
    int failed = recede_cli_read(path, RECEDE_FILE_MOST_BYTES, out, &problem);
    free(path);
    if (!failed)
        return RECEDE_TEXT_OK;
    recede_text_refuse(error, 0, 0, "%s", problem.text);
    return problem.refused ? RECEDE_TEXT_REFUSED : RECEDE_TEXT_UNREADABLE;
}

void recede_cli_files_start(recede_cli_files *files, const char *path)
{
    files->files = (recede_files){read_file, files};
    files->beside = path && strcmp(path, "-") != 0 ? path : "";
}

int recede_cli_say_text_error(const char *name, recede_text_status status,
                              const recede_text_error *error)
{
    recede_buffer line;
    recede_buffer_start(&line, NULL);
    recede_message_line(&line, name, error);
    if (line.failed)
        recede_cli_say("%s", error->what);
    else
        fputs(recede_buffer_string(&line), stderr);
    recede_buffer_free(&line);
    return status == RECEDE_TEXT_REFUSED ? RECEDE_EXIT_REFUSED : RECEDE_EXIT_FAILED;
}
