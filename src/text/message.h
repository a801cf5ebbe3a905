/* What is wrong with a text, in one line, and where. */
#ifndef RECEDE_TEXT_MESSAGE_H
#define RECEDE_TEXT_MESSAGE_H

#include "recede.h"
#include "text/buffer.h"

typedef enum recede_text_status {
    RECEDE_TEXT_OK = 0,
    RECEDE_TEXT_REFUSED,
    RECEDE_TEXT_NO_MEMORY,
    RECEDE_TEXT_UNREADABLE /* a file that it names */
} recede_text_status;

/* line and column count from 1, columns in characters; 0 where there is no
 * place to name. what says what was found and what to do about it. file: which of
 * the files that the text names it is in; "": the text itself. */
typedef struct recede_text_error {
    char file[RECEDE_NAME_SIZE];
    size_t line, column;
    char what[600];
} recede_text_error;

/* Sets an error and returns RECEDE_TEXT_REFUSED. Too long a text is cut. */
recede_text_status recede_text_refuse(recede_text_error *error, size_t line, size_t column,
                                      const char *format, ...)
#if defined(__GNUC__)
    __attribute__((format(printf, 4, 5)))
#endif
    ;

/* Says that memory ran out and returns RECEDE_TEXT_NO_MEMORY. */
recede_text_status recede_text_no_memory(recede_text_error *error);

/* "FILE:LINE:COLUMN: what" and a line end; without a place, "FILE: what". FILE is
 * error->file, seen from the folder of file, where there is one.
 * Characters of the file's name that would upset a terminal become '?'. */
void recede_message_line(recede_buffer *out, const char *file, const recede_text_error *error);

/* A name as it may be shown: control and bidirectional characters and bytes
 * that are not UTF-8 become '?'. */
void recede_message_name(recede_buffer *out, const char *name);

#endif
