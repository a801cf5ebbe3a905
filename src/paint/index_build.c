#include "paint/index_build.h"

#include "colour/memory.h"
#include "paint/leaf.h"
#include "paint/mixes.h"
#include "paint/morton.h"
#include "paint/range.h"

/* How often a caller hears of it. */
enum { MIXES_A_REPORT = 4096 };

typedef struct {
    recede_index *index;
    recede_small_mix *mixes;
    recede_leaves *leaves;
    recede_boxes *nodes;
    recede_leaf *unsorted;          /* of one class, in the order of its mixes */
    recede_place *places, *others;
    recede_extremes extremes;
    const recede_progress *progress;
    double all;
} builder;

static recede_small_mix small_of_mix(const recede_mix *mix, size_t set)
{
    recede_small_mix small = {.count = (uint8_t)mix->count, .set = (uint32_t)set};
    for (int i = 0; i < mix->count; i++) {
        small.paint[i] = (uint8_t)mix->paint[i];
        small.parts[i] = (uint8_t)mix->parts[i];
    }
    return small;
}

/* The mixes of a class and their leaves, unsorted. */
static recede_code take_mixes(builder *b, recede_mixes *walk, const recede_class *class)
{
    recede_curve curve;
    size_t stretches = (size_t)b->index->stretches.count;
    for (size_t i = 0; i < class->mixes; i++) {
        size_t mix = class->first_mix + i;
        recede_mixes_next(walk);
        b->mixes[mix] = small_of_mix(&walk->mix, walk->set);
        recede_curve_of_mix(&b->index->maker, &walk->mix, &curve);
        recede_extremes_take(&b->extremes, &walk->mix, curve.l[0]);
        recede_leaves_of_curve(&b->index->stretches, &curve, b->unsorted + i * stretches);
        if (b->progress && mix % MIXES_A_REPORT == 0 &&
            b->progress->report(b->progress->context, (double)mix / b->all))
            return RECEDE_CANCELLED;
    }
    return RECEDE_OK;
}

/* No place of a block stays empty: what is over repeats the first. */
static void fill_up(recede_boxes *boxes, int count)
{
    recede_leaf first = recede_leaf_around(boxes, 1);
    for (int lane = count; lane < RECEDE_BLOCK; lane++)
        recede_put_leaf(boxes, lane, &first);
}

static void place_leaves(builder *b, const recede_class *class)
{
    size_t stretches = (size_t)b->index->stretches.count;
    const recede_place *sorted =
        recede_sort_leaves(b->unsorted, class->leaves, b->places, b->others);
    for (size_t i = 0; i < class->leaves; i++) {
        recede_leaves *block = &b->leaves[class->first_block[0] + i / RECEDE_BLOCK];
        int lane = (int)(i % RECEDE_BLOCK);
        size_t leaf = sorted[i].leaf;
        recede_put_leaf(&block->boxes, lane, &b->unsorted[leaf]);
        block->mix[lane] = (uint32_t)(class->first_mix + leaf / stretches);
        block->stretch[lane] = (uint8_t)(leaf % stretches);
    }
    size_t last = class->blocks[0] - 1;
    fill_up(&b->leaves[class->first_block[0] + last].boxes, recede_block_count(class, 0, last));
}

static void place_nodes(builder *b, const recede_class *class)
{
    for (int level = 1; level < class->height; level++) {
        recede_boxes *blocks = b->nodes + class->first_block[level];
        for (size_t i = 0; i < class->blocks[level - 1]; i++) {
            recede_leaf node =
                recede_leaf_around(recede_block_boxes(b->index, class, level - 1, i),
                                   recede_block_count(class, level - 1, i));
            recede_put_leaf(&blocks[i / RECEDE_BLOCK], (int)(i % RECEDE_BLOCK), &node);
        }
        size_t last = class->blocks[level] - 1;
        fill_up(&blocks[last], recede_block_count(class, level, last));
    }
}

static recede_code build_classes(builder *b)
{
    recede_index *index = b->index;
    recede_mixes walk;
    recede_code code = RECEDE_OK;
    recede_mixes_start(&walk, (int)index->palette->count, &index->rules);
    recede_extremes_start(&b->extremes, index->palette);
    for (int i = 0; !code && i < index->classes; i++) {
        code = take_mixes(b, &walk, &index->class[i]);
        if (code)
            return code;
        place_leaves(b, &index->class[i]);
        place_nodes(b, &index->class[i]);
    }
    index->darkest_y = b->extremes.darkest_y;
    index->palest_y = b->extremes.palest_y;
    return code;
}

static void size_up(builder *b, size_t *largest)
{
    *largest = 0;
    for (int i = 0; i < b->index->classes; i++) {
        const recede_class *class = &b->index->class[i];
        b->all += (double)class->mixes;
        if (class->leaves > *largest)
            *largest = class->leaves;
    }
}

recede_code recede_index_build(recede_index *index, const recede_allocator *allocator,
                               const recede_progress *progress)
{
    size_t largest;
    builder b = {.index = index, .progress = progress};
    size_up(&b, &largest);
    b.mixes = (recede_small_mix *)((char *)index + index->mixes_at);
    b.leaves = (recede_leaves *)((char *)index + index->leaves_at);
    b.nodes = (recede_boxes *)((char *)index + index->nodes_at);
    b.unsorted = recede_allocate_array(allocator, largest, sizeof *b.unsorted);
    b.places = recede_allocate_array(allocator, largest, sizeof *b.places);
    b.others = recede_allocate_array(allocator, largest, sizeof *b.others);
    recede_code code =
        b.unsorted && b.places && b.others ? build_classes(&b) : RECEDE_NO_MEMORY;
    recede_release(allocator, b.unsorted);
    recede_release(allocator, b.places);
    recede_release(allocator, b.others);
    return code;
}
