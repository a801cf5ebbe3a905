/* recede puddle: the order of work. Which wash from which well, and what to add. */
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "cli/sheets.h"
#include "draw/work.h"
#include "text/json.h"

static const char command[] = "puddle";

typedef struct {
    const char *sheet, *json, *wells, *tubes;
} given;

/* A whole number of one or two digits from least to most. */
static int read_whole(const char *option, const char *text, int least, int most, int *out)
{
    size_t length = strspn(text, "0123456789");
    int number = length && length <= 2 && !text[length] ? (int)strtol(text, NULL, 10) : -1;
    if (number < least || number > most)
        return recede_cli_wrong(command, option, text,
                                most == RECEDE_MOST_WELLS ? "expected a whole number from 1 to 3"
                                                          : "expected a whole number from 1 to 24");
    *out = number;
    return RECEDE_EXIT_DONE;
}

static int read_wish(const given *words, recede_work_wish *wish)
{
    int code = RECEDE_EXIT_DONE;
    *wish = (recede_work_wish){RECEDE_MOST_WELLS, 0};
    if (words->wells)
        code = read_whole("wells", words->wells, 1, RECEDE_MOST_WELLS, &wish->wells);
    if (!code && words->tubes)
        code = read_whole("tubes", words->tubes, 1, RECEDE_MOST_PAINTS, &wish->most_tubes);
    return code;
}

static recede_sheet_result pixels(const void *told, const recede_sheet_options *options,
                                  recede_sheet_pixels *out)
{
    return recede_work_pixels(told, options, out);
}

static recede_sheet_result pdf(const void *told, const recede_sheet_options *options,
                               recede_buffer *out)
{
    return recede_work_pdf(told, options, out);
}

static int write_work(const recede_work_told *told, const given *words)
{
    const recede_cli_sheet sheet = {told, pixels, pdf};
    recede_cli_words said;
    recede_json json;
    recede_buffer_start(&said.json, NULL);
    recede_buffer_start(&said.text, NULL);
    recede_json_start(&json, &said.json);
    recede_json_object(&json, NULL);
    recede_work_write(told, &json);
    recede_json_end_object(&json);
    recede_buffer_text(&said.json, "\n");
    recede_work_table(told, &said.text);
    int code = recede_cli_sheet_write(&sheet, words->sheet, &said, words->json);
    recede_buffer_free(&said.json);
    recede_buffer_free(&said.text);
    return code;
}

/* What is worked out before anything is written. */
typedef struct {
    recede_plan *plan;
    recede_index *index;
    double shares[RECEDE_MOST_PLANES + 1];
    recede_work work;
    recede_work_choice choices[RECEDE_MOST_WORK_CHOICES];
    size_t choice_count;
} labour;

static recede_code work_out(const recede_scene *scene, const recede_work_wish *wish, labour *l,
                            const recede_progress *progress, recede_error *error)
{
    recede_code code = recede_plan_new(scene, NULL, progress, &l->plan, error);
    if (!code)
        code = recede_picture_shares(l->plan, l->shares, NULL, error);
    if (!code)
        code = recede_index_new(recede_plan_palette(l->plan), &scene->rules, 0, NULL, progress,
                                &l->index, error);
    if (!code)
        code = recede_work_of(l->plan, l->shares, wish, l->index, NULL, progress, &l->work, error);
    if (!code)
        code = recede_work_choices(l->plan, l->shares, wish, l->index, NULL, progress, l->choices,
                                   &l->choice_count, error);
    return code;
}

static int make(const recede_loaded *loaded, const given *words)
{
    recede_cli_progress progress;
    recede_work_wish wish;
    recede_error error;
    int code = read_wish(words, &wish);
    if (code)
        return code;
    labour *l = calloc(1, sizeof *l);
    if (!l)
        return recede_cli_no_memory();
    recede_cli_progress_start(&progress, "putting the work in order");
    recede_code failed = work_out(loaded->scene, &wish, l, &progress.progress, &error);
    recede_cli_progress_end(&progress);
    const recede_work_told told = {l->plan, &l->work, l->choices, l->choice_count};
    code = failed ? recede_cli_explain(loaded, &error) : write_work(&told, words);
    recede_index_free(l->index);
    recede_plan_free(l->plan);
    free(l);
    return code;
}

int recede_cli_puddle(int count, char **words)
{
    const char *scene = NULL;
    given g = {NULL, NULL, NULL, NULL};
    const recede_option options[] = {
        {'o', NULL, "FILE", "draw the order of work: a PNG, or a PDF where FILE ends in .pdf",
         &g.sheet},
        {0, "json", "FILE", "write it to FILE as JSON", &g.json},
        {0, "wells", "N", "wells to mix in, 1 to 3 (3: sky, greens, darks)", &g.wells},
        {0, "tubes", "N", "the most tubes to squeeze from, also for what is let down", &g.tubes},
    };
    const recede_usage usage = {
        command, "[SCENE]",
        "The order of work: a puddle can only be added to, so which wash comes from what is\n"
        "left of which, what to add, when to wait, and how much to mix.\n"
        "SCENE is a scene file, - for standard input; without one, the built-in scene.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &scene);
    if (code != RECEDE_OPTIONS_GO_ON)
        return code;
    recede_loaded loaded;
    code = recede_cli_load(scene, &loaded);
    if (!code)
        code = make(&loaded, &g);
    recede_cli_unload(&loaded);
    return code;
}
