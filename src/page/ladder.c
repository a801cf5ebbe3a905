/* One plane's own colour, farther and farther off. */
#include "page/page.h"
#include "text/words.h"
#include "text/words_ladder.h"

static const double distances_m[] = {10, 50, 200, 500, 1000, 2000, 5000, 10000, 20000};
enum { RUNGS = sizeof distances_m / sizeof distances_m[0] };

static void write_rung(recede_json *json, const recede_ladder *ladder, size_t at)
{
    static const char *const rows[] = {"lit", "shadow", "white"};
    const recede_rung *rung = &ladder->air[0].rung[at];
    recede_buffer words;
    recede_json_object(json, NULL);
    recede_buffer_start(&words, NULL);
    recede_words_distance(&words, rung->distance_m);
    recede_page_words(json, "distance", &words);
    recede_buffer_start(&words, NULL);
    recede_words_rung(&words, ladder, 0, at);
    recede_page_words(json, "caption", &words);
    recede_json_number(json, "own_share", rung->row[RECEDE_ROW_LIT].own_share);
    for (int row = 0; row < RECEDE_LADDER_ROWS; row++) {
        const recede_wash *wash = &rung->row[row];
        recede_json_object(json, rows[row]);
        recede_page_hex(json, "target", wash->target.srgb);
        recede_json_number(json, "value", wash->target.value);
        recede_page_recipe(json, "recipe", ladder->palette, &wash->recipe, wash->ground);
        recede_json_end_object(json);
    }
    recede_json_end_object(json);
}

static void write_ladder(recede_json *json, const recede_ladder *ladder)
{
    recede_buffer words;
    recede_buffer_start(&words, NULL);
    recede_words_ladder_title(&words, ladder);
    recede_page_words(json, "title", &words);
    recede_buffer_start(&words, NULL);
    recede_words_why(&words, ladder);
    recede_page_words(json, "why", &words);
    recede_json_array(json, "rungs");
    for (size_t i = 0; i < ladder->wish.rung_count; i++)
        write_rung(json, ladder, i);
    recede_json_end_array(json);
}

static recede_ladder_wish wish_of(const recede_scene *scene, size_t plane)
{
    const recede_own_entry *white = recede_surface_named("whitewash");
    recede_ladder_wish wish = {.own = recede_page_own_in_words(&scene->planes[plane].own),
                               .air_count = 1, .rung_count = RUNGS};
    wish.visibility_km[0] = scene->air.visibility_km;
    wish.white.kind = RECEDE_OWN_SURFACE;
    for (size_t i = 0; white->name[i]; i++)
        wish.white.name[i] = white->name[i];
    wish.white.reflectance = white->reflectance;
    for (size_t i = 0; i < RUNGS; i++)
        wish.distance_m[i] = distances_m[i];
    return wish;
}

RECEDE_PAGE_CALL(page_ladder) int recede_page_ladder(recede_page *page, size_t plane)
{
    recede_ladder *ladder;
    recede_error error;
    if (!page->has_scene || plane >= page->scene.plane_count)
        return recede_page_refuse(page, 0, 0, "there is no such plane");
    recede_ladder_wish wish = wish_of(&page->scene, plane);
    if (recede_ladder_new(&page->scene, &wish, NULL, NULL, &ladder, &error))
        return recede_page_refuse_core(page, &error);
    recede_json json = recede_page_reply_start(page);
    write_ladder(&json, ladder);
    recede_ladder_free(ladder);
    return recede_page_reply_end(page, &json);
}
