/* Palettes and pigments as JSON. */
#include <string.h>

#include "paint/strength.h"
#include "text/palette_table.h"
#include "text/plan_write.h"
#include "text/words.h"

static void add_text(recede_json *json, const char *key, const char *text)
{
    if (*text)
        recede_json_string(json, key, text);
}

static void add_pigment(recede_json *json, const recede_pigment *pigment)
{
    recede_json_string(json, "name", pigment->name);
    recede_json_string(json, "colour_index", pigment->colour_index);
    for (int trait = 0; trait < RECEDE_TRAITS; trait++)
        add_text(json, recede_words_trait_name((recede_trait)trait),
                 recede_pigment_trait(pigment, (recede_trait)trait));
    add_text(json, "caution", pigment->caution);
}

/* ---------------------------------------------------------------- list -- */

/* The next of the names between bars, without the blanks about it; NULL: no more. */
static const char *next_name(const char *at, char name[RECEDE_NAME_SIZE])
{
    at += strspn(at, " |");
    size_t whole = strcspn(at, "|"), length = whole;
    while (length && at[length - 1] == ' ')
        length--;
    if (!length || length >= RECEDE_NAME_SIZE)
        return NULL;
    memcpy(name, at, length);
    name[length] = '\0';
    return at + whole;
}

static void add_entry(recede_json *json, const recede_palette_entry *entry)
{
    char name[RECEDE_NAME_SIZE];
    recede_json_object(json, NULL);
    recede_json_string(json, "name", entry->name);
    recede_json_string(json, "purpose", entry->purpose);
    recede_json_bool(json, "opaque", entry->opaque);
    recede_json_array(json, "paints");
    for (const char *at = next_name(entry->paints, name); at; at = next_name(at, name))
        recede_json_string(json, NULL, name);
    recede_json_end_array(json);
    recede_json_end_object(json);
}

void recede_palette_list_write(recede_buffer *out)
{
    recede_json json;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    recede_json_array(&json, "palettes");
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        add_entry(&json, recede_palette_entry_at(i));
    recede_json_end_array(&json);
    recede_json_array(&json, "pigments");
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        recede_json_object(&json, NULL);
        add_pigment(&json, recede_pigment_at(i));
        recede_json_end_object(&json);
    }
    recede_json_end_array(&json);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}

/* --------------------------------------------------------- one palette -- */

static void add_strengths(recede_json *json, const recede_palette *palette, int paint)
{
    int water = recede_medium_takes_water(recede_palette_medium(palette));
    recede_json_array(json, "strengths");
    for (int step = 0; step < recede_strength_count(palette, paint); step++) {
        double added = recede_strength_at(step);
        recede_colour colour = recede_strength_colour(palette, paint, added);
        recede_colour on_ink = recede_strength_on_ink(palette, paint, added);
        recede_json_object(json, NULL);
        recede_json_number(json, water ? "water" : "white", added);
        recede_colour_write(json, "colour", &colour, NULL);
        recede_colour_write(json, "on_ink", &on_ink, NULL);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

static void add_made_of(recede_json *json, const recede_paint *paint)
{
    recede_json_array(json, "made_of");
    for (int i = 0; i < paint->ingredients; i++) {
        recede_json_object(json, NULL);
        recede_json_whole(json, "parts", paint->of[i].parts);
        add_pigment(json, paint->of[i].pigment);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

static void add_own(recede_json *json, const recede_paint *paint, const recede_pigment_file *own)
{
    recede_json_object(json, "own");
    add_text(json, "file", paint->file);
    for (int trait = 0; own && trait < RECEDE_TRAITS; trait++)
        add_text(json, recede_words_trait_name((recede_trait)trait),
                 recede_own_trait(own, (recede_trait)trait));
    if (own && own->has_medium)
        recede_json_string(json, "medium", recede_words_medium(own->medium));
    add_text(json, "caution", paint->caution);
    recede_json_end_object(json);
}

static void add_paint(recede_json *json, const recede_paints_told *told, size_t index)
{
    const recede_paint *paint = recede_palette_paint(told->palette, index);
    recede_json_object(json, NULL);
    recede_json_string(json, "name", paint->name);
    add_text(json, "colour_index", paint->colour_index);
    recede_json_bool(json, "is_white", paint->is_white);
    if (paint->ingredients)
        add_made_of(json, paint);
    else
        add_own(json, paint, told->own ? &told->own[index] : NULL);
    add_strengths(json, told->palette, (int)index);
    recede_json_end_object(json);
}

void recede_palette_told_write(const recede_paints_told *told, recede_buffer *out)
{
    recede_json json;
    recede_colour paper =
        recede_colour_of_xyz(recede_xyz_of_reflectance(recede_palette_paper(told->palette)));
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    add_text(&json, "palette", told->name);
    add_text(&json, "purpose", told->purpose);
    recede_json_string(&json, "medium", recede_words_medium(recede_palette_medium(told->palette)));
    recede_colour_write(&json, "paper", &paper, NULL);
    recede_json_array(&json, "paints");
    for (size_t i = 0; i < recede_palette_count(told->palette); i++)
        add_paint(&json, told, i);
    recede_json_end_array(&json);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}
