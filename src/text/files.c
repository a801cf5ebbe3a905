#include "text/files.h"

#include <stdio.h>
#include <string.h>

int recede_is_file_name(const char *name)
{
    static const char ending[] = ".json";
    size_t length = strlen(name), end = sizeof ending - 1;
    return length >= end && strcmp(name + length - end, ending) == 0;
}

/* One part of a path, between slashes. */
static const char *part_wrong(const char *part, size_t length)
{
    if (length == 0)
        return "a part of its path is empty";
    if (length == 2 && memcmp(part, "..", 2) == 0)
        return "\"..\" leads out of the folder";
    if (length == 1 && part[0] == '.')
        return "\".\" adds nothing";
    return NULL;
}

const char *recede_file_name_wrong(const char *name)
{
    if (strlen(name) >= RECEDE_NAME_SIZE)
        return "it is over 200 bytes long";
    if (name[0] == '/')
        return "it starts at the root of the disk";
    if (strchr(name, '\\'))
        return "a backslash stands in it; folders are parted by /";
    if (strchr(name, ':'))
        return "a colon stands in it, as after a drive's letter";
    for (const char *part = name;;) {
        size_t length = strcspn(part, "/");
        const char *wrong = part_wrong(part, length);
        if (wrong)
            return wrong;
        if (!part[length])
            return NULL;
        part += length + 1;
    }
}

int recede_file_beside(const char *file, const char *name, char out[RECEDE_NAME_SIZE])
{
    const char *slash = strrchr(file, '/');
    int folder = slash ? (int)(slash + 1 - file) : 0;
    int length = snprintf(out, RECEDE_NAME_SIZE, "%.*s%s", folder, file, name);
    return length >= 0 && length < RECEDE_NAME_SIZE;
}
