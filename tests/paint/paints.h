/* Palettes and colours for the tests of paint. */
#ifndef RECEDE_TESTS_PAINTS_H
#define RECEDE_TESTS_PAINTS_H

#include "recede.h"
#include "support/assert_near.h"

#include <string.h>

static inline recede_paint paint_of(const char *name)
{
    recede_paint paint;
    recede_error error;
    if (recede_paint_named(name, &paint, &error))
        fail_msg("no paint is called '%s'", name);
    return paint;
}

/* Names separated by '|', as in the table of palettes; returns how many. */
static inline size_t paints_of(const char *names, recede_paint *paints)
{
    size_t count = 0;
    char name[RECEDE_NAME_SIZE];
    while (*names) {
        size_t length = strcspn(names, "|");
        assert_true(length < sizeof name);
        memcpy(name, names, length);
        name[length] = '\0';
        assert_true(count < RECEDE_MOST_PAINTS);
        paints[count++] = paint_of(name);
        names += length + (names[length] == '|');
    }
    return count;
}

static inline recede_palette *palette_of(const char *names, recede_medium medium)
{
    static recede_paint paints[RECEDE_MOST_PAINTS];
    recede_palette *palette = NULL;
    recede_spectrum paper = recede_paper_white();
    size_t count = paints_of(names, paints);
    assert_int_equal(recede_palette_new(paints, count, medium, &paper, NULL, &palette, NULL),
                     RECEDE_OK);
    return palette;
}

static inline const recede_palette_entry *entry_of(const char *name)
{
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        if (strcmp(recede_palette_entry_at(i)->name, name) == 0)
            return recede_palette_entry_at(i);
    fail_msg("no palette is called '%s'", name);
    return NULL;
}

static inline recede_colour colour_of_mix(const recede_palette *palette, const recede_mix *mix)
{
    recede_spectrum seen = recede_mix_reflectance(palette, mix, NULL);
    return recede_colour_of_xyz(recede_xyz_of_reflectance(&seen));
}

/* A small generator, the same everywhere: Knuth's MMIX constants. */
typedef struct dice { unsigned long long state; } dice;

static inline double throw_dice(dice *d)
{
    d->state = d->state * 6364136223846793005ULL + 1442695040888963407ULL;
    return (double)(d->state >> 11) / 9007199254740992.0;
}

static inline int throw_below(dice *d, int limit)
{
    return (int)(throw_dice(d) * limit);
}

#endif
