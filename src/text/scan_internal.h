/* The scanner's inside: where it stands, and what both its files use. */
#ifndef RECEDE_TEXT_SCAN_INTERNAL_H
#define RECEDE_TEXT_SCAN_INTERNAL_H

#include "text/scan.h"
#include "text/scan_keys.h"

typedef struct recede_scanner {
    const char *bytes;
    size_t size, at;
    recede_place place; /* of the byte at */
    int depth;
    recede_scan *scan;
    recede_keys keys;
    recede_text_error *error;
} recede_scanner;

#define RECEDE_FOUND_SIZE 160

/* What stands at the scanner's place, for a message: "'}'", "U+202E", "the end
 * of the file", "the byte 0xFF, which is not UTF-8". */
const char *recede_scanner_found(const recede_scanner *scanner, char out[RECEDE_FOUND_SIZE]);

/* Steps over the character at the scanner's place; it is known to be valid. */
void recede_scanner_step(recede_scanner *scanner, size_t bytes);

/* A string, from its quote on. Its bytes go to out, escapes resolved. */
recede_text_status recede_scan_string(recede_scanner *scanner, char out[RECEDE_SCAN_MOST_STRING],
                                      size_t *size);

/* A number, true, false or null. */
recede_text_status recede_scan_word(recede_scanner *scanner);

#endif
