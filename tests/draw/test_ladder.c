/* The ladder sheet: its pages and its type. Scenes are invented. */
#include "draw/ladder.h"

#include "draw/sheet_log.h"
#include "support/allocator.h"

static const double distances_m[RECEDE_MOST_RUNGS] = {10,   30,   100,   300,   1000,  2000,
                                                      5000, 10000, 20000, 40000, 60000, 80000};

/* What varies from test to test. */
typedef struct {
    size_t rungs, airs;
    const char *surface; /* NULL: summer oak */
    const char *paints;  /* the name all paints get; NULL: their own */
    recede_sky_kind sky;
    int opaque;
} kind;

static void set_own(recede_own *own, const recede_own_entry *entry)
{
    assert_non_null(entry);
    strcpy(own->name, entry->name);
    own->reflectance = entry->reflectance;
}

static recede_ladder *ladder_of(const kind *k)
{
    recede_ladder_wish wish = {.rung_count = k->rungs, .air_count = k->airs, .visibility_km = {60, 8}};
    recede_scene *scene = malloc(sizeof *scene);
    recede_ladder *ladder;
    assert_non_null(scene);
    recede_scene_default(scene);
    scene->sky.kind = k->sky;
    if (k->opaque) {
        scene->medium = RECEDE_OIL; /* with a line of its own above the foot */
        assert_int_equal(recede_scene_use_palette(scene, "opaque-sixteen", NULL), RECEDE_OK);
    }
    for (size_t i = 0; k->paints && i < scene->paint_count; i++)
        snprintf(scene->paints[i].name, RECEDE_NAME_SIZE, "%c%.198s", (char)('a' + i), k->paints);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 5;
    memcpy(wish.distance_m, distances_m, k->rungs * sizeof distances_m[0]);
    wish.own.kind = k->surface ? RECEDE_OWN_SURFACE : RECEDE_OWN_FOLIAGE;
    set_own(&wish.own, k->surface ? recede_surface_named(k->surface) : recede_foliage_named("summer oak"));
    wish.white.kind = RECEDE_OWN_SURFACE;
    set_own(&wish.white, recede_surface_named(k->surface ? "reeds in winter" : "whitewash"));
    assert_int_equal(recede_ladder_new(scene, &wish, NULL, NULL, &ladder, NULL), RECEDE_OK);
    free(scene);
    return ladder;
}

/* Lays out and draws into PDF, which is quick; checks the text. Returns the
 * pages, and the recipes where asked. */
static size_t check_layout(const recede_ladder *ladder, int blank, size_t *recipes)
{
    recede_type_log log = {0};
    const recede_sheet_options options = {.log = &log};
    recede_buffer pdf;
    recede_buffer_start(&pdf, NULL);
    assert_int_equal(recede_ladder_pdf(ladder, blank, &options, &pdf), RECEDE_SHEET_OK);
    assert_true(pdf.size > 1000 && memcmp(pdf.bytes, "%PDF-", 5) == 0);
    size_t pages = sheet_log_check(&log);
    if (recipes)
        *recipes = sheet_log_recipes(&log);
    recede_buffer_free(&pdf);
    sheet_log_free(&log);
    return pages;
}

static void text_keeps_to_its_room(void **state)
{
    static const kind kinds[] = {
        {.rungs = 9, .airs = 2},
        {.rungs = 2, .airs = 2},
        {.rungs = 12, .airs = 2},
        {.rungs = 12, .airs = 1, .surface = "red soil"},
        {.rungs = 12, .airs = 2, .sky = RECEDE_SKY_OVERCAST, .surface = "dry soil"},
        {.rungs = 9, .airs = 2, .opaque = 1},
        {.rungs = 12, .airs = 2, .opaque = 1, .paints = sheet_long_words},
        {.rungs = 9, .airs = 2, .paints = sheet_long_word},
        {.rungs = 12, .airs = 2, .paints = sheet_long_words},
    };
    (void)state;
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        size_t recipes;
        recede_ladder *ladder = ladder_of(&kinds[i]);
        assert_true(check_layout(ladder, 0, &recipes) >= 3);
        /* each has at least its paints in the size of recipes */
        assert_true(recipes >= kinds[i].rungs * kinds[i].airs * RECEDE_LADDER_ROWS);
        assert_int_equal(check_layout(ladder, 1, NULL), 2);
        recede_ladder_free(ladder);
    }
}

/* The usual ladder: picture, reading, a page of mixes for each air. */
static void the_usual_ladder_has_four_pages(void **state)
{
    (void)state;
    const kind usual = {.rungs = 9, .airs = 2};
    recede_ladder *ladder = ladder_of(&usual);
    assert_int_equal(check_layout(ladder, 0, NULL), 4);
    recede_ladder_free(ladder);
}

static int colour_at(const recede_sheet_pixels *pixels, size_t page, double x_mm, double y_mm,
                     unsigned char rgb[3])
{
    size_t x = (size_t)(x_mm * RECEDE_SHEET_DPI / 25.4), y = (size_t)(y_mm * RECEDE_SHEET_DPI / 25.4);
    memcpy(rgb, pixels->rgb + (page * RECEDE_SHEET_PAGE_HEIGHT + y) * pixels->row_bytes + 3 * x, 3);
    return (rgb[0] + rgb[1] + rgb[2]) / 3;
}

/* On the exercise the first dab is the colour itself, the second is empty; on
 * the answers' page both are painted. */
static void the_exercise_is_empty_and_its_answers_are_not(void **state)
{
    (void)state;
    const kind usual = {.rungs = 9, .airs = 2};
    const recede_sheet_options options = {0};
    recede_sheet_pixels pixels;
    recede_ladder *ladder = ladder_of(&usual);
    assert_int_equal(recede_ladder_pixels(ladder, 1, &options, &pixels), RECEDE_SHEET_OK);
    assert_int_equal(pixels.pages, 2);
    assert_int_equal(pixels.width, 3508); /* 297 mm at 300 dots to the inch, ISO 216 */
    assert_int_equal(pixels.height, 2 * 2480);
    const double first_mm = 53, second_mm = 78, lit_mm = 48.5;
    const recede_srgb *green = &ladder->air[0].rung[0].row[RECEDE_ROW_LIT].recipe.colour.srgb;
    unsigned char rgb[3];
    for (size_t page = 0; page < 2; page++) {
        colour_at(&pixels, page, first_mm, lit_mm, rgb);
        assert_near(rgb[0], 255 * green->r, 1);
        assert_near(rgb[1], 255 * green->g, 1);
        assert_near(rgb[2], 255 * green->b, 1);
    }
    assert_true(colour_at(&pixels, 0, second_mm, lit_mm, rgb) > 235);
    assert_true(colour_at(&pixels, 1, second_mm, lit_mm, rgb) < 160);
    free(pixels.rgb);
    recede_ladder_free(ladder);
}

static void same_ladder_same_bytes(void **state)
{
    (void)state;
    const kind small = {.rungs = 3, .airs = 2};
    const recede_sheet_options options = {0};
    recede_ladder *ladder = ladder_of(&small);
    recede_buffer one, other;
    recede_buffer_start(&one, NULL);
    recede_buffer_start(&other, NULL);
    assert_int_equal(recede_ladder_pdf(ladder, 0, &options, &one), RECEDE_SHEET_OK);
    assert_int_equal(recede_ladder_pdf(ladder, 0, &options, &other), RECEDE_SHEET_OK);
    assert_int_equal(one.size, other.size);
    assert_memory_equal(one.bytes, other.bytes, one.size);
    recede_buffer_free(&one);
    recede_buffer_free(&other);
    recede_ladder_free(ladder);
}

static void memory_may_run_out(void **state)
{
    (void)state;
    const kind small = {.rungs = 2, .airs = 1};
    recede_ladder *ladder = ladder_of(&small);
    for (size_t fail_at = 1; fail_at < 400; fail_at += fail_at < 12 ? 1 : 17) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, fail_at);
        const recede_sheet_options options = {.allocator = &allocator};
        recede_buffer pdf;
        recede_buffer_start(&pdf, NULL);
        recede_sheet_result result = recede_ladder_pdf(ladder, 0, &options, &pdf);
        assert_int_equal(memory.live, 0);
        assert_int_equal(result, memory.calls < fail_at ? RECEDE_SHEET_OK : RECEDE_SHEET_NO_MEMORY);
        recede_buffer_free(&pdf);
    }
    recede_ladder_free(ladder);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(text_keeps_to_its_room),
        cmocka_unit_test(the_usual_ladder_has_four_pages),
        cmocka_unit_test(the_exercise_is_empty_and_its_answers_are_not),
        cmocka_unit_test(same_ladder_same_bytes),
        cmocka_unit_test(memory_may_run_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
