/* The names a scene can use, for the page's controls. */
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

static void write_pans(recede_json *json, const char *key, recede_medium medium)
{
    recede_json_object(json, key);
    recede_json_array(json, "pigments");
    for (size_t i = 0; i < recede_pigment_count(); i++)
        recede_page_pan(json, recede_pigment_at(i)->name, medium);
    recede_json_end_array(json);
    recede_json_array(json, "tubes");
    for (size_t i = 0; i < recede_tube_count(); i++)
        recede_page_pan(json, recede_tube_name_at(i), medium);
    recede_json_end_array(json);
    recede_json_end_object(json);
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
    write_pans(&json, "in_water", RECEDE_WATERCOLOUR);
    write_pans(&json, "in_white", RECEDE_OIL);
    write_palettes(&json);
    return recede_page_reply_end(page, &json);
}
