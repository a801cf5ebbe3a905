/* The words of a CGATS file, one after another. */
#ifndef RECEDE_TEXT_CGATS_SCAN_H
#define RECEDE_TEXT_CGATS_SCAN_H

#include "text/message.h"
#include "text/numbers.h"
#include "text/scan.h"

typedef enum recede_cgats_kind {
    RECEDE_CGATS_WORD,
    RECEDE_CGATS_STRING,   /* in double quotes; a quote inside is doubled */
    RECEDE_CGATS_LINE_END, /* one, however many lines are empty */
    RECEDE_CGATS_END
} recede_cgats_kind;

/* text: its bytes, those of a string without the quotes. */
typedef struct recede_cgats_token {
    recede_cgats_kind kind;
    recede_place place;
    const char *text;
    size_t size;
} recede_cgats_token;

typedef struct recede_cgats_scanner {
    const char *bytes;
    size_t size, at;
    recede_place place;
    recede_cgats_token token; /* the one that was read last */
    recede_text_error *error;
} recede_cgats_scanner;

/* Checks all the bytes; there is no token yet. */
recede_text_status recede_cgats_start(recede_cgats_scanner *scanner, const char *bytes,
                                      size_t size, recede_text_error *error);

/* Goes on to the next token; with values, to the next that is no line end. */
recede_text_status recede_cgats_next(recede_cgats_scanner *scanner);
recede_text_status recede_cgats_next_value(recede_cgats_scanner *scanner);

/* Is the token this word, without regard to case? A string never is. */
int recede_cgats_is(const recede_cgats_token *token, const char *word);
int recede_cgats_same(const char *text, size_t size, const char *word);

/* The token as messages show it, cut where it is long. */
#define RECEDE_CGATS_SHOWN 60
const char *recede_cgats_show(const recede_cgats_token *token, char out[RECEDE_CGATS_SHOWN]);

/* A number as messages show it, whatever the locale. */
typedef struct recede_cgats_digits {
    char text[RECEDE_NUMBER_SIZE];
} recede_cgats_digits;
recede_cgats_digits recede_cgats_show_number(double number);

/* The token as a number. expected: what it should be, in words. */
recede_text_status recede_cgats_number(const recede_cgats_scanner *scanner, const char *expected,
                                       double *out);

/* The token as a name. */
recede_text_status recede_cgats_name(const recede_cgats_scanner *scanner,
                                     char out[RECEDE_NAME_SIZE]);

#endif
