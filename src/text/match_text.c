/* Recipes for one colour as lines to read. */
#include "text/match_write.h"

#include <math.h>
#include <string.h>

#include "text/columns.h"
#include "text/words.h"
#include "text/words_chart.h"
#include "text/words_let_down.h"
#include "text/words_match.h"
#include "text/words_wet.h"

enum { WIDTH = 100, DAB_WIDTH = 10, DAB_ROWS = 2 };

typedef struct {
    const recede_match_told *told;
    int dabs;
    recede_buffer *out;
} telling;

/* Wraps what was put together; frees it. */
static void put(const telling *t, recede_buffer *line, size_t indent)
{
    recede_columns_text(t->out, recede_buffer_string(line), WIDTH, indent);
    t->out->failed |= line->failed;
    recede_buffer_free(line);
}

static void start(const telling *t, recede_buffer *line)
{
    recede_buffer_start(line, t->out->allocator);
}

/* ---------------------------------------------------------------- dabs -- */

static unsigned byte_of(double component)
{
    return (unsigned)floor(component * 255.0 + 0.5);
}

static void put_block(const telling *t, const recede_colour *colour)
{
    recede_buffer_format(t->out, "\033[48;2;%u;%u;%um", byte_of(colour->srgb.r),
                         byte_of(colour->srgb.g), byte_of(colour->srgb.b));
    recede_buffer_repeat(t->out, ' ', DAB_WIDTH);
}

/* What is wanted beside what is mixed, by day and by lamp light. */
static void put_dabs(const telling *t, const recede_match_recipe *match)
{
    for (int row = 0; t->dabs && row < DAB_ROWS; row++) {
        recede_buffer_text(t->out, "  ");
        put_block(t, &t->told->target);
        put_block(t, &match->recipe.colour);
        recede_buffer_text(t->out, "\033[0m    ");
        put_block(t, &t->told->matches->by_lamp);
        put_block(t, &match->by_lamp);
        recede_buffer_text(t->out, "\033[0m\n");
    }
}

/* ------------------------------------------------------------- recipes -- */

static int same_mix(const recede_mix *one, const recede_mix *other)
{
    int same = one->count == other->count && !(one->water < other->water) &&
               !(one->water > other->water);
    for (int i = 0; same && i < one->count; i++)
        same = one->paint[i] == other->paint[i] && one->parts[i] == other->parts[i];
    return same;
}

static const recede_mix *mix_of(const telling *t, int kind)
{
    return &t->told->matches->of[kind].recipe.mix;
}

/* A mix that is best in more than one way is told once, where it first stands. */
static int told_before(const telling *t, int kind)
{
    for (int earlier = 0; earlier < kind; earlier++)
        if (same_mix(mix_of(t, earlier), mix_of(t, kind)))
            return 1;
    return 0;
}

/* "The closest, simplest and steadiest in lamp light:". */
static void put_kinds(const telling *t, int kind)
{
    int same[RECEDE_MATCH_KINDS], count = 0;
    recede_buffer line;
    for (int later = kind; later < RECEDE_MATCH_KINDS; later++)
        if (same_mix(mix_of(t, later), mix_of(t, kind)))
            same[count++] = later;
    start(t, &line);
    recede_buffer_text(&line, "The ");
    for (int i = 0; i < count; i++)
        recede_buffer_format(&line, "%s%s", i == 0 ? "" : i + 1 < count ? ", " : " and ",
                             recede_words_match_kind((recede_match_kind)same[i]));
    recede_buffer_text(&line, ":");
    put(t, &line, 0);
}

static void put_beforehand(const telling *t, const recede_mix *mix)
{
    recede_buffer line;
    start(t, &line);
    recede_buffer_text(&line, "  ");
    recede_words_beforehand(&line, t->told->palette, mix);
    if (line.size > 2)
        put(t, &line, 4);
    t->out->failed |= line.failed;
    recede_buffer_free(&line);
}

static void put_wet(const telling *t, const recede_mix *mix)
{
    const char *words = recede_words_wet(recede_wet_look_of(t->told->palette, mix, NULL).darker);
    recede_buffer line;
    start(t, &line);
    if (*words) {
        recede_buffer_format(&line, "  %s", words);
        put(t, &line, 4);
    }
}

static void put_recipe(const telling *t, const recede_match_recipe *match)
{
    const recede_recipe *recipe = &match->recipe;
    recede_medium medium = recede_palette_medium(t->told->palette);
    recede_buffer line;
    start(t, &line);
    recede_buffer_text(&line, "  ");
    recede_words_recipe(&line, t->told->palette, &recipe->mix);
    put(t, &line, 4);
    put_beforehand(t, &recipe->mix);
    put_wet(t, &recipe->mix);
    start(t, &line);
    recede_buffer_text(&line, "  ");
    recede_words_off(&line, recipe->delta_e);
    recede_buffer_text(&line, "; in lamp light ");
    recede_words_off(&line, match->lamp_delta_e);
    put(t, &line, 4);
    if (!recede_mix_may_slip(t->told->palette, &recipe->mix))
        return;
    start(t, &line);
    recede_buffer_text(&line, "  ");
    recede_words_slip(&line, medium, recipe->slip);
    put(t, &line, 4);
}

/* ---------------------------------------------------------------- rest -- */

static void put_head(const telling *t)
{
    recede_buffer line;
    start(t, &line);
    recede_words_colour(&line, &t->told->target);
    put(t, &line, 2);
    start(t, &line);
    recede_words_chart_paints(&line, t->told->palette, t->told->palette_name);
    recede_buffer_text(&line, ", ");
    recede_words_rules(&line, t->told->rules);
    put(t, &line, 2);
}

static void put_reach(const telling *t)
{
    const recede_recipe *closest = &t->told->matches->of[RECEDE_MATCH_CLOSEST].recipe;
    const recede_addition *addition = t->told->addition;
    recede_buffer line, advice;
    if (closest->reach == RECEDE_REACHABLE)
        return;
    start(t, &line);
    recede_buffer_format(&line, "No mix of these paints meets the colour: the closest %s. The "
                                "nearest are given.", recede_words_missed(closest->reach));
    recede_buffer_start(&advice, t->out->allocator);
    if (addition && recede_words_best_addition(&advice, addition))
        recede_buffer_format(&line, " Of all that could be added, %s.",
                             recede_buffer_string(&advice));
    else if (addition)
        recede_buffer_text(&line, " No other pigment known here brings it much nearer.");
    line.failed |= advice.failed;
    recede_buffer_free(&advice);
    put(t, &line, 2);
}

static void put_foot(const telling *t)
{
    const recede_matches *matches = t->told->matches;
    recede_buffer line;
    if (t->dabs) {
        start(t, &line);
        recede_buffer_text(&line, "In each pair what is wanted stands left, the mix right: by day, "
                                  "then by lamp light.");
        put(t, &line, 0);
    }
    start(t, &line);
    recede_buffer_format(&line, "All are chosen among the %zu %s within ", matches->within_tie,
                         matches->within_tie == 1 ? "mix" : "mixes");
    recede_buffer_number(&line, t->told->rules->tie, 6);
    recede_buffer_text(&line, " of the closest. Lamp light is CIE illuminant A, the eye used to it "
                              "(CAT16). A colour alone does not tell how it looks there: the "
                              "smoothest reflectance that has it stands for it");
    if (!matches->target.reached) {
        recede_buffer_text(&line, ", or as no surface can have this one, the nearest that can, ");
        recede_buffer_fixed(&line, matches->target.delta_e, 1);
        recede_buffer_text(&line, " off");
    }
    recede_buffer_text(&line, ".");
    put(t, &line, 0);
}

void recede_match_text(const recede_match_told *told, int dabs, recede_buffer *out)
{
    telling t = {told, dabs, out};
    put_head(&t);
    put_reach(&t);
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++) {
        if (told_before(&t, kind))
            continue;
        recede_buffer_text(out, "\n");
        put_kinds(&t, kind);
        put_dabs(&t, &told->matches->of[kind]);
        put_recipe(&t, &told->matches->of[kind]);
    }
    recede_buffer_text(out, "\n");
    put_foot(&t);
}
