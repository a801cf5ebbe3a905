#include "text/palette_file.h"

#include <string.h>

#include "colour/error.h"
#include "text/paint_fields.h"

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))
#define PALETTE(member) offsetof(recede_palette_file, member)

/* ---- the paper */

static int is_kind(const void *paper, recede_own_kind kind)
{
    return ((const recede_own *)paper)->kind == kind;
}

static int is_colour(const void *paper)
{
    return is_kind(paper, RECEDE_OWN_COLOUR);
}

static int is_lab(const void *paper)
{
    return is_kind(paper, RECEDE_OWN_LAB);
}

static int is_reflectance(const void *paper)
{
    return is_kind(paper, RECEDE_OWN_REFLECTANCE);
}

/* One of its colours, and one that a paper can have. */
static recede_text_status finish_paper(recede_reader *reader, size_t value, void *base)
{
    static const char *const keys[] = {"reflectance", "lab", "colour"};
    const recede_own *paper = base;
    recede_text_status status =
        recede_fields_one_of(reader, value, keys, COUNT(keys), "the paper", "colour");
    if (status || paper->kind != RECEDE_OWN_LAB)
        return status;
    if (recede_smooth_of_xyz(recede_xyz_of_lab(paper->lab, recede_white())).reached)
        return RECEDE_TEXT_OK;
    return recede_refuse_because(reader, recede_tree_member(reader->tree, value, "lab"),
                                 "no surface has that colour", "a colour measured on the paper");
}

static const recede_field paper_list[] = {
    {"reflectance", &recede_form_reflectance, .written = is_reflectance},
    {"lab", &recede_form_lab, .written = is_lab},
    {"colour", &recede_form_colour, .written = is_colour},
};
static const recede_fields paper_fields = {"the paper", paper_list, COUNT(paper_list),
                                           finish_paper};

/* ---- the paints */

static recede_text_status read_paints(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    recede_palette_file *palette = at;
    if (!cJSON_IsArray(recede_tree_item(reader->tree, value)))
        return recede_refuse_value(reader, value, field->form->expected);
    if (recede_tree_count(reader->tree, value) == 0)
        return recede_refuse_because(reader, value, "it is empty", field->form->expected);
    return recede_paints_read(reader, value, palette->paints, &palette->count);
}

static void write_paints(recede_json *json, const recede_field *field, const void *at)
{
    const recede_palette_file *palette = at;
    recede_json_array(json, field->key);
    for (size_t i = 0; i < palette->count; i++)
        recede_paint_write(json, &palette->paints[i]);
    recede_json_end_array(json);
}

static const recede_form form_paints = {"a list of 1 to 24 paints", "", read_paints,
                                        write_paints};

/* ---- the fields */

static int has_purpose(const void *palette)
{
    return ((const recede_palette_file *)palette)->purpose[0] != '\0';
}

static int has_medium(const void *palette)
{
    return ((const recede_palette_file *)palette)->has_medium;
}

static int has_paper(const void *palette)
{
    return ((const recede_palette_file *)palette)->has_paper;
}

static recede_text_status finish(recede_reader *reader, size_t value, void *base)
{
    recede_palette_file *palette = base;
    palette->has_medium = recede_tree_member(reader->tree, value, "medium") != RECEDE_TREE_NONE;
    palette->has_paper = recede_tree_member(reader->tree, value, "paper") != RECEDE_TREE_NONE;
    return RECEDE_TEXT_OK;
}

static const recede_field list[] = {
    {"purpose", &recede_form_title, .offset = PALETTE(purpose), .written = has_purpose},
    {"medium", &recede_form_medium, .offset = PALETTE(medium), .words = recede_medium_words,
     .written = has_medium},
    {"paper", &recede_form_object, .offset = PALETTE(paper), .inside = &paper_fields,
     .written = has_paper},
    {"paints", &form_paints, .offset = 0, .required = 1},
};
static const recede_fields fields = {"a palette", list, COUNT(list), finish};

recede_text_status recede_palette_read(recede_reader *reader, size_t value,
                                       recede_palette_file *out)
{
    return recede_fields_read(reader, value, &fields, out);
}

/* ---- the file */

/* A pigment has K; a palette never does. */
static recede_text_status read_tree(recede_reader *reader, recede_palette_file *out)
{
    if (recede_tree_member(reader->tree, 0, "k") == RECEDE_TREE_NONE)
        return recede_palette_read(reader, 0, out);
    recede_text_status status =
        recede_fields_read(reader, 0, &recede_pigment_fields, &out->paints[0]);
    recede_copy_text(out->paints[0].paint.file, RECEDE_NAME_SIZE, reader->name);
    out->count = 1;
    out->has_medium = out->paints[0].has_medium;
    out->medium = out->paints[0].medium;
    return status;
}

recede_text_status recede_palette_file_read(const char *bytes, size_t size, const char *name,
                                            const recede_files *files,
                                            const recede_allocator *allocator,
                                            recede_palette_file *out, recede_text_error *error)
{
    recede_tree tree;
    recede_text_status status = recede_tree_read(bytes, size, allocator, &tree, error);
    recede_reader reader = {.tree = &tree, .error = error, .files = files, .name = name};
    memset(out, 0, sizeof *out);
    if (!status)
        status = read_tree(&reader, out);
    recede_tree_free(&tree);
    if (status && !error->file[0])
        recede_copy_text(error->file, sizeof error->file, name);
    return status;
}

recede_text_status recede_palette_file_load(const char *name, const recede_files *files,
                                            const recede_allocator *allocator,
                                            recede_palette_file *out, recede_text_error *error)
{
    recede_buffer bytes;
    recede_buffer_start(&bytes, allocator);
    recede_text_status status = files->read(files->context, name, &bytes, error);
    if (!status && bytes.failed)
        status = recede_text_no_memory(error);
    if (!status)
        status = recede_palette_file_read(recede_buffer_string(&bytes), bytes.size, name, files,
                                          allocator, out, error);
    recede_buffer_free(&bytes);
    return status;
}

void recede_palette_file_write(const recede_palette_file *palette, recede_buffer *out)
{
    recede_json json;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    recede_fields_write(&json, &fields, palette);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}

void recede_palette_file_use(const recede_palette_file *palette, const char *name,
                             recede_scene *scene)
{
    recede_copy_text(scene->palette, sizeof scene->palette, name);
    scene->paint_count = palette->count;
    for (size_t i = 0; i < palette->count; i++)
        scene->paints[i] = palette->paints[i].paint;
    if (palette->has_medium)
        scene->medium = palette->medium;
    if (palette->has_paper)
        scene->paper = palette->paper.reflectance;
}
