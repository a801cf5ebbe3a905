/* Dabs of paint: shapes that a brush might leave. The same seed, the same
 * shape. */
#ifndef RECEDE_DRAW_DAB_H
#define RECEDE_DRAW_DAB_H

#include "draw/page.h"

#include <stdint.h>

/* One touch that fills the room, wider than high. */
void recede_dab(const recede_page *page, recede_rect room, uint32_t seed, recede_srgb colour);

/* A touch of the brush's tip. */
void recede_dab_round(const recede_page *page, recede_rect room, uint32_t seed, recede_srgb colour);

/* A patch of a chart: a square that the brush filled. */
void recede_dab_square(const recede_page *page, recede_rect room, uint32_t seed,
                       recede_srgb colour);

/* The colour got, with the colour wanted showing as a rim round it. */
void recede_dab_ringed(const recede_page *page, recede_rect room, uint32_t seed, recede_srgb got,
                       recede_srgb wanted);

/* From one colour at the left to another at the right. */
void recede_dab_graded(const recede_page *page, recede_rect room, uint32_t seed,
                       const recede_srgb *colours, size_t count);

#endif
