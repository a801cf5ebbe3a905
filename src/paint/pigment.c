#include "recede.h"

#include <string.h>

#include "data/tables.h"

size_t recede_pigment_count(void)
{
    return recede_table_pigments_count;
}

const recede_pigment *recede_pigment_at(size_t index)
{
    return &recede_table_pigments[index];
}

const recede_pigment *recede_pigment_named(const char *name)
{
    for (size_t i = 0; i < recede_table_pigments_count; i++)
        if (strcmp(recede_table_pigments[i].name, name) == 0)
            return &recede_table_pigments[i];
    return NULL;
}
