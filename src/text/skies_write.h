/* Skies to bytes: JSON as docs/teaching.md describes it, and text to read. */
#ifndef RECEDE_TEXT_SKIES_WRITE_H
#define RECEDE_TEXT_SKIES_WRITE_H

#include "recede.h"
#include "text/buffer.h"

/* As a file: ends with a line end. */
void recede_skies_write(const recede_skies *skies, recede_buffer *out);

/* What each light changes, for the terminal. */
void recede_skies_tell(const recede_skies *skies, recede_buffer *out);

/* The washes of a plan in the order they are told: the sky, then each plane far
 * to near; of each its sides, and of graded ones both ends. */
typedef struct recede_told {
    const char *plane;  /* its name, or "sky" */
    const char *label;  /* "lit", "shadow", "lit crest", "top of the sky", ... */
    const recede_wash *from, *to;
} recede_told;

/* How many a plane has (0: the sky, else recede_plan_at(plane - 1)), and each. */
enum { RECEDE_MOST_TOLD = 4 };
size_t recede_skies_told(const recede_skies *skies, size_t light, size_t plane,
                         recede_told told[RECEDE_MOST_TOLD]);

#endif
