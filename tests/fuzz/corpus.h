/* Runs every file of a folder, and each cut short and changed at many places, through
 * the fuzz target included before. That aborts where it finds fault. */
#ifndef RECEDE_TESTS_CORPUS_H
#define RECEDE_TESTS_CORPUS_H

#include <dirent.h>
#include <stdio.h>

enum { CORPUS_MOST_BYTES = 65536 };

static void corpus_around(unsigned char *bytes, size_t size, size_t places)
{
    static const unsigned char odd[] = {0x00, '"', '\\', '}', '9', 0x01, 0x7F, 0x80, 0xFF};
    size_t step = 1 + size / places;
    LLVMFuzzerTestOneInput(bytes, size);
    for (size_t cut = 0; cut < size; cut += step)
        LLVMFuzzerTestOneInput(bytes, cut);
    for (size_t at = 0, i = 0; at < size; at += step, i++) {
        unsigned char kept = bytes[at];
        bytes[at] = odd[i % sizeof odd];
        LLVMFuzzerTestOneInput(bytes, size);
        bytes[at] = kept;
    }
}

static int corpus_file(const char *folder, const char *name, size_t places)
{
    static unsigned char bytes[CORPUS_MOST_BYTES];
    char path[512];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *file = fopen(path, "rb");
    if (!file)
        return 0;
    size_t size = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    corpus_around(bytes, size, places);
    return 1;
}

/* How many files there were. */
static int corpus_folder(const char *path, size_t places)
{
    int count = 0;
    DIR *folder = opendir(path);
    if (!folder)
        return 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;)
        if (entry->d_name[0] != '.')
            count += corpus_file(path, entry->d_name, places);
    closedir(folder);
    printf("%s: %d inputs, each whole, cut and changed at up to %zu places\n", path, count, places);
    return count;
}

#endif
