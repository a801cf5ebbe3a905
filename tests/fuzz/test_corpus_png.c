/* The seeds of photographs. */
#include "fuzz/fuzz_png.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/png", 4096) ? 0 : 1;
}
