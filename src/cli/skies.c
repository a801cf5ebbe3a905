/* recede skies: the same scene in several lights, and what they change. */
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/inputs.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "cli/sheets.h"
#include "draw/skies.h"
#include "text/lights_read.h"
#include "text/scene_read.h"
#include "text/skies_write.h"

typedef struct {
    const char *scene, *lights, *sheet, *json;
} given;

static recede_sheet_result pixels(const void *skies, const recede_sheet_options *options,
                                  recede_sheet_pixels *out)
{
    return recede_skies_pixels(skies, options, out);
}

static recede_sheet_result pdf(const void *skies, const recede_sheet_options *options,
                               recede_buffer *out)
{
    return recede_skies_pdf(skies, options, out);
}

static int read_lights(const char *path, const recede_scene *scene, recede_sky_light *lights,
                       size_t *count)
{
    recede_file_problem problem;
    recede_text_error error;
    recede_buffer bytes;
    int code;
    recede_buffer_start(&bytes, NULL);
    if (recede_cli_read(path, RECEDE_SCENE_MOST_BYTES, &bytes, &problem)) {
        recede_cli_say("%s", problem.text);
        code = problem.refused ? RECEDE_EXIT_REFUSED : RECEDE_EXIT_FAILED;
    } else {
        recede_text_status status = recede_lights_read(recede_buffer_string(&bytes), bytes.size,
                                                       scene, NULL, lights, count, &error);
        const char *name = strcmp(path, "-") ? path : "standard input";
        code = status ? recede_cli_say_text_error(name, status, &error) : RECEDE_EXIT_DONE;
    }
    recede_buffer_free(&bytes);
    return code;
}

static int write_skies(const recede_skies *skies, const given *words)
{
    const recede_cli_sheet sheet = {skies, pixels, pdf};
    recede_cli_words said;
    recede_buffer_start(&said.json, NULL);
    recede_buffer_start(&said.text, NULL);
    recede_skies_write(skies, &said.json);
    recede_skies_tell(skies, &said.text);
    int code = recede_cli_sheet_write(&sheet, words->sheet, &said, words->json);
    recede_buffer_free(&said.json);
    recede_buffer_free(&said.text);
    return code;
}

static int make(const recede_loaded *loaded, const given *words)
{
    recede_sky_light lights[RECEDE_MOST_LIGHTS];
    size_t count = RECEDE_USUAL_LIGHTS;
    recede_skies *skies;
    recede_cli_progress progress;
    recede_error error;
    int code = RECEDE_EXIT_DONE;
    if (words->lights)
        code = read_lights(words->lights, loaded->scene, lights, &count);
    else
        recede_usual_lights(loaded->scene, lights);
    if (code)
        return code;
    recede_cli_progress_start(&progress, "planning each light");
    recede_code failed = recede_skies_new(loaded->scene, lights, count, NULL, &progress.progress,
                                          &skies, NULL, &error);
    recede_cli_progress_end(&progress);
    if (failed)
        return recede_cli_explain(loaded, &error);
    code = write_skies(skies, words);
    recede_skies_free(skies);
    return code;
}

static int run(const given *words)
{
    recede_loaded loaded;
    int code = recede_cli_load(words->scene, &loaded);
    if (!code)
        code = make(&loaded, words);
    recede_cli_unload(&loaded);
    return code;
}

int recede_cli_skies(int count, char **words)
{
    given g = {0};
    const recede_option options[] = {
        {'o', NULL, "FILE", "draw the skies to FILE, a PNG, or a PDF where it ends in .pdf", &g.sheet},
        {0, "json", "FILE", "write the changes to FILE as JSON", &g.json},
        {0, "lights", "FILE", "take 1 to 8 lights from FILE, as docs/teaching.md has it", &g.lights},
    };
    const recede_usage usage = {
        "skies", "[SCENE]",
        "Plans a scene again in other lights (morning haze, clear noon, overcast, evening into\n"
        "the sun, evening with the sun behind) and tells what they change in its mixes.\n"
        "SCENE is a scene file, - for standard input; without one, the built-in scene.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &g.scene);
    return code == RECEDE_OPTIONS_GO_ON ? run(&g) : code;
}
