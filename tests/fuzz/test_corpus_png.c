/* The seeds of photographs. Seen to fail with a refusal that does not say that it is one:
 * tools/mutations.txt. */
#include "fuzz/fuzz_png.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/png", 4096) ? 0 : 1;
}
