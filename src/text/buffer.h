/* A byte buffer that grows on the caller's allocator. When memory runs out it
 * remembers so, and every later addition does nothing: ask failed at the end. */
#ifndef RECEDE_TEXT_BUFFER_H
#define RECEDE_TEXT_BUFFER_H

#include "recede.h"

typedef struct recede_buffer {
    const recede_allocator *allocator;
    char *bytes; /* ended with a NUL that size does not count; NULL while empty */
    size_t size, capacity;
    int failed;
} recede_buffer;

/* allocator NULL: malloc and free. */
void recede_buffer_start(recede_buffer *buffer, const recede_allocator *allocator);
void recede_buffer_free(recede_buffer *buffer);

void recede_buffer_add(recede_buffer *buffer, const void *bytes, size_t size);
void recede_buffer_text(recede_buffer *buffer, const char *text);
void recede_buffer_repeat(recede_buffer *buffer, char character, size_t count);

/* printf's formats, but for text and whole numbers only: how a fraction is
 * printed depends on the locale. Those go through recede_buffer_number. */
void recede_buffer_format(recede_buffer *buffer, const char *format, ...)
#if defined(__GNUC__)
    __attribute__((format(printf, 2, 3)))
#endif
    ;

/* A number to so many decimals; the first leaves out the zeros it could end
 * in. */
void recede_buffer_number(recede_buffer *buffer, double number, int decimals);
void recede_buffer_fixed(recede_buffer *buffer, double number, int decimals);

/* The text so far, "" while there is none. */
const char *recede_buffer_string(const recede_buffer *buffer);

#endif
