#include "file/read.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static int too_large(const char *path, size_t most_bytes, recede_file_problem *problem)
{
    char what[120];
    snprintf(what, sizeof what, "the file is larger than the %zu bytes that are read; shorten it",
             most_bytes);
    return recede_file_say(problem, 1, path, what);
}

static int read_all(int file, const char *path, size_t most_bytes, recede_buffer *out,
                    recede_file_problem *problem)
{
    char block[16384];
    for (;;) {
        ssize_t count = read(file, block, sizeof block);
        if (count < 0 && errno == EINTR)
            continue;
        if (count < 0)
            return recede_file_fail(problem, path, "read", errno);
        if (count == 0)
            return 0;
        if ((size_t)count > most_bytes - out->size)
            return too_large(path, most_bytes, problem);
        recede_buffer_add(out, block, (size_t)count);
        if (out->failed)
            return recede_file_fail(problem, path, "read", ENOMEM);
    }
}

int recede_file_read(const char *path, size_t most_bytes, recede_buffer *out,
                     recede_file_problem *problem)
{
    int standard = strcmp(path, "-") == 0;
    int file = standard ? STDIN_FILENO : open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY);
    if (file < 0)
        return recede_file_fail(problem, path, "read", errno);
    int result = read_all(file, path, most_bytes, out, problem);
    if (!standard)
        close(file);
    return result;
}
