#include "text/columns.h"

#include <string.h>

#include "text/utf8.h"

enum { GAP = 2 };

static size_t character_length(const char *text)
{
    unsigned long character;
    size_t length = recede_utf8_decode(text, strlen(text), &character);
    return length ? length : 1;
}

/* Bytes of the text's first line: up to the last blank that keeps it within
 * the width, or as many characters as fit where there is none. */
static size_t line_length(const char *text, size_t width)
{
    size_t columns = 0, at = 0, broken_at = 0;
    while (text[at]) {
        size_t length = character_length(text + at);
        columns += recede_utf8_columns(text + at, length);
        if (text[at] == ' ')
            broken_at = at;
        if (columns > width)
            return broken_at ? broken_at : at ? at : length;
        at += length;
    }
    return at;
}

/* Adds the next line of a text and moves past it and the blanks after it. */
static size_t add_line(recede_buffer *out, const char **text, size_t width)
{
    size_t length = line_length(*text, width);
    recede_buffer_add(out, *text, length);
    size_t columns = recede_utf8_columns(*text, length);
    *text += length;
    *text += strspn(*text, " ");
    return columns;
}

void recede_columns_row(recede_buffer *out, const char *const *cells, const size_t *widths,
                        size_t count)
{
    enum { MOST = 16 };
    const char *rest[MOST];
    int more = 1;
    for (size_t i = 0; i < count && i < MOST; i++)
        rest[i] = cells[i];
    while (more) {
        size_t owed = 0; /* blanks before the next text */
        more = 0;
        for (size_t i = 0; i < count && i < MOST; i++) {
            size_t used = 0;
            if (*rest[i]) {
                recede_buffer_repeat(out, ' ', owed);
                owed = 0;
                used = add_line(out, &rest[i], widths[i]);
                more |= *rest[i] != '\0';
            }
            owed += widths[i] + GAP - used;
        }
        recede_buffer_text(out, "\n");
    }
}

void recede_columns_text(recede_buffer *out, const char *text, size_t width, size_t indent)
{
    add_line(out, &text, width);
    recede_buffer_text(out, "\n");
    while (*text) {
        recede_buffer_repeat(out, ' ', indent);
        add_line(out, &text, width - indent);
        recede_buffer_text(out, "\n");
    }
}
