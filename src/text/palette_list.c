/* A list of paints, in a scene or a palette file. */
#include <string.h>

#include "colour/error.h"
#include "paint/names.h"
#include "text/paint_fields.h"

recede_text_status recede_refuse_unknown(recede_reader *reader, size_t value, const char *what,
                                         const recede_nearest *nearest)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_place place = recede_tree_place(reader->tree, value)->value;
    recede_nearest_say(nearest, offer, sizeof offer);
    return recede_text_refuse(reader->error, place.line, place.column, "%s \"%s\" is not known; %s",
                              what, nearest->found, offer);
}

static recede_text_status refuse_paint(recede_reader *reader, size_t value, const char *name)
{
    recede_nearest nearest;
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        recede_nearest_offer(&nearest, recede_pigment_at(i)->name);
        recede_nearest_offer(&nearest, recede_pigment_at(i)->colour_index);
    }
    for (size_t i = 0; i < recede_tube_count(); i++)
        recede_nearest_offer(&nearest, recede_tube_name_at(i));
    return recede_refuse_unknown(reader, value, "the paint", &nearest);
}

/* ---- files */

/* Has the file named at value read; seen: its name as files sees it. */
static recede_text_status read_bytes(recede_reader *reader, size_t value, const char *name,
                                     char seen[RECEDE_NAME_SIZE], recede_buffer *out)
{
    static const char expected[] = "a file in the same folder or below it, such as "
                                   "\"my-green.json\"";
    recede_place place = recede_tree_place(reader->tree, value)->value;
    const char *wrong = recede_file_name_wrong(name);
    if (wrong)
        return recede_refuse_because(reader, value, wrong, expected);
    if (!recede_file_beside(reader->name, name, seen))
        return recede_refuse_because(reader, value, "with its folders it is over 200 bytes long",
                                     expected);
    if (!reader->files)
        return recede_text_refuse(reader->error, place.line, place.column,
                                  "the file \"%s\" cannot be read here; list its paints "
                                  "instead", name);
    recede_text_status status =
        reader->files->read(reader->files->context, seen, out, reader->error);
    if (!status && out->failed)
        status = recede_text_no_memory(reader->error);
    if (!status && out->size > RECEDE_FILE_MOST_BYTES)
        status = recede_text_refuse(reader->error, 0, 0, "the file \"%s\" has %zu bytes; at most "
                                    "%zu are read", name, out->size, RECEDE_FILE_MOST_BYTES);
    if (status && status != RECEDE_TEXT_NO_MEMORY) {
        reader->error->line = place.line;
        reader->error->column = place.column;
    }
    return status;
}

static recede_text_status read_pigment_file(recede_reader *reader, size_t value, const char *name,
                                            recede_pigment_file *out)
{
    char seen[RECEDE_NAME_SIZE];
    recede_buffer bytes;
    recede_buffer_start(&bytes, reader->tree->allocator);
    recede_text_status status = read_bytes(reader, value, name, seen, &bytes);
    if (!status)
        status = recede_pigment_file_read(recede_buffer_string(&bytes), bytes.size, seen,
                                          reader->tree->allocator, out, reader->error);
    recede_buffer_free(&bytes);
    return status;
}

recede_text_status recede_palette_named(recede_reader *reader, size_t value, const char *name,
                                        recede_palette_file *out)
{
    char seen[RECEDE_NAME_SIZE];
    recede_buffer bytes;
    recede_buffer_start(&bytes, reader->tree->allocator);
    recede_text_status status = read_bytes(reader, value, name, seen, &bytes);
    if (!status)
        status = recede_palette_file_read(recede_buffer_string(&bytes), bytes.size, seen,
                                          reader->files, reader->tree->allocator, out,
                                          reader->error);
    recede_buffer_free(&bytes);
    return status;
}

/* ---- the list */

static recede_text_status read_paint(recede_reader *reader, size_t value, recede_pigment_file *out)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    memset(out, 0, sizeof *out);
    if (cJSON_IsObject(item))
        return recede_fields_read(reader, value, &recede_pigment_fields, out);
    if (!cJSON_IsString(item))
        return recede_refuse_value(reader, value, "the name of a paint in double quotes");
    if (recede_is_file_name(item->valuestring))
        return read_pigment_file(reader, value, item->valuestring, out);
    if (recede_paint_named(item->valuestring, &out->paint, NULL) != RECEDE_OK)
        return refuse_paint(reader, value, item->valuestring);
    return RECEDE_TEXT_OK;
}

static recede_text_status add_paint(recede_reader *reader, size_t value,
                                    recede_pigment_file *paints, size_t *count)
{
    recede_place place = recede_tree_place(reader->tree, value)->value;
    if (*count == RECEDE_MOST_PAINTS)
        return recede_text_refuse(reader->error, place.line, place.column,
                                  "found one paint too many; a palette has at most %d",
                                  RECEDE_MOST_PAINTS);
    recede_text_status status = read_paint(reader, value, &paints[*count]);
    for (size_t i = 0; !status && i < *count; i++)
        if (recede_same_paint_name(paints[i].paint.name, paints[*count].paint.name))
            return recede_text_refuse(reader->error, place.line, place.column,
                                      "the paint \"%s\" stands twice in the palette; keep one",
                                      paints[*count].paint.name);
    *count += status == RECEDE_TEXT_OK;
    return status;
}

recede_text_status recede_paints_read(recede_reader *reader, size_t value,
                                      recede_pigment_file paints[RECEDE_MOST_PAINTS],
                                      size_t *count)
{
    const recede_tree *tree = reader->tree;
    size_t end = recede_tree_end(tree, value);
    recede_text_status status = RECEDE_TEXT_OK;
    *count = 0;
    for (size_t c = recede_tree_first(tree, value); !status && c < end;
         c = recede_tree_next(tree, c))
        status = add_paint(reader, c, paints, count);
    return status;
}

void recede_paint_write(recede_json *json, const recede_pigment_file *pigment)
{
    const recede_paint *paint = &pigment->paint;
    if (paint->ingredients > 0 || paint->file[0])
        recede_json_string(json, NULL, paint->ingredients > 0 ? paint->name : paint->file);
    else
        recede_pigment_write(json, NULL, pigment);
}
