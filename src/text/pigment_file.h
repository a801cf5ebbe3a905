/* Pigment files: one paint of the painter's own. docs/paints.md has the format. */
#ifndef RECEDE_TEXT_PIGMENT_FILE_H
#define RECEDE_TEXT_PIGMENT_FILE_H

#include "text/files.h"
#include "text/json.h"

/* Texts are "" where the file has none. */
typedef struct recede_pigment_file {
    recede_paint paint; /* ingredients 0; file as read from, "" for an inline one */
    char transparency[RECEDE_NAME_SIZE];
    char permanence[RECEDE_NAME_SIZE];
    char source[RECEDE_NAME_SIZE];
    char measured[RECEDE_NAME_SIZE]; /* what was measured and how well it fits */
    int has_medium;
    recede_medium medium; /* that it was measured in */
} recede_pigment_file;

/* name goes into paint.file and, on failure, into error->file; "" where there
 * is none. */
recede_text_status recede_pigment_file_read(const char *bytes, size_t size, const char *name,
                                            const recede_allocator *allocator,
                                            recede_pigment_file *out, recede_text_error *error);

/* As a file: ends with a line end. Reads back the same, to the last bit. */
void recede_pigment_file_write(const recede_pigment_file *pigment, recede_buffer *out);

/* The same as an object inside a JSON text; key NULL in a list. */
void recede_pigment_write(recede_json *json, const char *key, const recede_pigment_file *pigment);

#endif
