/* What a whole ladder shows, in the order in which it happens. */
#include <math.h>
#include <string.h>

#include "plan/ladder.h"
#include "text/words_ladder.h"
#include "text/words_ladder_parts.h"

/* The ends of a row in the first air. */
typedef struct {
    const recede_colour *near, *far;
} ends;

static ends ends_of(const recede_ladder *ladder, recede_ladder_row row)
{
    return (ends){recede_ladder_target(ladder, 0, 0, row),
                  recede_ladder_target(ladder, 0, recede_ladder_last(ladder), row)};
}

static int rises(ends e)
{
    return e.far->value >= e.near->value;
}

/* "by 2 km, in haze by 300 m"; 0 where it happens in neither air. */
static int add_where(recede_buffer *out, const recede_ladder *ladder, recede_stage stage,
                     const char *word)
{
    int told = 0;
    for (size_t air = 0; air < ladder->wish.air_count; air++) {
        int rung = recede_ladder_reaches(ladder, air, RECEDE_ROW_LIT, stage);
        const char *name = recede_words_ladder_air(ladder, air);
        if (rung < 0)
            continue;
        if (air > 0)
            recede_buffer_format(out, "%s%s ", told ? ", " : "",
                                 strcmp(name, "Haze") == 0 ? "in haze" : "in thicker air");
        recede_buffer_format(out, "%s ", word);
        recede_words_rung_distance(out, ladder, (size_t)rung);
        told++;
    }
    if (told > 1)
        recede_buffer_text(out, ",");
    return told;
}

static void head_lighter(recede_buffer *out, const recede_ladder *ladder)
{
    recede_buffer_text(out, rises(ends_of(ladder, RECEDE_ROW_LIT)) ? "First lighter" : "First darker");
}

static void tell_lighter(recede_buffer *out, const recede_ladder *ladder)
{
    ends lit = ends_of(ladder, RECEDE_ROW_LIT);
    recede_buffer_format(out, "The lit %s goes from value ", recede_ladder_noun(ladder));
    recede_buffer_fixed(out, lit.near->value, 1);
    recede_buffer_text(out, " at ");
    recede_words_rung_distance(out, ladder, 0);
    recede_buffer_text(out, " to ");
    recede_buffer_fixed(out, lit.far->value, 1);
    recede_buffer_text(out, " at ");
    recede_words_rung_distance(out, ladder, recede_ladder_last(ladder));
    recede_buffer_text(out, ". ");
    size_t start = out->size;
    if (add_where(out, ladder, RECEDE_STAGE_MOVED, "at")) {
        recede_buffer_text(out, " the eye first sees it.");
        recede_words_capital(out, start);
    } else {
        recede_buffer_text(out, "So small a step the eye does not see.");
    }
}

static void head_greyer(recede_buffer *out, const recede_ladder *ladder)
{
    (void)ladder;
    recede_buffer_text(out, "Then greyer");
}

static void tell_greyer(recede_buffer *out, const recede_ladder *ladder)
{
    size_t start = out->size;
    int blue_on_green = recede_ladder_is_green(ladder) && recede_ladder_air_is_blue(ladder);
    if (add_where(out, ladder, RECEDE_STAGE_GREYER, "by")) {
        recede_words_capital(out, start);
        recede_buffer_text(out, " a third or more of its C* of ");
        recede_buffer_fixed(out, ends_of(ladder, RECEDE_ROW_LIT).near->lch.c, 0);
        recede_buffer_text(out, " (CIELAB chroma) has gone");
    } else {
        recede_buffer_text(out, "Here two thirds of its C* (CIELAB chroma) outlast the ladder");
    }
    recede_buffer_text(out, blue_on_green ? ": the air's blue and the leaves' yellow put each other out."
                                          : ".");
}

static void head_turned(recede_buffer *out, const recede_ladder *ladder)
{
    recede_buffer_text(out, recede_ladder_air_is_blue(ladder) ? "Last bluer"
                                                              : "Last the air's own colour");
}

/* Whether it is seen to turn in any air, rather than just to go. */
static int turns(const recede_ladder *ladder)
{
    for (size_t air = 0; air < ladder->wish.air_count; air++)
        for (size_t i = 0; i < ladder->wish.rung_count; i++)
            if (recede_ladder_stage(ladder, air, i, RECEDE_ROW_LIT) == RECEDE_STAGE_TURNED)
                return 1;
    return 0;
}

static void tell_turned(recede_buffer *out, const recede_ladder *ladder)
{
    size_t start = out->size;
    const char *hue = recede_words_hue(&ladder->air[0].horizon);
    const char *noun = recede_ladder_noun(ladder);
    if (add_where(out, ladder, RECEDE_STAGE_TURNED, "from")) {
        recede_words_capital(out, start);
        if (turns(ladder))
            recede_buffer_format(out, " the air's %s outweighs what is left of the %s", hue, noun);
        else
            recede_buffer_format(out, " nothing but the air's %s is left", hue);
    } else {
        recede_buffer_format(out, "Nowhere on this ladder does the air's %s outweigh the %s", hue, noun);
    }
    recede_buffer_text(out, ". It all ends in the colour of the horizon.");
}

static void head_shadow(recede_buffer *out, const recede_ladder *ladder)
{
    (void)ladder;
    recede_buffer_text(out, "The shadow goes first");
}

/* The rung at which the two sides differ most in how much of them is air. */
static size_t widest_rung(const recede_ladder *ladder)
{
    size_t widest = 0;
    double most = -INFINITY;
    for (size_t i = 0; i < ladder->wish.rung_count; i++) {
        const recede_rung *rung = &ladder->air[0].rung[i];
        double apart = rung->row[RECEDE_ROW_LIT].own_share - rung->row[RECEDE_ROW_SHADOW].own_share;
        if (apart > most) {
            most = apart;
            widest = i;
        }
    }
    return widest;
}

static void add_air_percent(recede_buffer *out, const recede_wash *wash)
{
    recede_buffer_fixed(out, 100.0 * (1.0 - wash->own_share), 0);
    recede_buffer_text(out, " %");
}

static void tell_shadow(recede_buffer *out, const recede_ladder *ladder)
{
    size_t at = widest_rung(ladder);
    const recede_rung *rung = &ladder->air[0].rung[at];
    recede_buffer_text(out, "At ");
    recede_words_rung_distance(out, ladder, at);
    recede_buffer_text(out, " air is ");
    add_air_percent(out, &rung->row[RECEDE_ROW_SHADOW]);
    recede_buffer_text(out, " of the shadow's light and ");
    add_air_percent(out, &rung->row[RECEDE_ROW_LIT]);
    recede_buffer_text(out, " of the lit side's: the darker a thing, the less it has to set against "
                            "the air.");
}

/* From yellow towards orange, as far as it is seen through. */
static int warms(ends white)
{
    return white.far->lab.a > white.near->lab.a + 0.3
           && white.far->lch.h_deg < white.near->lch.h_deg - 2.0 && white.far->lch.h_deg > 20.0
           && white.near->lch.h_deg < 110.0;
}

static void head_white(recede_buffer *out, const recede_ladder *ladder)
{
    ends white = ends_of(ladder, RECEDE_ROW_WHITE);
    recede_buffer_text(out, "The ");
    recede_words_ladder_white(out, ladder);
    recede_buffer_text(out, warms(white) ? " grows warmer" : rises(white) ? " rises" : " sinks");
}

static void tell_white(recede_buffer *out, const recede_ladder *ladder)
{
    ends white = ends_of(ladder, RECEDE_ROW_WHITE);
    recede_buffer_format(out, "It %s from value ", rises(white) ? "rises" : "sinks");
    recede_buffer_fixed(out, white.near->value, 1);
    recede_buffer_text(out, " to ");
    recede_buffer_fixed(out, white.far->value, 1);
    if (warms(white)) {
        recede_buffer_text(out, "; its hue turns from ");
        recede_buffer_fixed(out, white.near->lch.h_deg, 0);
        recede_buffer_text(out, " to ");
        recede_buffer_fixed(out, white.far->lch.h_deg, 0);
        recede_buffer_text(out, ", towards orange: air takes blue away, and adds little to so much "
                                "light.");
    } else {
        recede_buffer_text(out, ", towards the horizon's ");
        recede_buffer_fixed(out, ladder->air[0].horizon.value, 1);
        recede_buffer_text(out, ".");
    }
}

static const struct {
    void (*head)(recede_buffer *, const recede_ladder *);
    void (*tell)(recede_buffer *, const recede_ladder *);
} lessons[RECEDE_LESSONS] = {
    {head_lighter, tell_lighter}, {head_greyer, tell_greyer}, {head_turned, tell_turned},
    {head_shadow, tell_shadow},   {head_white, tell_white},
};

void recede_words_lesson_heading(recede_buffer *out, const recede_ladder *ladder, size_t lesson)
{
    lessons[lesson].head(out, ladder);
}

void recede_words_lesson(recede_buffer *out, const recede_ladder *ladder, size_t lesson)
{
    lessons[lesson].tell(out, ladder);
}

/* A tenth is what is printed. */
static int is_darkened(const recede_ladder *ladder)
{
    double darkest = INFINITY;
    for (size_t air = 0; air < ladder->wish.air_count; air++)
        darkest = fmin(darkest, ladder->air[air].horizon.value);
    return darkest < ladder->scene->sky_value - 0.1;
}

void recede_words_ladder_scale(recede_buffer *out, const recede_ladder *ladder)
{
    if (!is_darkened(ladder))
        return;
    recede_buffer_text(out, "The paper must hold the sunlit ");
    recede_words_ladder_white(out, ladder);
    recede_buffer_text(out, " too, so all values are lower here than in a study with nothing so "
                            "light in it: the horizon has value ");
    recede_buffer_fixed(out, ladder->air[0].horizon.value, 1);
    if (ladder->wish.air_count > 1 &&
        fabs(ladder->air[1].horizon.value - ladder->air[0].horizon.value) >= 0.1) {
        recede_buffer_text(out, ", in the thicker air ");
        recede_buffer_fixed(out, ladder->air[1].horizon.value, 1);
    }
    recede_buffer_text(out, ", not ");
    recede_buffer_fixed(out, ladder->scene->sky_value, 1);
    recede_buffer_text(out, ".");
}

void recede_words_why(recede_buffer *out, const recede_ladder *ladder)
{
    recede_buffer_text(out, "Air does two things at once. It lets less and less of a far thing's own "
                            "light through, and it puts light of its own before it");
    recede_buffer_text(out, recede_ladder_air_is_blue(ladder)
        ? ", bluer than the sun's because air scatters blue most. So a far colour is what is left of "
          "the near one with a veil of pale blue laid over it. "
        : ", the light of the sky at the horizon. So a far colour is what is left of the near one "
          "with a veil of that light laid over it. ");
    recede_buffer_text(out, "The veil is the same before a dark thing and a light one: it lifts the dark "
                            "one far and the light one hardly at all.");
    if (is_darkened(ladder))
        recede_buffer_text(out, " ");
    recede_words_ladder_scale(out, ladder);
}
