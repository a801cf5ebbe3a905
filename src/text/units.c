#include "text/units.h"

#include <math.h>
#include <string.h>

#include "text/numbers.h"

/* The international visibility code: the ranges as optics handbooks list them
 * (0 dense fog below 50 m, 1 to 200 m, 2 to 500 m, 3 to 1 km, 4 to 2 km, 5 to
 * 4 km, 6 to 10 km, 7 to 20 km, 8 to 50 km, 9 exceptionally clear beyond), from
 * memory. Each word stands for about the geometric mean of its range, the
 * first of 20 m (the least visibility here) to 50 m, the last of 50 to 250 km.
 * The ranges are taken as meteorological optical range without more ado. */
const recede_word recede_visibility_words[] = {
    {"dense fog", 32.0},      {"thick fog", 100.0},  {"moderate fog", 320.0},
    {"light fog", 700.0},     {"thin fog", 1400.0},  {"haze", 2800.0},
    {"light haze", 6300.0},   {"clear", 14000.0},    {"very clear", 32000.0},
    {"exceptionally clear", 110000.0},
    {NULL, 0.0},
};

const recede_word recede_haze_words[] = {
    {"fine", 1.3}, {"ordinary", 1.0}, {"dust", 0.5}, {"mist", 0.0}, {NULL, 0.0},
};

const recede_word recede_sun_side_words[] = {
    {"into", 0.0}, {"side", 90.0}, {"behind", 180.0}, {NULL, 0.0},
};

const recede_word *recede_word_named(const recede_word *words, const char *word)
{
    for (; words->word; words++)
        if (strcmp(words->word, word) == 0)
            return words;
    return NULL;
}

const recede_word *recede_word_numbered(const recede_word *words, double number)
{
    for (; words->word; words++)
        if (words->number == number)
            return words;
    return NULL;
}

typedef struct {
    const char *name;
    double times, by; /* metres = number * times / by: a multiplication by 0.01
                         would not give 0.38 for 38 cm, a division by 100 does */
} unit;

static const unit lengths[] = {
    {"mm", 1, 1000},     {"cm", 1, 100},      {"m", 1, 1},         {"km", 1000, 1},
    {"in", 254, 10000},  {"ft", 3048, 10000}, {"yd", 9144, 10000}, {"mi", 1609344, 1000},
    {NULL, 0, 0},
};

static const unit fists[] = {{"fist", 10, 1}, {"fists", 10, 1}, {NULL, 0, 0}};

static const char *skip_blanks(const char *text)
{
    return text + strspn(text, " ");
}

/* A number and one of the units. */
static const char *measure_of(const char *text, const unit *units, const char *no_unit,
                              double *out)
{
    text = skip_blanks(text);
    size_t length = recede_number_length(text, strlen(text));
    if (length == 0)
        return "it does not start with a number";
    if (length > RECEDE_NUMBER_LENGTH)
        return "the number is too long";
    double number = recede_number_value(text, length);
    if (!isfinite(number))
        return "the number is too large";
    if (text[length] == ',')
        return "decimals follow a point, and thousands stand together";
    const char *name = skip_blanks(text + length);
    size_t name_length = strcspn(name, " ");
    if (*skip_blanks(name + name_length))
        return "there is more than a number and a unit";
    for (; units->name; units++) {
        if (strlen(units->name) == name_length && memcmp(units->name, name, name_length) == 0) {
            *out = number * units->times / units->by;
            return NULL;
        }
    }
    return no_unit;
}

const char *recede_length_of(const char *text, double *metres)
{
    return measure_of(text, lengths, "the unit is none of mm, cm, m, km, in, ft, yd and mi",
                      metres);
}

const char *recede_fists_of(const char *text, double *degrees)
{
    return measure_of(text, fists, "the unit is not fists", degrees);
}
