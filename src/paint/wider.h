/*
 * What an index leaves open where it does not hold all mixes: those of more pigments
 * matter to a wash only where they are closer, by more than the tie, than what it
 * chose, or bring the colour within reach at all. One pass over them finds that out
 * for all washes together; where some do, a second lists the mixes to choose from.
 */
#ifndef RECEDE_PAINT_WIDER_H
#define RECEDE_PAINT_WIDER_H

#include "paint/flat_search.h"

/* A wash with the recipe so far, from what the index holds. */
typedef struct recede_open_wash {
    const recede_wash_target *target;
    recede_wash_recipe *out;
    recede_mix chosen;  /* flat */
    double beat;        /* the difference, or score, that a mix, or set, must not exceed */
    double closest;     /* flat: as in recede_flat_answer */
} recede_open_wash;

recede_code recede_search_wider(const recede_index *index, recede_open_wash *washes,
                                size_t count, const recede_allocator *allocator,
                                const recede_progress *progress);

#endif
