/* Small words that the captions of a ladder are made of. */
#ifndef RECEDE_TEXT_WORDS_LADDER_PARTS_H
#define RECEDE_TEXT_WORDS_LADDER_PARTS_H

#include "recede.h"
#include "text/buffer.h"

/* Hues of CIELAB by their everyday names, "grey" where there is next to none. */
const char *recede_words_hue(const recede_colour *colour);

/* "a quarter": a share, 0 to 1, to the nearest of the fractions one says. */
const char *recede_words_fraction(double share);

/* What has been added from a place on now starts with a capital. */
void recede_words_capital(recede_buffer *out, size_t from);

const recede_colour *recede_ladder_target(const recede_ladder *ladder, size_t air, size_t rung,
                                          recede_ladder_row row);
size_t recede_ladder_last(const recede_ladder *ladder);
int recede_ladder_is_green(const recede_ladder *ladder);
int recede_ladder_air_is_blue(const recede_ladder *ladder);

/* "green", or "colour" for all else. */
const char *recede_ladder_noun(const recede_ladder *ladder);

/* "white", or the surface's name where it stands for something else. */
void recede_words_ladder_white(recede_buffer *out, const recede_ladder *ladder);

void recede_words_rung_distance(recede_buffer *out, const recede_ladder *ladder, size_t rung);

#endif
