/* recede chart: the mixing chart for the wall, and what a palette reaches. */
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/paints.h"
#include "cli/progress.h"
#include "cli/sheets.h"
#include "draw/chart.h"
#include "draw/range.h"
#include "text/columns.h"
#include "text/plan_write.h"
#include "text/words_chart.h"

enum { WIDTH = 100 };

static const char command[] = "chart";

typedef struct {
    recede_cli_paints paints;
    const char *scene, *sheet, *rows, *columns, *third, *range;
} given;

static int say_wrong(const char *what)
{
    recede_cli_say("recede %s: %s; see recede %s --help", command, what, command);
    return RECEDE_EXIT_USAGE;
}

/* Says what is left out, where anything is. */
static int write_sheet(const recede_sheet *sheet, const char *path, const recede_plan *plan,
                       const char *left_out)
{
    const recede_cli_sheet drawn = recede_cli_sheet_of(sheet);
    recede_cli_words words;
    recede_buffer_start(&words.json, NULL);
    recede_buffer_start(&words.text, NULL);
    if (plan)
        recede_plan_write(plan, &words.json);
    if (*left_out) {
        recede_columns_text(&words.text, left_out, WIDTH, 0);
        recede_columns_text(&words.text, "--rows, --columns and --third take any paint.", WIDTH, 0);
    }
    int code = recede_cli_sheet_write(&drawn, path, &words, NULL);
    recede_buffer_free(&words.json);
    recede_buffer_free(&words.text);
    return code;
}

/* ---------------------------------------------------------------- chart -- */

/* Rows, columns and third by name, in a palette that has them all. The default
 * ones are those of the palette as it was given. */
static int read_chart(const given *g, recede_scene *scene, recede_chart *chart)
{
    int third[RECEDE_MOST_PAINTS] = {-1}, count = 0, code = RECEDE_EXIT_DONE;
    recede_palette *palette;
    recede_error error;
    if (recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper, NULL,
                           &palette, &error))
        return recede_cli_paints_explain(command, &error);
    *chart = recede_chart_of(palette);
    recede_palette_free(palette);
    if (g->rows)
        code = recede_cli_paints_find(command, "rows", g->rows, scene, chart->row, &chart->rows);
    if (!code && g->columns)
        code = recede_cli_paints_find(command, "columns", g->columns, scene, chart->column,
                                      &chart->columns);
    if (code || !g->third)
        return code;
    code = recede_cli_paints_find(command, "third", g->third, scene, third, &count);
    if (!code && count != 1)
        code = say_wrong("--third takes one paint");
    chart->third = third[0];
    return code;
}

static int check_chart(const recede_chart *chart)
{
    if (!chart->rows)
        return say_wrong("this palette has no yellows and earths for the rows: name paints with "
                         "--rows");
    if (!chart->columns)
        return say_wrong("this palette has no blues and greens for the columns: name paints with "
                         "--columns");
    return RECEDE_EXIT_DONE;
}

static int draw_chart(const given *g, recede_scene *scene)
{
    recede_chart chart = {0};
    recede_palette *palette;
    recede_error error;
    int code = read_chart(g, scene, &chart);
    if (!code)
        code = check_chart(&chart);
    if (code)
        return code;
    if (recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper, NULL,
                           &palette, &error))
        return recede_cli_paints_explain(command, &error);
    recede_buffer left_out;
    recede_buffer_start(&left_out, NULL);
    if (!g->rows || !g->columns) /* who names both has chosen */
        recede_words_chart_left_out(&left_out, palette, &chart);
    recede_chart_drawing drawing = {palette, &chart, scene->palette, 0, 0,
                                    recede_buffer_string(&left_out)};
    recede_sheet sheet = recede_chart_sheet(&drawing);
    code = left_out.failed ? recede_cli_no_memory()
                           : write_sheet(&sheet, g->sheet, NULL, drawing.left_out);
    recede_buffer_free(&left_out);
    recede_palette_free(palette);
    return code;
}

/* ---------------------------------------------------------------- range -- */

/* The plan, what its palette lacks, and what it reaches. */
static recede_code find_range(const recede_scene *scene, recede_plan **plan,
                              recede_range_drawing *drawing, const recede_progress *progress,
                              recede_error *error)
{
    recede_code code = recede_plan_new(scene, NULL, progress, plan, error);
    if (!code)
        code = recede_plan_advise(*plan, progress, error);
    if (!code)
        code = recede_range_start(drawing, *plan, NULL, progress, error);
    return code;
}

static int draw_range(const given *g, const recede_loaded *loaded)
{
    recede_cli_progress progress;
    recede_error error;
    recede_plan *plan = NULL;
    recede_range_drawing *drawing = malloc(sizeof *drawing);
    if (!drawing)
        return recede_cli_no_memory();
    recede_cli_progress_start(&progress, "seeking recipes");
    recede_code failed = find_range(loaded->scene, &plan, drawing, &progress.progress, &error);
    recede_cli_progress_end(&progress);
    int code = failed ? recede_cli_explain(loaded, &error) : RECEDE_EXIT_DONE;
    if (!failed) {
        recede_sheet sheet = recede_range_sheet(drawing);
        code = write_sheet(&sheet, g->sheet, plan, "");
        recede_range_end(drawing);
    }
    recede_plan_free(plan);
    free(drawing);
    return code;
}

static int run(const given *g)
{
    recede_loaded loaded;
    if (!g->sheet)
        return say_wrong("nothing would be drawn: give -o FILE");
    if (g->range && (g->rows || g->columns || g->third))
        return say_wrong("--range has no rows, columns or third: leave them out");
    int code = recede_cli_load(g->scene, &loaded);
    if (!code)
        code = recede_cli_paints_take(command, &g->paints, loaded.scene);
    if (!code)
        code = g->range ? draw_range(g, &loaded) : draw_chart(g, loaded.scene);
    recede_cli_unload(&loaded);
    return code;
}

int recede_cli_chart(int count, char **words)
{
    given g = {0};
    const recede_option options[] = {
        {'o', NULL, "FILE", "draw the chart to FILE, a PNG, or a PDF where it ends in .pdf", &g.sheet},
        {0, "rows", "PAINTS", "for the rows (the palette's yellows and earths)", &g.rows},
        {0, "columns", "PAINTS", "for the columns (its blues and greens)", &g.columns},
        {0, "third", "PAINT", "1 part in 5 of every mix", &g.third},
        {0, "range", NULL, "instead: what the paints reach, with the scene's colours", &g.range},
        RECEDE_CLI_PAINT_OPTIONS(g.paints),
    };
    const recede_usage usage = {
        command, "[SCENE]",
        "Draws the mixing chart of a palette: paints down, each mixed with the paints across,\n"
        "in three proportions and three strengths; or with --range what the palette reaches.\n"
        "Which paints are left out, and why, is printed and stands on the chart.\n"
        "SCENE is a scene file, - for standard input, whose paints are taken; without one, the\n"
        "built-in scene.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &g.scene);
    return code == RECEDE_OPTIONS_GO_ON ? run(&g) : code;
}
