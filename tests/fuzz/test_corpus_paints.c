/* The seeds of pigment files, palette files and swatch descriptions. Seen to fail with one
 * number of a spectrum not written: tools/mutations.txt. */
#include "fuzz/fuzz_paints.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/paints", 128) ? 0 : 1;
}
