/* The order of work as text to read. */
#include "text/columns.h"
#include "text/words.h"
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

enum { WELLS, TUBES, SUM, DIFFERENCE, ADDITIONS, WASHINGS, HOME, CHOICE_COLUMNS };
static const size_t choice_widths[CHOICE_COLUMNS] = {6, 6, 5, 11, 9, 8, 43};
static const char *const choice_headings[2][CHOICE_COLUMNS] = {
    {"PLACES", "PAINTS", "SUM", "DIFFERENCES", "ADDITIONS", "WIPINGS", "STAY AT HOME"},
    {"WELLS", "TUBES", "SUM", "DIFFERENCES", "ADDITIONS", "WASHINGS", "STAY AT HOME"},
};

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

static void add_sum(recede_buffer *out, const recede_work_told *told)
{
    const recede_work *work = told->work;
    const recede_trade *trade = recede_trade_of(medium_of(told));
    recede_buffer words;
    recede_buffer_format(begin(&words, out), "All %s together are off by ", trade->washes);
    recede_buffer_fixed(&words, work->difference, 1);
    recede_buffer_text(&words, ", each mixed by itself as the study has it by ");
    recede_buffer_fixed(&words, work->planned_difference, 1);
    recede_buffer_format(&words, ". %d %s at ", work->additions,
                         trade->to_pour[work->additions != 1]);
    recede_buffer_number(&words, RECEDE_ADDITION_COST, 2);
    recede_buffer_format(&words, " and %d %s %s at ", work->washings,
                         work->washings == 1 ? trade->well : trade->wells, trade->to_wash);
    recede_buffer_number(&words, RECEDE_WASHING_COST, 2);
    recede_buffer_text(&words, ", and what is mixed beyond need, bring the sum to ");
    recede_buffer_fixed(&words, work->sum, 1);
    recede_buffer_text(&words, work->exact ? ", the least there is from the mixes considered."
                                           : "; there may be a better order.");
    recede_columns_text(out, recede_buffer_string(&words), WIDTH, 0);
    finish(&words, 1, out);
    recede_words_amounts(begin(&words, out), told->plan);
    recede_columns_text(out, recede_buffer_string(&words), WIDTH, 0);
    finish(&words, 1, out);
}

static void add_beforehand(recede_buffer *out, const recede_work_told *told)
{
    recede_buffer words;
    recede_words_beforehand_all(begin(&words, out), told->plan, told->work);
    if (words.size)
        recede_columns_text(out, recede_buffer_string(&words), WIDTH, 0);
    finish(&words, 1, out);
}

/* The paints of the palette that are not in use. */
static void add_home(recede_buffer *out, const recede_palette *palette, unsigned long paints)
{
    int said = 0;
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (!(paints >> i & 1))
            recede_buffer_format(out, "%s%s", said++ ? "; " : "",
                                 recede_palette_paint(palette, i)->name);
}

static void add_choice(recede_buffer *out, const recede_palette *palette,
                       const recede_work_choice *choice)
{
    recede_buffer cell[CHOICE_COLUMNS];
    const char *text[CHOICE_COLUMNS];
    const int counts[CHOICE_COLUMNS] = {[WELLS] = choice->wells, [TUBES] = choice->tubes,
                                        [ADDITIONS] = choice->additions,
                                        [WASHINGS] = choice->washings};
    for (int i = 0; i < CHOICE_COLUMNS; i++)
        begin(&cell[i], out);
    recede_buffer_fixed(&cell[SUM], choice->sum, 1);
    recede_buffer_fixed(&cell[DIFFERENCE], choice->difference, 1);
    add_home(&cell[HOME], palette, choice->paints);
    for (int i = 0; i < CHOICE_COLUMNS; i++) {
        if (i != SUM && i != DIFFERENCE && i != HOME)
            recede_buffer_format(&cell[i], "%d", counts[i]);
        text[i] = recede_buffer_string(&cell[i]);
    }
    recede_columns_row(out, text, choice_widths, CHOICE_COLUMNS);
    finish(cell, CHOICE_COLUMNS, out);
}

static void add_choices(recede_buffer *out, const recede_work_told *told)
{
    if (!told->choice_count)
        return;
    int water = recede_medium_takes_water(medium_of(told));
    recede_buffer_text(out, water ? "\nOther wells, and fewer tubes:\n\n"
                                  : "\nOther places to mix on, and fewer paints:\n\n");
    recede_columns_row(out, choice_headings[water], choice_widths, CHOICE_COLUMNS);
    add_rule(out, choice_widths, CHOICE_COLUMNS);
    for (size_t i = 0; i < told->choice_count; i++)
        add_choice(out, recede_plan_palette(told->plan), &told->choices[i]);
}

void recede_work_table(const recede_work_told *told, recede_buffer *out)
{
    const recede_scene *scene = recede_plan_scene(told->plan);
    if (scene->title[0])
        recede_columns_text(out, scene->title, WIDTH, 0);
    const recede_trade *trade = recede_trade_of(scene->medium);
    recede_buffer_format(out, "%s, from %d %s, far to near\n\n", recede_words_medium(scene->medium),
                         told->work->wells, told->work->wells == 1 ? trade->well : trade->wells);
    recede_columns_row(out, headings[recede_medium_takes_water(scene->medium)], widths, COLUMNS);
    add_rule(out, widths, COLUMNS);
    for (size_t i = 0; i < told->work->count; i++)
        add_step(out, told, i);
    recede_buffer_text(out, "\n");
    add_sum(out, told);
    add_beforehand(out, told);
    add_choices(out, told);
}
