/* Strings, numbers and words. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "text/numbers.h"
#include "text/scan_internal.h"
#include "text/utf8.h"

const char *recede_scanner_found(const recede_scanner *scanner, char out[RECEDE_FOUND_SIZE])
{
    unsigned long character;
    const char *at = scanner->bytes + scanner->at;
    if (scanner->at >= scanner->size)
        return "the end of the file";
    size_t length = recede_utf8_decode(at, scanner->size - scanner->at, &character);
    if (length == 0)
        snprintf(out, RECEDE_FOUND_SIZE, "the byte 0x%02X, which is not UTF-8",
                 (unsigned)(unsigned char)*at);
    else if (recede_utf8_is_control(character))
        snprintf(out, RECEDE_FOUND_SIZE, "the control character U+%04lX", character);
    else
        snprintf(out, RECEDE_FOUND_SIZE, "'%.*s'", (int)length, at);
    return out;
}

void recede_scanner_step(recede_scanner *scanner, size_t bytes)
{
    if (scanner->bytes[scanner->at] == '\n') {
        scanner->place.line++;
        scanner->place.column = 1;
    } else {
        scanner->place.column++;
    }
    scanner->at += bytes;
}

static recede_text_status refuse_here(recede_scanner *s, const char *what, const char *remedy)
{
    return recede_text_refuse(s->error, s->place.line, s->place.column, "%s; %s", what, remedy);
}

/* ---- strings */

typedef struct {
    char *out;
    size_t size; /* bytes that the string has, kept or not */
} string_bytes;

static void put(string_bytes *string, const char *bytes, size_t count)
{
    if (string->size + count <= RECEDE_SCAN_MOST_STRING)
        memcpy(string->out + string->size, bytes, count);
    string->size += count;
}

static void put_character(string_bytes *string, unsigned long c)
{
    char bytes[4];
    size_t length = c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4;
    static const unsigned char lead[] = {0, 0, 0xC0, 0xE0, 0xF0};
    for (size_t i = length; i-- > 1; c >>= 6)
        bytes[i] = (char)(0x80 | (c & 0x3F));
    bytes[0] = (char)(lead[length] | c);
    put(string, bytes, length);
}

static int hex_digit(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'a' && c <= 'f')
        return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

/* The four digits of \uXXXX that starts at byte at; -1 where there are none. */
static long escape_unit(const recede_scanner *s, size_t at)
{
    long unit = 0;
    if (s->size - at < 6 || s->bytes[at] != '\\' || s->bytes[at + 1] != 'u')
        return -1;
    for (size_t i = at + 2; i < at + 6; i++) {
        int digit = hex_digit(s->bytes[i]);
        if (digit < 0)
            return -1;
        unit = unit * 16 + digit;
    }
    return unit;
}

static void step_times(recede_scanner *s, size_t times)
{
    while (times--)
        recede_scanner_step(s, 1);
}

static recede_text_status scan_unit_escape(recede_scanner *s, string_bytes *string)
{
    char what[RECEDE_FOUND_SIZE];
    long unit = escape_unit(s, s->at);
    size_t length = 6;
    if (unit < 0)
        return refuse_here(s, "found \\u without four hexadecimal digits",
                           "write it as \\u00e9, or the character itself");
    unsigned long character = (unsigned long)unit;
    if (character >= 0xD800 && character <= 0xDFFF) {
        long low = character < 0xDC00 ? escape_unit(s, s->at + length) : -1;
        if (low < 0xDC00 || low > 0xDFFF)
            return refuse_here(s, "found half of a surrogate pair",
                               "write both halves, or the character itself");
        character = 0x10000 + ((character - 0xD800) << 10) + ((unsigned long)low - 0xDC00);
        length = 12;
    }
    if (recede_utf8_is_control(character)) {
        snprintf(what, sizeof what, "found an escape for the control character U+%04lX",
                 character);
        return refuse_here(s, what, "take it out");
    }
    put_character(string, character);
    step_times(s, length);
    return RECEDE_TEXT_OK;
}

static recede_text_status scan_escape(recede_scanner *s, string_bytes *string)
{
    char what[RECEDE_FOUND_SIZE];
    char letter = s->at + 1 < s->size ? s->bytes[s->at + 1] : '\0';
    if (letter == 'u')
        return scan_unit_escape(s, string);
    if (letter && strchr("\"\\/", letter)) {
        put(string, &letter, 1);
        step_times(s, 2);
        return RECEDE_TEXT_OK;
    }
    if (letter && strchr("bfnrt", letter)) {
        snprintf(what, sizeof what, "found the control character \\%c in a string", letter);
        return refuse_here(s, what, "strings here are one line: take it out");
    }
    return refuse_here(s, "found an escape that JSON does not know",
                       "a backslash itself is written \\\\");
}

recede_text_status recede_scan_string(recede_scanner *s, char out[RECEDE_SCAN_MOST_STRING],
                                      size_t *size)
{
    char found[RECEDE_FOUND_SIZE];
    recede_place start = s->place;
    string_bytes string = {out, 0};
    recede_scanner_step(s, 1);
    while (s->at < s->size && s->bytes[s->at] != '"') {
        unsigned long character;
        const char *at = s->bytes + s->at;
        if (*at == '\\') {
            recede_text_status status = scan_escape(s, &string);
            if (status)
                return status;
            continue;
        }
        size_t length = recede_utf8_decode(at, s->size - s->at, &character);
        if (length == 0 || recede_utf8_is_control(character))
            return recede_text_refuse(s->error, s->place.line, s->place.column,
                                      "found %s in a string; %s", recede_scanner_found(s, found),
                                      *at == '\n' || *at == '\r' ? "is a closing '\"' missing?"
                                      : length ? "take it out" : "save the file as UTF-8");
        put(&string, at, length);
        recede_scanner_step(s, length);
    }
    if (s->at >= s->size)
        return recede_text_refuse(s->error, start.line, start.column,
                                  "found a string without an end; close it with '\"'");
    if (string.size > RECEDE_SCAN_MOST_STRING)
        return recede_text_refuse(s->error, start.line, start.column,
                                  "found a string of %zu bytes; use at most %d", string.size,
                                  RECEDE_SCAN_MOST_STRING);
    recede_scanner_step(s, 1);
    *size = string.size;
    return RECEDE_TEXT_OK;
}

/* ---- numbers and words */

static int belongs_to_word(char c)
{
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           (c && strchr("+-._", c) != NULL);
}

static int is_any_of(const char *text, size_t length, const char *const *words, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (strlen(words[i]) == length && memcmp(words[i], text, length) == 0)
            return 1;
    return 0;
}

static recede_text_status refuse_word(recede_scanner *s, const char *text, size_t length)
{
    static const char *const not_finite[] = {"NaN",       "nan", "Infinity", "-Infinity",
                                             "+Infinity", "inf", "-inf",     "-NaN"};
    enum { SHOWN = RECEDE_NUMBER_LENGTH };
    int shown = length > SHOWN ? SHOWN : (int)length;
    const char *remedy = "JSON writes numbers as 12, -0.5 or 1e3";
    if (is_any_of(text, length, not_finite, sizeof not_finite / sizeof not_finite[0]))
        remedy = "JSON has no such number; write a finite one";
    else if (!strchr("+-.0123456789", text[0]))
        remedy = "texts stand in double quotes";
    return recede_text_refuse(s->error, s->place.line, s->place.column, "found %.*s%s; %s", shown,
                              text, (int)length > shown ? "..." : "", remedy);
}

recede_text_status recede_scan_word(recede_scanner *s)
{
    static const char *const words[] = {"true", "false", "null"};
    char found[RECEDE_FOUND_SIZE];
    const char *text = s->bytes + s->at;
    size_t most = s->size - s->at, length = 0;
    while (length < most && belongs_to_word(text[length]))
        length++;
    if (length == 0)
        return recede_text_refuse(
            s->error, s->place.line, s->place.column, "found %s; expected a value%s",
            recede_scanner_found(s, found),
            most && !strchr(",:]}", *text) ? "; texts stand in straight double quotes, \"so\""
                                           : "");
    if (!is_any_of(text, length, words, 3)) {
        if (recede_number_length(text, length) != length)
            return refuse_word(s, text, length);
        if (length > RECEDE_NUMBER_LENGTH)
            return recede_text_refuse(s->error, s->place.line, s->place.column,
                                      "found a number of %zu characters; use at most %d", length,
                                      RECEDE_NUMBER_LENGTH);
        if (!isfinite(recede_number_value(text, length)))
            return recede_text_refuse(s->error, s->place.line, s->place.column,
                                      "found %.*s; the number is too large", (int)length, text);
    }
    step_times(s, length);
    return RECEDE_TEXT_OK;
}
