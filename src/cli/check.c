/* recede check: is this scene in order, and what does it mean in full? */
#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "text/scene_write.h"

/* The palette is only put together when a plan is made; a fault in it belongs
 * to the check all the same. */
static int check_palette(const recede_loaded *loaded)
{
    const recede_scene *scene = loaded->scene;
    recede_palette *palette;
    recede_error error;
    if (recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper, NULL,
                           &palette, &error))
        return recede_cli_explain(loaded, &error);
    recede_palette_free(palette);
    return RECEDE_EXIT_DONE;
}

static int write_scene(const recede_scene *scene, const char *path)
{
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_scene_write(scene, &out);
    int code = RECEDE_EXIT_DONE;
    if (out.failed) {
        code = recede_cli_no_memory();
    } else {
        recede_output output = {path ? path : "-", out.bytes, out.size};
        code = recede_cli_write(&output, 1);
    }
    recede_buffer_free(&out);
    return code;
}

int recede_cli_check(int count, char **words)
{
    const char *path = NULL, *scene = NULL;
    const recede_option options[] = {
        {'o', NULL, "FILE", "write the scene to FILE instead of standard output", &path},
    };
    const recede_usage usage = {
        "check", "[SCENE]",
        "Checks a scene and prints it with everything filled in that it leaves open.\n"
        "SCENE is a scene file, - for standard input; without one, the built-in scene.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &scene);
    if (code != RECEDE_OPTIONS_GO_ON)
        return code;
    recede_loaded loaded;
    code = recede_cli_load(scene, &loaded);
    if (!code)
        code = check_palette(&loaded);
    if (!code)
        code = write_scene(loaded.scene, path);
    recede_cli_unload(&loaded);
    return code;
}
