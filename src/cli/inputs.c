#include "cli/inputs.h"

#include <string.h>
#include <sys/stat.h>

/* A scene, a palette and its 24 pigment files, a photograph, readings, lights. */
enum { MOST = 32 };

static struct {
    dev_t device;
    ino_t number;
} inputs[MOST];
static size_t input_count;

int recede_cli_read(const char *path, size_t most_bytes, recede_buffer *out,
                    recede_file_problem *problem)
{
    struct stat status;
    int result = recede_file_read(path, most_bytes, out, problem);
    if (result == 0 && input_count < MOST && strcmp(path, "-") != 0 && stat(path, &status) == 0 &&
        S_ISREG(status.st_mode)) {
        inputs[input_count].device = status.st_dev;
        inputs[input_count++].number = status.st_ino;
    }
    return result;
}

int recede_cli_was_read(const char *path)
{
    struct stat status;
    if (strcmp(path, "-") == 0 || stat(path, &status) != 0)
        return 0;
    for (size_t i = 0; i < input_count; i++)
        if (inputs[i].device == status.st_dev && inputs[i].number == status.st_ino)
            return 1;
    return 0;
}
