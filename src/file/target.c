#include "file/target.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

enum { MOST_LINKS = 40 };

static const char *name_of(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash ? slash + 1 : path;
}

/* Replaces a path's last name; an absolute name replaces all of it. */
static int replace_name(const char *path, const char *name, char out[PATH_MAX])
{
    size_t kept = *name == '/' ? 0 : (size_t)(name_of(path) - path);
    if (kept + strlen(name) >= PATH_MAX)
        return ENAMETOOLONG;
    memmove(out, path, kept);
    strcpy(out + kept, name);
    return 0;
}

int recede_target_beside(const recede_target *target, const char *name, char out[PATH_MAX])
{
    return replace_name(target->path, name, out);
}

static int starts_with(const char *text, const char *start)
{
    return strncmp(text, start, strlen(start)) == 0;
}

/* Follows links up to a name that is no link, there or not. The links of open
 * files (/dev/stdout and the like) lead to no name and are used as they are. */
static int follow(const char *path, recede_target *out)
{
    char content[PATH_MAX];
    struct stat status;
    if (strlen(path) >= PATH_MAX)
        return ENAMETOOLONG;
    strcpy(out->path, path);
    for (int i = 0; i < MOST_LINKS; i++) {
        if (starts_with(out->path, "/proc/") || starts_with(out->path, "/dev/fd/")) {
            out->kind = RECEDE_TARGET_DIRECT;
            return 0;
        }
        if (lstat(out->path, &status) != 0)
            return errno == ENOENT ? 0 : errno;
        if (!S_ISLNK(status.st_mode))
            return 0;
        ssize_t length = readlink(out->path, content, sizeof content);
        if (length < 0)
            return errno;
        if ((size_t)length >= sizeof content)
            return ENAMETOOLONG;
        content[length] = '\0';
        int error = replace_name(out->path, content, out->path);
        if (error)
            return error;
    }
    return ELOOP;
}

static int find_folder(recede_target *target)
{
    char folder[PATH_MAX];
    if (*name_of(target->path) == '\0')
        return *target->path ? EISDIR : ENOENT;
    int error = recede_target_beside(target, ".", folder);
    if (!error && stat(folder, &target->folder) != 0)
        error = errno;
    if (!error && target->exists && faccessat(AT_FDCWD, target->path, W_OK, AT_EACCESS) != 0)
        error = errno;
    return error;
}

int recede_target_find(const char *path, recede_target *out)
{
    memset(out, 0, sizeof *out);
    if (strcmp(path, "-") == 0) {
        out->kind = RECEDE_TARGET_STANDARD;
        out->exists = 1;
        return fstat(STDOUT_FILENO, &out->status) == 0 ? 0 : errno;
    }
    out->exists = stat(path, &out->status) == 0;
    if (!out->exists && errno != ENOENT)
        return errno;
    if (out->exists && S_ISDIR(out->status.st_mode))
        return EISDIR;
    out->kind = RECEDE_TARGET_FILE;
    if (out->exists && !S_ISREG(out->status.st_mode)) {
        out->kind = RECEDE_TARGET_DIRECT;
        if (strlen(path) >= PATH_MAX)
            return ENAMETOOLONG;
        strcpy(out->path, path);
        return 0;
    }
    int error = follow(path, out);
    if (error || out->kind == RECEDE_TARGET_DIRECT)
        return error;
    return find_folder(out);
}

static int same_status(const struct stat *one, const struct stat *other)
{
    return one->st_dev == other->st_dev && one->st_ino == other->st_ino;
}

int recede_target_same(const recede_target *one, const recede_target *other)
{
    if (one->kind == RECEDE_TARGET_STANDARD && other->kind == RECEDE_TARGET_STANDARD)
        return 1;
    if (one->exists && other->exists)
        return same_status(&one->status, &other->status) && !S_ISCHR(one->status.st_mode);
    return !one->exists && !other->exists && same_status(&one->folder, &other->folder) &&
           strcmp(name_of(one->path), name_of(other->path)) == 0;
}
