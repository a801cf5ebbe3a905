/* What a painter calls things in a medium: the trade's words (common practice, no
 * source). Opaque paint has mixes on places of the palette and passages on a ground;
 * watercolour puddles in wells and washes on paper. */
#ifndef RECEDE_TEXT_WORDS_MEDIA_H
#define RECEDE_TEXT_WORDS_MEDIA_H

#include "recede.h"

typedef struct recede_trade {
    const char *wash, *washes;    /* "wash", "passage" */
    const char *puddle, *puddles; /* "puddle", "mix" */
    const char *well, *wells;     /* where it is mixed: "well", "place" */
    const char *at_well;          /* "in well", "on place" */
    const char *to_wash;          /* "to wash out", "to wipe" */
    const char *washed;           /* "washed out", "wiped clean" */
    const char *to_pour[2];       /* one and several: "addition of paint or water" */
    const char *film;             /* "wet wash", "coat" */
    const char *bare;             /* "bare paper", "bare ground" */
    const char *middle;           /* of a graded wash that half and half misses: "lay two
                                   * washes and let the first dry between" */
    const char *middle_short;     /* the same for a table: "two washes, dry between" */
    const char *middle_mix;       /* and for one mix of the key */
    const char *graded[2];        /* how a graded side is painted: in one, and where that
                                   * misses the middle */
    const char *scrap;            /* "Try each mix on a scrap of the same paper and judge
                                   * it dry.", without its full stop */
    const char *box;              /* the empty box of a sheet: "judge dry" */
    const char *box_legend;       /* a sentence on what it is for */
    const char *beside;           /* "paint your own beside it, and judge it dry" */
    const char *judge;            /* when, a sentence: "Judge it dry." */
    const char *caution;          /* that the medium itself calls for, a sentence or "" */
    const char *layers;           /* what goes first and over what; watercolour's depends
                                   * on the plan: "" */
} recede_trade;

const recede_trade *recede_trade_of(recede_medium medium);

#endif
