#include "text/json.h"

#include <math.h>

#include "text/numbers.h"

static void write_string(recede_buffer *out, const char *text)
{
    recede_buffer_text(out, "\"");
    for (; *text; text++) {
        unsigned char byte = (unsigned char)*text;
        if (byte == '"' || byte == '\\')
            recede_buffer_text(out, "\\");
        if (byte < 0x20)
            recede_buffer_format(out, "\\u%04x", byte);
        else
            recede_buffer_add(out, text, 1);
    }
    recede_buffer_text(out, "\"");
}

static void write_number(recede_buffer *out, double number)
{
    char text[RECEDE_NUMBER_SIZE];
    if (isfinite(number))
        recede_buffer_add(out, text, recede_number_write(text, number));
    else
        recede_buffer_text(out, "null"); /* JSON has no other word for it */
}

static void new_line(recede_json *json)
{
    recede_buffer_text(json->out, "\n");
    recede_buffer_repeat(json->out, ' ', 2 * (size_t)json->depth);
}

/* The comma, the new line and the key before a value. */
static void lead_in(recede_json *json, const char *key)
{
    if (json->started)
        recede_buffer_text(json->out, ",");
    if (json->depth)
        new_line(json);
    if (key) {
        write_string(json->out, key);
        recede_buffer_text(json->out, ": ");
    }
    json->started = 1;
}

void recede_json_start(recede_json *json, recede_buffer *out)
{
    *json = (recede_json){.out = out};
}

static void open_value(recede_json *json, const char *key, const char *bracket)
{
    lead_in(json, key);
    recede_buffer_text(json->out, bracket);
    json->depth++;
    json->started = 0;
}

static void close_value(recede_json *json, const char *bracket)
{
    json->depth--;
    if (json->started)
        new_line(json);
    recede_buffer_text(json->out, bracket);
    json->started = 1;
}

void recede_json_object(recede_json *json, const char *key)
{
    open_value(json, key, "{");
}

void recede_json_array(recede_json *json, const char *key)
{
    open_value(json, key, "[");
}

void recede_json_end_object(recede_json *json)
{
    close_value(json, "}");
}

void recede_json_end_array(recede_json *json)
{
    close_value(json, "]");
}

void recede_json_string(recede_json *json, const char *key, const char *text)
{
    lead_in(json, key);
    write_string(json->out, text);
}

void recede_json_number(recede_json *json, const char *key, double number)
{
    lead_in(json, key);
    write_number(json->out, number);
}

void recede_json_whole(recede_json *json, const char *key, long number)
{
    lead_in(json, key);
    recede_buffer_format(json->out, "%ld", number);
}

void recede_json_bool(recede_json *json, const char *key, int truth)
{
    lead_in(json, key);
    recede_buffer_text(json->out, truth ? "true" : "false");
}

void recede_json_numbers(recede_json *json, const char *key, const double *numbers, size_t count)
{
    lead_in(json, key);
    recede_buffer_text(json->out, "[");
    for (size_t i = 0; i < count; i++) {
        if (i)
            recede_buffer_text(json->out, ", ");
        write_number(json->out, numbers[i]);
    }
    recede_buffer_text(json->out, "]");
}
