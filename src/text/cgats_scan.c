#include "text/cgats_scan.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "text/first_bytes.h"
#include "text/utf8.h"

static int at_line_end(const recede_cgats_scanner *s)
{
    return s->bytes[s->at] == '\n' || s->bytes[s->at] == '\r';
}

static int at_blank(const recede_cgats_scanner *s)
{
    return s->bytes[s->at] == ' ' || s->bytes[s->at] == '\t';
}

/* Over one character, or one line end: LF, CR or both. The bytes are known to be valid. */
static void step(recede_cgats_scanner *s)
{
    unsigned long character;
    if (at_line_end(s)) {
        int both = s->bytes[s->at] == '\r' && s->at + 1 < s->size && s->bytes[s->at + 1] == '\n';
        s->at += both ? 2 : 1;
        s->place.line++;
        s->place.column = 1;
        return;
    }
    s->at += recede_utf8_decode(s->bytes + s->at, s->size - s->at, &character);
    s->place.column++;
}

static recede_text_status check_byte(const recede_cgats_scanner *s)
{
    unsigned long character;
    const char *at = s->bytes + s->at;
    if (at_line_end(s) || at_blank(s))
        return RECEDE_TEXT_OK;
    if (!recede_utf8_decode(at, s->size - s->at, &character))
        return recede_text_refuse(s->error, s->place.line, s->place.column,
                                  "found the byte 0x%02X, which is not UTF-8; save the file as "
                                  "UTF-8 text", (unsigned)(unsigned char)*at);
    if (recede_utf8_is_control(character))
        return recede_text_refuse(s->error, s->place.line, s->place.column,
                                  "found the control character U+%04lX; take it out", character);
    return RECEDE_TEXT_OK;
}

recede_text_status recede_cgats_start(recede_cgats_scanner *s, const char *bytes, size_t size,
                                      recede_text_error *error)
{
    *s = (recede_cgats_scanner){.bytes = bytes, .size = size, .place = {1, 1}, .error = error};
    size_t start;
    recede_text_status status = recede_first_bytes_check(bytes, size, &start, error);
    for (s->at = start; !status && s->at < size; step(s)) {
        status = check_byte(s);
        if (status)
            break;
    }
    if (status)
        return status;
    s->at = start;
    s->place = (recede_place){1, 1};
    return RECEDE_TEXT_OK;
}

static void skip_blanks_and_comments(recede_cgats_scanner *s)
{
    while (s->at < s->size && at_blank(s))
        step(s);
    if (s->at < s->size && s->bytes[s->at] == '#')
        while (s->at < s->size && !at_line_end(s))
            step(s);
}

static recede_text_status next_string(recede_cgats_scanner *s)
{
    recede_place start = s->token.place;
    step(s);
    s->token.text = s->bytes + s->at;
    while (s->at < s->size && !at_line_end(s)) {
        int quote = s->bytes[s->at] == '"';
        s->token.size = (size_t)(s->bytes + s->at - s->token.text);
        step(s);
        if (!quote)
            continue;
        if (s->at == s->size || at_line_end(s) || at_blank(s))
            return RECEDE_TEXT_OK;
        if (s->bytes[s->at] != '"')
            return recede_text_refuse(s->error, s->place.line, s->place.column,
                                      "found text right behind a closing '\"'; part them with a "
                                      "blank, and write a '\"' in a text twice");
        step(s);
    }
    return recede_text_refuse(s->error, start.line, start.column,
                              "found a text that its line does not end; close it with '\"'");
}

recede_text_status recede_cgats_next(recede_cgats_scanner *s)
{
    skip_blanks_and_comments(s);
    s->token = (recede_cgats_token){RECEDE_CGATS_END, s->place, s->bytes + s->at, 0};
    if (s->at == s->size)
        return RECEDE_TEXT_OK;
    if (at_line_end(s)) {
        s->token.kind = RECEDE_CGATS_LINE_END;
        for (; s->at < s->size && at_line_end(s); skip_blanks_and_comments(s))
            step(s);
        return RECEDE_TEXT_OK;
    }
    if (s->bytes[s->at] == '"') {
        s->token.kind = RECEDE_CGATS_STRING;
        return next_string(s);
    }
    s->token.kind = RECEDE_CGATS_WORD;
    while (s->at < s->size && !at_line_end(s) && !at_blank(s))
        step(s);
    s->token.size = (size_t)(s->bytes + s->at - s->token.text);
    return RECEDE_TEXT_OK;
}

recede_text_status recede_cgats_next_value(recede_cgats_scanner *s)
{
    recede_text_status status = recede_cgats_next(s);
    return !status && s->token.kind == RECEDE_CGATS_LINE_END ? recede_cgats_next(s) : status;
}

/* ---- what a token says */

static char upper(char c)
{
    return c >= 'a' && c <= 'z' ? (char)(c - 'a' + 'A') : c;
}

int recede_cgats_same(const char *text, size_t size, const char *word)
{
    if (strlen(word) != size)
        return 0;
    for (size_t i = 0; i < size; i++)
        if (upper(text[i]) != upper(word[i]))
            return 0;
    return 1;
}

int recede_cgats_is(const recede_cgats_token *token, const char *word)
{
    return token->kind == RECEDE_CGATS_WORD && recede_cgats_same(token->text, token->size, word);
}

const char *recede_cgats_show(const recede_cgats_token *token, char out[RECEDE_CGATS_SHOWN])
{
    enum { MOST = RECEDE_CGATS_SHOWN - 6 };
    size_t size = token->size;
    if (token->kind == RECEDE_CGATS_END)
        return "the end of the file";
    if (token->kind == RECEDE_CGATS_LINE_END)
        return "the end of the line";
    const char *quote = token->kind == RECEDE_CGATS_STRING ? "\"" : "";
    if (size > MOST)
        for (size = MOST; size > 0 && ((unsigned char)token->text[size] & 0xC0) == 0x80;)
            size--;
    snprintf(out, RECEDE_CGATS_SHOWN, "%s%.*s%s%s", quote, (int)size, token->text,
             size < token->size ? "..." : "", quote);
    for (char *tab = out; (tab = strchr(tab, '\t')) != NULL;)
        *tab = ' ';
    return out;
}

recede_cgats_digits recede_cgats_show_number(double number)
{
    const double long_whole = 1e9;
    recede_cgats_digits out = {""};
    if (fabs(number) < long_whole)
        recede_number_trimmed(out.text, number, 4);
    else
        recede_number_write(out.text, number);
    return out;
}

static size_t digits_at(const char *text, size_t size, size_t at)
{
    size_t count = 0;
    while (at + count < size && text[at + count] >= '0' && text[at + count] <= '9')
        count++;
    return count;
}

static int is_sign(const char *text, size_t size, size_t at)
{
    return at < size && (text[at] == '+' || text[at] == '-');
}

/* [sign] digits [. digits] [e [sign] digits], with digits on one side of the point. */
static int is_number(const char *text, size_t size)
{
    size_t at = is_sign(text, size, 0) ? 1 : 0;
    size_t digits = digits_at(text, size, at);
    at += digits;
    if (at < size && text[at] == '.') {
        size_t decimals = digits_at(text, size, at + 1);
        digits += decimals;
        at += 1 + decimals;
    }
    if (digits && at < size && upper(text[at]) == 'E') {
        at += is_sign(text, size, at + 1) ? 2 : 1;
        digits = digits_at(text, size, at);
        at += digits;
    }
    return digits > 0 && at == size;
}

recede_text_status recede_cgats_number(const recede_cgats_scanner *s, const char *expected,
                                       double *out)
{
    char shown[RECEDE_CGATS_SHOWN];
    const recede_cgats_token *token = &s->token;
    int value = token->kind == RECEDE_CGATS_WORD || token->kind == RECEDE_CGATS_STRING;
    if (value && token->size <= RECEDE_NUMBER_LENGTH && is_number(token->text, token->size)) {
        *out = recede_number_value(token->text, token->size);
        if (isfinite(*out))
            return RECEDE_TEXT_OK;
    }
    int comma = value && memchr(token->text, ',', token->size) != NULL;
    return recede_text_refuse(s->error, token->place.line, token->place.column,
                              "found %s%s; expected %s", recede_cgats_show(token, shown),
                              comma ? ", but decimals stand behind a point here" : "", expected);
}

recede_text_status recede_cgats_name(const recede_cgats_scanner *s, char out[RECEDE_NAME_SIZE])
{
    const recede_cgats_token *token = &s->token;
    int string = token->kind == RECEDE_CGATS_STRING;
    size_t size = 0;
    for (size_t i = 0; i < token->size; i++, size++) {
        if (size < RECEDE_NAME_SIZE)
            out[size] = token->text[i];
        if (string && token->text[i] == '"')
            i++;
    }
    if (size >= RECEDE_NAME_SIZE)
        return recede_text_refuse(s->error, token->place.line, token->place.column,
                                  "found a name of %zu bytes; use at most %d", size,
                                  RECEDE_NAME_SIZE - 1);
    out[size] = '\0';
    return RECEDE_TEXT_OK;
}
