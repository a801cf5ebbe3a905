/* The value plan in words. */
#ifndef RECEDE_TEXT_WORDS_VALUES_H
#define RECEDE_TEXT_WORDS_VALUES_H

#include "recede.h"
#include "text/buffer.h"

/* "by value", "by colour", "not apart". */
const char *recede_words_apart(recede_apart apart);

#endif
