/* Measurement files: CGATS.17 and ISO 28178 text. docs/measurements.md has what is taken. */
#ifndef RECEDE_TEXT_CGATS_H
#define RECEDE_TEXT_CGATS_H

#include "recede.h"
#include "text/message.h"
#include "text/scan.h"

#define RECEDE_CGATS_MOST_BYTES ((size_t)4 << 20)
#define RECEDE_CGATS_MOST_SAMPLES 4096

typedef struct recede_measurement {
    char id[RECEDE_NAME_SIZE], name[RECEDE_NAME_SIZE]; /* "" without one */
    recede_place place;          /* where its data start */
    int has_reflectance, has_lab;
    recede_spectrum reflectance; /* 0 to 1 */
    recede_lab lab;              /* under D65 */
} recede_measurement;

typedef struct recede_measurements {
    const recede_allocator *allocator;
    size_t count;
    recede_measurement *of;
} recede_measurements;

/* Every sample has a spectrum or a colour or both, and an id or a name or both; no id
 * stands twice. On failure out is empty. */
recede_text_status recede_measurements_read(const char *bytes, size_t size,
                                            const recede_allocator *allocator,
                                            recede_measurements *out, recede_text_error *error);
void recede_measurements_free(recede_measurements *measurements);

/* How many samples go by a name, and the first of them: those of that id or, where there
 * are none, of that name; exact. */
size_t recede_measurements_named(const recede_measurements *measurements, const char *name,
                                 const recede_measurement **first);

#endif
