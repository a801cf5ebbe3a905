/* The plan as the page shows it. */
#include "page/page.h"
#include "text/words.h"
#include "text/words_care.h"
#include "text/words_layers.h"
#include "text/words_let_down.h"
#include "text/words_ladder.h"
#include "text/words_media.h"
#include "text/words_values.h"

/* Columns: more than there are in any sentence. */
#define UNBROKEN 65536

static void write_wash(recede_json *json, const char *key, const recede_palette *palette,
                       const recede_wash *wash)
{
    recede_json_object(json, key);
    recede_page_hex(json, "target", wash->target.srgb);
    recede_json_number(json, "target_value", wash->target.value);
    recede_json_number(json, "value_as_seen", wash->value_as_seen);
    recede_json_number(json, "own_share", wash->own_share);
    recede_json_string(json, "ground", recede_words_ground(wash->ground));
    recede_page_recipe(json, "recipe", palette, &wash->recipe, wash->ground);
    recede_json_end_object(json);
}

static void write_side(recede_json *json, const char *key, const recede_palette *palette,
                       const recede_side *side)
{
    recede_json_object(json, key);
    write_wash(json, "crest", palette, &side->crest);
    if (side->graded) {
        write_wash(json, "base", palette, &side->base);
        recede_json_bool(json, "two_washes", side->two_washes);
    }
    recede_json_end_object(json);
}

static void write_plane(recede_json *json, const recede_plan *plan, const recede_planned *planned)
{
    const recede_palette *palette = recede_plan_palette(plan);
    const recede_plane *plane = &recede_plan_scene(plan)->planes[planned->plane];
    recede_buffer words;
    recede_json_object(json, NULL);
    recede_json_string(json, "name", plane->name);
    recede_json_whole(json, "number", (long)planned->plane);
    recede_buffer_start(&words, NULL);
    recede_words_distance(&words, plane->distance_m);
    recede_page_words(json, "distance", &words);
    recede_json_number(json, "distance_m", plane->distance_m);
    recede_page_hex(json, "own_hex", recede_colour_of_xyz(
                                         recede_xyz_of_reflectance(&plane->own.reflectance)).srgb);
    recede_buffer_start(&words, NULL);
    recede_own own = recede_page_own_in_words(&plane->own);
    recede_words_own(&words, &own, recede_plan_scene(plan));
    recede_page_words(json, "own", &words);
    write_side(json, "lit", palette, &planned->lit);
    write_side(json, "shadow", palette, &planned->shadow);
    recede_json_string(json, "edge", recede_words_edge(planned->edge));
    recede_json_number(json, "value_step", planned->value_step);
    recede_json_string(json, "apart", recede_words_apart(planned->apart));
    recede_json_end_object(json);
}

static void write_warnings(recede_json *json, const recede_plan *plan)
{
    recede_buffer sentence;
    recede_json_array(json, "warnings");
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
        recede_buffer_start(&sentence, NULL);
        recede_words_warning(&sentence, recede_plan_scene(plan), recede_plan_warning(plan, i));
        recede_json_object(json, NULL);
        recede_json_string(json, "kind",
                           recede_words_warning_kind(recede_plan_warning(plan, i)->kind));
        recede_page_words(json, "sentence", &sentence);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

/* What things are called in the plan's medium, and how it is worked in. */
static void write_trade(recede_json *json, const recede_plan *plan)
{
    const recede_palette *palette = recede_plan_palette(plan);
    const recede_trade *trade = recede_trade_of(recede_palette_medium(palette));
    recede_buffer words;
    recede_json_object(json, "trade");
    recede_json_bool(json, "takes_water",
                     recede_medium_takes_water(recede_palette_medium(palette)));
    recede_json_string(json, "wash", trade->wash);
    recede_json_string(json, "well", trade->well);
    recede_json_string(json, "wells", trade->wells);
    recede_json_string(json, "middle", trade->middle);
    recede_json_string(json, "scrap", trade->scrap);
    recede_json_string(json, "layers", recede_words_layers(plan));
    recede_buffer_start(&words, NULL);
    recede_words_care(&words, plan, NULL, UNBROKEN);
    recede_page_words(json, "care", &words);
    recede_buffer_start(&words, NULL);
    recede_words_beforehand_all(&words, plan, NULL);
    recede_page_words(json, "beforehand", &words);
    recede_json_end_object(json);
}

RECEDE_PAGE_CALL(page_view) int recede_page_view(recede_page *page)
{
    const recede_plan *plan = page->plan;
    recede_buffer words;
    if (!plan)
        return recede_page_refuse(page, 0, 0, "there is no plan to show");
    recede_json json = recede_page_reply_start(page);
    recede_buffer_start(&words, NULL);
    recede_words_air_and_light(&words, recede_plan_scene(plan));
    recede_page_words(&json, "air_and_light", &words);
    write_trade(&json, plan);
    write_side(&json, "sky", recede_plan_palette(plan), recede_plan_sky(plan));
    recede_json_array(&json, "planes");
    for (size_t i = 0; i < recede_plan_count(plan); i++)
        write_plane(&json, plan, recede_plan_at(plan, i));
    recede_json_end_array(&json);
    write_warnings(&json, plan);
    return recede_page_reply_end(page, &json);
}
