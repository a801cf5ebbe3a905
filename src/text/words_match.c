#include "text/words_match.h"

#include <math.h>
#include <string.h>

#include "text/words.h"
#include "text/words_let_down.h"

static const struct { const char *words, *key; } kinds[RECEDE_MATCH_KINDS] = {
    [RECEDE_MATCH_CLOSEST] = {"closest", "closest"},
    [RECEDE_MATCH_SIMPLEST] = {"simplest", "simplest"},
    [RECEDE_MATCH_FORGIVING] = {"most forgiving", "forgiving"},
    [RECEDE_MATCH_LAMP] = {"steadiest in lamp light", "lamp"},
};

const char *recede_words_match_kind(recede_match_kind kind)
{
    return kinds[kind].words;
}

const char *recede_words_match_key(recede_match_kind kind)
{
    return kinds[kind].key;
}

static int byte_of(double component)
{
    return (int)floor(component * 255.0 + 0.5);
}

static void add_named(recede_buffer *out, const char *name, double number)
{
    recede_buffer_format(out, ", %s ", name);
    recede_buffer_fixed(out, number, 1);
}

void recede_words_colour(recede_buffer *out, const recede_colour *colour)
{
    const recede_srgb *srgb = &colour->srgb;
    recede_buffer_format(out, "#%02x%02x%02x: L* ", (unsigned)byte_of(srgb->r),
                         (unsigned)byte_of(srgb->g), (unsigned)byte_of(srgb->b));
    recede_buffer_fixed(out, colour->lab.l, 1);
    add_named(out, "a*", colour->lab.a);
    add_named(out, "b*", colour->lab.b);
    add_named(out, "value", colour->value);
}

void recede_words_off(recede_buffer *out, double delta_e)
{
    recede_buffer_fixed(out, delta_e, 1);
    recede_buffer_format(out, " off, %s",
                         delta_e < 8.0 ? recede_words_difference(delta_e) : "plainly visible");
}

/* What a caution is about stands before its colon: "cadmium". */
static void add_reservations(recede_buffer *out, const recede_pigment *pigment)
{
    int fugitive = strncmp(pigment->permanence, "fugitive", strlen("fugitive")) == 0;
    int about = (int)strcspn(pigment->caution, ":");
    if (!fugitive && !about)
        return;
    recede_buffer_text(out, " (");
    if (fugitive)
        recede_buffer_text(out, about ? "it fades; " : "it fades");
    if (about)
        recede_buffer_format(out, "%.*s: mind its label", about, pigment->caution);
    recede_buffer_text(out, ")");
}

void recede_words_addition(recede_buffer *out, const recede_pigment *pigment, double delta_e)
{
    recede_buffer_text(out, pigment->name);
    add_reservations(out, pigment);
    recede_buffer_text(out, " would bring it within ");
    recede_buffer_fixed(out, ceil(10.0 * delta_e) / 10.0, 1);
}

int recede_words_best_addition(recede_buffer *out, const recede_addition *addition)
{
    int pigment = addition->pigment &&
                  recede_addition_helps(addition->without, addition->delta_e);
    int let_down = addition->let_down &&
                   recede_addition_helps(addition->without, addition->let_down_delta_e) &&
                   (!pigment || addition->let_down_delta_e < addition->delta_e + 1.0);
    if (let_down)
        recede_words_let_down_advice(out, addition->let_down, addition->let_down_delta_e);
    else if (pigment)
        recede_words_addition(out, addition->pigment, addition->delta_e);
    return let_down || pigment;
}

int recede_addition_helps(double delta_e_without, double delta_e_with)
{
    return delta_e_without - delta_e_with >= 0.5 &&
           (delta_e_with <= 5 || delta_e_with <= 0.6 * delta_e_without);
}
