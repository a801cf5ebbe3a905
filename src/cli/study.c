/* recede study: the main job. A scene in, a study to paint from out. */
#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "cli/sheets.h"
#include "draw/study.h"
#include "text/plan_write.h"

static recede_sheet_result pixels(const void *plan, const recede_sheet_options *options,
                                  recede_sheet_pixels *out)
{
    return recede_study_pixels(plan, options, out);
}

static recede_sheet_result pdf(const void *plan, const recede_sheet_options *options,
                               recede_buffer *out)
{
    return recede_study_pdf(plan, options, out);
}

static int make_and_write(const recede_plan *plan, const char *sheet_path, const char *json_path)
{
    const recede_cli_sheet sheet = {plan, pixels, pdf};
    recede_cli_words words;
    recede_buffer_start(&words.json, NULL);
    recede_buffer_start(&words.text, NULL);
    recede_plan_write(plan, &words.json);
    recede_plan_table(plan, &words.text);
    int code = recede_cli_sheet_write(&sheet, sheet_path, &words, json_path);
    recede_buffer_free(&words.json);
    recede_buffer_free(&words.text);
    return code;
}

static int study(const recede_loaded *loaded, const char *sheet_path, const char *json_path)
{
    recede_cli_progress progress;
    recede_plan *plan;
    recede_error error;
    recede_cli_progress_start(&progress, "seeking recipes");
    recede_code failed = recede_plan_new(loaded->scene, NULL, &progress.progress, &plan, &error);
    if (!failed)
        failed = recede_plan_advise(plan, &progress.progress, &error);
    recede_cli_progress_end(&progress);
    int code = failed ? recede_cli_explain(loaded, &error)
                      : make_and_write(plan, sheet_path, json_path);
    recede_plan_free(plan);
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
