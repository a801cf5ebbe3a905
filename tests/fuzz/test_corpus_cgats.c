/* The seeds of measurement files. */
#include "fuzz/fuzz_cgats.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/cgats", 128) ? 0 : 1;
}
