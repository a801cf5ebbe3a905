#include "text/nearest.h"

#include <stdio.h>
#include <string.h>

#include "recede.h"

enum { LONGEST = RECEDE_NAME_SIZE };

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

size_t recede_edit_distance(const char *one, const char *other)
{
    size_t rows[3][LONGEST + 1];
    size_t *before = rows[0], *above = rows[1], *row = rows[2];
    size_t width = least(strlen(other), LONGEST), height = least(strlen(one), LONGEST);
    for (size_t j = 0; j <= width; j++)
        above[j] = j;
    for (size_t i = 1; i <= height; i++) {
        char a = lower(one[i - 1]);
        row[0] = i;
        for (size_t j = 1; j <= width; j++) {
            char b = lower(other[j - 1]);
            row[j] = least(least(above[j], row[j - 1]) + 1, above[j - 1] + (a != b));
            if (i > 1 && j > 1 && a == lower(other[j - 2]) && b == lower(one[i - 2]))
                row[j] = least(row[j], before[j - 2] + 1);
        }
        size_t *spare = before;
        before = above;
        above = row;
        row = spare;
    }
    return above[width];
}

static int holds(const char *text, const char *part)
{
    size_t length = strlen(part);
    for (; *text; text++) {
        size_t same = 0;
        while (same < length && lower(text[same]) == lower(part[same]))
            same++;
        if (same == length)
            return 1;
    }
    return 0;
}

void recede_nearest_start(recede_nearest *nearest, const char *found)
{
    *nearest = (recede_nearest){.found = found};
}

void recede_nearest_offer(recede_nearest *nearest, const char *name)
{
    size_t distance = recede_edit_distance(nearest->found, name);
    /* "oak" means one of the oaks, though many letters are missing */
    if (strlen(nearest->found) >= 3 && holds(name, nearest->found))
        distance = 1;
    size_t place = nearest->count;
    while (place > 0 && distance < nearest->distance[place - 1])
        place--;
    if (place == RECEDE_NEAREST_MOST)
        return;
    if (nearest->count < RECEDE_NEAREST_MOST)
        nearest->count++;
    for (size_t i = nearest->count - 1; i > place; i--) {
        nearest->name[i] = nearest->name[i - 1];
        nearest->distance[i] = nearest->distance[i - 1];
    }
    nearest->name[place] = name;
    nearest->distance[place] = distance;
}

/* A third of the letters wrong, and one more: still likely what was meant. */
static size_t likely_count(const recede_nearest *nearest)
{
    size_t most = strlen(nearest->found) / 3 + 1, count = 0;
    while (count < nearest->count && nearest->distance[count] <= most &&
           nearest->distance[count] <= nearest->distance[0] + 1)
        count++;
    return count;
}

void recede_nearest_say(const recede_nearest *nearest, char *out, size_t size)
{
    size_t likely = likely_count(nearest), count = likely ? likely : nearest->count, used;
    const char *last = likely ? " or " : " and ";
    int length = snprintf(out, size, "%s", likely ? "did you mean " : "the nearest known are ");
    for (size_t i = 0; i < count && length >= 0 && (used = (size_t)length) < size; i++) {
        const char *between = i == 0 ? "" : i + 1 == count ? last : ", ";
        length += snprintf(out + used, size - used, "%s\"%s\"", between, nearest->name[i]);
    }
    if (likely && length >= 0 && (size_t)length + 1 < size)
        strcpy(out + length, "?");
}
