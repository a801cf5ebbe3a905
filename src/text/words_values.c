#include "text/words_values.h"

const char *recede_words_apart(recede_apart apart)
{
    static const char *const words[] = {"by value", "by colour", "not apart"};
    return words[apart];
}
