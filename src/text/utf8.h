/* UTF-8 (RFC 3629), one character at a time. */
#ifndef RECEDE_TEXT_UTF8_H
#define RECEDE_TEXT_UTF8_H

#include <stddef.h>

/* The length of the character at the start of bytes, 1 to 4, and its code
 * point; 0 where the bytes are not valid UTF-8 (overlong forms, surrogates,
 * beyond U+10FFFF, cut short). size is at least 1. */
size_t recede_utf8_decode(const char *bytes, size_t size, unsigned long *character);

/* NUL, C0, DEL, C1, the bidirectional controls of UAX 9, and the line and
 * paragraph separators: none of them belongs in a name. */
int recede_utf8_is_control(unsigned long character);

/* Columns of a terminal that a text takes: 0 for combining marks, 2 for the
 * wide characters of East Asia (UAX 11), else 1. */
size_t recede_utf8_columns(const char *text, size_t size);

#endif
