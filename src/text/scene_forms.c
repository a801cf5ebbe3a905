/* How the single values of a scene file are read and written. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "colour/error.h"
#include "text/numbers.h"
#include "text/scene_fields.h"

/* ---- messages */

void recede_show_value(const recede_tree *tree, size_t value, char out[RECEDE_SHOWN_SIZE])
{
    enum { SHOWN = RECEDE_SHOWN_SIZE - 4 };
    const cJSON *item = recede_tree_item(tree, value);
    const recede_scanned *place = recede_tree_place(tree, value);
    size_t length = place->end - place->start;
    if (cJSON_IsObject(item) || cJSON_IsArray(item)) {
        strcpy(out, cJSON_IsObject(item) ? "an object in braces" : "a list in brackets");
        return;
    }
    size_t kept = length > SHOWN ? SHOWN : length;
    while (kept < length && kept > 0 &&
           ((unsigned char)tree->bytes[place->start + kept] & 0xC0) == 0x80)
        kept--;
    memcpy(out, tree->bytes + place->start, kept);
    strcpy(out + kept, kept < length ? "..." : "");
}

static const char *key_of(const recede_tree *tree, size_t value)
{
    const char *key = recede_tree_item(tree, value)->string;
    return key ? key : "this value";
}

recede_text_status recede_refuse_because(recede_reader *reader, size_t value, const char *why,
                                         const char *expected)
{
    char found[RECEDE_SHOWN_SIZE];
    recede_place place = recede_tree_place(reader->tree, value)->value;
    recede_show_value(reader->tree, value, found);
    return recede_text_refuse(reader->error, place.line, place.column,
                              "%s is %s%s%s; expected %s", key_of(reader->tree, value), found,
                              *why ? ": " : "", why, expected);
}

recede_text_status recede_refuse_value(recede_reader *reader, size_t value, const char *expected)
{
    return recede_refuse_because(reader, value, "", expected);
}

void recede_show_words(const recede_word *words, char *out, size_t size)
{
    size_t used = 0;
    out[0] = '\0';
    for (; words->word && used < size; words++) {
        const char *between = used == 0 ? "" : words[1].word ? ", " : " or ";
        int length = snprintf(out + used, size - used, "%s\"%s\"", between, words->word);
        used += length > 0 ? (size_t)length : 0;
    }
}

/* ---- texts */

static recede_text_status read_text(recede_reader *reader, size_t value,
                                    const recede_field *field, void *at)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    if (!cJSON_IsString(item))
        return recede_refuse_value(reader, value, field->form->expected);
    recede_copy_text(at, RECEDE_NAME_SIZE, item->valuestring);
    return RECEDE_TEXT_OK;
}

static recede_text_status read_name(recede_reader *reader, size_t value,
                                    const recede_field *field, void *at)
{
    recede_text_status status = read_text(reader, value, field, at);
    const char *name = at;
    if (!status && name[strspn(name, " ")] == '\0')
        return recede_refuse_because(reader, value, "it is empty", field->form->expected);
    return status;
}

static void write_text(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_string(json, field->key, at);
}

const recede_form recede_form_title = {"a text in double quotes", "", read_text, write_text};
const recede_form recede_form_name = {"a name in double quotes", "", read_name, write_text};

/* ---- numbers */

static recede_text_status read_number(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    if (!cJSON_IsNumber(recede_tree_item(reader->tree, value)))
        return recede_refuse_value(reader, value, field->form->expected);
    *(double *)at = recede_tree_number(reader->tree, value);
    return RECEDE_TEXT_OK;
}

static void write_number(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_number(json, field->key, *(const double *)at);
}

const recede_form recede_form_number = {"a number", "", read_number, write_number};

static recede_text_status read_whole(recede_reader *reader, size_t value,
                                     const recede_field *field, void *at)
{
    static const double most = 1e6; /* the core sets the limits that mean something */
    double number = 0;
    recede_text_status status = read_number(reader, value, field, &number);
    if (status)
        return status;
    if (number != floor(number) || fabs(number) > most)
        return recede_refuse_value(reader, value, field->form->expected);
    *(int *)at = (int)number;
    return RECEDE_TEXT_OK;
}

static void write_whole(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_whole(json, field->key, *(const int *)at);
}

const recede_form recede_form_whole = {"a whole number", "", read_whole, write_whole};

/* A number, or a text that convert understands, or one of the field's words. */
static recede_text_status read_measure(recede_reader *reader, size_t value,
                                       const recede_field *field, double *at,
                                       const char *(*convert)(const char *, double *))
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    if (!cJSON_IsString(item))
        return read_number(reader, value, field, at);
    const recede_word *word =
        field->words ? recede_word_named(field->words, item->valuestring) : NULL;
    if (word) {
        *at = word->number;
        return RECEDE_TEXT_OK;
    }
    const char *why = convert ? convert(item->valuestring, at) : "";
    return why ? recede_refuse_because(reader, value, why, field->form->expected)
               : RECEDE_TEXT_OK;
}

static recede_text_status read_length(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    return read_measure(reader, value, field, at, recede_length_of);
}

const recede_form recede_form_length = {"a number of metres, or a text such as \"400 yd\"", " m",
                                        read_length, write_number};

static recede_text_status read_visibility(recede_reader *reader, size_t value,
                                          const recede_field *field, void *at)
{
    double metres = 0;
    recede_text_status status = read_measure(reader, value, field, &metres, recede_length_of);
    if (!status)
        *(double *)at = metres / 1000.0;
    return status;
}

/* The metres that come back as exactly so many km when divided by 1000. */
static double metres_of(double km)
{
    double metres = km * 1000.0, least = metres;
    for (int i = 0; i < 2; i++)
        least = nextafter(least, 0.0);
    for (int i = 0; i < 5; i++, least = nextafter(least, INFINITY))
        if (least / 1000.0 == km)
            return least;
    return metres;
}

static void write_visibility(recede_json *json, const recede_field *field, const void *at)
{
    recede_json_number(json, field->key, metres_of(*(const double *)at));
}

const recede_form recede_form_visibility = {
    "a number of metres, a text such as \"18 km\", or a word such as \"clear\" or \"light haze\"",
    " km", read_visibility, write_visibility};

static recede_text_status read_plain_or_word(recede_reader *reader, size_t value,
                                             const recede_field *field, void *at)
{
    return read_measure(reader, value, field, at, NULL);
}

static void write_plain_or_word(recede_json *json, const recede_field *field, const void *at)
{
    const recede_word *word = recede_word_numbered(field->words, *(const double *)at);
    if (word)
        recede_json_string(json, field->key, word->word);
    else
        write_number(json, field, at);
}

const recede_form recede_form_haze = {
    "\"fine\", \"ordinary\", \"dust\", \"mist\", or an Angstrom exponent from 0 to 2.5", "",
    read_plain_or_word, write_plain_or_word};

const recede_form recede_form_sun_side = {
    "\"into\", \"side\", \"behind\", or the degrees between view and sun from 0 to 180",
    " degrees", read_plain_or_word, write_number};

static recede_text_status read_sun_height(recede_reader *reader, size_t value,
                                          const recede_field *field, void *at)
{
    return read_measure(reader, value, field, at, recede_fists_of);
}

const recede_form recede_form_sun_height = {
    "degrees above the horizon, or a text such as \"2 fists\"", " degrees", read_sun_height,
    write_number};

/* ---- words */

const recede_word recede_sky_words[] = {{"clear", RECEDE_SKY_CLEAR},
                                        {"overcast", RECEDE_SKY_OVERCAST},
                                        {"painted", RECEDE_SKY_PAINTED},
                                        {NULL, 0.0}};
const recede_word recede_medium_words[] = {{"watercolour", RECEDE_WATERCOLOUR},
                                           {"gouache", RECEDE_GOUACHE},
                                           {"acrylic", RECEDE_ACRYLIC},
                                           {"oil", RECEDE_OIL},
                                           {NULL, 0.0}};
const recede_word recede_darks_words[] = {{"fitted", 1}, {"as seen", 0}, {NULL, 0.0}};
const recede_word recede_shadows_words[] = {{"over", 1}, {"beside", 0}, {NULL, 0.0}};

static recede_text_status read_word(recede_reader *reader, size_t value,
                                    const recede_field *field, double *number)
{
    const cJSON *item = recede_tree_item(reader->tree, value);
    const recede_word *word =
        cJSON_IsString(item) ? recede_word_named(field->words, item->valuestring) : NULL;
    if (!word) {
        char expected[120];
        recede_show_words(field->words, expected, sizeof expected);
        return recede_refuse_value(reader, value, expected);
    }
    *number = word->number;
    return RECEDE_TEXT_OK;
}

static void write_word(recede_json *json, const recede_field *field, double number)
{
    recede_json_string(json, field->key, recede_word_numbered(field->words, number)->word);
}

static recede_text_status read_sky(recede_reader *reader, size_t value, const recede_field *field,
                                   void *at)
{
    double number = 0;
    recede_text_status status = read_word(reader, value, field, &number);
    if (!status)
        *(recede_sky_kind *)at = (recede_sky_kind)number;
    return status;
}

static void write_sky(recede_json *json, const recede_field *field, const void *at)
{
    write_word(json, field, *(const recede_sky_kind *)at);
}

const recede_form recede_form_sky = {NULL, "", read_sky, write_sky};

static recede_text_status read_medium(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    double number = 0;
    recede_text_status status = read_word(reader, value, field, &number);
    if (!status)
        *(recede_medium *)at = (recede_medium)number;
    return status;
}

static void write_medium(recede_json *json, const recede_field *field, const void *at)
{
    write_word(json, field, *(const recede_medium *)at);
}

const recede_form recede_form_medium = {NULL, "", read_medium, write_medium};

static recede_text_status read_choice(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    double number = 0;
    recede_text_status status = read_word(reader, value, field, &number);
    if (!status)
        *(int *)at = (int)number;
    return status;
}

static void write_choice(recede_json *json, const recede_field *field, const void *at)
{
    write_word(json, field, *(const int *)at ? 1 : 0);
}

const recede_form recede_form_choice = {NULL, "", read_choice, write_choice};
