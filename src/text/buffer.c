#include "text/buffer.h"

#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "colour/memory.h"
#include "text/numbers.h"

void recede_buffer_start(recede_buffer *buffer, const recede_allocator *allocator)
{
    *buffer = (recede_buffer){.allocator = allocator};
}

void recede_buffer_free(recede_buffer *buffer)
{
    recede_release(buffer->allocator, buffer->bytes);
    recede_buffer_start(buffer, buffer->allocator);
}

/* Makes room for more bytes and a final NUL. */
static int reserve(recede_buffer *buffer, size_t more)
{
    if (buffer->failed)
        return 0;
    if (more < buffer->capacity - buffer->size)
        return 1;
    size_t capacity = buffer->capacity < 128 ? 256 : buffer->capacity;
    if (more >= SIZE_MAX / 2 - buffer->size) {
        buffer->failed = 1;
        return 0;
    }
    while (capacity <= buffer->size + more)
        capacity *= 2;
    char *bytes = recede_allocate_array(buffer->allocator, capacity, 1);
    if (!bytes) {
        buffer->failed = 1;
        return 0;
    }
    if (buffer->size)
        memcpy(bytes, buffer->bytes, buffer->size);
    recede_release(buffer->allocator, buffer->bytes);
    buffer->bytes = bytes;
    buffer->capacity = capacity;
    return 1;
}

void recede_buffer_add(recede_buffer *buffer, const void *bytes, size_t size)
{
    if (!reserve(buffer, size))
        return;
    if (size)
        memcpy(buffer->bytes + buffer->size, bytes, size);
    buffer->size += size;
    buffer->bytes[buffer->size] = '\0';
}

void recede_buffer_text(recede_buffer *buffer, const char *text)
{
    recede_buffer_add(buffer, text, strlen(text));
}

void recede_buffer_repeat(recede_buffer *buffer, char character, size_t count)
{
    if (!reserve(buffer, count))
        return;
    memset(buffer->bytes + buffer->size, character, count);
    buffer->size += count;
    buffer->bytes[buffer->size] = '\0';
}

void recede_buffer_format(recede_buffer *buffer, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    int length = vsnprintf(NULL, 0, format, list);
    va_end(list);
    if (length < 0 || !reserve(buffer, (size_t)length))
        return;
    va_start(list, format);
    vsnprintf(buffer->bytes + buffer->size, (size_t)length + 1, format, list);
    va_end(list);
    buffer->size += (size_t)length;
}

void recede_buffer_number(recede_buffer *buffer, double number, int decimals)
{
    char text[RECEDE_NUMBER_SIZE];
    recede_buffer_add(buffer, text, recede_number_trimmed(text, number, decimals));
}

void recede_buffer_fixed(recede_buffer *buffer, double number, int decimals)
{
    char text[RECEDE_NUMBER_SIZE];
    recede_buffer_add(buffer, text, recede_number_fixed(text, number, decimals));
}

const char *recede_buffer_string(const recede_buffer *buffer)
{
    return buffer->bytes ? buffer->bytes : "";
}
