/* Lengths, angles and words with the numbers they stand for. */
#ifndef RECEDE_TEXT_UNITS_H
#define RECEDE_TEXT_UNITS_H

#include <stddef.h>

/* Lists end with a NULL word. */
typedef struct recede_word {
    const char *word;
    double number;
} recede_word;

/* The words of the international visibility code, each with a visibility in
 * metres inside its range. */
extern const recede_word recede_visibility_words[];
/* Angstrom exponents of the kinds of haze. */
extern const recede_word recede_haze_words[];
/* Degrees between the view and the sun. */
extern const recede_word recede_sun_side_words[];

/* The entry of a word, or NULL. */
const recede_word *recede_word_named(const recede_word *words, const char *word);
/* The entry whose number this is exactly, or NULL. */
const recede_word *recede_word_numbered(const recede_word *words, double number);

/* "400 yd", "9 km": a number and one of mm, cm, m, km, in, ft, yd, mi. Returns
 * NULL, or what is wrong with it. */
const char *recede_length_of(const char *text, double *metres);

/* "2 fists": a fist at arm's length is 10 degrees. Returns as above. */
const char *recede_fists_of(const char *text, double *degrees);

#endif
