/* The plan as a table for the terminal, in words that can be read aloud. */
#include <stdio.h>
#include <string.h>

#include "text/columns.h"
#include "text/numbers.h"
#include "text/plan_write.h"
#include "text/words.h"
#include "text/words_care.h"
#include "text/words_layers.h"
#include "text/words_let_down.h"
#include "text/words_media.h"

enum { WIDTH = 100 };

enum { PLANE, DISTANCE, SIDE, SEEN, PAINTED, RECIPE, MATCH, EDGE, COLUMNS };
static const size_t widths[COLUMNS] = {13, 8, 11, 4, 7, 27, 12, 4};
static const char *const headings[COLUMNS] = {"PLANE",   "DISTANCE", "SIDE",  "SEEN",
                                              "PAINTED", "RECIPE",   "MATCH", "EDGE"};

typedef struct {
    const recede_plan *plan;
    recede_buffer *out;
} table;

typedef struct {
    const char *plane, *distance, *side, *edge, *note;
} row_words;

/* "very close, 1.2 off" */
static void add_match(recede_buffer *out, double delta_e)
{
    recede_buffer_format(out, "%s, ", recede_words_difference(delta_e));
    recede_buffer_fixed(out, delta_e, 1);
    recede_buffer_text(out, " off");
}

static void add_row(const table *t, const row_words *words, const recede_wash *wash)
{
    char seen[RECEDE_NUMBER_SIZE], painted[RECEDE_NUMBER_SIZE];
    recede_buffer recipe, match;
    recede_buffer_start(&recipe, t->out->allocator);
    recede_buffer_start(&match, t->out->allocator);
    add_match(&match, wash->recipe.delta_e);
    recede_number_fixed(seen, wash->value_as_seen, 1);
    recede_number_fixed(painted, wash->recipe.colour.value, 1);
    recede_words_wash(&recipe, recede_plan_palette(t->plan), wash);
    if (words->note[0])
        recede_buffer_format(&recipe, "; %s", words->note);
    t->out->failed |= recipe.failed | match.failed;
    const char *cells[COLUMNS] = {
        words->plane, words->distance, words->side, seen, painted, recede_buffer_string(&recipe),
        recede_buffer_string(&match), words->edge};
    recede_columns_row(t->out, cells, widths, COLUMNS);
    recede_buffer_free(&match);
    recede_buffer_free(&recipe);
}

static const char *grading_note(const table *t, const recede_side *side)
{
    if (!side->two_washes)
        return "";
    return recede_trade_of(recede_palette_medium(recede_plan_palette(t->plan)))->middle_short;
}

/* One row for a flat side, two for a graded one. */
static void add_side(const table *t, row_words words, const recede_side *side, const char *flat,
                     const char *crest, const char *base)
{
    words.side = side->graded ? crest : flat;
    words.note = "";
    add_row(t, &words, &side->crest);
    if (side->graded) {
        row_words foot = {"", "", base, "", grading_note(t, side)};
        add_row(t, &foot, &side->base);
    }
}

static void add_sky(const table *t)
{
    row_words words = {"sky", "", "", "", ""};
    add_side(t, words, recede_plan_sky(t->plan), "all", "top of the sky", "horizon");
}

static void add_plane(const table *t, const recede_planned *planned)
{
    const recede_plane *plane = &recede_plan_scene(t->plan)->planes[planned->plane];
    recede_buffer distance;
    recede_buffer_start(&distance, t->out->allocator);
    recede_words_distance(&distance, plane->distance_m);
    t->out->failed |= distance.failed;
    row_words lit = {plane->name, recede_buffer_string(&distance), "",
                     recede_words_edge(planned->edge), ""};
    row_words shadow = {"", "", "", "", ""};
    recede_buffer_text(t->out, "\n");
    add_side(t, lit, &planned->lit, "lit", "lit crest", "lit foot");
    add_side(t, shadow, &planned->shadow, "shadow", "shadow crest", "shadow foot");
    recede_buffer_free(&distance);
}

static void add_heading(const table *t)
{
    const recede_scene *scene = recede_plan_scene(t->plan);
    recede_buffer line;
    recede_buffer_start(&line, t->out->allocator);
    if (scene->title[0])
        recede_columns_text(t->out, scene->title, WIDTH, 0);
    recede_words_air_and_light(&line, scene);
    recede_columns_text(t->out, recede_buffer_string(&line), WIDTH, 0);
    recede_buffer_format(t->out, "%s, %s\n\n", recede_words_medium(scene->medium),
                         scene->palette[0] ? scene->palette : "a palette of its own");
    t->out->failed |= line.failed;
    recede_buffer_free(&line);
}

static void add_headings(const table *t)
{
    static const char rule[] = "----------------------------------------";
    const char *rules[COLUMNS];
    for (int i = 0; i < COLUMNS; i++)
        rules[i] = rule + (sizeof rule - 1 - widths[i]);
    recede_columns_row(t->out, headings, widths, COLUMNS);
    recede_columns_row(t->out, rules, widths, COLUMNS);
}

static void add_beforehand(const table *t)
{
    recede_buffer words;
    recede_buffer_start(&words, t->out->allocator);
    recede_words_beforehand_all(&words, t->plan, NULL);
    if (words.size) {
        recede_columns_text(t->out, recede_buffer_string(&words), WIDTH, 0);
        recede_buffer_text(t->out, "\n");
    }
    t->out->failed |= words.failed;
    recede_buffer_free(&words);
}

static void add_layers(const table *t)
{
    const char *layers = recede_words_layers(t->plan);
    if (!*layers)
        return;
    recede_buffer_text(t->out, "\n");
    recede_columns_text(t->out, layers, WIDTH, 0);
}

static void add_warnings(const table *t)
{
    size_t count = recede_plan_warning_count(t->plan);
    if (count)
        recede_buffer_text(t->out, "\nMind:\n");
    for (size_t i = 0; i < count; i++) {
        recede_buffer line;
        recede_buffer_start(&line, t->out->allocator);
        recede_buffer_text(&line, "- ");
        recede_words_warning(&line, recede_plan_scene(t->plan), recede_plan_warning(t->plan, i));
        recede_columns_text(t->out, recede_buffer_string(&line), WIDTH, 2);
        t->out->failed |= line.failed;
        recede_buffer_free(&line);
    }
}

void recede_plan_table(const recede_plan *plan, recede_buffer *out)
{
    table t = {plan, out};
    add_heading(&t);
    add_beforehand(&t);
    add_headings(&t);
    add_sky(&t);
    for (size_t i = 0; i < recede_plan_count(plan); i++)
        add_plane(&t, recede_plan_at(plan, i));
    add_layers(&t);
    add_warnings(&t);
    recede_words_care(out, plan, NULL, WIDTH);
}
