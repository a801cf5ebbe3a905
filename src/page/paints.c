/* Paints as the page shows them: those of the library, those of the scene, and those
 * of a file that is opened. */
#include <stdlib.h>
#include <string.h>

#include "page/page.h"
#include "paint/strength.h"
#include "text/palette_file.h"
#include "text/tree.h"
#include "text/words.h"
#include "text/words_paint.h"

/* What the lower half of a pan shows: water, or white, to 1 of paint. */
static const double let_down_by[] = {[RECEDE_WATERCOLOUR] = 10, [RECEDE_GOUACHE] = 3,
                                     [RECEDE_ACRYLIC] = 3,      [RECEDE_OIL] = 3};

static void write_swatch(recede_json *json, const recede_palette *palette, size_t paint)
{
    int alone = recede_strength_count(palette, (int)paint) == 1;
    double added = alone ? 0 : let_down_by[recede_palette_medium(palette)];
    recede_page_hex(json, "masstone", recede_strength_colour(palette, (int)paint, 0).srgb);
    recede_page_hex(json, "wash", recede_strength_colour(palette, (int)paint, added).srgb);
}

static void write_cautions(recede_json *json, const recede_palette *palette, size_t paint)
{
    const recede_paints_told told = {.name = "", .purpose = "", .palette = palette};
    const char *cautions[RECEDE_MOST_IN_MIX];
    size_t count = recede_paint_cautions(&told, paint, cautions);
    recede_buffer words;
    if (count == 0)
        return;
    recede_buffer_start(&words, NULL);
    for (size_t i = 0; i < count; i++)
        recede_buffer_format(&words, "%s%s", i ? "; " : "", cautions[i]);
    recede_page_words(json, "caution", &words);
}

static void write_paint(recede_json *json, const recede_palette *palette, size_t index)
{
    const recede_paint *paint = recede_palette_paint(palette, index);
    recede_json_object(json, NULL);
    recede_json_string(json, "name", paint->name);
    recede_json_string(json, "colour_index", paint->colour_index);
    recede_json_bool(json, "own", paint->ingredients == 0);
    recede_json_bool(json, "white", paint->is_white);
    write_swatch(json, palette, index);
    write_cautions(json, palette, index);
    recede_json_end_object(json);
}

/* ---- those of the library */

/* A paint on the library's paper; opaque media let it down with titanium white. */
void recede_page_pan(recede_json *json, const char *name, recede_medium medium)
{
    recede_spectrum paper = recede_paper_white();
    recede_paint paints[2];
    recede_palette *palette;
    recede_error error;
    if (recede_paint_named(name, &paints[0], &error) ||
        recede_paint_named("titanium white", &paints[1], &error))
        return;
    size_t count = medium == RECEDE_WATERCOLOUR || paints[0].is_white ? 1 : 2;
    if (recede_palette_new(paints, count, medium, &paper, NULL, &palette, &error))
        return;
    write_paint(json, palette, 0);
    recede_palette_free(palette);
}

/* ---- those of the scene */

RECEDE_PAGE_CALL(page_box) int recede_page_box_told(recede_page *page)
{
    const recede_scene *scene = &page->scene;
    recede_palette *palette;
    recede_error error;
    if (!page->has_scene)
        return recede_page_refuse(page, 0, 0, "there is no scene");
    if (recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper, NULL,
                           &palette, &error))
        return recede_page_refuse_core(page, &error);
    recede_json json = recede_page_reply_start(page);
    recede_json_bool(&json, "takes_water", recede_medium_takes_water(scene->medium));
    recede_page_hex(&json, "ground", recede_colour_of_xyz(
                                         recede_xyz_of_reflectance(&scene->paper)).srgb);
    recede_json_array(&json, "paints");
    for (size_t i = 0; i < scene->paint_count; i++)
        write_paint(&json, palette, i);
    recede_json_end_array(&json);
    recede_palette_free(palette);
    return recede_page_reply_end(page, &json);
}

/* ---- files */

/* What a text is, by the keys that only a palette or only a pigment has. */
static const char *kind_of(const recede_tree *tree)
{
    return recede_tree_member(tree, 0, "k") != RECEDE_TREE_NONE        ? "pigment"
           : recede_tree_member(tree, 0, "s") != RECEDE_TREE_NONE      ? "pigment"
           : recede_tree_member(tree, 0, "paints") != RECEDE_TREE_NONE ? "palette"
                                                                       : "scene";
}

static recede_text_status check(recede_page *page, size_t size, const char *kind,
                                recede_text_error *error)
{
    recede_files files = recede_page_files(page);
    recede_palette_file *palette = malloc(sizeof *palette);
    if (!palette)
        return recede_text_no_memory(error);
    recede_text_status status =
        strcmp(kind, "pigment") == 0
            ? recede_pigment_file_read(page->room, size, "", NULL, &palette->paints[0], error)
            : recede_palette_file_read(page->room, size, "", &files, NULL, palette, error);
    free(palette);
    return status;
}

RECEDE_PAGE_CALL(page_kind) int recede_page_kind(recede_page *page, size_t size)
{
    recede_text_error error;
    recede_tree tree;
    recede_text_status status = recede_tree_read(page->room, size, NULL, &tree, &error);
    const char *kind = status ? "" : kind_of(&tree);
    recede_tree_free(&tree);
    if (!status && strcmp(kind, "scene") != 0)
        status = check(page, size, kind, &error);
    if (status)
        return recede_page_refuse_text(page, status, &error);
    recede_json json = recede_page_reply_start(page);
    recede_json_string(&json, "kind", kind);
    return recede_page_reply_end(page, &json);
}
