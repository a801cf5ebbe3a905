/* The seeds of paints and colours. */
#include "fuzz/fuzz_search.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/search", 64) ? 0 : 1;
}
