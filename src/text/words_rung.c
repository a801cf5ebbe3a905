/* The caption of one rung. */
#include <math.h>
#include <string.h>

#include "plan/ladder.h"
#include "text/words_ladder.h"
#include "text/words_ladder_parts.h"

/* What a caption is made from. */
typedef struct {
    recede_buffer *out;
    const recede_ladder *ladder;
    size_t air, rung;
} caption;

static const recede_colour *near_of(const caption *c, recede_ladder_row row)
{
    return recede_ladder_target(c->ladder, c->air, 0, row);
}

static const recede_wash *wash_of(const caption *c, recede_ladder_row row)
{
    return &c->ladder->air[c->air].rung[c->rung].row[row];
}

static recede_stage stage_of(const caption *c, recede_ladder_row row)
{
    return recede_ladder_stage(c->ladder, c->air, c->rung, row);
}

static void add_fixed(const caption *c, double number, int decimals, const char *after)
{
    recede_buffer_fixed(c->out, number, decimals);
    recede_buffer_text(c->out, after);
}

static void add_at(const caption *c)
{
    recede_buffer_text(c->out, "At ");
    recede_words_rung_distance(c->out, c->ladder, c->rung);
}

/* "has lost 15 of its C* of 31", "has gone over to the air's blue, C* 9": the first rung
 * says what C* is. */
static void add_chroma(const caption *c, const recede_colour *near, const recede_colour *now,
                       recede_stage stage)
{
    double lost = near->lch.c - now->lch.c;
    if (stage == RECEDE_STAGE_TURNED) {
        recede_buffer_format(c->out, "has gone over to the air's %s, C* ",
                             recede_words_hue(&c->ladder->air[c->air].horizon));
        add_fixed(c, now->lch.c, 0, ", and ");
    } else if (lost >= 0.5) {
        recede_buffer_text(c->out, "has lost ");
        add_fixed(c, lost, 0, " of its C* of ");
        add_fixed(c, near->lch.c, 0, " and ");
    }
}

static double to_a_tenth(double value)
{
    return floor(10.0 * value + 0.5) / 10.0;
}

/* "rises from value 4.5 to 4.9" */
static void add_value(const caption *c, const recede_colour *near, const recede_colour *now)
{
    double step = to_a_tenth(now->value) - to_a_tenth(near->value);
    if (step == 0.0) {
        recede_buffer_text(c->out, "keeps its value of ");
        add_fixed(c, near->value, 1, "");
        return;
    }
    recede_buffer_text(c->out, step > 0.0 ? "rises from value " : "sinks from value ");
    add_fixed(c, near->value, 1, " to ");
    add_fixed(c, now->value, 1, "");
}

/* What the eye makes of it. */
static void add_verdict(const caption *c, const recede_colour *near, const recede_colour *now,
                        recede_stage stage)
{
    int lighter = now->value >= near->value;
    if (stage == RECEDE_STAGE_MOVED)
        recede_buffer_text(c->out, lighter ? ": it looks lighter" : ": it looks darker");
    if (stage == RECEDE_STAGE_GREYER)
        recede_buffer_text(c->out, lighter ? ": lighter and greyer" : ": darker and greyer");
}

static void add_course(const caption *c, recede_ladder_row row)
{
    const recede_colour *near = near_of(c, row), *now = &wash_of(c, row)->target;
    recede_stage stage = stage_of(c, row);
    add_chroma(c, near, now, stage);
    add_value(c, near, now);
    add_verdict(c, near, now, stage);
}

static void tell_first(const caption *c)
{
    const recede_colour *lit = near_of(c, RECEDE_ROW_LIT), *shadow = near_of(c, RECEDE_ROW_SHADOW);
    add_at(c);
    double air = 1.0 - wash_of(c, RECEDE_ROW_LIT)->own_share;
    if (air < 0.1)
        recede_buffer_text(c->out, " you see the colour itself: ");
    else
        recede_buffer_format(c->out, " %s of what you see is air already: ",
                             recede_words_fraction(air));
    recede_buffer_text(c->out, "the lit side has value ");
    add_fixed(c, lit->value, 1, " and C* ");
    add_fixed(c, lit->lch.c, 0, " (CIELAB chroma), the shadow side value ");
    add_fixed(c, shadow->value, 1, " and C* ");
    add_fixed(c, shadow->lch.c, 0, ". The ");
    recede_words_ladder_white(c->out, c->ladder);
    recede_buffer_text(c->out, " has value ");
    add_fixed(c, near_of(c, RECEDE_ROW_WHITE)->value, 1, ".");
}

static void tell_gone(const caption *c)
{
    add_at(c);
    recede_buffer_format(c->out, " the %s has gone. What you see is air: value ",
                         recede_ladder_noun(c->ladder));
    add_fixed(c, wash_of(c, RECEDE_ROW_LIT)->target.value, 1, ", where the horizon has ");
    add_fixed(c, c->ladder->air[c->air].horizon.value, 1, ".");
}

static void tell_lit(const caption *c)
{
    add_at(c);
    recede_buffer_format(c->out, " %s of what you see is air: the %s ",
                         recede_words_fraction(1.0 - wash_of(c, RECEDE_ROW_LIT)->own_share),
                         recede_ladder_noun(c->ladder));
    add_course(c, RECEDE_ROW_LIT);
}

/* Told where it has come further than the lit side. */
static void tell_shadow(const caption *c)
{
    recede_stage lit = stage_of(c, RECEDE_ROW_LIT), shadow = stage_of(c, RECEDE_ROW_SHADOW);
    if (shadow == RECEDE_STAGE_OWN && lit == RECEDE_STAGE_OWN)
        recede_buffer_text(c->out, ", and the shadow side is as it was");
    recede_buffer_text(c->out, ".");
    if (shadow <= lit)
        return;
    if (shadow == RECEDE_STAGE_GONE) {
        recede_buffer_text(c->out, " The shadow side has gone.");
        return;
    }
    recede_buffer_format(c->out, " The shadow side is ahead: %s of it is air; it ",
                         recede_words_fraction(1.0 - wash_of(c, RECEDE_ROW_SHADOW)->own_share));
    add_course(c, RECEDE_ROW_SHADOW);
    recede_buffer_text(c->out, ".");
}

/* Told once its step is seen: a tenth in value. */
static void tell_white(const caption *c)
{
    const recede_colour *near = near_of(c, RECEDE_ROW_WHITE);
    const recede_colour *now = &wash_of(c, RECEDE_ROW_WHITE)->target;
    double turned_deg = near->lch.h_deg - now->lch.h_deg;
    int gone = stage_of(c, RECEDE_ROW_WHITE) == RECEDE_STAGE_GONE;
    if (!gone && fabs(now->value - near->value) < 0.1)
        return;
    recede_buffer_text(c->out, " The ");
    recede_words_ladder_white(c->out, c->ladder);
    if (gone) {
        recede_buffer_text(c->out, " has gone too.");
        return;
    }
    recede_buffer_text(c->out, now->value < near->value ? " sinks to " : " rises to ");
    add_fixed(c, now->value, 1, "");
    if (turned_deg > 2.0 && turned_deg < 80.0 && now->lch.c >= 1.5)
        recede_buffer_text(c->out, " and is warmer");
    recede_buffer_text(c->out, ".");
}

void recede_words_rung(recede_buffer *out, const recede_ladder *ladder, size_t air, size_t rung)
{
    const caption c = {out, ladder, air, rung};
    if (rung == 0) {
        tell_first(&c);
        return;
    }
    if (stage_of(&c, RECEDE_ROW_LIT) == RECEDE_STAGE_GONE) {
        tell_gone(&c);
    } else {
        tell_lit(&c);
        tell_shadow(&c);
    }
    tell_white(&c);
}
