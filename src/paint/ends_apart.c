#include "paint/ends_apart.h"

#include <string.h>

#include "colour/memory.h"
#include "paint/graded.h"
#include "paint/palette.h"

int recede_ends_are_apart(const recede_palette *palette, const recede_wash_target *targets,
                          size_t count)
{
    if (palette->medium == RECEDE_WATERCOLOUR)
        return 0;
    for (size_t i = 0; i < count; i++)
        if (targets[i].graded)
            return 1;
    return 0;
}

/* Flat washes: each flat one, and the two ends of each graded one. */
static size_t split(const recede_wash_target *targets, size_t count, recede_wash_target *flat)
{
    size_t used = 0;
    for (size_t i = 0; i < count; i++) {
        flat[used++] = (recede_wash_target){.from = targets[i].from};
        if (targets[i].graded)
            flat[used++] = (recede_wash_target){.from = targets[i].to};
    }
    return used;
}

static void join(const recede_palette *palette, const recede_wash_target *targets, size_t count,
                 const recede_wash_recipe *found, recede_wash_recipe *out)
{
    for (size_t i = 0; i < count; i++) {
        out[i] = *found++;
        if (!targets[i].graded)
            continue;
        out[i].to = found++->from;
        recede_graded_halfway(palette, &targets[i], &out[i]);
    }
}

recede_code recede_search_ends_apart(const recede_palette *palette,
                                     const recede_wash_target *targets, size_t count,
                                     recede_wash_recipe *out, const recede_allocator *allocator,
                                     recede_ends_search *search, const void *context)
{
    recede_wash_target *flat = recede_allocate_array(allocator, 2 * count, sizeof *flat);
    recede_wash_recipe *found = recede_allocate_array(allocator, 2 * count, sizeof *found);
    recede_code code = RECEDE_NO_MEMORY;
    if (flat && found)
        code = search(context, flat, split(targets, count, flat), found);
    if (!code)
        join(palette, targets, count, found, out);
    recede_release(allocator, found);
    recede_release(allocator, flat);
    return code;
}
