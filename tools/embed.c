/* Turns a file into a C array, so that a program can carry it.
 *
 *     embed FILE NAME > OUT.c        defines NAME and NAME_size
 */
#include <stdio.h>

int main(int count, char **words)
{
    if (count != 3) {
        fprintf(stderr, "usage: embed FILE NAME > OUT.c\n");
        return 2;
    }
    FILE *in = fopen(words[1], "rb");
    if (!in) {
        perror(words[1]);
        return 3;
    }
    printf("/* Made by tools/embed.c. */\n#include <stddef.h>\n"
           "extern const char %s[];\nextern const size_t %s_size;\nconst char %s[] = {",
           words[2], words[2], words[2]);
    unsigned long size = 0;
    for (int byte; (byte = getc(in)) != EOF; size++)
        printf("%s%d,", size % 20 ? "" : "\n    ", byte < 128 ? byte : byte - 256);
    printf("\n    0\n};\nconst size_t %s_size = %lu;\n", words[2], size);
    int failed = ferror(in);
    fclose(in);
    return failed || fflush(stdout) || ferror(stdout) ? 3 : 0;
}
