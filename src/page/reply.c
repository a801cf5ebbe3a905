#include <stdio.h>
#include <string.h>

#include "page/page.h"
#include "text/scene_read.h"
#include "text/words.h"

recede_json recede_page_reply_start(recede_page *page)
{
    recede_json json;
    recede_buffer_free(&page->reply);
    recede_buffer_start(&page->reply, NULL);
    recede_json_start(&json, &page->reply);
    recede_json_object(&json, NULL);
    return json;
}

static int refuse(recede_page *page, size_t line, size_t column, const char *what, int missing)
{
    recede_json json = recede_page_reply_start(page);
    recede_json_whole(&json, "line", (long)line);
    recede_json_whole(&json, "column", (long)column);
    recede_json_string(&json, "what", what);
    if (missing)
        recede_json_bool(&json, "missing", 1);
    recede_json_end_object(&json);
    return 0;
}

int recede_page_refuse(recede_page *page, size_t line, size_t column, const char *what)
{
    return refuse(page, line, column, what, 0);
}

int recede_page_reply_end(recede_page *page, recede_json *json)
{
    recede_json_end_object(json);
    return page->reply.failed ? recede_page_refuse(page, 0, 0, "not enough memory") : 1;
}

/* A place in another file is told in words: line and column are the scene's. */
int recede_page_refuse_text(recede_page *page, recede_text_status status,
                            const recede_text_error *error)
{
    char what[RECEDE_NAME_SIZE + sizeof error->what + 50];
    int missing = status == RECEDE_TEXT_UNREADABLE;
    if (!error->file[0])
        return refuse(page, error->line, error->column, error->what, missing);
    snprintf(what, sizeof what, "in %s, line %zu, column %zu: %s", error->file, error->line,
             error->column, error->what);
    return refuse(page, 0, 0, what, missing);
}

int recede_page_refuse_core(recede_page *page, const recede_error *error)
{
    recede_text_error text = {.what = ""};
    recede_scene_explain(page->room, page->bytes, NULL, error, &text);
    return recede_page_refuse(page, text.line, text.column, text.what);
}

static unsigned of_255(double component)
{
    double inside = component < 0 ? 0 : component > 1 ? 1 : component;
    return (unsigned)(inside * 255 + 0.5);
}

void recede_page_hex(recede_json *json, const char *key, recede_srgb srgb)
{
    char hex[8];
    snprintf(hex, sizeof hex, "#%02x%02x%02x", of_255(srgb.r), of_255(srgb.g), of_255(srgb.b));
    recede_json_string(json, key, hex);
}

recede_own recede_page_own_in_words(const recede_own *own)
{
    recede_own told = *own;
    if (told.kind == RECEDE_OWN_COLOUR)
        told.kind = RECEDE_OWN_REFLECTANCE;
    return told;
}

void recede_page_words(recede_json *json, const char *key, recede_buffer *words)
{
    json->out->failed |= words->failed;
    recede_json_string(json, key, recede_buffer_string(words));
    recede_buffer_free(words);
}

static void write_parts(recede_json *json, const recede_palette *palette, const recede_mix *mix)
{
    recede_json_array(json, "paints");
    for (int i = 0; i < mix->count; i++) {
        recede_json_object(json, NULL);
        recede_json_string(json, "name",
                           recede_palette_paint(palette, (size_t)mix->paint[i])->name);
        recede_json_whole(json, "parts", mix->parts[i]);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

void recede_page_recipe(recede_json *json, const char *key, const recede_palette *palette,
                        const recede_recipe *recipe, recede_ground ground)
{
    recede_medium medium = recede_palette_medium(palette);
    recede_buffer words;
    recede_json_object(json, key);
    recede_page_hex(json, "hex", recipe->colour.srgb);
    recede_json_number(json, "value", recipe->colour.value);
    recede_json_number(json, "delta_e", recipe->delta_e);
    recede_json_string(json, "difference", recede_words_difference(recipe->delta_e));
    if (recipe->reach != RECEDE_REACHABLE)
        recede_json_string(json, "reach", recede_words_missed(recipe->reach));
    write_parts(json, palette, &recipe->mix);
    recede_buffer_start(&words, NULL);
    if (ground == RECEDE_ON_LIT && recipe->mix.count == 0)
        recede_buffer_text(&words, "the lit wash as it is");
    else
        recede_words_parts(&words, palette, &recipe->mix);
    recede_page_words(json, "parts", &words);
    if (recipe->mix.count && recede_medium_takes_water(medium)) {
        recede_json_number(json, "water_to_1", recipe->mix.water);
        recede_json_string(json, "consistency", recede_words_consistency(recipe->mix.water));
        recede_buffer_start(&words, NULL);
        recede_words_water(&words, recipe->mix.water);
        recede_page_words(json, "water", &words);
    }
    recede_buffer_start(&words, NULL);
    if (recede_medium_takes_water(medium) || recede_mix_may_slip(palette, &recipe->mix))
        recede_words_slip(&words, medium, recipe->slip);
    else
        recede_buffer_text(&words, "no white to slip with");
    recede_page_words(json, "slip", &words);
    recede_json_end_object(json);
}
