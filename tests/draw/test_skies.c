/* The skies sheet: its pages and its type. Scenes are invented. */
#include "draw/skies.h"

#include "draw/sheet_log.h"
#include "support/allocator.h"

static void add_plane(recede_scene *scene, const char *name, double distance_m, const char *foliage)
{
    recede_plane *plane = &scene->planes[scene->plane_count];
    memset(plane, 0, sizeof *plane);
    /* at most 198 bytes of the name after the two that keep planes apart */
    snprintf(plane->name, RECEDE_NAME_SIZE, "%c%c%.198s", 'a' + (int)(scene->plane_count / 26),
             'a' + (int)(scene->plane_count % 26), name);
    plane->distance_m = distance_m;
    plane->base_m = plane->crest_m = NAN;
    plane->own.kind = RECEDE_OWN_FOLIAGE;
    plane->own.reflectance = recede_foliage_named(foliage)->reflectance;
    scene->plane_count++;
}

static recede_scene *new_scene(size_t planes, const char *name)
{
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    recede_scene_default(scene);
    snprintf(scene->title, RECEDE_NAME_SIZE, "%s", name);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 4;
    for (size_t i = 0; i < planes; i++)
        add_plane(scene, name, 20 * pow(1.15, (double)i), i % 2 ? "summer oak" : "heather");
    return scene;
}

static recede_skies *skies_of(recede_scene *scene, size_t lights, const char *name)
{
    recede_sky_light light[RECEDE_MOST_LIGHTS];
    recede_skies *skies;
    recede_usual_lights(scene, light);
    for (size_t i = RECEDE_USUAL_LIGHTS; i < RECEDE_MOST_LIGHTS; i++)
        light[i] = light[i % RECEDE_USUAL_LIGHTS];
    for (size_t i = 0; name && i < RECEDE_MOST_LIGHTS; i++)
        snprintf(light[i].name, RECEDE_NAME_SIZE, "%s", name);
    assert_int_equal(recede_skies_new(scene, light, lights, NULL, NULL, &skies, NULL, NULL), RECEDE_OK);
    return skies;
}

static size_t check_layout(const recede_skies *skies)
{
    recede_type_log log = {0};
    const recede_sheet_options options = {.log = &log};
    recede_buffer pdf;
    recede_buffer_start(&pdf, NULL);
    assert_int_equal(recede_skies_pdf(skies, &options, &pdf), RECEDE_SHEET_OK);
    assert_true(pdf.size > 1000 && memcmp(pdf.bytes, "%PDF-", 5) == 0);
    size_t pages = sheet_log_check(&log);
    recede_buffer_free(&pdf);
    sheet_log_free(&log);
    return pages;
}

static void text_keeps_to_its_room(void **state)
{
    static const struct {
        size_t planes, lights, least_pages, most_pages;
        const char *name, *light;
        double width_m, height_m;
        int opaque;
    } cases[] = {
        {6, 5, 3, 3, "wood", NULL, 0.38, 0.28, 0},
        {1, 1, 2, 2, "wood", NULL, 0.28, 0.38, 0},
        {3, 8, 3, 4, "wood", NULL, 0.8, 0.2, 0},
        {6, 3, 2, 3, sheet_long_words, sheet_long_words, 0.38, 0.28, 0},
        {6, 3, 2, 3, sheet_long_word, sheet_long_word, 0.2, 0.8, 0},
        {64, 2, 6, 14, "wood", NULL, 0.38, 0.28, 0},
        {40, 3, 6, 14, sheet_long_words, NULL, 0.38, 0.28, 0},
        {4, 5, 2, 4, "wood", NULL, 0.38, 0.28, 1},
        {40, 2, 4, 10, sheet_long_words, NULL, 0.38, 0.28, 1},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_scene *scene = new_scene(cases[i].planes, cases[i].name);
        scene->paper_width_m = cases[i].width_m;
        scene->paper_height_m = cases[i].height_m;
        if (cases[i].opaque) {
            scene->medium = RECEDE_OIL; /* with a line of its own above the foot */
            assert_int_equal(recede_scene_use_palette(scene, "opaque-sixteen", NULL), RECEDE_OK);
        }
        recede_skies *skies = skies_of(scene, cases[i].lights, cases[i].light);
        size_t pages = check_layout(skies);
        if (pages < cases[i].least_pages || pages > cases[i].most_pages)
            fail_msg("case %zu has %zu pages", i, pages);
        recede_skies_free(skies);
        free(scene);
    }
}

/* The picture of a light on the sheet is the library's own, one to one: it is
 * sought for in the upper left of the first page. */
static void pictures_are_the_library_s(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3, "wood");
    recede_skies *skies = skies_of(scene, 5, NULL);
    const recede_sheet_options options = {0};
    recede_sheet_pixels pixels;
    assert_int_equal(recede_skies_pixels(skies, &options, &pixels), RECEDE_SHEET_OK);
    assert_int_equal(pixels.width, 3508); /* 297 mm at 300 dots to the inch, ISO 216 */
    assert_int_equal(pixels.height, 2480 * pixels.pages);
    size_t found = 0;
    for (size_t width = 940; width < 960 && !found; width++) {
        recede_picture_options size = {.width = width, .height = (size_t)round((double)width * 28 / 38)};
        unsigned char *rgb = malloc(size.width * size.height * 3);
        assert_non_null(rgb);
        assert_int_equal(recede_picture_paint(skies->plan[0], &size, rgb, 3 * size.width, NULL, NULL), RECEDE_OK);
        for (size_t y = 480; y < 560 && !found; y++)
            for (size_t x = 180; x < 220 && !found; x++)
                found = memcmp(pixels.rgb + y * pixels.row_bytes + 3 * x, rgb, 3 * size.width) == 0;
        free(rgb);
    }
    assert_true(found);
    free(pixels.rgb);
    recede_skies_free(skies);
    free(scene);
}

static void memory_may_run_out(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(2, "wood");
    recede_skies *skies = skies_of(scene, 1, NULL);
    for (size_t fail_at = 1; fail_at < 260; fail_at += fail_at < 12 ? 1 : 23) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, fail_at);
        const recede_sheet_options options = {.allocator = &allocator};
        recede_buffer pdf;
        recede_buffer_start(&pdf, NULL);
        recede_sheet_result result = recede_skies_pdf(skies, &options, &pdf);
        assert_int_equal(memory.live, 0);
        assert_int_equal(result, memory.calls < fail_at ? RECEDE_SHEET_OK : RECEDE_SHEET_NO_MEMORY);
        recede_buffer_free(&pdf);
    }
    recede_skies_free(skies);
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(text_keeps_to_its_room),
        cmocka_unit_test(pictures_are_the_library_s),
        cmocka_unit_test(memory_may_run_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
