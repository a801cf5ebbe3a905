/* Prints how many imports a WebAssembly module declares (core specification
 * 1.0, section 5.5: sections are an id byte, a LEB128 size and content; id 2
 * holds the imports, a vector that starts with its length). */
#include <stdio.h>
#include <string.h>

static unsigned long read_leb(FILE *in)
{
    unsigned long number = 0;
    for (int shift = 0; shift < 35; shift += 7) {
        int byte = getc(in);
        if (byte == EOF)
            return 0;
        number |= (unsigned long)(byte & 0x7f) << shift;
        if (!(byte & 0x80))
            break;
    }
    return number;
}

int main(int count, char **words)
{
    unsigned char head[8];
    FILE *in = count == 2 ? fopen(words[1], "rb") : NULL;
    if (!in || fread(head, 1, 8, in) != 8 || memcmp(head, "\0asm\1\0\0\0", 8) != 0) {
        fprintf(stderr, "usage: wasm-imports MODULE.wasm\n");
        return 2;
    }
    unsigned long imports = 0;
    for (int id; (id = getc(in)) != EOF;) {
        unsigned long size = read_leb(in);
        if (id == 2) {
            imports = read_leb(in);
            break;
        }
        fseek(in, (long)size, SEEK_CUR);
    }
    fclose(in);
    printf("%lu\n", imports);
    return 0;
}
