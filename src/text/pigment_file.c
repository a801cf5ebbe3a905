#include "text/pigment_file.h"

#include <string.h>

#include "colour/error.h"
#include "paint/names.h"
#include "paint/palette.h"
#include "text/paint_fields.h"

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))
#define PIGMENT(member) offsetof(recede_pigment_file, member)

/* ---- forms that only paints have */

static recede_text_status read_truth(recede_reader *reader, size_t value,
                                     const recede_field *field, void *at)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    if (!cJSON_IsBool(item))
        return recede_refuse_value(reader, value, field->form->expected);
    *(int *)at = cJSON_IsTrue(item) != 0;
    return RECEDE_TEXT_OK;
}

static void write_truth(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_bool(json, field->key, *(const int *)at);
}

const recede_form recede_form_truth = {"true or false", "", read_truth, write_truth};

static recede_text_status read_bands(recede_reader *reader, size_t value,
                                     const recede_field *field, void *at)
{
    recede_spectrum *bands = at;
    recede_text_status status =
        recede_read_numbers(reader, value, field, bands->at, RECEDE_BANDS);
    for (size_t i = 0; !status && i < RECEDE_BANDS; i++)
        if (!(bands->at[i] >= 0.0 && bands->at[i] <= RECEDE_MOST_K_OR_S))
            status = recede_refuse_value(reader, recede_tree_element(reader->tree, value, i),
                                         "a number from 0 to 1000000");
    return status;
}

static void write_bands(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_numbers(json, field->key, ((const recede_spectrum *)at)->at, RECEDE_BANDS);
}

const recede_form recede_form_bands = {"36 numbers from 0, for 380 to 730 nm by 10", "",
                                       read_bands, write_bands};

/* ---- the fields */

static int has_index(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->paint.colour_index[0] != '\0';
}

static int has_caution(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->paint.caution[0] != '\0';
}

static int has_transparency(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->transparency[0] != '\0';
}

static int has_permanence(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->permanence[0] != '\0';
}

static int has_source(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->source[0] != '\0';
}

static int has_measured(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->measured[0] != '\0';
}

static int has_medium(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->has_medium;
}

static int is_white(const void *pigment)
{
    return ((const recede_pigment_file *)pigment)->paint.is_white;
}

/* "water" is what paint is thinned with, in the mixes of a scene. */
static recede_text_status finish(recede_reader *reader, size_t value, void *base)
{
    recede_pigment_file *pigment = base;
    size_t name = recede_tree_member(reader->tree, value, "name");
    if (recede_same_paint_name(pigment->paint.name, "water"))
        return recede_refuse_because(reader, name, "that is what paint is thinned with",
                                     "another name");
    pigment->has_medium = recede_tree_member(reader->tree, value, "medium") != RECEDE_TREE_NONE;
    return RECEDE_TEXT_OK;
}

static const recede_field list[] = {
    {"name", &recede_form_name, .offset = PIGMENT(paint.name), .required = 1},
    {"colour_index", &recede_form_title, .offset = PIGMENT(paint.colour_index),
     .written = has_index},
    {"transparency", &recede_form_title, .offset = PIGMENT(transparency),
     .written = has_transparency},
    {"permanence", &recede_form_title, .offset = PIGMENT(permanence), .written = has_permanence},
    {"caution", &recede_form_title, .offset = PIGMENT(paint.caution), .written = has_caution},
    {"source", &recede_form_title, .offset = PIGMENT(source), .written = has_source},
    {"measured", &recede_form_title, .offset = PIGMENT(measured), .written = has_measured},
    {"medium", &recede_form_medium, .offset = PIGMENT(medium), .words = recede_medium_words,
     .written = has_medium},
    {"is_white", &recede_form_truth, .offset = PIGMENT(paint.is_white), .written = is_white},
    {"k", &recede_form_bands, .offset = PIGMENT(paint.k), .required = 1},
    {"s", &recede_form_bands, .offset = PIGMENT(paint.s), .required = 1},
};
const recede_fields recede_pigment_fields = {"a pigment", list, COUNT(list), finish};

/* ---- the file */

recede_text_status recede_pigment_file_read(const char *bytes, size_t size, const char *name,
                                            const recede_allocator *allocator,
                                            recede_pigment_file *out, recede_text_error *error)
{
    recede_tree tree;
    recede_text_status status = recede_tree_read(bytes, size, allocator, &tree, error);
    recede_reader reader = {.tree = &tree, .error = error, .name = name};
    memset(out, 0, sizeof *out);
    if (!status && recede_tree_member(&tree, 0, "paints") != RECEDE_TREE_NONE)
        status = recede_text_refuse(error, 1, 1, "this is a palette file where a pigment file "
                                    "is expected; name it alone, not in a list, and add the "
                                    "other paints to the \"paints\" inside it");
    if (!status)
        status = recede_fields_read(&reader, 0, &recede_pigment_fields, out);
    recede_tree_free(&tree);
    recede_copy_text(out->paint.file, sizeof out->paint.file, name);
    if (status)
        recede_copy_text(error->file, sizeof error->file, name);
    return status;
}

void recede_pigment_write(recede_json *json, const char *key, const recede_pigment_file *pigment)
{
    recede_json_object(json, key);
    recede_fields_write(json, &recede_pigment_fields, pigment);
    recede_json_end_object(json);
}

void recede_pigment_file_write(const recede_pigment_file *pigment, recede_buffer *out)
{
    recede_json json;
    recede_json_start(&json, out);
    recede_pigment_write(&json, NULL, pigment);
    recede_buffer_text(out, "\n");
}
