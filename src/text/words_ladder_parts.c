#include "text/words_ladder_parts.h"

#include <ctype.h>
#include <math.h>
#include <string.h>

#include "text/words.h"

/* A word for every number below a limit. */
typedef struct {
    double below;
    const char *word;
} step;

static const char *word_below(const step *steps, double number)
{
    while (!(number < steps->below))
        steps++;
    return steps->word;
}

/* The limits are our own. */
const char *recede_words_hue(const recede_colour *colour)
{
    static const step hues[] = {
        {30, "pink"},  {70, "orange"},  {100, "yellow"},  {200, "green"},
        {300, "blue"}, {340, "violet"}, {INFINITY, "pink"},
    };
    return colour->lch.c < 1.5 ? "grey" : word_below(hues, colour->lch.h_deg);
}

const char *recede_words_fraction(double share)
{
    static const step fractions[] = {
        {0.015, "hardly any"},     {0.035, "a fortieth"},     {0.075, "a twentieth"},
        {0.15, "a tenth"},         {0.225, "a fifth"},        {0.29, "a quarter"},
        {0.365, "a third"},        {0.45, "two fifths"},      {0.55, "half"},
        {0.635, "three fifths"},   {0.71, "two thirds"},      {0.775, "three quarters"},
        {0.85, "four fifths"},     {0.925, "nine tenths"},    {0.965, "nineteen parts in twenty"},
        {INFINITY, "nearly all"},
    };
    return word_below(fractions, share);
}

void recede_words_capital(recede_buffer *out, size_t from)
{
    if (!out->failed && from < out->size)
        out->bytes[from] = (char)toupper((unsigned char)out->bytes[from]);
}

const recede_colour *recede_ladder_target(const recede_ladder *ladder, size_t air, size_t rung,
                                          recede_ladder_row row)
{
    return &ladder->air[air].rung[rung].row[row].target;
}

size_t recede_ladder_last(const recede_ladder *ladder)
{
    return ladder->wish.rung_count - 1;
}

int recede_ladder_is_green(const recede_ladder *ladder)
{
    const recede_colour *near = recede_ladder_target(ladder, 0, 0, RECEDE_ROW_LIT);
    return near->lch.c >= 4.0 && near->lch.h_deg >= 95.0 && near->lch.h_deg < 190.0;
}

int recede_ladder_air_is_blue(const recede_ladder *ladder)
{
    return strcmp(recede_words_hue(&ladder->air[0].horizon), "blue") == 0;
}

const char *recede_ladder_noun(const recede_ladder *ladder)
{
    return recede_ladder_is_green(ladder) ? "green" : "colour";
}

void recede_words_ladder_white(recede_buffer *out, const recede_ladder *ladder)
{
    const char *name = ladder->wish.white.name;
    int white = strcmp(name, "whitewash") == 0 || strcmp(name, "snow") == 0;
    recede_buffer_text(out, white || !*name ? "white" : name);
}

void recede_words_rung_distance(recede_buffer *out, const recede_ladder *ladder, size_t rung)
{
    recede_words_distance(out, ladder->wish.distance_m[rung]);
}
