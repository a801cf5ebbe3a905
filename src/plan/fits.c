#include "plan/fits.h"

#include <string.h>

#include "paint/index.h"

int recede_same_spectrum(const recede_spectrum *one, const recede_spectrum *other)
{
    for (int band = 0; band < RECEDE_BANDS; band++)
        if (one->at[band] != other->at[band])
            return 0;
    return 1;
}

int recede_same_paint(const recede_paint *one, const recede_paint *other)
{
    return strcmp(one->name, other->name) == 0 && one->is_white == other->is_white &&
           recede_same_spectrum(&one->k, &other->k) && recede_same_spectrum(&one->s, &other->s);
}

static int same_palette(const recede_palette *one, const recede_palette *other)
{
    if (one->count != other->count || one->medium != other->medium ||
        !recede_same_spectrum(&one->paper, &other->paper))
        return 0;
    for (size_t i = 0; i < one->count; i++)
        if (!recede_same_paint(&one->paints[i], &other->paints[i]))
            return 0;
    return 1;
}

int recede_index_fits(const recede_index *index, const recede_palette *palette,
                      const recede_rules *rules)
{
    return index->rules.most_pigments == rules->most_pigments &&
           index->rules.most_parts == rules->most_parts && index->rules.tie == rules->tie &&
           same_palette(index->palette, palette);
}
