/* Warnings as sentences that say what to do. */
#include <string.h>

#include "text/words.h"
#include "text/words_match.h"
#include "text/words_media.h"

/* What a sentence is made from. */
typedef struct {
    recede_buffer *out;
    const recede_scene *scene;
    const recede_warning *warning;
} telling;

static const char *plane_name(const telling *t, int plane)
{
    return plane < 0 ? "the sky" : t->scene->planes[plane].name;
}

static void add_number(const telling *t, int which, int decimals)
{
    recede_buffer_fixed(t->out, t->warning->number[which], decimals);
}

/* "the shadow side of far ridge", "the sky" */
static void add_side(const telling *t)
{
    int end = t->warning->kind == RECEDE_WARN_NOT_REACHED && t->warning->graded;
    if (end && t->warning->plane < 0) {
        recede_buffer_text(t->out, t->warning->base ? "the sky at the horizon"
                                                    : "the top of the sky");
        return;
    }
    if (end)
        recede_buffer_text(t->out, t->warning->base ? "the foot of " : "the crest of ");
    if (t->warning->plane >= 0)
        recede_buffer_format(t->out, "the %s side of ", t->warning->shadow ? "shadow" : "lit");
    recede_buffer_text(t->out, plane_name(t, t->warning->plane));
}

static void tell_low_sun(const telling *t)
{
    recede_buffer_text(t->out, "with the sun only ");
    recede_buffer_number(t->out, t->warning->number[0], 1);
    recede_buffer_text(t->out, " degrees high before you, sky and far planes may be planned up "
                               "to 2.7 times too bright: trust the eye above the plan there");
}

static void tell_into_sun(const telling *t)
{
    if (t->warning->number[0] < 0.5) {
        recede_buffer_text(t->out, "you look straight into the sun");
    } else {
        recede_buffer_text(t->out, "you look within ");
        add_number(t, 0, 0);
        recede_buffer_text(t->out, t->warning->number[0] < 1.5 ? " degree of the sun"
                                                               : " degrees of the sun");
    }
    recede_buffer_text(t->out, ": never look into it, and shade your eyes");
}

static void tell_merge(const telling *t)
{
    const char *one = plane_name(t, t->warning->plane), *other = plane_name(t, t->warning->other);
    int sky = t->warning->other < 0, shadows_apart = t->warning->number[2] != 0.0;
    if (shadows_apart)
        recede_buffer_text(t->out, sky ? "the lit side of " : "the lit sides of ");
    recede_buffer_format(t->out, "%s and %s differ by ", one, other);
    add_number(t, 0, 1);
    recede_buffer_text(t->out, " in value and ");
    add_number(t, 1, 1);
    recede_buffer_text(t->out, " in colour: they will merge; ");
    if (shadows_apart)
        recede_buffer_format(t->out, "let %s tell them apart",
                             sky ? "the shadow side" : "the shadow sides");
    else
        recede_buffer_text(t->out, "let the edge go, or set one of them a step lighter");
}

static void tell_not_reached(const telling *t)
{
    static const char *const remedies[] = {
        [RECEDE_REACHABLE] = "allow more pigments or parts",
        [RECEDE_TOO_DARK] = "add a darker paint",
        [RECEDE_TOO_PALE] = "allow more parts a mix, or lower the sky's value",
        [RECEDE_TOO_VIVID] = "add a purer paint of that hue",
    };
    const recede_warning *w = t->warning;
    int opaque = !recede_medium_takes_water(t->scene->medium);
    const recede_addition addition = {w->pigment, w->number[1], w->number[0], w->let_down,
                                      w->number[2]};
    add_side(t);
    recede_buffer_text(t->out, ": ");
    if (w->graded && !opaque)
        recede_buffer_format(t->out, "a graded %s of this palette ",
                             recede_trade_of(t->scene->medium)->wash);
    else
        recede_buffer_text(t->out, "the nearest mix ");
    recede_buffer_format(t->out, "%s (", recede_words_missed(w->reach));
    add_number(t, 0, 1);
    recede_buffer_text(t->out, " off): ");
    if (!recede_words_best_addition(t->out, &addition))
        recede_buffer_text(t->out, opaque && w->reach == RECEDE_TOO_DARK
                                       ? "let a strong paint down, or add a darker one"
                                       : remedies[w->reach]);
    recede_buffer_text(t->out, ", or take the mix as it is");
}

static void tell_darks(const telling *t)
{
    recede_buffer_text(t->out, "the darkest passage is seen at value ");
    add_number(t, 1, 1);
    recede_buffer_text(t->out, " and painted at ");
    add_number(t, 2, 1);
    recede_buffer_text(t->out, ", the darkest that this palette mixes; all darks were raised in "
                               "step, so keep their order and do not darken single ones");
}

static void tell_two_washes(const telling *t)
{
    const recede_trade *trade = recede_trade_of(t->scene->medium);
    add_side(t);
    recede_buffer_format(t->out, ": half of one %s and half of the other miss the middle (",
                         trade->puddle);
    add_number(t, 0, 1);
    recede_buffer_format(t->out, " off); %s", trade->middle);
}

static void tell_gone(const telling *t)
{
    recede_buffer_format(t->out, "%s has gone into the air: ", plane_name(t, t->warning->plane));
    recede_buffer_fixed(t->out, 100.0 * t->warning->number[0], 1);
    recede_buffer_text(t->out, " % of what you see there is its own light; leave it out, or hint "
                               "at it with one soft touch");
}

static void tell_own_colour(const telling *t)
{
    recede_buffer_format(t->out, "no surface can have the colour given for %s; the nearest one, ",
                         plane_name(t, t->warning->plane));
    add_number(t, 0, 1);
    recede_buffer_text(t->out, " off, was taken: give a duller or darker one");
}

static const struct {
    const char *kind;
    void (*tell)(const telling *);
} tellings[] = {
    [RECEDE_WARN_LOW_SUN] = {"low sun", tell_low_sun},
    [RECEDE_WARN_INTO_SUN] = {"into the sun", tell_into_sun},
    [RECEDE_WARN_MERGE] = {"merge", tell_merge},
    [RECEDE_WARN_NOT_REACHED] = {"not reached", tell_not_reached},
    [RECEDE_WARN_DARKS_FITTED] = {"darks fitted", tell_darks},
    [RECEDE_WARN_TWO_WASHES] = {"two washes", tell_two_washes},
    [RECEDE_WARN_GONE] = {"gone", tell_gone},
    [RECEDE_WARN_OWN_COLOUR] = {"own colour", tell_own_colour},
};

const char *recede_words_warning_kind(recede_warning_kind kind)
{
    return tellings[kind].kind;
}

void recede_words_warning(recede_buffer *out, const recede_scene *scene,
                          const recede_warning *warning)
{
    telling t = {out, scene, warning};
    tellings[warning->kind].tell(&t);
}
