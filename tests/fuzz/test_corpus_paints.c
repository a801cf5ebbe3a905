/* The seeds of pigment files, palette files and swatch descriptions. */
#include "fuzz/fuzz_paints.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/paints", 128) ? 0 : 1;
}
