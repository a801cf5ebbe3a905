/* Runs every seed, and every prefix and a few mutations of each, through the
 * fuzz target. It aborts where the target finds fault. */
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz/fuzz_scene.c"

enum { MOST = 65536 };

static void run_around(unsigned char *bytes, size_t size)
{
    static const unsigned char odd[] = {0x00, '"', '\\', '}', '9', 0x80, 0xFF};
    LLVMFuzzerTestOneInput(bytes, size);
    for (size_t cut = 0; cut < size; cut += 1 + size / 64)
        LLVMFuzzerTestOneInput(bytes, cut);
    for (size_t at = 0, i = 0; at < size; at += 1 + size / 64, i++) {
        unsigned char kept = bytes[at];
        bytes[at] = odd[i % sizeof odd];
        LLVMFuzzerTestOneInput(bytes, size);
        bytes[at] = kept;
    }
}

static int run_file(const char *folder, const char *name)
{
    static unsigned char bytes[MOST];
    char path[512];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *file = fopen(path, "rb");
    if (!file)
        return 0;
    size_t size = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    run_around(bytes, size);
    return 1;
}

static int run_folder(const char *path)
{
    int count = 0;
    DIR *folder = opendir(path);
    if (!folder)
        return 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;)
        if (entry->d_name[0] != '.')
            count += run_file(path, entry->d_name);
    closedir(folder);
    return count;
}

int main(void)
{
    int seeds = run_folder("tests/fuzz/seeds/scene"), scenes = run_folder("scenes");
    printf("%d seeds and %d scenes\n", seeds, scenes);
    return seeds > 0 && scenes > 0 ? 0 : 1;
}
