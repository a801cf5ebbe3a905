#include "colour/error.h"

#include <math.h>
#include <string.h>

static int continues_character(char byte)
{
    return ((unsigned char)byte & 0xC0) == 0x80;
}

size_t recede_copy_text(char *out, size_t size, const char *text)
{
    if (!size)
        return 0;
    size_t length = strlen(text);
    if (length >= size) {
        length = size - 1;
        while (length && continues_character(text[length]))
            length--;
    }
    memmove(out, text, length);
    out[length] = '\0';
    return length;
}

recede_code recede_fail(recede_error *error, recede_code code, const char *path)
{
    if (error) {
        memset(error, 0, sizeof *error);
        error->code = code;
        recede_copy_text(error->path, sizeof error->path, path);
    }
    return code;
}

recede_code recede_fail_range(recede_error *error, const char *path, double number, double least,
                              double most)
{
    recede_code code = isfinite(number) ? RECEDE_OUT_OF_RANGE : RECEDE_NOT_FINITE;
    recede_fail(error, code, path);
    if (error) {
        error->number = number;
        error->least = least;
        error->most = most;
    }
    return code;
}

recede_code recede_fail_name(recede_error *error, recede_code code, const char *path,
                             const char *found)
{
    recede_fail(error, code, path);
    if (error)
        recede_copy_text(error->found, sizeof error->found, found);
    return code;
}

recede_code recede_fail_count(recede_error *error, recede_code code, const char *path,
                              size_t count, size_t least, size_t most)
{
    recede_fail(error, code, path);
    if (error) {
        error->number = (double)count;
        error->least = (double)least;
        error->most = (double)most;
    }
    return code;
}

recede_code recede_check_range(recede_error *error, const char *path, double number, double least,
                               double most)
{
    if (isfinite(number) && number >= least && number <= most)
        return RECEDE_OK;
    return recede_fail_range(error, path, number, least, most);
}

/* Adds text at *length, cut to what room is left. */
static void append(char *out, size_t size, size_t *length, const char *text)
{
    *length += recede_copy_text(out + *length, size - *length, text);
}

void recede_path_index(char *out, size_t size, const char *array, size_t index, const char *field)
{
    char digits[24]; /* 20 digits hold any 64-bit size_t */
    size_t first = sizeof digits - 1, length = 0;
    if (!size)
        return;
    digits[first] = '\0';
    do {
        digits[--first] = (char)('0' + index % 10);
        index /= 10;
    } while (index);
    append(out, size, &length, array);
    append(out, size, &length, "[");
    append(out, size, &length, digits + first);
    append(out, size, &length, "]");
    if (field && *field) {
        append(out, size, &length, ".");
        append(out, size, &length, field);
    }
}

void recede_path_field(char *out, size_t size, const char *object, const char *field)
{
    size_t length = 0;
    if (!size)
        return;
    append(out, size, &length, object);
    append(out, size, &length, ".");
    append(out, size, &length, field);
}
