#include "text/message.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "text/files.h"
#include "text/utf8.h"

/* Drops a character that was cut in its middle. */
static void drop_partial_character(char *text, size_t length)
{
    size_t start = length;
    unsigned long character;
    while (start > 0 && ((unsigned char)text[start - 1] & 0xC0) == 0x80)
        start--;
    if (start > 0 && !recede_utf8_decode(text + start - 1, length - start + 1, &character))
        text[start - 1] = '\0';
}

recede_text_status recede_text_refuse(recede_text_error *error, size_t line, size_t column,
                                      const char *format, ...)
{
    va_list list;
    error->file[0] = '\0';
    error->line = line;
    error->column = column;
    va_start(list, format);
    int length = vsnprintf(error->what, sizeof error->what, format, list);
    va_end(list);
    if (length >= (int)sizeof error->what)
        drop_partial_character(error->what, sizeof error->what - 1);
    return RECEDE_TEXT_REFUSED;
}

recede_text_status recede_text_no_memory(recede_text_error *error)
{
    recede_text_refuse(error, 0, 0, "not enough memory; close other programs and try again");
    return RECEDE_TEXT_NO_MEMORY;
}

void recede_message_name(recede_buffer *out, const char *name)
{
    size_t size = strlen(name);
    for (size_t at = 0; at < size;) {
        unsigned long character;
        size_t length = recede_utf8_decode(name + at, size - at, &character);
        if (length && !recede_utf8_is_control(character))
            recede_buffer_add(out, name + at, length);
        else
            recede_buffer_text(out, "?");
        at += length ? length : 1;
    }
}

void recede_message_line(recede_buffer *out, const char *file, const recede_text_error *error)
{
    char beside[RECEDE_NAME_SIZE];
    if (!error->file[0])
        recede_message_name(out, file);
    else
        recede_message_name(out, recede_file_beside(file, error->file, beside) ? beside
                                                                             : error->file);
    if (error->line)
        recede_buffer_format(out, ":%zu:%zu", error->line, error->column);
    recede_buffer_format(out, ": %s\n", error->what);
}
