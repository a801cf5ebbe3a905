/* The seeds of scenes, and the scenes of the house. Seen to fail with numbers written in too
 * few digits: tools/mutations.txt. */
#include "fuzz/fuzz_scene.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/scene", 64) && corpus_folder("scenes", 64) ? 0 : 1;
}
