/* A scene's palette: the name of a built-in one, a palette file, what such a file
 * holds, or a list of paints. */
#include <string.h>

#include "colour/memory.h"
#include "plan/fits.h"
#include "text/paint_fields.h"

static recede_text_status read_named(recede_reader *reader, size_t value, const char *name)
{
    if (recede_scene_use_palette(reader->scene, name, NULL) == RECEDE_OK)
        return RECEDE_TEXT_OK;
    recede_nearest nearest;
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        recede_nearest_offer(&nearest, recede_palette_entry_at(i)->name);
    return recede_refuse_unknown(reader, value, "the palette", &nearest);
}

static recede_text_status read_list(recede_reader *reader, size_t value,
                                    recede_palette_file *palette)
{
    static const char expected[] = "a list of at least one paint";
    if (recede_tree_count(reader->tree, value) == 0)
        return recede_refuse_because(reader, value, "it is empty", expected);
    return recede_paints_read(reader, value, palette->paints, &palette->count);
}

/* A file where name is not NULL, else a list, or what a palette file holds. */
static recede_text_status read_own(recede_reader *reader, size_t value, const char *name)
{
    const recede_allocator *allocator = reader->tree->allocator;
    recede_palette_file *palette = recede_allocate_array(allocator, 1, sizeof *palette);
    if (!palette)
        return recede_text_no_memory(reader->error);
    memset(palette, 0, sizeof *palette);
    int is_list = cJSON_IsArray(recede_tree_item(reader->tree, value));
    recede_text_status status = name      ? recede_palette_named(reader, value, name, palette)
                                : is_list ? read_list(reader, value, palette)
                                          : recede_palette_read(reader, value, palette);
    if (!status)
        recede_palette_file_use(palette, name ? name : "", reader->scene);
    recede_release(allocator, palette);
    return status;
}

static recede_text_status read_palette(recede_reader *reader, size_t value,
                                       const recede_field *field, void *at)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    (void)at; /* the scene, which reader has too */
    if (cJSON_IsArray(item) || cJSON_IsObject(item))
        return read_own(reader, value, NULL);
    if (!cJSON_IsString(item))
        return recede_refuse_value(reader, value, field->form->expected);
    if (recede_is_file_name(item->valuestring))
        return read_own(reader, value, item->valuestring);
    return read_named(reader, value, item->valuestring);
}

static void write_paints(recede_json *json, const char *key, const recede_scene *scene)
{
    recede_json_array(json, key);
    for (size_t i = 0; i < scene->paint_count; i++) {
        const recede_pigment_file pigment = {.paint = scene->paints[i]};
        recede_paint_write(json, &pigment);
    }
    recede_json_end_array(json);
}

static void write_palette(recede_json *json, const recede_field *field, const void *at)
{
    const recede_scene *scene = at;
    if (scene->palette[0]) {
        recede_json_string(json, field->key, scene->palette);
        return;
    }
    recede_spectrum white = recede_paper_white();
    if (recede_same_spectrum(&scene->paper, &white)) {
        write_paints(json, field->key, scene);
        return;
    }
    recede_json_object(json, field->key);
    recede_json_object(json, "paper");
    recede_json_numbers(json, "reflectance", scene->paper.at, RECEDE_BANDS);
    recede_json_end_object(json);
    write_paints(json, "paints", scene);
    recede_json_end_object(json);
}

const recede_form recede_form_palette = {
    "the name of a palette, such as \"landscape-twelve\", a palette file, such as \"box.json\", "
    "an object with what such a file holds, or a list of at least one paint", "", read_palette,
    write_palette};
