/* The seeds of scenes, and the scenes of the house. */
#include "fuzz/fuzz_scene.c"

#include "fuzz/corpus.h"

int main(void)
{
    return corpus_folder("tests/fuzz/seeds/scene", 64) && corpus_folder("scenes", 64) ? 0 : 1;
}
