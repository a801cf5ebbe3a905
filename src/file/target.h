/* Where an output goes, once links have been followed. */
#ifndef RECEDE_FILE_TARGET_H
#define RECEDE_FILE_TARGET_H

#include <limits.h>
#include <sys/stat.h>

typedef enum recede_target_kind {
    RECEDE_TARGET_STANDARD, /* standard output */
    RECEDE_TARGET_DIRECT,   /* a device, a pipe: written as it is */
    RECEDE_TARGET_FILE      /* a regular file, there already or not */
} recede_target_kind;

typedef struct recede_target {
    recede_target_kind kind;
    char path[PATH_MAX];
    int exists;
    struct stat status;   /* where it exists */
    struct stat folder;   /* RECEDE_TARGET_FILE: of what it lies in */
} recede_target;

/* Returns 0, or what is wrong as a number of errno.h: EISDIR for a folder,
 * EACCES for a file that may not be written, ENOENT for a missing folder. */
int recede_target_find(const char *path, recede_target *out);

/* 1 where both are one place. Character devices never are: two outputs may go
 * to the terminal or to nowhere. */
int recede_target_same(const recede_target *one, const recede_target *other);

/* "FOLDER/NAME" beside the target; returns 0, or ENAMETOOLONG. */
int recede_target_beside(const recede_target *target, const char *name, char out[PATH_MAX]);

#endif
