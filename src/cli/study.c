/* recede study: the main job. A scene in, a study to paint from out. */
#include <stdlib.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "cli/sheets.h"
#include "draw/study.h"
#include "text/plan_write.h"

/* A plan with its order of work. */
typedef struct {
    recede_plan *plan;
    double shares[RECEDE_MOST_PLANES + 1];
    recede_work work;
} made;

static recede_sheet_result pixels(const void *content, const recede_sheet_options *options,
                                  recede_sheet_pixels *out)
{
    const made *m = content;
    return recede_study_pixels(m->plan, &m->work, options, out);
}

static recede_sheet_result pdf(const void *content, const recede_sheet_options *options,
                               recede_buffer *out)
{
    const made *m = content;
    return recede_study_pdf(m->plan, &m->work, options, out);
}

static int write_all(const made *m, const char *sheet_path, const char *json_path)
{
    const recede_cli_sheet sheet = {m, pixels, pdf};
    const recede_work_told told = {m->plan, &m->work, NULL, 0};
    recede_cli_words words;
    recede_buffer_start(&words.json, NULL);
    recede_buffer_start(&words.text, NULL);
    recede_plan_write_with_work(&told, &words.json);
    recede_plan_table(m->plan, &words.text);
    int code = recede_cli_sheet_write(&sheet, sheet_path, &words, json_path);
    recede_buffer_free(&words.json);
    recede_buffer_free(&words.text);
    return code;
}

static recede_code make(const recede_scene *scene, made *m, const recede_progress *progress,
                        recede_error *error)
{
    const recede_work_wish wish = {RECEDE_MOST_WELLS, 0};
    recede_code code = recede_plan_new(scene, NULL, progress, &m->plan, error);
    if (!code)
        code = recede_plan_advise(m->plan, progress, error);
    if (!code)
        code = recede_picture_shares(m->plan, m->shares, NULL, error);
    return code ? code
                : recede_work_of(m->plan, m->shares, &wish, NULL, NULL, progress, &m->work, error);
}

static int study(const recede_loaded *loaded, const char *sheet_path, const char *json_path)
{
    recede_cli_progress progress;
    recede_error error;
    made *m = calloc(1, sizeof *m);
    if (!m)
        return recede_cli_no_memory();
    recede_cli_progress_start(&progress, "seeking recipes");
    recede_code failed = make(loaded->scene, m, &progress.progress, &error);
    recede_cli_progress_end(&progress);
    int code = failed ? recede_cli_explain(loaded, &error) : write_all(m, sheet_path, json_path);
    recede_plan_free(m->plan);
    free(m);
    return code;
}

int recede_cli_study(int count, char **words)
{
    const char *sheet = NULL, *json = NULL, *scene = NULL;
    const recede_option options[] = {
        {'o', NULL, "FILE", "draw the study to FILE: a PNG, or a PDF where it ends in .pdf",
         &sheet},
        {0, "json", "FILE", "write the plan to FILE as JSON", &json},
    };
    const recede_usage usage = {
        "study", "[SCENE]",
        "Plans a scene: what the air does to each plane's colour, and which mixes give it.\n"
        "Prints the plan as a table and draws the study to paint from.\n"
        "SCENE is a scene file, - for standard input; without one, the built-in scene.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &scene);
    if (code != RECEDE_OPTIONS_GO_ON)
        return code;
    recede_loaded loaded;
    code = recede_cli_load(scene, &loaded);
    if (!code)
        code = study(&loaded, sheet, json);
    recede_cli_unload(&loaded);
    return code;
}
