#include "cli/own_paints.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load.h"
#include "text/palette_file.h"

typedef struct {
    const char *command, *option, *path;
} asked;

static int load(const asked *a, recede_palette_file *palette)
{
    char subject[80];
    recede_cli_files files;
    recede_text_error error;
    if (strlen(a->path) >= RECEDE_NAME_SIZE)
        return recede_cli_wrong(a->command, a->option, a->path,
                                "it is over 200 bytes long; change to its folder");
    recede_cli_files_start(&files, NULL);
    recede_text_status status =
        recede_palette_file_load(a->path, &files.files, NULL, palette, &error);
    snprintf(subject, sizeof subject, "recede %s: --%s", a->command, a->option);
    return status ? recede_cli_say_text_error(subject, status, &error) : RECEDE_EXIT_DONE;
}

int recede_cli_pigment_file(const char *command, const char *option, const char *path,
                            recede_paint *paint)
{
    const asked a = {command, option, path};
    recede_palette_file *palette = malloc(sizeof *palette);
    if (!palette)
        return recede_cli_no_memory();
    int code = load(&a, palette);
    if (!code && strcmp(palette->paints[0].paint.file, path) != 0)
        code = recede_cli_wrong(command, option, path,
                                "it is a palette file; a pigment file is expected in a list: name "
                                "the palette file alone, and add the other paints to the "
                                "\"paints\" inside it");
    if (!code)
        *paint = palette->paints[0].paint;
    free(palette);
    return code;
}

int recede_cli_palette_file(const char *command, const char *option, const char *path,
                            recede_scene *scene)
{
    const asked a = {command, option, path};
    recede_medium before = scene->medium;
    recede_palette_file *palette = malloc(sizeof *palette);
    if (!palette)
        return recede_cli_no_memory();
    int code = load(&a, palette);
    if (!code)
        recede_palette_file_use(palette, path, scene);
    if (scene->medium != before)
        scene->shadows_over = -1; /* as is usual in the new medium */
    free(palette);
    return code;
}
