/* The index as one block of memory: its layout, and what it holds where. */
#include "paint/index.h"

#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/index_build.h"
#include "paint/mixes.h"
#include "paint/targets.h"

#define DEFAULT_MOST_BYTES ((size_t)256 << 20)

/* A stretch ends where the film is this much thinner than at its start. */
#define THINNER 1.4

const recede_small_mix *recede_index_mixes(const recede_index *index)
{
    return (const recede_small_mix *)((const char *)index + index->mixes_at);
}

const recede_leaves *recede_index_leaves(const recede_index *index)
{
    return (const recede_leaves *)((const char *)index + index->leaves_at);
}

const recede_boxes *recede_index_nodes(const recede_index *index)
{
    return (const recede_boxes *)((const char *)index + index->nodes_at);
}

int recede_index_pigments(const recede_index *index)
{
    return index->classes ? index->class[index->classes - 1].pigments : 0;
}

static int wanted_pigments(const recede_index *index)
{
    int paints = (int)index->palette->count, most = index->rules.most_pigments;
    return paints < most ? paints : most;
}

int recede_index_is_whole(const recede_index *index)
{
    return recede_index_pigments(index) == wanted_pigments(index);
}

void recede_index_range(const recede_index *index, double *darkest_y, double *palest_y)
{
    *darkest_y = index->darkest_y;
    *palest_y = index->palest_y;
    if (!recede_index_is_whole(index))
        recede_palette_range(index->palette, &index->rules, darkest_y, palest_y);
}

const recede_boxes *recede_block_boxes(const recede_index *index, const recede_class *class,
                                       int level, size_t block)
{
    size_t at = class->first_block[level] + block;
    return level ? &recede_index_nodes(index)[at] : &recede_index_leaves(index)[at].boxes;
}

int recede_block_count(const recede_class *class, int level, size_t block)
{
    size_t below = level ? class->blocks[level - 1] : class->leaves;
    size_t left = below - block * RECEDE_BLOCK;
    return left < RECEDE_BLOCK ? (int)left : RECEDE_BLOCK;
}

recede_mix recede_mix_of_small(const recede_small_mix *small)
{
    recede_mix mix = {.count = small->count};
    for (int i = 0; i < small->count; i++) {
        mix.paint[i] = small->paint[i];
        mix.parts[i] = small->parts[i];
    }
    return mix;
}

static recede_stretches stretches_of(const recede_palette *palette)
{
    recede_stretches s = {0};
    size_t levels = recede_palette_levels(palette);
    for (size_t level = 0; level < levels; s.count++) {
        double film = recede_film_of_water(recede_water_at(level));
        size_t end = level + 1;
        while (end < levels && end < level + RECEDE_STRETCH_LEVELS &&
               film < THINNER * recede_film_of_water(recede_water_at(end)))
            end++;
        s.first[s.count] = (uint8_t)level;
        s.levels[s.count] = (uint8_t)(end - level);
        level = end;
    }
    return s;
}

/* The classes in the order of paint/mixes.h. */
static void list_classes(recede_index *index)
{
    int paints = (int)index->palette->count;
    size_t mixes = 0;
    for (int pigments = 1; pigments <= wanted_pigments(index); pigments++) {
        int most = pigments == 1 ? 1 : index->rules.most_parts;
        for (int parts = pigments; parts <= most; parts++) {
            recede_class *class = &index->class[index->classes++];
            class->pigments = pigments;
            class->parts = parts;
            class->first_mix = mixes;
            class->mixes = (size_t)recede_mixes_of_size(paints, pigments, parts);
            mixes += class->mixes;
        }
    }
}

/* Gives a class its blocks. */
static void place_class(recede_class *class, size_t stretches, size_t *leaf, size_t *node)
{
    class->leaves = class->mixes * stretches;
    class->height = 0;
    for (size_t below = class->leaves; below > 1 || class->height == 0; class->height++) {
        size_t *next = class->height ? node : leaf;
        below = (below + RECEDE_BLOCK - 1) / RECEDE_BLOCK;
        class->first_block[class->height] = *next;
        class->blocks[class->height] = below;
        *next += below;
    }
}

/* Lays out the block. */
static void place(recede_index *index)
{
    size_t leaf = 0, node = 0, mixes = 0;
    for (int i = 0; i < index->classes; i++) {
        place_class(&index->class[i], (size_t)index->stretches.count, &leaf, &node);
        mixes += index->class[i].mixes;
    }
    index->mixes_at = sizeof *index;
    index->leaves_at = index->mixes_at + mixes * sizeof(recede_small_mix);
    index->nodes_at = index->leaves_at + leaf * sizeof(recede_leaves);
    index->bytes = index->nodes_at + node * sizeof(recede_boxes);
}

/* Leaves out the classes of the most pigments until the rest fits. */
static void fit(recede_index *index, size_t most_bytes)
{
    while (index->classes && index->bytes > most_bytes) {
        int pigments = recede_index_pigments(index);
        while (recede_index_pigments(index) == pigments)
            index->classes--;
        place(index);
    }
}

static void lay_out(recede_index *index, const recede_palette *palette,
                    const recede_rules *rules, size_t most_bytes)
{
    memset(index, 0, sizeof *index);
    index->palette = palette;
    index->rules = *rules;
    index->stretches = stretches_of(palette);
    recede_curve_start(&index->maker, palette);
    list_classes(index);
    place(index);
    fit(index, recede_curve_holds(palette) ? most_bytes : 0);
}

/* The block, laid out on a first, small copy. */
static recede_index *new_block(const recede_palette *palette, const recede_rules *rules,
                               size_t most_bytes, const recede_allocator *allocator)
{
    recede_index *layout = recede_allocate_array(allocator, 1, sizeof *layout), *index;
    if (!layout)
        return NULL;
    lay_out(layout, palette, rules, most_bytes);
    index = recede_allocate_array(allocator, 1, layout->bytes);
    if (index)
        *index = *layout;
    recede_release(allocator, layout);
    return index;
}

recede_code recede_index_new(const recede_palette *palette, const recede_rules *rules,
                             size_t most_bytes, const recede_allocator *allocator,
                             const recede_progress *progress, recede_index **out,
                             recede_error *error)
{
    *out = NULL;
    recede_code code = recede_rules_check(rules, error);
    if (code)
        return code;
    allocator = recede_allocator_or_default(allocator);
    recede_index *index =
        new_block(palette, rules, most_bytes ? most_bytes : DEFAULT_MOST_BYTES, allocator);
    code = index ? recede_index_build(index, allocator, progress) : RECEDE_NO_MEMORY;
    if (code) {
        recede_release(allocator, index);
        return recede_fail(error, code, "");
    }
    index->allocator = *allocator;
    *out = index;
    return RECEDE_OK;
}

void recede_index_free(recede_index *index)
{
    if (!index)
        return;
    recede_allocator allocator = index->allocator;
    recede_release(&allocator, index);
}

size_t recede_index_bytes(const recede_index *index)
{
    return index->bytes;
}
