/* The built-in own colours, by place and by name. */
#include "data/tables.h"

#include <string.h>

static const recede_own_entry *named(const recede_own_entry *entries, size_t count,
                                     const char *name)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(entries[i].name, name) == 0)
            return &entries[i];
    return NULL;
}

size_t recede_foliage_count(void)
{
    return recede_table_foliage_count;
}

size_t recede_surface_count(void)
{
    return recede_table_surfaces_count;
}

const recede_own_entry *recede_foliage_at(size_t index)
{
    return index < recede_table_foliage_count ? &recede_table_foliage[index] : NULL;
}

const recede_own_entry *recede_surface_at(size_t index)
{
    return index < recede_table_surfaces_count ? &recede_table_surfaces[index] : NULL;
}

const recede_own_entry *recede_foliage_named(const char *name)
{
    return named(recede_table_foliage, recede_table_foliage_count, name);
}

const recede_own_entry *recede_surface_named(const char *name)
{
    return named(recede_table_surfaces, recede_table_surfaces_count, name);
}
