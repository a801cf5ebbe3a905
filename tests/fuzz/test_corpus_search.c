/* The seeds of paints and colours. Seen to fail with the tree of mixes searched in the wrong
 * order: tools/mutations.txt. */
#include "fuzz/fuzz_search.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/search", 64) ? 0 : 1;
}
