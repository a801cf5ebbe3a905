/* What the page's script calls, called from C: in a browser nothing would tell of
 * a leak or a wild read. Replies are read with cJSON, apart from the writer. */
#include "page/bridge.c"
#include "page/chart.c"
#include "page/ladder.c"
#include "page/lists.c"
#include "page/match.c"
#include "page/no_system.c"
#include "page/opened.c"
#include "page/paints.c"
#include "page/picture.c"
#include "page/reply.c"
#include "page/view.c"
#include "page/work.c"

#include <cjson/cJSON.h>

#include "support/assert_near.h"
#include "text/pigment_file.h"

/* Invented. Two paints a mix keep it quick. */
static const char scene[] =
    "{\"title\":\"A test\",\"air\":{\"visibility\":\"15 km\"},"
    "\"paint\":{\"palette\":\"landscape-six\",\"most_pigments\":2,\"most_parts\":5},"
    "\"planes\":[{\"name\":\"bank\",\"distance\":30,\"foliage\":\"meadow grass\"},"
    "{\"name\":\"wood\",\"distance\":900,\"foliage\":\"summer oak\"},"
    "{\"name\":\"ridge\",\"distance\":\"11 km\",\"surface\":\"rock\"}]}";

static int read_text(recede_page *page, const char *text)
{
    size_t size = strlen(text);
    char *room = recede_page_room(page, size + 1);
    assert_non_null(room);
    memcpy(room, text, size);
    return recede_page_read(page, size);
}

static recede_page *planned_page(void)
{
    recede_page *page = recede_page_new();
    assert_non_null(page);
    assert_int_equal(read_text(page, scene), 1);
    assert_int_equal(recede_page_mix(page), 1);
    assert_int_equal(recede_page_plan(page), 1);
    return page;
}

/* The reply as a tree, to be deleted. */
static cJSON *reply_of(recede_page *page)
{
    assert_int_equal(strlen(recede_page_reply(page)), recede_page_reply_size(page));
    cJSON *tree = cJSON_Parse(recede_page_reply(page));
    assert_non_null(tree);
    return tree;
}

static const cJSON *within(const cJSON *tree, const char *key)
{
    const cJSON *item = cJSON_GetObjectItemCaseSensitive(tree, key);
    assert_non_null(item);
    return item;
}

static void test_view_shows_the_plan(void **state)
{
    recede_page *page = planned_page();
    (void)state;
    assert_int_equal(recede_page_view(page), 1);
    cJSON *view = reply_of(page);
    const cJSON *planes = within(view, "planes");
    assert_int_equal(cJSON_GetArraySize(planes), 3);
    for (int i = 0; i < 3; i++) {
        const recede_planned *planned = recede_plan_at(page->plan, (size_t)i);
        const cJSON *plane = cJSON_GetArrayItem(planes, i);
        const cJSON *wash = within(within(plane, "lit"), "crest"), *recipe = within(wash, "recipe");
        assert_near(within(recipe, "value")->valuedouble,
                    planned->lit.crest.recipe.colour.value, 1e-12);
        assert_near(within(wash, "target_value")->valuedouble, planned->lit.crest.target.value,
                    1e-12);
        assert_int_equal(cJSON_GetArraySize(within(recipe, "paints")),
                         planned->lit.crest.recipe.mix.count);
        assert_near(within(plane, "distance_m")->valuedouble,
                    recede_plan_scene(page->plan)->planes[planned->plane].distance_m, 1e-9);
    }
    assert_string_equal(within(cJSON_GetArrayItem(planes, 0), "name")->valuestring, "ridge");
    cJSON_Delete(view);
    recede_page_free(page);
}

static void test_refusals_say_where_and_what(void **state)
{
    recede_page *page = recede_page_new();
    (void)state;
    assert_int_equal(recede_page_plan(page), 0);
    assert_int_equal(recede_page_view(page), 0);
    assert_int_equal(recede_page_scene(page), 0);
    assert_int_equal(recede_page_work(page, 3), 0);
    assert_null(recede_page_picture(page, 9, 6, 0, 0));
    assert_null(recede_page_skylines(page, 9, 6, 0));
    assert_int_equal(read_text(page, "{\n \"planes\": 3}"), 0);
    cJSON *refusal = reply_of(page);
    assert_near(within(refusal, "line")->valuedouble, 2, 0);
    assert_near(within(refusal, "column")->valuedouble, 12, 0);
    assert_true(strlen(within(refusal, "what")->valuestring) > 10);
    cJSON_Delete(refusal);
    assert_int_equal(read_text(page, scene), 1);
    assert_int_equal(recede_page_plan(page), 0); /* the box is not ready */
    recede_page_free(page);
}

static void test_another_box_is_mixed_only_where_it_differs(void **state)
{
    recede_page *page = planned_page();
    const recede_index *first = page->box.index;
    (void)state;
    assert_int_equal(read_text(page, scene), 1);
    assert_int_equal(recede_page_mix(page), 1);
    assert_ptr_equal(page->box.index, first);
    page->scene.rules.most_parts = 3;
    assert_int_equal(recede_page_mix(page), 1);
    assert_int_equal(page->box.rules.most_parts, 3);
    assert_int_equal(recede_page_plan(page), 1);
    recede_page_free(page);
}

/* Paints of the painter's own: a file with K and S as given, invented. */
static int open_pigment(recede_page *page, const char *name, double k)
{
    recede_pigment_file pigment = {.paint.name = "my earth"};
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        pigment.paint.k.at[band] = k;
        pigment.paint.s.at[band] = 0.25;
    }
    recede_pigment_file_write(&pigment, &out);
    char *room = recede_page_room(page, strlen(name) + out.size);
    memcpy(room, name, strlen(name));
    memcpy(room + strlen(name), out.bytes, out.size);
    int done = recede_page_file_open(page, strlen(name), out.size);
    recede_buffer_free(&out);
    return done;
}

static void refuses(recede_page *page, const char *text, const char *part)
{
    assert_int_equal(read_text(page, text), 0);
    cJSON *refusal = reply_of(page);
    if (!strstr(within(refusal, "what")->valuestring, part))
        fail_msg("'%s' is not in '%s'", part, within(refusal, "what")->valuestring);
    cJSON_Delete(refusal);
}

static void test_scenes_name_opened_files(void **state)
{
    static const char own[] =
        "{\"paint\":{\"palette\":[\"PB29\",\"paints/earth.json\"],\"most_pigments\":2,"
        "\"most_parts\":5},"
        "\"planes\":[{\"name\":\"bank\",\"distance\":30,\"foliage\":\"meadow grass\"}]}";
    recede_page *page = recede_page_new();
    (void)state;
    refuses(page, own, "earth.json");
    assert_int_equal(open_pigment(page, "../earth.json", 0.5), 0);
    assert_int_equal(open_pigment(page, "earth.json", 0.5), 1);
    assert_int_equal(read_text(page, own), 1);
    assert_int_equal(recede_page_mix(page), 1);
    const double before = recede_palette_paint(page->box.palette, 1)->k.at[0];
    assert_near(before, 0.5, 0);
    /* other figures under the same name: another box */
    assert_int_equal(open_pigment(page, "earth.json", 0.75), 1);
    assert_int_equal(page->file_count, 1);
    assert_int_equal(read_text(page, own), 1);
    assert_int_equal(recede_page_plan(page), 0);
    assert_int_equal(recede_page_mix(page), 1);
    assert_near(recede_palette_paint(page->box.palette, 1)->k.at[0], 0.75, 0);
    assert_int_equal(open_pigment(page, "earth.json", -1), 1);
    refuses(page, own, "in paints/earth.json, line 3, column ");
    for (int i = 1; i < RECEDE_MOST_FILES; i++) {
        char name[] = "a.json";
        name[0] = (char)('a' + i);
        assert_int_equal(open_pigment(page, name, 0.5), 1);
    }
    assert_int_equal(open_pigment(page, "one-more.json", 0.5), 0);
    recede_page_files_free(page); /* and in use again: nothing is given back twice */
    assert_int_equal(open_pigment(page, "earth.json", 0.5), 1);
    assert_int_equal(read_text(page, own), 1);
    recede_page_free(page);
}

static void is_a(recede_page *page, const char *text, const char *kind)
{
    size_t size = strlen(text);
    memcpy(recede_page_room(page, size + 1), text, size);
    assert_int_equal(recede_page_kind(page, size), 1);
    cJSON *reply = reply_of(page);
    assert_string_equal(within(reply, "kind")->valuestring, kind);
    cJSON_Delete(reply);
}

static void is_refused(recede_page *page, const char *text, const char *part, int missing)
{
    size_t size = strlen(text);
    memcpy(recede_page_room(page, size + 1), text, size);
    assert_int_equal(recede_page_kind(page, size), 0);
    cJSON *refusal = reply_of(page);
    assert_non_null(strstr(within(refusal, "what")->valuestring, part));
    assert_int_equal(cJSON_HasObjectItem(refusal, "missing"), missing);
    cJSON_Delete(refusal);
}

static void test_files_are_told_apart(void **state)
{
    static const char box[] = "{\"paints\": [\"PB29\", \"earth.json\"]}";
    recede_page *page = recede_page_new();
    (void)state;
    is_a(page, scene, "scene");
    is_a(page, "{\"planes\": 3}", "scene"); /* it is refused when it is read as one */
    is_a(page, "{\"paints\": [\"PB29\"]}", "palette");
    is_refused(page, box, "earth.json", 1);
    assert_int_equal(open_pigment(page, "earth.json", 0.5), 1);
    is_a(page, box, "palette");
    is_refused(page, "{\"name\": \"a\", \"k\": 3}", "36 numbers", 0);
    is_refused(page, "{\"paints\": []}", "empty", 0);
    is_refused(page, "{\"paints\": [", "", 0);
    recede_page_free(page);
}

/* The masstone against the film that the medium lays; thinned with water or with white
 * a dark blue is lighter. */
static void test_the_box_is_told(void **state)
{
    static const char in[] =
        "{\"paint\":{\"palette\":[\"titanium white\",\"PB29\"],\"medium\":\"%s\"},"
        "\"planes\":[{\"name\":\"bank\",\"distance\":30,\"foliage\":\"meadow grass\"}]}";
    static const char *const media[] = {"watercolour", "oil"};
    const double film[] = {recede_film_of_water(0), 1e6};
    recede_page *page = recede_page_new();
    char text[300], hex[8];
    recede_paint blue;
    recede_error error;
    (void)state;
    assert_int_equal(recede_page_box_told(page), 0);
    assert_int_equal(recede_paint_named("PB29", &blue, &error), RECEDE_OK);
    for (int i = 0; i < 2; i++) {
        snprintf(text, sizeof text, in, media[i]);
        assert_int_equal(read_text(page, text), 1);
        assert_int_equal(recede_page_box_told(page), 1);
        cJSON *reply = reply_of(page);
        const cJSON *paints = within(reply, "paints"), *told = cJSON_GetArrayItem(paints, 1);
        assert_true(cJSON_IsTrue(within(cJSON_GetArrayItem(paints, 0), "white")));
        assert_true(cJSON_IsFalse(within(told, "own")));
        recede_spectrum seen = recede_film(&blue.k, &blue.s, film[i], &page->scene.paper);
        recede_srgb srgb = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).srgb;
        snprintf(hex, sizeof hex, "#%02x%02x%02x", of_255(srgb.r), of_255(srgb.g), of_255(srgb.b));
        assert_string_equal(within(told, "masstone")->valuestring, hex);
        assert_true(strtol(within(told, "wash")->valuestring + 1, NULL, 16) >
                    strtol(hex + 1, NULL, 16));
        cJSON_Delete(reply);
    }
    recede_page_free(page);
}

static void test_pixels_are_those_of_the_library(void **state)
{
    enum { WIDE = 60, HIGH = 40 };
    static unsigned char rgb[3 * WIDE * HIGH];
    const recede_picture_options options = {.width = WIDE, .height = HIGH, .greys = 1};
    recede_page *page = planned_page();
    recede_error error;
    (void)state;
    assert_non_null(recede_page_picture(page, 2 * WIDE, 2 * HIGH, 0, 1));
    const unsigned char *rgba = recede_page_picture(page, WIDE, HIGH, 1, 0);
    assert_int_equal(recede_picture_paint(page->plan, &options, rgb, 3 * WIDE, NULL, &error),
                     RECEDE_OK);
    for (size_t i = 0; i < WIDE * HIGH; i++) {
        assert_memory_equal(rgba + 4 * i, rgb + 3 * i, 3);
        assert_int_equal(rgba[4 * i + 3], 255);
    }
    assert_non_null(recede_page_skylines(page, WIDE, HIGH, 0));
    recede_page_free(page);
}

/* Replies that hold lists: each is there and as long as it must be. */
static void test_what_is_looked_up(void **state)
{
    recede_page *page = planned_page();
    (void)state;
    assert_int_equal(recede_page_lists(page), 1);
    cJSON *reply = reply_of(page);
    static const char *const boxes[] = {"in_water", "in_white"};
    for (int i = 0; i < 2; i++) {
        const cJSON *box = within(reply, boxes[i]);
        assert_int_equal(cJSON_GetArraySize(within(box, "pigments")), (int)recede_pigment_count());
        assert_int_equal(cJSON_GetArraySize(within(box, "tubes")), (int)recede_tube_count());
    }
    cJSON_Delete(reply);
    assert_int_equal(recede_page_ladder(page, 1), 1);
    reply = reply_of(page);
    assert_int_equal(cJSON_GetArraySize(within(reply, "rungs")), 9);
    cJSON_Delete(reply);
    assert_int_equal(recede_page_ladder(page, 3), 0);
    assert_int_equal(recede_page_chart(page, -1), 1);
    reply = reply_of(page);
    assert_int_equal(cJSON_GetArraySize(within(reply, "cells")),
                     cJSON_GetArraySize(within(reply, "rows")));
    const char *left_out = within(reply, "left_out")->valuestring;
    assert_non_null(strstr(left_out, "nor blue or green for the columns: quinacridone magenta."));
    cJSON_Delete(reply);
    assert_int_equal(recede_page_chart(page, 3), 1);
    reply = reply_of(page); /* the third paint is on the chart */
    assert_string_equal(recede_palette_paint(page->box.palette, 3)->name, "quinacridone magenta");
    assert_string_equal(within(reply, "left_out")->valuestring, "");
    cJSON_Delete(reply);
    assert_int_equal(recede_page_match(page, -1, 0, 1), 1);
    assert_int_equal(recede_page_match(page, 2, 1, 0), 1);
    reply = reply_of(page);
    assert_int_equal(cJSON_GetArraySize(within(reply, "matches")), RECEDE_MATCH_KINDS);
    cJSON_Delete(reply);
    assert_int_equal(recede_page_match(page, 3, 0, 0), 0);
    assert_int_equal(recede_page_work(page, 2), 1);
    reply = reply_of(page);
    assert_true(cJSON_GetArraySize(within(reply, "steps")) >= 7);
    cJSON_Delete(reply);
    assert_int_equal(recede_page_work(page, 4), 0);
    assert_int_equal(recede_page_advise(page), 1);
    assert_int_equal(recede_page_plan_json(page), 1);
    cJSON_Delete(reply_of(page));
    recede_page_free(page);
}

/* The mix for what a plane is, not for what the air makes of it: here the far ridge. */
static void test_the_mix_for_a_plane_as_it_is(void **state)
{
    recede_page *page = planned_page();
    recede_matches wanted;
    recede_error error;
    (void)state;
    const recede_spectrum *rock = &recede_surface_named("rock")->reflectance;
    recede_lab lab = recede_colour_of_xyz(recede_xyz_of_reflectance(rock)).lab;
    assert_true(recede_delta_e(lab, recede_plan_at(page->plan, 0)->lit.crest.target.lab) > 10);
    assert_int_equal(recede_match_all(page->box.palette, &page->box.rules, lab, &wanted, NULL,
                                      &error), RECEDE_OK);
    const recede_mix *mix = &wanted.of[RECEDE_MATCH_CLOSEST].recipe.mix;
    assert_int_equal(recede_page_match_own(page, 0), 1);
    cJSON *reply = reply_of(page);
    const cJSON *first = cJSON_GetArrayItem(within(reply, "matches"), 0);
    assert_string_equal(within(first, "kind")->valuestring, "closest");
    const cJSON *recipe = within(first, "recipe"), *paints = within(recipe, "paints");
    assert_int_equal(cJSON_GetArraySize(paints), mix->count);
    for (int i = 0; i < mix->count; i++) {
        const cJSON *paint = cJSON_GetArrayItem(paints, i);
        assert_string_equal(within(paint, "name")->valuestring,
                            recede_palette_paint(page->box.palette, (size_t)mix->paint[i])->name);
        assert_near(within(paint, "parts")->valuedouble, mix->parts[i], 0);
    }
    assert_near(within(recipe, "water_to_1")->valuedouble, mix->water, 1e-9);
    cJSON_Delete(reply);
    assert_int_equal(recede_page_match_own(page, 3), 0);
    recede_page_free(page);
}

/* A dab shows a colour: sentences have no figures of it. */
static void test_own_colours_are_not_spelt(void **state)
{
    static const char own[] =
        "{\"paint\":{\"palette\":[\"PB29\",\"PY43\"],\"most_pigments\":2,\"most_parts\":3},"
        "\"planes\":[{\"name\":\"bank\",\"distance\":30,\"colour\":\"#5e5a3c\"}]}";
    recede_page *page = recede_page_new();
    (void)state;
    assert_int_equal(read_text(page, own), 1);
    assert_int_equal(recede_page_mix(page) && recede_page_plan(page) && recede_page_view(page), 1);
    cJSON *view = reply_of(page), *plane = cJSON_GetArrayItem(within(view, "planes"), 0);
    assert_string_equal(within(plane, "own")->valuestring, "a colour of your own");
    assert_string_equal(within(plane, "own_hex")->valuestring, "#5e5a3c");
    cJSON_Delete(view);
    assert_int_equal(recede_page_ladder(page, 0), 1);
    cJSON *ladder = reply_of(page);
    assert_null(strstr(within(ladder, "title")->valuestring, "#5e5a3c"));
    assert_null(strstr(within(ladder, "why")->valuestring, "#5e5a3c"));
    cJSON_Delete(ladder);
    recede_page_free(page);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_view_shows_the_plan),
        cmocka_unit_test(test_refusals_say_where_and_what),
        cmocka_unit_test(test_another_box_is_mixed_only_where_it_differs),
        cmocka_unit_test(test_scenes_name_opened_files),
        cmocka_unit_test(test_files_are_told_apart),
        cmocka_unit_test(test_the_box_is_told),
        cmocka_unit_test(test_pixels_are_those_of_the_library),
        cmocka_unit_test(test_what_is_looked_up),
        cmocka_unit_test(test_the_mix_for_a_plane_as_it_is),
        cmocka_unit_test(test_own_colours_are_not_spelt),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
