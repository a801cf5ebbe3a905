/* The known names nearest to one that is not known, to be offered instead. */
#ifndef RECEDE_TEXT_NEAREST_H
#define RECEDE_TEXT_NEAREST_H

#include <stddef.h>

enum { RECEDE_NEAREST_MOST = 3 };

typedef struct recede_nearest {
    const char *found;
    size_t count;
    const char *name[RECEDE_NEAREST_MOST];
    size_t distance[RECEDE_NEAREST_MOST];
} recede_nearest;

/* found must outlive the rest, and so must the names offered. */
void recede_nearest_start(recede_nearest *nearest, const char *found);
void recede_nearest_offer(recede_nearest *nearest, const char *name);

/* "did you mean "summer oak"?", or, where nothing is near, "the nearest known
 * are "summer oak", "willow" and "heather"". Cut at size. */
void recede_nearest_say(const recede_nearest *nearest, char *out, size_t size);

/* Letters to change, add, drop or exchange with their neighbour (optimal string
 * alignment, Damerau 1964), without regard to ASCII case. */
size_t recede_edit_distance(const char *one, const char *other);

#endif
