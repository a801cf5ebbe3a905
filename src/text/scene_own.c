/* Own colours: as a scene file gives them, and the reflectance they mean. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "colour/error.h"
#include "text/nearest.h"
#include "text/scene_fields.h"

/* ---- names */

typedef struct collection {
    const char *key;
    size_t (*count)(void);
    const recede_own_entry *(*at)(size_t index);
    const recede_own_entry *(*named)(const char *name);
    const struct collection *other;
} collection;

static const collection foliage, surfaces;
static const collection foliage = {"foliage", recede_foliage_count, recede_foliage_at,
                                   recede_foliage_named, &surfaces};
static const collection surfaces = {"surface", recede_surface_count, recede_surface_at,
                                    recede_surface_named, &foliage};

static recede_text_status refuse_unknown(recede_reader *reader, size_t value,
                                         const collection *known, const char *name)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_nearest nearest;
    recede_place place = recede_tree_place(reader->tree, value)->value;
    if (known->other->named(name))
        return recede_text_refuse(reader->error, place.line, place.column,
                                  "\"%s\" is no %s but a %s: write \"%s\": \"%s\"", name,
                                  known->key, known->other->key, known->other->key, name);
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < known->count(); i++)
        recede_nearest_offer(&nearest, known->at(i)->name);
    recede_nearest_say(&nearest, offer, sizeof offer);
    return recede_text_refuse(reader->error, place.line, place.column,
                              "%s \"%s\" is not known; %s",
                              recede_tree_item(reader->tree, value)->string, name, offer);
}

static recede_text_status read_entry(recede_reader *reader, size_t value,
                                     const recede_field *field, const collection *known,
                                     recede_own_kind kind, recede_own *own)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    if (!cJSON_IsString(item))
        return recede_refuse_value(reader, value, field->form->expected);
    for (size_t i = 0; i < known->count(); i++) {
        const recede_own_entry *entry = known->at(i);
        if (strcmp(entry->name, item->valuestring) == 0) {
            own->kind = kind;
            own->reflectance = entry->reflectance;
            recede_copy_text(own->name, sizeof own->name, entry->name);
            return RECEDE_TEXT_OK;
        }
    }
    return refuse_unknown(reader, value, known, item->valuestring);
}

static recede_text_status read_foliage(recede_reader *reader, size_t value,
                                       const recede_field *field, void *at)
{
    return read_entry(reader, value, field, &foliage, RECEDE_OWN_FOLIAGE, at);
}

static recede_text_status read_surface(recede_reader *reader, size_t value,
                                       const recede_field *field, void *at)
{
    return read_entry(reader, value, field, &surfaces, RECEDE_OWN_SURFACE, at);
}

static void write_entry(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_string(json, field->key, ((const recede_own *)at)->name);
}

const recede_form recede_form_foliage = {"the name of a foliage, such as \"summer oak\"", "",
                                         read_foliage, write_entry};
const recede_form recede_form_surface = {"the name of a surface, such as \"rock\"", "",
                                         read_surface, write_entry};

/* ---- colours */

static int hex_pair(const char *digits)
{
    int value = 0;
    for (int i = 0; i < 2; i++) {
        char c = digits[i];
        if (c >= '0' && c <= '9')
            value = value * 16 + c - '0';
        else if (c >= 'a' && c <= 'f')
            value = value * 16 + c - 'a' + 10;
        else if (c >= 'A' && c <= 'F')
            value = value * 16 + c - 'A' + 10;
        else
            return -1;
    }
    return value;
}

static recede_text_status read_colour(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    const char *text = cJSON_IsString(item) ? item->valuestring : "";
    recede_own *own = at;
    int part[3] = {-1, -1, -1};
    if (strlen(text) == 7 && text[0] == '#')
        for (int i = 0; i < 3; i++)
            part[i] = hex_pair(text + 1 + 2 * (size_t)i);
    if (part[0] < 0 || part[1] < 0 || part[2] < 0)
        return recede_refuse_value(reader, value, field->form->expected);
    own->kind = RECEDE_OWN_COLOUR;
    own->srgb = (recede_srgb){part[0] / 255.0, part[1] / 255.0, part[2] / 255.0};
    own->reflectance = recede_smooth_of_xyz(recede_xyz_of_srgb(own->srgb)).reflectance;
    return RECEDE_TEXT_OK;
}

static unsigned byte_of(double component)
{
    double byte = floor(component * 255.0 + 0.5);
    return byte <= 0.0 ? 0 : byte >= 255.0 ? 255 : (unsigned)byte;
}

static void write_colour(recede_json *json, const recede_field *field, const void *at)
{
    char text[8];
    recede_srgb srgb = ((const recede_own *)at)->srgb;
    snprintf(text, sizeof text, "#%02x%02x%02x", byte_of(srgb.r), byte_of(srgb.g),
             byte_of(srgb.b));
    recede_json_string(json, field->key, text);
}

const recede_form recede_form_colour = {"an sRGB colour as \"#rrggbb\"", "", read_colour,
                                        write_colour};

/* ---- lists of numbers */

/* One too many is often a decimal comma. */
static recede_text_status refuse_count(recede_reader *reader, size_t value,
                                       const recede_field *field, size_t expected)
{
    char why[80];
    size_t count = recede_tree_count(reader->tree, value);
    snprintf(why, sizeof why, "it holds %zu%s", count,
             count > expected ? ", and a decimal takes a point, as in 86.5" : "");
    return recede_refuse_because(reader, value, why, field->form->expected);
}

recede_text_status recede_read_numbers(recede_reader *reader, size_t value,
                                       const recede_field *field, double *out, size_t count)
{
    const recede_tree *tree = reader->tree;
    if (!cJSON_IsArray(recede_tree_item(tree, value)))
        return recede_refuse_value(reader, value, field->form->expected);
    if (recede_tree_count(tree, value) != count)
        return refuse_count(reader, value, field, count);
    size_t end = recede_tree_end(tree, value);
    for (size_t c = recede_tree_first(tree, value); c < end; c = recede_tree_next(tree, c)) {
        if (!cJSON_IsNumber(recede_tree_item(tree, c)))
            return recede_refuse_value(reader, c, "a number");
        *out++ = recede_tree_number(tree, c);
    }
    return RECEDE_TEXT_OK;
}

static recede_text_status read_lab(recede_reader *reader, size_t value, const recede_field *field,
                                   void *at)
{
    static const double least[] = {0.0, -150.0, -150.0}, most[] = {100.0, 150.0, 150.0};
    static const char *const expected[] = {"L* from 0 to 100", "a* from -150 to 150",
                                           "b* from -150 to 150"};
    double lab[3];
    recede_own *own = at;
    recede_text_status status = recede_read_numbers(reader, value, field, lab, 3);
    for (size_t i = 0; !status && i < 3; i++)
        if (!(lab[i] >= least[i] && lab[i] <= most[i]))
            status = recede_refuse_value(
                reader, recede_tree_element(reader->tree, value, i), expected[i]);
    if (status)
        return status;
    own->kind = RECEDE_OWN_LAB;
    own->lab = (recede_lab){lab[0], lab[1], lab[2]};
    own->reflectance =
        recede_smooth_of_xyz(recede_xyz_of_lab(own->lab, recede_white())).reflectance;
    return RECEDE_TEXT_OK;
}

static void write_lab(recede_json *json, const recede_field *field, const void *at)
{
    recede_lab lab = ((const recede_own *)at)->lab;
    const double numbers[] = {lab.l, lab.a, lab.b};
    recede_json_numbers(json, field->key, numbers, 3);
}

const recede_form recede_form_lab = {"three numbers [L*, a*, b*]", "", read_lab, write_lab};

static recede_text_status read_reflectance(recede_reader *reader, size_t value,
                                           const recede_field *field, void *at)
{
    recede_own *own = at;
    double *out = own->reflectance.at;
    recede_text_status status = recede_read_numbers(reader, value, field, out, RECEDE_BANDS);
    for (size_t i = 0; !status && i < RECEDE_BANDS; i++)
        if (!(out[i] >= 0.0 && out[i] <= 1.0))
            status = recede_refuse_value(reader, recede_tree_element(reader->tree, value, i),
                                         "a reflectance from 0 to 1");
    own->kind = RECEDE_OWN_REFLECTANCE;
    return status;
}

static void write_reflectance(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_numbers(json, field->key, ((const recede_own *)at)->reflectance.at, RECEDE_BANDS);
}

const recede_form recede_form_reflectance = {
    "36 reflectances from 0 to 1, for 380 to 730 nm by 10", "", read_reflectance,
    write_reflectance};
