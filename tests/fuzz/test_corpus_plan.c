/* The seeds of scenes as numbers. */
#include "fuzz/fuzz_plan.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/plan", 64) ? 0 : 1;
}
