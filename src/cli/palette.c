/* recede palette: palettes, what is known of their paints, and their swatches. */
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/paints.h"
#include "cli/sheets.h"
#include "draw/swatches.h"
#include "text/palette_table.h"

static const char command[] = "palette";

typedef struct {
    recede_cli_paints paints;
    const char *operand, *sheet, *json;
} given;

static int say_wrong(const char *what)
{
    recede_cli_say("recede %s: %s; see recede %s --help", command, what, command);
    return RECEDE_EXIT_USAGE;
}

/* ---------------------------------------------------------------- list -- */

static int list(const given *g)
{
    recede_cli_words said;
    if (g->sheet)
        return say_wrong("a sheet shows one palette: name it, such as landscape-six");
    if (g->paints.medium)
        return say_wrong("--medium goes with one palette: name it, such as opaque-sixteen");
    recede_buffer_start(&said.json, NULL);
    recede_buffer_start(&said.text, NULL);
    recede_palette_list_text(&said.text);
    if (g->json)
        recede_palette_list_write(&said.json);
    int code = recede_cli_sheet_write(NULL, NULL, &said, g->json);
    recede_buffer_free(&said.json);
    recede_buffer_free(&said.text);
    return code;
}

/* --------------------------------------------------------- one palette -- */

/* What stands beside the paints: of a palette file its purpose and the words of its
 * pigments, of a list those of the pigment files in it. */
typedef struct {
    recede_scene scene;
    char purpose[RECEDE_NAME_SIZE];
    recede_pigment_file own[RECEDE_MOST_PAINTS];
    recede_palette_file read;
} asked;

static int read_file(const char *path, recede_palette_file *out)
{
    recede_cli_files files;
    recede_text_error error;
    recede_cli_files_start(&files, NULL);
    recede_text_status status =
        recede_palette_file_load(path, &files.files, NULL, out, &error);
    return status ? recede_cli_say_text_error("recede palette", status, &error)
                  : RECEDE_EXIT_DONE;
}

static const recede_palette_entry *entry_named(const char *name)
{
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        if (strcmp(recede_palette_entry_at(i)->name, name) == 0)
            return recede_palette_entry_at(i);
    return NULL;
}

static int read_palette_words(asked *a)
{
    int code = read_file(a->scene.palette, &a->read);
    if (code)
        return code;
    strcpy(a->purpose, a->read.purpose);
    memcpy(a->own, a->read.paints, sizeof a->own);
    return RECEDE_EXIT_DONE;
}

static int read_list_words(asked *a)
{
    int code = RECEDE_EXIT_DONE;
    for (size_t i = 0; i < a->scene.paint_count && !code; i++) {
        if (!a->scene.paints[i].file[0])
            continue;
        code = read_file(a->scene.paints[i].file, &a->read);
        if (!code)
            a->own[i] = a->read.paints[0];
    }
    return code;
}

static int read_words(asked *a)
{
    const recede_palette_entry *entry = entry_named(a->scene.palette);
    if (entry)
        strcpy(a->purpose, entry->purpose);
    if (entry)
        return RECEDE_EXIT_DONE;
    return a->scene.palette[0] ? read_palette_words(a) : read_list_words(a);
}

static int write_palette(const recede_paints_told *told, const given *g)
{
    recede_swatches_drawing drawing = {.told = told};
    const recede_sheet sheet = recede_swatches_sheet(&drawing);
    const recede_cli_sheet drawn = recede_cli_sheet_of(&sheet);
    recede_cli_words said;
    recede_buffer_start(&said.json, NULL);
    recede_buffer_start(&said.text, NULL);
    recede_palette_told_text(told, &said.text);
    if (g->json)
        recede_palette_told_write(told, &said.json);
    int code = recede_cli_sheet_write(&drawn, g->sheet, &said, g->json);
    recede_buffer_free(&said.json);
    recede_buffer_free(&said.text);
    return code;
}

/* A built-in palette for opaque media, named without a medium, is shown in acrylic,
 * in which most of its figures were measured. */
static int take(const given *g, asked *a)
{
    const recede_palette_entry *entry = entry_named(g->paints.palette);
    recede_cli_paints paints = g->paints;
    recede_scene_default(&a->scene);
    if (entry && entry->opaque && !paints.medium)
        paints.medium = "acrylic";
    int code = recede_cli_paints_take(command, &paints, &a->scene);
    return code ? code : read_words(a);
}

/* Of one paint one may read in any medium: where it needs a white, that is added. */
static void lend_white(asked *a)
{
    recede_scene *scene = &a->scene;
    if (scene->medium == RECEDE_WATERCOLOUR || scene->paint_count != 1 ||
        scene->paints[0].is_white)
        return;
    if (recede_paint_named("titanium white", &scene->paints[1], NULL) == RECEDE_OK)
        scene->paint_count = 2;
    if (!a->purpose[0])
        strcpy(a->purpose, "titanium white is added, to let it down with");
}

static int show(const given *g)
{
    recede_palette *palette = NULL;
    recede_error error;
    asked *a = calloc(1, sizeof *a);
    if (!a)
        return recede_cli_no_memory();
    const recede_scene *scene = &a->scene;
    int code = take(g, a);
    if (!code)
        lend_white(a);
    if (!code && recede_palette_new(scene->paints, scene->paint_count, scene->medium,
                                    &scene->paper, NULL, &palette, &error))
        code = recede_cli_paints_explain(command, &error);
    if (!code) {
        const recede_paints_told told = {scene->palette, a->purpose, palette, a->own};
        code = write_palette(&told, g);
    }
    recede_palette_free(palette);
    free(a);
    return code;
}

int recede_cli_palette(int count, char **words)
{
    given g = {0};
    const recede_option options[] = {
        {'o', NULL, "FILE", "draw its swatches to FILE, a PNG, or a PDF where it ends in .pdf",
         &g.sheet},
        {0, "json", "FILE", "write the same to FILE as JSON", &g.json},
        {0, "medium", "MEDIUM", "watercolour, gouache, acrylic or oil", &g.paints.medium},
        {0, "palette", "PAINTS", "the same as PAINTS alone", &g.paints.palette},
    };
    const recede_usage usage = {
        command, "[PAINTS]",
        "Lists the built-in palettes and pigments: transparency, permanence, staining,\n"
        "granulation, where the figures come from, cautions. With PAINTS (a built-in palette,\n"
        "a palette or pigment file, or a list with commas) tells all about those, and draws\n"
        "their swatches from masstone to wash, with empty boxes to paint one's own beside.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &g.operand);
    if (code != RECEDE_OPTIONS_GO_ON)
        return code;
    if (g.operand && g.paints.palette)
        return say_wrong("the paints are given twice: leave out --palette");
    if (g.operand)
        g.paints.palette = g.operand;
    return g.paints.palette ? show(&g) : list(&g);
}
