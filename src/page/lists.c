/* The names a scene can use, for the page's controls. */
#include <math.h>
#include <string.h>

#include "page/page.h"
#include "text/units.h"

static recede_srgb colour_of(const recede_spectrum *reflectance)
{
    return recede_colour_of_xyz(recede_xyz_of_reflectance(reflectance)).srgb;
}

static void write_own(recede_json *json, const char *key, size_t count,
                      const recede_own_entry *(*at)(size_t))
{
    recede_json_array(json, key);
    for (size_t i = 0; i < count; i++) {
        recede_json_object(json, NULL);
        recede_json_string(json, "name", at(i)->name);
        recede_page_hex(json, "hex", colour_of(&at(i)->reflectance));
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

static void write_words(recede_json *json, const char *key, const recede_word *words)
{
    recede_json_array(json, key);
    for (; words->word; words++) {
        recede_json_object(json, NULL);
        recede_json_string(json, "word", words->word);
        recede_json_number(json, "number", words->number);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

static void write_paint(recede_json *json, const char *name, const char *caution,
                        const recede_spectrum *paper)
{
    recede_paint paint;
    recede_error error;
    if (recede_paint_named(name, &paint, &error))
        return;
    recede_spectrum wash = recede_film(&paint.k, &paint.s, recede_film_of_water(10), paper);
    recede_spectrum full = recede_film(&paint.k, &paint.s, recede_film_of_water(0), paper);
    recede_json_object(json, NULL);
    recede_json_string(json, "name", name);
    recede_json_string(json, "colour_index", paint.colour_index);
    if (*caution)
        recede_json_string(json, "caution", caution);
    recede_page_hex(json, "masstone", colour_of(&full));
    recede_page_hex(json, "wash", colour_of(&wash));
    recede_json_end_object(json);
}

static void write_paints(recede_json *json)
{
    recede_spectrum paper = recede_paper_white();
    recede_json_array(json, "pigments");
    for (size_t i = 0; i < recede_pigment_count(); i++)
        write_paint(json, recede_pigment_at(i)->name, recede_pigment_at(i)->caution, &paper);
    recede_json_end_array(json);
    recede_json_array(json, "tubes");
    for (size_t i = 0; i < recede_tube_count(); i++)
        write_paint(json, recede_tube_name_at(i), "", &paper);
    recede_json_end_array(json);
}

static void write_palettes(recede_json *json)
{
    recede_json_array(json, "palettes");
    for (size_t i = 0; i < recede_palette_entry_count(); i++) {
        const recede_palette_entry *entry = recede_palette_entry_at(i);
        recede_json_object(json, NULL);
        recede_json_string(json, "name", entry->name);
        recede_json_string(json, "purpose", entry->purpose);
        recede_json_bool(json, "opaque", entry->opaque);
        recede_json_string(json, "paints", entry->paints);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

RECEDE_PAGE_CALL(page_lists) int recede_page_lists(recede_page *page)
{
    recede_json json = recede_page_reply_start(page);
    recede_json_string(&json, "version", RECEDE_VERSION);
    write_own(&json, "foliage", recede_foliage_count(), recede_foliage_at);
    write_own(&json, "surfaces", recede_surface_count(), recede_surface_at);
    write_words(&json, "visibility", recede_visibility_words);
    write_words(&json, "haze", recede_haze_words);
    write_paints(&json);
    write_palettes(&json);
    return recede_page_reply_end(page, &json);
}
