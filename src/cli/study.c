/* recede study: the main job. A scene in, a study to paint from out. */
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "draw/study.h"
#include "file/png_write.h"
#include "text/plan_write.h"

/* What is made of a plan before anything is written. */
typedef struct {
    const char *sheet_path, *json_path;
    recede_buffer sheet, json, table;
} products;

static int is_pdf(const char *path)
{
    size_t length = strlen(path);
    return length >= 4 && strcasecmp(path + length - 4, ".pdf") == 0;
}

static void say_missing(void *context, const char *text, int count)
{
    (void)context;
    recede_cli_say("note: the font lacks %d of the characters in '%s'; boxes stand in their place",
                   count, text);
}

static int say_sheet_result(recede_sheet_result result)
{
    switch (result) {
    case RECEDE_SHEET_OK:
        return RECEDE_EXIT_DONE;
    case RECEDE_SHEET_NO_FONT:
        recede_cli_say("the sheet's font cannot be read: " RECEDE_FONT
                       "; install it (Debian: fonts-lato) and try again");
        return RECEDE_EXIT_FAILED;
    default:
        return recede_cli_no_memory();
    }
}

static int draw_png(const recede_plan *plan, const recede_sheet_options *options, products *made)
{
    recede_sheet_pixels pixels;
    recede_file_problem problem;
    int code = say_sheet_result(recede_study_pixels(plan, options, &pixels));
    if (code)
        return code;
    recede_png png = {pixels.width, pixels.height, pixels.rgb, pixels.row_bytes,
                      RECEDE_SHEET_DPI, recede_buffer_string(&made->json)};
    if (recede_png_encode(&png, &made->sheet, &problem)) {
        recede_cli_say("%s", problem.text);
        code = RECEDE_EXIT_FAILED;
    }
    free(pixels.rgb);
    return code;
}

static int draw_sheet(const recede_plan *plan, products *made)
{
    const recede_sheet_options options = {.missing = say_missing};
    if (!is_pdf(made->sheet_path))
        return draw_png(plan, &options, made);
    return say_sheet_result(recede_study_pdf(plan, &options, &made->sheet));
}

static int make_all(const recede_plan *plan, products *made)
{
    int code = RECEDE_EXIT_DONE;
    recede_plan_write(plan, &made->json);
    recede_plan_table(plan, &made->table);
    if (made->json.failed || made->table.failed)
        return recede_cli_no_memory();
    if (made->sheet_path)
        code = draw_sheet(plan, made);
    return !code && made->sheet.failed ? recede_cli_no_memory() : code;
}

/* The table goes to standard output unless that is taken by another product. */
static int write_all(const products *made)
{
    recede_output outputs[3];
    size_t count = 0;
    int taken = 0;
    if (made->sheet_path)
        outputs[count++] = (recede_output){made->sheet_path, made->sheet.bytes, made->sheet.size};
    if (made->json_path)
        outputs[count++] = (recede_output){made->json_path, made->json.bytes, made->json.size};
    for (size_t i = 0; i < count; i++)
        taken |= strcmp(outputs[i].path, "-") == 0;
    if (!taken)
        outputs[count++] = (recede_output){"-", made->table.bytes, made->table.size};
    return recede_cli_write(outputs, count);
}

static int make_and_write(const recede_plan *plan, const char *sheet_path, const char *json_path)
{
    products made = {.sheet_path = sheet_path, .json_path = json_path};
    recede_buffer_start(&made.sheet, NULL);
    recede_buffer_start(&made.json, NULL);
    recede_buffer_start(&made.table, NULL);
    int code = make_all(plan, &made);
    if (!code)
        code = write_all(&made);
    recede_buffer_free(&made.sheet);
    recede_buffer_free(&made.json);
    recede_buffer_free(&made.table);
    return code;
}

static int study(const recede_loaded *loaded, const char *sheet_path, const char *json_path)
{
    recede_cli_progress progress;
    recede_plan *plan;
    recede_error error;
    recede_cli_progress_start(&progress, "seeking recipes");
    recede_code failed = recede_plan_new(loaded->scene, NULL, &progress.progress, &plan, &error);
    recede_cli_progress_end(&progress);
    if (failed)
        return recede_cli_explain(loaded, &error);
    int code = make_and_write(plan, sheet_path, json_path);
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
