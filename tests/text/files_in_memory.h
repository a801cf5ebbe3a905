/* Files that scenes and palettes name in tests: held in a table. */
#ifndef RECEDE_TESTS_FILES_IN_MEMORY_H
#define RECEDE_TESTS_FILES_IN_MEMORY_H

#include <stdio.h>
#include <string.h>

#include "text/files.h"

typedef struct test_file {
    const char *name, *text;
} test_file;

typedef struct test_folder {
    const test_file *files; /* ended by a name that is NULL */
    int asked;              /* how often */
    char last[RECEDE_NAME_SIZE];
} test_folder;

static inline recede_text_status test_folder_read(void *context, const char *name,
                                                  recede_buffer *out, recede_text_error *error)
{
    test_folder *folder = context;
    folder->asked++;
    snprintf(folder->last, sizeof folder->last, "%s", name);
    for (const test_file *file = folder->files; file->name; file++)
        if (strcmp(file->name, name) == 0) {
            recede_buffer_text(out, file->text);
            return RECEDE_TEXT_OK;
        }
    recede_text_refuse(error, 0, 0, "%s: not in this folder; put it there", name);
    return RECEDE_TEXT_UNREADABLE;
}

static inline recede_files test_files(test_folder *folder)
{
    return (recede_files){test_folder_read, folder};
}

/* 36 numbers, the same; and what a pigment must have besides its name. */
#define SIX(n) n "," n "," n "," n "," n "," n
#define BANDS(n) "[" SIX(n) "," SIX(n) "," SIX(n) "," SIX(n) "," SIX(n) "," SIX(n) "]"
#define PIGMENT(name, k) "{\"name\":\"" name "\",\"k\":" BANDS(k) ",\"s\":" BANDS("0.25") "}"

#endif
