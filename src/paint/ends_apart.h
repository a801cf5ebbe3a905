/*
 * Graded washes of opaque media. Watercolour's two puddles run into each other and so
 * share their paints (paint/graded.h); opaque mixes are brushed together on the picture,
 * by way of a middle where need be, and each end takes the mix that suits it best.
 */
#ifndef RECEDE_PAINT_ENDS_APART_H
#define RECEDE_PAINT_ENDS_APART_H

#include "recede.h"

/* 1 where a palette is opaque and some of the washes are graded. */
int recede_ends_are_apart(const recede_palette *palette, const recede_wash_target *targets,
                          size_t count);

/* A search for flat washes. */
typedef recede_code recede_ends_search(const void *context, const recede_wash_target *flat,
                                       size_t count, recede_wash_recipe *out);

/* Recipes for washes flat and graded by way of flat ones. RECEDE_NO_MEMORY, and what
 * the search returns. */
recede_code recede_search_ends_apart(const recede_palette *palette,
                                     const recede_wash_target *targets, size_t count,
                                     recede_wash_recipe *out, const recede_allocator *allocator,
                                     recede_ends_search *search, const void *context);

#endif
