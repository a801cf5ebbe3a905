/* What another light changes, in plain words. */
#ifndef RECEDE_TEXT_WORDS_SKIES_H
#define RECEDE_TEXT_WORDS_SKIES_H

#include "recede.h"
#include "text/buffer.h"

/* "visibility 5 km; sun 15 degrees high, 80 degrees to the side". */
void recede_words_light_line(recede_buffer *out, const recede_air *air, const recede_sky *sky);

/* The name of a plan of skies: of its light, or "as planned" for plan 0. */
const char *recede_words_sky_name(const recede_skies *skies, size_t plan);

/* "cobalt blue goes, burnt umber comes in; a third more water; a step and a half
 * lighter", or "as before". */
void recede_words_change(recede_buffer *out, const recede_palette *palette,
                         const recede_wash *from, const recede_wash *to);

/* "a step and a half lighter", "a touch darker", "value as before". */
void recede_words_value_step(recede_buffer *out, double step);

/* "a third more water", "half the water"; "" where hardly any changes. */
void recede_words_water_ratio(recede_buffer *out, double ratio);

#endif
