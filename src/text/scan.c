#include "text/scan.h"

#include <string.h>

#include "text/first_bytes.h"
#include "text/numbers.h"
#include "text/scan_internal.h"

size_t recede_scan_count(const recede_scan *scan)
{
    return scan->values.count;
}

const recede_scanned *recede_scan_at(const recede_scan *scan, size_t index)
{
    return (const recede_scanned *)scan->values.items + index;
}

void recede_scan_free(recede_scan *scan)
{
    recede_array_free(&scan->values);
}

static int next_is(const recede_scanner *s, char c)
{
    return s->at < s->size && s->bytes[s->at] == c;
}

static void skip_blanks(recede_scanner *s)
{
    while (s->at < s->size && s->bytes[s->at] && strchr(" \t\n\r", s->bytes[s->at]))
        recede_scanner_step(s, 1);
}

static recede_text_status refuse_found(recede_scanner *s, const char *expected)
{
    char found[RECEDE_FOUND_SIZE];
    return recede_text_refuse(s->error, s->place.line, s->place.column, "found %s; %s",
                              recede_scanner_found(s, found),
                              next_is(s, '/') ? "JSON has no comments: take it out" : expected);
}

static recede_text_status scan_value(recede_scanner *s, const recede_scanned *start);

static int is_digit_at(const recede_scanner *s, size_t at)
{
    return at < s->size && s->bytes[at] >= '0' && s->bytes[at] <= '9';
}

/* How many digits with a sign, the whole of a value, end before the comma at. */
static size_t digits_before(const recede_scanner *s, size_t comma)
{
    size_t start = comma;
    while (is_digit_at(s, start - 1))
        start--;
    if (start < comma && s->bytes[start - 1] == '-')
        start--;
    return strchr(": \t\n\r", s->bytes[start - 1]) ? comma - start : 0;
}

/* What stands where a key is expected. "3,5" is a number with a decimal comma: the
 * comma was taken for the end of the member, and digits stand right behind it. */
static recede_text_status refuse_key(recede_scanner *s)
{
    size_t before = s->bytes[s->at - 1] == ',' ? digits_before(s, s->at - 1) : 0, behind = 0;
    while (is_digit_at(s, s->at + behind))
        behind++;
    if (!before || !behind || before + 1 + behind > RECEDE_NUMBER_LENGTH)
        return refuse_found(s, "expected a key in double quotes");
    const char *decimals = s->bytes + s->at, *number = decimals - 1 - before;
    return recede_text_refuse(s->error, s->place.line, s->place.column - before - 1,
                              "found %.*s,%.*s; a decimal takes a point: write %.*s.%.*s",
                              (int)before, number, (int)behind, decimals, (int)before, number,
                              (int)behind, decimals);
}

/* A key, its colon and its value. */
static recede_text_status scan_member(recede_scanner *s)
{
    char key[RECEDE_SCAN_MOST_STRING];
    size_t size;
    recede_scanned member = {.key = s->place, .key_start = s->at};
    if (!next_is(s, '"'))
        return refuse_key(s);
    recede_text_status status = recede_scan_string(s, key, &size);
    if (status)
        return status;
    member.key_end = s->at;
    if (!recede_keys_add(&s->keys, key, size, recede_scan_count(s->scan)))
        return recede_text_no_memory(s->error);
    skip_blanks(s);
    if (!next_is(s, ':'))
        return refuse_found(s, "expected ':' after the key");
    recede_scanner_step(s, 1);
    skip_blanks(s);
    return scan_value(s, &member);
}

static recede_text_status scan_element(recede_scanner *s)
{
    const recede_scanned element = {0};
    return scan_value(s, &element);
}

/* What stands between brackets, separated by commas. */
static recede_text_status scan_inside(recede_scanner *s, char close,
                                      recede_text_status (*scan_one)(recede_scanner *))
{
    recede_scanner_step(s, 1);
    skip_blanks(s);
    for (int first = 1; !(first && next_is(s, close)); first = 0) {
        if (!first && next_is(s, close))
            return refuse_found(s, "take out the comma before it");
        recede_text_status status = scan_one(s);
        if (status)
            return status;
        skip_blanks(s);
        if (next_is(s, close))
            break;
        if (!next_is(s, ','))
            return refuse_found(s, close == '}' ? "expected '}', or a comma before it"
                                                : "expected ']', or a comma before it");
        recede_scanner_step(s, 1);
        skip_blanks(s);
    }
    recede_scanner_step(s, 1);
    return RECEDE_TEXT_OK;
}

static recede_text_status close_object(recede_scanner *s, size_t first_key)
{
    size_t earlier, later;
    if (!recede_keys_close(&s->keys, first_key, &earlier, &later))
        return RECEDE_TEXT_OK;
    const recede_scanned *one = recede_scan_at(s->scan, earlier);
    const recede_scanned *other = recede_scan_at(s->scan, later);
    return recede_text_refuse(s->error, other->key.line, other->key.column,
                              "found the key %.*s a second time, first in line %zu; keep one",
                              (int)(other->key_end - other->key_start),
                              s->bytes + other->key_start, one->key.line);
}

static recede_text_status scan_bracket(recede_scanner *s)
{
    recede_text_status status;
    size_t first_key = s->keys.stack.count;
    if (s->depth == RECEDE_SCAN_MOST_DEPTH)
        return recede_text_refuse(s->error, s->place.line, s->place.column,
                                  "found brackets nested deeper than %d; none of recede's files "
                                  "needs that", RECEDE_SCAN_MOST_DEPTH);
    s->depth++;
    if (next_is(s, '['))
        status = scan_inside(s, ']', scan_element);
    else
        status = scan_inside(s, '}', scan_member);
    s->depth--;
    return status ? status : close_object(s, first_key);
}

/* start holds the key, if any; what is known of the value is added here. */
static recede_text_status scan_value(recede_scanner *s, const recede_scanned *start)
{
    char text[RECEDE_SCAN_MOST_STRING];
    size_t size, index = recede_scan_count(s->scan);
    recede_text_status status;
    recede_scanned *value = recede_array_add(&s->scan->values);
    if (!value)
        return recede_text_no_memory(s->error);
    *value = *start;
    value->value = s->place;
    value->start = s->at;
    if (next_is(s, '{') || next_is(s, '['))
        status = scan_bracket(s);
    else if (next_is(s, '"'))
        status = recede_scan_string(s, text, &size);
    else if (next_is(s, '/'))
        status = refuse_found(s, "");
    else
        status = recede_scan_word(s);
    value = (recede_scanned *)s->scan->values.items + index;
    value->end = s->at;
    value->span = recede_scan_count(s->scan) - index;
    return status;
}

static recede_text_status scan_document(recede_scanner *s)
{
    const recede_scanned root = {0};
    if (s->size == 0)
        return recede_text_refuse(s->error, 1, 1, "the file is empty; expected JSON, which "
                                  "starts with '{'");
    recede_text_status status = recede_first_bytes_check(s->bytes, s->size, &s->at, s->error);
    if (status)
        return status;
    skip_blanks(s);
    status = scan_value(s, &root);
    if (status)
        return status;
    skip_blanks(s);
    return s->at == s->size ? RECEDE_TEXT_OK
                            : refuse_found(s, "nothing may follow the last bracket");
}

recede_text_status recede_scan_bytes(const char *bytes, size_t size,
                                     const recede_allocator *allocator, recede_scan *scan,
                                     recede_text_error *error)
{
    recede_scanner scanner = {.bytes = bytes, .size = size, .place = {1, 1}, .scan = scan,
                              .error = error};
    recede_array_start(&scan->values, allocator, sizeof(recede_scanned));
    if (!recede_keys_start(&scanner.keys, allocator, size))
        return recede_text_no_memory(error);
    recede_text_status status = scan_document(&scanner);
    recede_keys_free(&scanner.keys);
    return status;
}
