/* Writes JSON (RFC 8259): two blanks a level, one member a line, numbers of an
 * array on one line. */
#ifndef RECEDE_TEXT_JSON_H
#define RECEDE_TEXT_JSON_H

#include "text/buffer.h"

typedef struct recede_json {
    recede_buffer *out;
    int depth;
    int started; /* something stands before in the object or array that is open */
} recede_json;

void recede_json_start(recede_json *json, recede_buffer *out);

/* key is NULL inside an array and at the top. */
void recede_json_object(recede_json *json, const char *key);
void recede_json_array(recede_json *json, const char *key);
void recede_json_end_object(recede_json *json);
void recede_json_end_array(recede_json *json);

void recede_json_string(recede_json *json, const char *key, const char *text);
void recede_json_number(recede_json *json, const char *key, double number);
void recede_json_whole(recede_json *json, const char *key, long number);
void recede_json_bool(recede_json *json, const char *key, int truth);
void recede_json_numbers(recede_json *json, const char *key, const double *numbers, size_t count);

#endif
