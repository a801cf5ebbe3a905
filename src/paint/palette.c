#include "paint/palette.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "data/tables.h"
#include "paint/film.h"
#include "paint/names.h"

#define PATH "paint.palette"

size_t recede_palette_entry_count(void)
{
    return recede_table_palettes_count;
}

const recede_palette_entry *recede_palette_entry_at(size_t index)
{
    return &recede_table_palettes[index];
}

static recede_code check_bands(const recede_spectrum *spectrum, const char *path, double most,
                               recede_error *error)
{
    for (int band = 0; band < RECEDE_BANDS; band++) {
        recede_code code = recede_check_range(error, path, spectrum->at[band], 0, most);
        if (code)
            return code;
    }
    return RECEDE_OK;
}

static recede_code check_paint(const recede_paint *paints, size_t index, recede_error *error)
{
    for (size_t earlier = 0; earlier < index; earlier++)
        if (recede_same_paint_name(paints[earlier].name, paints[index].name))
            return recede_fail_name(error, RECEDE_DUPLICATE, PATH, paints[index].name);
    recede_code code = check_bands(&paints[index].k, PATH, RECEDE_MOST_K_OR_S, error);
    return code ? code : check_bands(&paints[index].s, PATH, RECEDE_MOST_K_OR_S, error);
}

static recede_code check(const recede_paint *paints, size_t count, recede_medium medium,
                         const recede_spectrum *paper, recede_error *error)
{
    int whites = 0;
    if (count < 1)
        return recede_fail_count(error, RECEDE_TOO_FEW, PATH, count, 1, RECEDE_MOST_PAINTS);
    if (count > RECEDE_MOST_PAINTS)
        return recede_fail_count(error, RECEDE_TOO_MANY, PATH, count, 1, RECEDE_MOST_PAINTS);
    for (size_t i = 0; i < count; i++) {
        recede_code code = check_paint(paints, i, error);
        if (code)
            return code;
        whites += paints[i].is_white != 0;
    }
    if (medium != RECEDE_WATERCOLOUR && !whites)
        return recede_fail(error, RECEDE_NO_WHITE, PATH);
    return check_bands(paper, "paper", 1, error);
}

static void lay_paper(recede_palette *palette, const recede_spectrum *paper)
{
    palette->paper = *paper;
    for (int band = 0; band < RECEDE_BANDS; band++)
        palette->paper_internal[band] = recede_internal_of_seen(paper->at[band]);
}

static void prepare(recede_palette *palette)
{
    palette->white = recede_white();
    for (int band = 0; band < RECEDE_BANDS; band++) {
        recede_spectrum alone = {{0}};
        alone.at[band] = 1;
        recede_xyz xyz = recede_xyz_of_reflectance(&alone);
        palette->x[band] = xyz.x;
        palette->y[band] = xyz.y;
        palette->z[band] = xyz.z;
    }
}

recede_code recede_palette_new(const recede_paint *paints, size_t count, recede_medium medium,
                               const recede_spectrum *paper, const recede_allocator *allocator,
                               recede_palette **out, recede_error *error)
{
    *out = NULL;
    recede_code code = check(paints, count, medium, paper, error);
    if (code)
        return code;
    allocator = recede_allocator_or_default(allocator);
    recede_palette *palette =
        recede_allocate_array(allocator, 1, sizeof *palette + count * sizeof paints[0]);
    if (!palette)
        return recede_fail(error, RECEDE_NO_MEMORY, PATH);
    palette->allocator = *allocator;
    palette->medium = medium;
    palette->count = count;
    memcpy(palette->paints, paints, count * sizeof paints[0]);
    prepare(palette);
    lay_paper(palette, paper);
    *out = palette;
    return RECEDE_OK;
}

recede_palette *recede_palette_on(const recede_palette *palette, const recede_spectrum *ground,
                                  const recede_allocator *allocator)
{
    size_t size = sizeof *palette + palette->count * sizeof palette->paints[0];
    recede_palette *on = recede_allocate_array(allocator, 1, size);
    if (!on)
        return NULL;
    memcpy(on, palette, size);
    on->allocator = *allocator;
    lay_paper(on, ground);
    return on;
}

void recede_palette_free(recede_palette *palette)
{
    if (!palette)
        return;
    recede_allocator allocator = palette->allocator;
    recede_release(&allocator, palette);
}

size_t recede_palette_count(const recede_palette *palette)
{
    return palette->count;
}

const recede_paint *recede_palette_paint(const recede_palette *palette, size_t index)
{
    return &palette->paints[index];
}

recede_medium recede_palette_medium(const recede_palette *palette)
{
    return palette->medium;
}

const recede_spectrum *recede_palette_paper(const recede_palette *palette)
{
    return &palette->paper;
}

size_t recede_palette_levels(const recede_palette *palette)
{
    return palette->medium == RECEDE_WATERCOLOUR ? recede_water_count() : 1;
}

double recede_palette_film(const recede_palette *palette, double water)
{
    return palette->medium == RECEDE_WATERCOLOUR ? recede_film_of_water(water) : INFINITY;
}

recede_xyz recede_palette_xyz(const recede_palette *palette, const double *seen)
{
    recede_xyz sum = {0, 0, 0};
    for (int band = 0; band < RECEDE_BANDS; band++) {
        sum.x += palette->x[band] * seen[band];
        sum.y += palette->y[band] * seen[band];
        sum.z += palette->z[band] * seen[band];
    }
    return sum;
}

recede_lab recede_palette_lab(const recede_palette *palette, const double *seen)
{
    return recede_lab_of_xyz(recede_palette_xyz(palette, seen), palette->white);
}
