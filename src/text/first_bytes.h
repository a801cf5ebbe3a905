/* What a file is by its first bytes, before it is read as a text. */
#ifndef RECEDE_TEXT_FIRST_BYTES_H
#define RECEDE_TEXT_FIRST_BYTES_H

#include "text/message.h"

/* Refuses pictures, archives and texts that are not UTF-8, saying what they are.
 * skip: how many bytes go before the text: a byte order mark of UTF-8, or none. */
recede_text_status recede_first_bytes_check(const char *bytes, size_t size, size_t *skip,
                                            recede_text_error *error);

/* The same count alone, of bytes that have passed. */
size_t recede_byte_order_mark(const char *bytes, size_t size);

#endif
