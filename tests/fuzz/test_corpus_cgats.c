/* The seeds of measurement files. Seen to fail with control characters let through into
 * messages: tools/mutations.txt. */
#include "fuzz/fuzz_cgats.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/cgats", 128) ? 0 : 1;
}
