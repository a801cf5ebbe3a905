/* A folder of its own for each test, and what lies in it. */
#ifndef RECEDE_TESTS_FOLDER_H
#define RECEDE_TESTS_FOLDER_H

#include <dirent.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "support/assert_near.h"

static char test_folder[] = "/tmp/recede-file-XXXXXX";

static inline int enter_folder(void **state)
{
    (void)state;
    strcpy(test_folder, "/tmp/recede-file-XXXXXX");
    return mkdtemp(test_folder) && chdir(test_folder) == 0 ? 0 : -1;
}

static inline int leave_folder(void **state)
{
    char command[100];
    (void)state;
    snprintf(command, sizeof command, "rm -rf %s", test_folder);
    return chdir("/") == 0 ? system(command) : -1;
}

static inline void put_file(const char *path, const char *text)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    fputs(text, file);
    assert_int_equal(fclose(file), 0);
}

static inline void assert_file(const char *path, const char *expected)
{
    char text[200];
    FILE *file = fopen(path, "rb");
    if (!file)
        fail_msg("%s is not there", path);
    size_t size = fread(text, 1, sizeof text - 1, file);
    fclose(file);
    text[size] = '\0';
    assert_string_equal(text, expected);
}

/* So many entries, hidden ones too: no temporary file is left. */
static inline void assert_entries(const char *path, int expected)
{
    int count = 0;
    DIR *folder = opendir(path);
    assert_non_null(folder);
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;)
        count += strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0;
    closedir(folder);
    if (count != expected)
        fail_msg("%s has %d entries, expected %d", path, count, expected);
}

#endif
