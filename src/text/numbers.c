#include "text/numbers.h"

#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A program that uses the library may have set a locale with a decimal comma;
 * printf and strtod follow it, so the point is exchanged on the way. */
static const char *locale_point(void)
{
    const char *point = localeconv()->decimal_point;
    return point && *point ? point : ".";
}

static size_t with_point(char out[RECEDE_NUMBER_SIZE])
{
    const char *point = locale_point();
    char *at = strstr(out, point);
    if (at && strcmp(point, ".") != 0) {
        size_t length = strlen(point);
        *at = '.';
        memmove(at + 1, at + length, strlen(at + length) + 1);
    }
    return strlen(out);
}

size_t recede_number_write(char out[RECEDE_NUMBER_SIZE], double number)
{
    for (int digits = 15; digits <= 17; digits++) {
        snprintf(out, RECEDE_NUMBER_SIZE, "%.*g", digits, number);
        if (strtod(out, NULL) == number)
            break;
    }
    return with_point(out);
}

size_t recede_number_fixed(char out[RECEDE_NUMBER_SIZE], double number, int decimals)
{
    const char *format = fabs(number) < 1e15 ? "%.*f" : "%.*g";
    snprintf(out, RECEDE_NUMBER_SIZE, format, decimals, number);
    size_t length = with_point(out);
    if (out[0] == '-' && strspn(out + 1, "0.") == length - 1)
        memmove(out, out + 1, length--);
    return length;
}

size_t recede_number_trimmed(char out[RECEDE_NUMBER_SIZE], double number, int decimals)
{
    size_t length = recede_number_fixed(out, number, decimals);
    if (!strchr(out, '.') || strchr(out, 'e'))
        return length;
    while (out[length - 1] == '0')
        length--;
    if (out[length - 1] == '.')
        length--;
    out[length] = '\0';
    return length;
}

static size_t digits_at(const char *text, size_t size, size_t at)
{
    size_t end = at;
    while (end < size && text[end] >= '0' && text[end] <= '9')
        end++;
    return end - at;
}

size_t recede_number_length(const char *text, size_t size)
{
    size_t at = size > 0 && text[0] == '-' ? 1 : 0;
    size_t whole = digits_at(text, size, at);
    if (whole == 0)
        return 0;
    at += text[at] == '0' ? 1 : whole;
    if (at < size && text[at] == '.') {
        size_t decimals = digits_at(text, size, at + 1);
        if (decimals == 0)
            return at;
        at += 1 + decimals;
    }
    if (at < size && (text[at] == 'e' || text[at] == 'E')) {
        size_t digits_from = at + 1;
        if (digits_from < size && (text[digits_from] == '+' || text[digits_from] == '-'))
            digits_from++;
        size_t digits = digits_at(text, size, digits_from);
        if (digits)
            at = digits_from + digits;
    }
    return at;
}

double recede_number_value(const char *text, size_t length)
{
    enum { POINT_SIZE = 8 };
    char copy[RECEDE_NUMBER_LENGTH + POINT_SIZE + 1];
    const char *point = locale_point();
    size_t used = 0, point_length = strlen(point);
    if (point_length > POINT_SIZE || length > RECEDE_NUMBER_LENGTH)
        return NAN;
    for (size_t i = 0; i < length; i++) {
        if (text[i] == '.') {
            memcpy(copy + used, point, point_length);
            used += point_length;
        } else {
            copy[used++] = text[i];
        }
    }
    copy[used] = '\0';
    return strtod(copy, NULL);
}
