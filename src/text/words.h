/* The words that plans, tables and sheets share. All are added to a buffer or
 * come back as constant text; colours and numbers are those of the plan. */
#ifndef RECEDE_TEXT_WORDS_H
#define RECEDE_TEXT_WORDS_H

#include "recede.h"
#include "text/buffer.h"

/* A CIEDE2000 difference in words, cut as it is printed, to a tenth: "no eye will see
 * it" up to "out of reach of this palette". The scale is our own. */
const char *recede_words_difference(double delta_e);

/* 1 where the medium is thinned with water and the water is part of a recipe. */
int recede_medium_takes_water(recede_medium medium);

/* Consistency of a watercolour puddle with so much water to one of paint:
 * "butter", "cream", "milk", "tea", "tinted water". */
const char *recede_words_consistency(double water);

/* "4 water to 1 paint (20 drops to a pea)". A pea of paint is taken as 0.25
 * ml and a drop as 0.05 ml; beyond 200 to 1 nothing is measured: "(hardly tinted: touch
 * the brush tip to the paint)". "no water" where there is none. */
void recede_words_water(recede_buffer *out, double water);

/* "3 parts hansa yellow + 1 part ultramarine blue"; "hansa yellow alone";
 * "bare paper" (opaque media: "bare ground"). */
void recede_words_parts(recede_buffer *out, const recede_palette *palette, const recede_mix *mix);

/* The parts with, in watercolour, consistency and water:
 * "3 parts ... + 1 part ...; milk: 4 water to 1 paint (20 drops to a pea)". */
void recede_words_recipe(recede_buffer *out, const recede_palette *palette,
                         const recede_mix *mix);

/* What a quarter more or less water (opaque: white) does, in words. */
void recede_words_slip(recede_buffer *out, recede_medium medium, double slip);

/* 1 where a mix has water or white to slip with. */
int recede_mix_may_slip(const recede_palette *palette, const recede_mix *mix);

const char *recede_words_edge(recede_edge edge);     /* "hard", "soft", "lost" */
const char *recede_words_missed(recede_reach reach); /* "comes out too light", ... of a mix */
const char *recede_words_reach(recede_reach reach);  /* "reachable", "too dark", ... */
const char *recede_words_ground(recede_ground ground); /* "paper", "lit" */
const char *recede_words_medium(recede_medium medium); /* "watercolour", ... */
const char *recede_words_sky(recede_sky_kind kind);    /* "clear", "overcast", "painted" */

/* "fine", "ordinary", "dust", "mist", or NULL where the exponent is no word's. */
const char *recede_words_haze(double angstrom);

/* "30 m", "366 m", "1.2 km", "25 km". */
void recede_words_distance(recede_buffer *out, double metres);

/* Air and light in one line: "20 km of ordinary haze; clear sky, sun 38 degrees
 * high, 110 degrees from the view". */
void recede_words_air_and_light(recede_buffer *out, const recede_scene *scene);

/* A warning as a sentence that says what to do. */
void recede_words_warning(recede_buffer *out, const recede_scene *scene,
                          const recede_warning *warning);

/* "merge", "low sun", ...: the kind as plans write it. */
const char *recede_words_warning_kind(recede_warning_kind kind);

#endif
