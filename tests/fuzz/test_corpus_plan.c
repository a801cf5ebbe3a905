/* The seeds of scenes as numbers. Seen to fail with the sun's angles not checked:
 * tools/mutations.txt. */
#include "fuzz/fuzz_plan.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/plan", 64) ? 0 : 1;
}
