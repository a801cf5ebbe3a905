/* A strict scanner for JSON (RFC 8259): checks the bytes and records where
 * each value stands. cJSON keeps no places and takes much that is not JSON, so
 * only bytes that pass here go to it.
 *
 * A byte order mark at the start is passed over. Refused beyond the grammar: bytes
 * that are not UTF-8, what is no text by its first bytes, control and bidirectional
 * characters (raw or as escapes), lone surrogates, a key that stands twice in its object,
 * nesting over 16, strings over 200 bytes, numbers over 40 characters or beyond a double. */
#ifndef RECEDE_TEXT_SCAN_H
#define RECEDE_TEXT_SCAN_H

#include "recede.h"
#include "text/grow.h"
#include "text/message.h"

#define RECEDE_SCAN_MOST_DEPTH 16
#define RECEDE_SCAN_MOST_STRING 200

/* From 1; a column is a character, a tab too. */
typedef struct recede_place {
    size_t line, column;
} recede_place;

typedef struct recede_scanned {
    recede_place value, key; /* key.line is 0 where the value is no member */
    size_t start, end;       /* its bytes */
    size_t key_start, key_end;
    size_t span;             /* values in it, itself included */
} recede_scanned;

/* All values in the order in which they start. */
typedef struct recede_scan {
    recede_array values; /* of recede_scanned */
} recede_scan;

/* scan is to be freed in any case. */
recede_text_status recede_scan_bytes(const char *bytes, size_t size,
                                     const recede_allocator *allocator, recede_scan *scan,
                                     recede_text_error *error);
void recede_scan_free(recede_scan *scan);

size_t recede_scan_count(const recede_scan *scan);
const recede_scanned *recede_scan_at(const recede_scan *scan, size_t index);

#endif
