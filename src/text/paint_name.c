#include "text/paint_name.h"

#include <string.h>

#include "paint/names.h"

typedef struct {
    const char *name;
    const recede_paint *known; /* what the library takes the name for, or NULL */
} asked;

static int is_named(const recede_paint *paint, const asked *a)
{
    return recede_same_paint_name(a->name, paint->name);
}

static int answers(const recede_paint *paint, const asked *a)
{
    if (paint->ingredients > 0)
        return a->known && recede_same_paint_name(a->known->name, paint->name);
    return (paint->file[0] && strcmp(a->name, paint->file) == 0) ||
           (paint->colour_index[0] && recede_same_colour_index(a->name, paint->colour_index));
}

static int only(const recede_paint *paints, size_t count, const asked *a,
                int (*fits)(const recede_paint *, const asked *))
{
    int found = RECEDE_PAINT_NONE;
    for (size_t i = 0; i < count; i++)
        if (fits(&paints[i], a))
            found = found == RECEDE_PAINT_NONE ? (int)i : RECEDE_PAINT_MANY;
    return found;
}

int recede_paint_meant(const recede_paint *paints, size_t count, const char *name)
{
    recede_paint known;
    asked a = {name, NULL};
    int found = only(paints, count, &a, is_named);
    if (found != RECEDE_PAINT_NONE)
        return found;
    if (recede_paint_named(name, &known, NULL) == RECEDE_OK)
        a.known = &known;
    return only(paints, count, &a, answers);
}
