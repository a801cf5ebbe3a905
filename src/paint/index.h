/*
 * The index of a palette: every mix the rules allow, with all its water, as small
 * boxes of Lab in trees, so that a search opens only the few near its target.
 *
 * One flat block of memory: this struct, then the mixes, then the leaves, then
 * the nodes, by their offsets. Mixes stand in the order of paint/mixes.h, which
 * is that of the rule; each number of pigments and parts is a class of its own,
 * with a tree of its own. A leaf is a stretch of one mix's water levels. The
 * leaves of a class are sorted along a space-filling curve and stand in blocks of
 * eight; a node is the box around such a block, and nodes stand in blocks of
 * eight likewise, up to the one at the root.
 */
#ifndef RECEDE_PAINT_INDEX_H
#define RECEDE_PAINT_INDEX_H

#include <stdint.h>

#include "paint/box.h"
#include "paint/curve.h"
#include "paint/palette.h"

enum {
    RECEDE_MOST_HEIGHT = 11,  /* 8^11 leaves */
    RECEDE_MOST_CLASSES = 48,
    RECEDE_MOST_STRETCHES = 84
};

typedef struct recede_leaves {
    recede_boxes boxes;
    uint32_t mix[RECEDE_BLOCK];
    uint8_t stretch[RECEDE_BLOCK];
} recede_leaves;

typedef struct recede_small_mix {
    uint8_t count, paint[RECEDE_MOST_IN_MIX], parts[RECEDE_MOST_IN_MIX];
    uint32_t set; /* its paints' number, as paint/mixes.h counts */
} recede_small_mix;

/* Blocks of level 0 are leaves; those above are nodes. */
typedef struct recede_class {
    int pigments, parts;
    size_t first_mix, mixes, leaves;
    int height;                              /* levels of blocks */
    size_t first_block[RECEDE_MOST_HEIGHT];
    size_t blocks[RECEDE_MOST_HEIGHT];
} recede_class;

/* The water levels in stretches over which colours change about as much. */
typedef struct recede_stretches {
    int count;
    uint8_t first[RECEDE_MOST_STRETCHES], levels[RECEDE_MOST_STRETCHES];
} recede_stretches;

struct recede_index {
    recede_allocator allocator;
    const recede_palette *palette;
    recede_rules rules;
    int classes;        /* held: those of the fewest pigments, as many as may be */
    recede_class class[RECEDE_MOST_CLASSES];
    recede_stretches stretches;
    recede_curve_maker maker;
    double darkest_y, palest_y; /* of the mixes held */
    size_t bytes, mixes_at, leaves_at, nodes_at; /* offsets into the block */
};

const recede_small_mix *recede_index_mixes(const recede_index *index);
const recede_leaves *recede_index_leaves(const recede_index *index);
const recede_boxes *recede_index_nodes(const recede_index *index);

/* The most pigments in the mixes held: fewer than the rules allow where the rest
 * would have taken too much memory. 1 in is_whole where all mixes are held. */
int recede_index_pigments(const recede_index *index);
int recede_index_is_whole(const recede_index *index);

/* As recede_palette_range of its palette and rules. */
void recede_index_range(const recede_index *index, double *darkest_y, double *palest_y);

/* The boxes of a block, and how many of its eight places are taken. */
const recede_boxes *recede_block_boxes(const recede_index *index, const recede_class *class,
                                       int level, size_t block);
int recede_block_count(const recede_class *class, int level, size_t block);

recede_mix recede_mix_of_small(const recede_small_mix *small);

#endif
