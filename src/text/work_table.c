/* The order of work as text to read. */
#include <math.h>

#include "plan/work_needed.h"
#include "text/columns.h"
#include "text/words.h"
#include "text/words_care.h"
#include "text/words_let_down.h"
#include "text/words_media.h"
#include "text/words_work.h"
#include "text/work_write.h"

enum { WIDTH = 100, MOST_COLUMNS = 8 };

enum { NUMBER, WASH, MIX, MIXED, NEED, PAPER, OFF, COLUMNS };
static const size_t widths[COLUMNS] = {2, 16, 36, 6, 4, 20, 4};
static const char *const headings[2][COLUMNS] = {
    {"NO", "PASSAGE", "WHAT TO DO", "MAKES", "NEED", "EDGE", "OFF"},
    {"NO", "WASH", "WHAT TO DO", "MAKES", "NEED", "PAPER", "OFF"},
};

enum { WELLS, TUBES, AVERAGE, ADDITIONS, WASHINGS, HOME, CHOICE_COLUMNS };
static const size_t choice_widths[CHOICE_COLUMNS] = {6, 11, 4, 9, 8, 50};
static const char *const choice_headings[2][CHOICE_COLUMNS] = {
    {"PLACES", "TUBES", "OFF", "ADDITIONS", "WIPINGS", "STAY AT HOME"},
    {"WELLS", "TUBES", "OFF", "ADDITIONS", "WASHINGS", "STAY AT HOME"},
};

/* A choice is told unless it is farther off than so many times the nearest, and than a
 * wash that is visibly off on average. */
static const double most_times = 3, well_enough = 3;

static recede_medium medium_of(const recede_work_told *told)
{
    return recede_plan_scene(told->plan)->medium;
}

static void add_rule(recede_buffer *out, const size_t *of, size_t count)
{
    static const char rule[] = "--------------------------------------------------";
    const char *rules[MOST_COLUMNS];
    for (size_t i = 0; i < count; i++)
        rules[i] = rule + (sizeof rule - 1 - of[i]);
    recede_columns_row(out, rules, of, count);
}

/* A cell put together; freed by finish. */
static recede_buffer *begin(recede_buffer *cell, const recede_buffer *out)
{
    recede_buffer_start(cell, out->allocator);
    return cell;
}

static void finish(recede_buffer *cells, size_t count, recede_buffer *out)
{
    for (size_t i = 0; i < count; i++) {
        out->failed |= cells[i].failed;
        recede_buffer_free(&cells[i]);
    }
}

static void add_volume(recede_buffer *out, double ml)
{
    if (ml > 0)
        recede_words_ml(out, ml);
}

/* What to do, and what becomes of the rest. */
static void add_doing(recede_buffer *out, const recede_work_told *told, size_t index)
{
    recede_buffer rest;
    recede_words_step_mix(out, recede_plan_palette(told->plan), &told->work->steps[index]);
    recede_words_step_rest(begin(&rest, out), recede_plan_scene(told->plan), told->work, index);
    if (rest.size)
        recede_buffer_format(out, "; %s", rest.bytes);
    finish(&rest, 1, out);
    const char *wet =
        recede_words_step_wet(recede_plan_palette(told->plan), told->work, index);
    if (*wet)
        recede_buffer_format(out, "; %s", wet);
    recede_words_step_far(begin(&rest, out), &told->work->steps[index]);
    if (rest.size)
        recede_buffer_format(out, "; %s", rest.bytes);
    finish(&rest, 1, out);
}

static void add_step(recede_buffer *out, const recede_work_told *told, size_t index)
{
    const recede_work_step *step = &told->work->steps[index];
    recede_buffer cell[COLUMNS];
    const char *text[COLUMNS];
    recede_buffer_format(begin(&cell[NUMBER], out), "%d", (int)index + 1);
    recede_words_step_label(begin(&cell[WASH], out), recede_plan_scene(told->plan), step);
    add_doing(begin(&cell[MIX], out), told, index);
    add_volume(begin(&cell[MIXED], out), step->mixed_ml);
    add_volume(begin(&cell[NEED], out), step->need_ml);
    recede_words_step_paper(begin(&cell[PAPER], out), told->plan, told->work, index);
    recede_buffer_fixed(begin(&cell[OFF], out), step->delta_e, 1);
    for (int i = 0; i < COLUMNS; i++)
        text[i] = recede_buffer_string(&cell[i]);
    recede_columns_row(out, text, widths, COLUMNS);
    finish(cell, COLUMNS, out);
}

static void add_paragraph(recede_buffer *out, recede_buffer *words)
{
    if (words->size)
        recede_columns_text(out, recede_buffer_string(words), WIDTH, 0);
    finish(words, 1, out);
}

static void add_sum(recede_buffer *out, const recede_work_told *told)
{
    recede_buffer words;
    recede_words_order(begin(&words, out), told->plan, told->work);
    add_paragraph(out, &words);
    recede_words_amounts(begin(&words, out), told->plan);
    add_paragraph(out, &words);
}

/* What comes before the first step. */
static void add_beforehand(recede_buffer *out, const recede_work_told *told)
{
    recede_buffer words;
    recede_words_beforehand_all(begin(&words, out), told->plan, told->work);
    if (words.size) {
        recede_columns_text(out, recede_buffer_string(&words), WIDTH, 0);
        recede_buffer_text(out, "\n");
    }
    finish(&words, 1, out);
}

/* ---- choices */

/* The tubes of the palette that are not needed. */
static void add_home(recede_buffer *out, const recede_palette *palette, unsigned long needed)
{
    int said = 0;
    for (size_t i = 0; i < recede_palette_count(palette); i++) {
        const recede_paint *paint = recede_palette_paint(palette, i);
        if (!(needed >> i & 1) && !paint->let_down)
            recede_buffer_format(out, "%s%s", said++ ? "; " : "", paint->name);
    }
}

static void add_tubes(recede_buffer *out, const recede_palette *palette, unsigned long needed)
{
    recede_work_count count = recede_work_count_of(palette, needed);
    recede_buffer_format(out, "%d", count.tubes);
    if (count.let_down)
        recede_buffer_format(out, " + %d pale", count.let_down);
}

static double average(const recede_work_told *told, double difference)
{
    return told->work->count ? difference / (double)told->work->count : 0;
}

static void add_choice(recede_buffer *out, const recede_work_told *told,
                       const recede_work_choice *choice)
{
    const recede_palette *palette = recede_plan_palette(told->plan);
    unsigned long needed = recede_work_needed(palette, choice->paints);
    recede_buffer cell[CHOICE_COLUMNS];
    const char *text[CHOICE_COLUMNS];
    for (int i = 0; i < CHOICE_COLUMNS; i++)
        begin(&cell[i], out);
    recede_buffer_format(&cell[WELLS], "%d", choice->wells);
    add_tubes(&cell[TUBES], palette, needed);
    recede_buffer_fixed(&cell[AVERAGE], average(told, choice->difference), 1);
    recede_buffer_format(&cell[ADDITIONS], "%d", choice->additions);
    recede_buffer_format(&cell[WASHINGS], "%d", choice->washings);
    add_home(&cell[HOME], palette, needed);
    for (int i = 0; i < CHOICE_COLUMNS; i++)
        text[i] = recede_buffer_string(&cell[i]);
    recede_columns_row(out, text, choice_widths, CHOICE_COLUMNS);
    finish(cell, CHOICE_COLUMNS, out);
}

static double most_difference(const recede_work_told *told)
{
    double least = told->work->difference;
    for (size_t i = 0; i < told->choice_count; i++)
        least = fmin(least, told->choices[i].difference);
    return fmax(most_times * least, well_enough * (double)told->work->count);
}

/* Whether a row before has the same wells and things to bring: that one is the better. */
static int is_told(const recede_work_told *told, size_t index)
{
    const recede_palette *palette = recede_plan_palette(told->plan);
    const recede_work_choice *choice = &told->choices[index];
    unsigned long needed = recede_work_needed(palette, choice->paints);
    for (size_t i = 0; i < index; i++)
        if (told->choices[i].wells == choice->wells && told->choices[i].sum <= choice->sum &&
            recede_work_needed(palette, told->choices[i].paints) == needed)
            return 1;
    return 0;
}

/* What the columns say that one might not guess. */
static void add_choice_note(recede_buffer *out, const recede_work_told *told)
{
    const recede_trade *trade = recede_trade_of(medium_of(told));
    recede_buffer words;
    recede_buffer_format(begin(&words, out), "OFF is the average of all %s, in CIEDE2000.", trade->washes);
    if (recede_work_lets_down(recede_plan_palette(told->plan)))
        recede_buffer_text(&words, " TUBES are those to squeeze from, also for what is let down; "
                                   "that is counted apart, as pale.");
    recede_buffer_text(out, "\n");
    add_paragraph(out, &words);
}

static void add_choices(recede_buffer *out, const recede_work_told *told)
{
    if (!told->choice_count)
        return;
    int water = recede_medium_takes_water(medium_of(told));
    double most = most_difference(told);
    recede_buffer_text(out, water ? "\nOther wells, and fewer tubes:\n\n"
                                  : "\nOther places to mix on, and fewer paints:\n\n");
    recede_columns_row(out, choice_headings[water], choice_widths, CHOICE_COLUMNS);
    add_rule(out, choice_widths, CHOICE_COLUMNS);
    for (size_t i = 0; i < told->choice_count; i++)
        if (told->choices[i].difference <= most && !is_told(told, i))
            add_choice(out, told, &told->choices[i]);
    add_choice_note(out, told);
}

void recede_work_table(const recede_work_told *told, recede_buffer *out)
{
    const recede_scene *scene = recede_plan_scene(told->plan);
    if (scene->title[0])
        recede_columns_text(out, scene->title, WIDTH, 0);
    const recede_trade *trade = recede_trade_of(scene->medium);
    recede_buffer_format(out, "%s, from %d %s, far to near\n\n", recede_words_medium(scene->medium),
                         told->work->wells, told->work->wells == 1 ? trade->well : trade->wells);
    add_beforehand(out, told);
    recede_columns_row(out, headings[recede_medium_takes_water(scene->medium)], widths, COLUMNS);
    add_rule(out, widths, COLUMNS);
    for (size_t i = 0; i < told->work->count; i++)
        add_step(out, told, i);
    recede_buffer_text(out, "\n");
    add_sum(out, told);
    add_choices(out, told);
    recede_words_care(out, told->plan, told->work, WIDTH);
}
