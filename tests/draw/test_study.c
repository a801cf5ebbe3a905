/* The study, drawn from plans of invented colours. Seen to fail with text set as markup:
 * tools/mutations.txt. */
#include "draw/study.h"

#include "picture/fake_plan.c"
#include "support/allocator.h"
#include "support/assert_near.h"

#include <cairo.h>
#include <stdlib.h>

/* A plan with its palette; every kind of wash is in it. */
static void make(recede_plan *plan, size_t planes, const char *palette, recede_medium medium)
{
    recede_spectrum paper = recede_paper_white();
    fake_plan_make(plan, planes, FAKE_NOON);
    assert_int_equal(recede_scene_use_palette(&plan->scene, palette, NULL), RECEDE_OK);
    plan->scene.medium = medium;
    assert_int_equal(recede_palette_new(plan->scene.paints, plan->scene.paint_count, medium, &paper,
                                        NULL, &plan->palette, NULL),
                     RECEDE_OK);
    for (size_t i = 0; i < planes; i++) {
        recede_wash *wash = &plan->planned[i].shadow.crest;
        wash->ground = i % 2 ? RECEDE_ON_LIT : RECEDE_ON_PAPER;
        wash->recipe.reach = i % 3 ? RECEDE_REACHABLE : RECEDE_TOO_VIVID;
        wash->value_as_seen = wash->target.value - 0.7;
        wash->recipe.mix = (recede_mix){4, {0, 1, 4, 5}, {1, 2, 3, 6}, recede_water_at(81)};
    }
    plan->planned[0].lit.graded = 1;
    plan->planned[0].lit.two_washes = 1;
    plan->sky.base.recipe.mix.count = 0;
    plan->warning_count = 2;
    plan->warnings[0] =
        (recede_warning){.kind = RECEDE_WARN_INTO_SUN, .plane = -1, .other = -1, .number = {20}};
    plan->warnings[1] =
        (recede_warning){.kind = RECEDE_WARN_GONE, .plane = 0, .other = -1, .number = {0.01}};
}

static void drop(recede_plan *plan)
{
    recede_palette_free(plan->palette);
    plan->palette = NULL;
}

static void name_all(recede_plan *plan, const char *name)
{
    snprintf(plan->scene.title, RECEDE_NAME_SIZE, "%s", name);
    for (size_t i = 0; i < plan->count; i++)
        snprintf(plan->scene.planes[i].name, RECEDE_NAME_SIZE, "%s", name);
}

/* The longest names a scene may have, 200 bytes each. */
static const char long_word[] =
    "LlanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogochXXLlanfairpwllgwyngyllgogerychwy"
    "rndrobwllllantysiliogogogochXXLlanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogochXX"
    "Llanfairpwllgwyngyll";
static const char long_words[] =
    "the long low wood that runs behind the upper meadow from the old quarry as far as the seco"
    "nd of the two stone bridges and then on beyond the mill to the white gate below the last f"
    "arm before the high ";
static const char long_cyrillic[] =
    "Дальний лес за верхним лугом от старой каменоломни до второго моста и дальше мимо мельницы"
    " к белым воротам ни";

/* ----------------------------------------------------------- checking -- */

static int apart(recede_rect a, recede_rect b)
{
    const double touch = 0.02; /* mm */
    return a.x + a.w <= b.x + touch || b.x + b.w <= a.x + touch || a.y + a.h <= b.y + touch
           || b.y + b.h <= a.y + touch;
}

static int inside(recede_rect inner, recede_rect outer, double slack)
{
    return inner.x >= outer.x - slack && inner.y >= outer.y - slack
           && inner.x + inner.w <= outer.x + outer.w + slack
           && inner.y + inner.h <= outer.y + outer.h + slack;
}

/* No text under 7 pt, no recipe under 12, no ink outside its room by more than
 * a glyph's overhang, nor near the paper's edge, nor over other ink; and no
 * recipe cut short. Returns how many recipes there are. */
static size_t check_log(const recede_type_log *log)
{
    const recede_rect paper = {7, 7, 297 - 14, 210 - 14};
    size_t recipes = 0;
    assert_true(log->count > 20);
    for (size_t i = 0; i < log->count; i++) {
        const recede_type_record *a = &log->records[i];
        assert_true(a->size_pt >= 7 - 1e-9);
        assert_true(!a->is_recipe || (a->size_pt >= 12 - 1e-9 && !a->is_cut));
        recipes += a->is_recipe != 0;
        if (!inside(a->ink, a->room, 0.6) || !inside(a->ink, paper, 0))
            fail_msg("page %zu: ink %g %g %g %g outside room %g %g %g %g", a->page, a->ink.x,
                     a->ink.y, a->ink.w, a->ink.h, a->room.x, a->room.y, a->room.w, a->room.h);
        for (size_t j = 0; j < i; j++)
            if (log->records[j].page == a->page && !apart(a->ink, log->records[j].ink))
                fail_msg("page %zu: ink at %g %g %g %g over ink at %g %g %g %g", a->page, a->ink.x,
                         a->ink.y, a->ink.w, a->ink.h, log->records[j].ink.x, log->records[j].ink.y,
                         log->records[j].ink.w, log->records[j].ink.h);
    }
    return recipes;
}

static void free_log(recede_type_log *log)
{
    free(log->records);
    memset(log, 0, sizeof *log);
}

typedef struct missing {
    int texts, glyphs;
    char last[RECEDE_NAME_SIZE];
} missing;

static void note_missing(void *context, const char *text, int count)
{
    missing *m = context;
    m->texts++;
    m->glyphs += count;
    snprintf(m->last, sizeof m->last, "%s", text);
}

/* Lays out and draws into PDF, which is quick, and checks the text. */
static size_t check_layout(const recede_plan *plan, missing *m)
{
    recede_type_log log = {0};
    recede_sheet_options options = {.log = &log, .missing = note_missing, .missing_context = m};
    recede_buffer pdf;
    recede_buffer_start(&pdf, NULL);
    assert_int_equal(recede_study_pdf(plan, NULL, &options, &pdf), RECEDE_SHEET_OK);
    size_t recipes = check_log(&log);
    recede_buffer_free(&pdf);
    free_log(&log);
    return recipes;
}

/* -------------------------------------------------------------- tests -- */

static void pages_are_a4_at_300_dots(void **state)
{
    (void)state;
    static recede_plan plan;
    recede_sheet_pixels pixels;
    recede_sheet_options options = {0};
    make(&plan, 3, "landscape-six", RECEDE_WATERCOLOUR);
    assert_int_equal(recede_study_pixels(&plan, NULL, &options, &pixels), RECEDE_SHEET_OK);
    assert_int_equal(pixels.width, 3508); /* 297 mm at 300 dots to the inch, ISO 216 */
    assert_int_equal(pixels.height, 2480 * pixels.pages);
    assert_int_equal(pixels.row_bytes, 3508 * 3);
    assert_int_equal(pixels.pages, 4); /* picture, two of key (one plane is graded), paints */
    /* The corners are the page's own light grey; the pages are not all alike. */
    for (size_t page = 0; page < pixels.pages; page++) {
        const unsigned char *corner = pixels.rgb + page * 2480 * pixels.row_bytes;
        for (int i = 0; i < 3; i++)
            assert_in_range(corner[i], 220, 240);
        assert_memory_equal(corner, pixels.rgb, 3 * 100);
    }
    assert_memory_not_equal(pixels.rgb + 1240 * pixels.row_bytes,
                            pixels.rgb + 3720 * pixels.row_bytes, pixels.row_bytes);
    free(pixels.rgb);
    drop(&plan);
}

/* The picture's pixels on the sheet are the library's own, one to one. */
static void the_picture_is_the_library_s(void **state)
{
    (void)state;
    static recede_plan plan;
    recede_sheet_pixels pixels;
    recede_sheet_options options = {0};
    make(&plan, 3, "landscape-six", RECEDE_WATERCOLOUR);
    assert_int_equal(recede_study_pixels(&plan, NULL, &options, &pixels), RECEDE_SHEET_OK);
    /* 180 mm wide on a sheet of 38 x 28 cm: 2126 x 1567 dots */
    recede_picture_options size = {2126, 1567, 0, 0, NULL};
    unsigned char *rgb = malloc(size.width * size.height * 3);
    assert_non_null(rgb);
    assert_int_equal(recede_picture_paint(&plan, &size, rgb, 3 * size.width, NULL, NULL),
                     RECEDE_OK);
    size_t found = 0;
    for (size_t y = 300; y < 700 && !found; y++)
        for (size_t x = 100; x < 400 && !found; x++)
            if (memcmp(pixels.rgb + y * pixels.row_bytes + 3 * x, rgb, 3 * size.width) == 0)
                found = 1 + y * 10000 + x;
    assert_true(found > 0);
    size_t left = (found - 1) % 10000, top = (found - 1) / 10000;
    for (size_t y = 0; y < size.height; y++)
        assert_memory_equal(pixels.rgb + (top + y) * pixels.row_bytes + 3 * left,
                            rgb + y * size.width * 3, size.width * 3);
    free(rgb);
    free(pixels.rgb);
    drop(&plan);
}

static void the_same_plan_gives_the_same_bytes(void **state)
{
    (void)state;
    static recede_plan plan;
    recede_sheet_options options = {0};
    recede_buffer pdf[2];
    recede_sheet_pixels pixels[2];
    make(&plan, 4, "landscape-six", RECEDE_WATERCOLOUR);
    for (int i = 0; i < 2; i++) {
        recede_buffer_start(&pdf[i], NULL);
        assert_int_equal(recede_study_pdf(&plan, NULL, &options, &pdf[i]), RECEDE_SHEET_OK);
        assert_int_equal(recede_study_pixels(&plan, NULL, &options, &pixels[i]), RECEDE_SHEET_OK);
    }
    assert_memory_equal(pdf[0].bytes, "%PDF-", 5);
    assert_int_equal(pdf[0].size, pdf[1].size);
    assert_memory_equal(pdf[0].bytes, pdf[1].bytes, pdf[0].size);
    assert_int_equal(pixels[0].height, pixels[1].height);
    assert_memory_equal(pixels[0].rgb, pixels[1].rgb, pixels[0].height * pixels[0].row_bytes);
    for (int i = 0; i < 2; i++) {
        recede_buffer_free(&pdf[i]);
        free(pixels[i].rgb);
    }
    drop(&plan);
}

static void text_keeps_its_size_and_its_room(void **state)
{
    (void)state;
    static const size_t counts[] = {1, 3, 12, 64};
    static const double shapes[][2] = {{0.38, 0.28}, {0.2, 0.5}, {0.9, 0.3}, {0.5, 0.5}};
    static recede_plan plan;
    for (size_t c = 0; c < 4; c++) {
        missing m = {0};
        make(&plan, counts[c], c % 2 ? "landscape-twelve" : "landscape-twenty-four",
             RECEDE_WATERCOLOUR);
        plan.scene.paper_width_m = shapes[c][0];
        plan.scene.paper_height_m = shapes[c][1];
        /* at least a line of a paint or of water for every wash */
        assert_true(check_layout(&plan, &m) >= 2 * counts[c]);
        assert_int_equal(m.glyphs, 0);
        drop(&plan);
    }
}

static void long_names_stay_in_their_rooms(void **state)
{
    (void)state;
    static const char *const names[] = {long_word, long_words, long_cyrillic};
    static recede_plan plan;
    for (size_t i = 0; i < 3; i++) {
        missing m = {0};
        assert_true(strlen(names[i]) < RECEDE_NAME_SIZE && strlen(names[i]) > 195);
        make(&plan, i == 1 ? 64 : 7, "landscape-six", RECEDE_WATERCOLOUR);
        name_all(&plan, names[i]);
        check_layout(&plan, &m);
        assert_int_equal(m.glyphs, 0);
        drop(&plan);
    }
}

/* A painter's own paints may have long names too: they wrap, and no recipe is
 * cut before the third line. */
static void long_names_of_paints_wrap(void **state)
{
    (void)state;
    static recede_plan plan;
    static recede_paint paints[6];
    missing m = {0};
    recede_spectrum paper = recede_paper_white();
    make(&plan, 3, "landscape-six", RECEDE_WATERCOLOUR);
    recede_palette_free(plan.palette);
    for (size_t i = 0; i < 6; i++) {
        paints[i] = plan.scene.paints[i];
        paints[i].ingredients = 0;
        snprintf(paints[i].colour_index, RECEDE_NAME_SIZE, "%s", "");
        snprintf(paints[i].name, RECEDE_NAME_SIZE,
                 "%zu of the tubes that were left at the back of "
                 "the old tin box",
                 i);
    }
    assert_int_equal(
        recede_palette_new(paints, 6, RECEDE_WATERCOLOUR, &paper, NULL, &plan.palette, NULL),
        RECEDE_OK);
    check_layout(&plan, &m);
    drop(&plan);
}

static void what_the_font_lacks_is_told(void **state)
{
    (void)state;
    static recede_plan plan;
    missing m = {0};
    make(&plan, 2, "landscape-six", RECEDE_WATERCOLOUR);
    snprintf(plan.scene.planes[0].name, RECEDE_NAME_SIZE, "柳の土手");
    check_layout(&plan, &m);
    assert_true(m.texts >= 2); /* in the list of values and in the key */
    assert_int_equal(m.glyphs, 4 * m.texts);
    assert_string_equal(m.last, "柳の土手");
    drop(&plan);
}

/* Text is data: what looks like markup is set as it stands, at full length. */
static void text_is_never_markup(void **state)
{
    (void)state;
    recede_type *type = recede_type_new(RECEDE_FONT, NULL, NULL, NULL);
    recede_style style = {10, 0, 1, RECEDE_LEFT, {0, 0, 0}, 0};
    assert_non_null(type);
    assert_true(recede_type_width(type, "<b>x</b>&amp;", &style)
                > 3 * recede_type_width(type, "xx", &style));
    recede_type_free(type);
}

/* Type sizes are true: an em of 72 pt is an inch. Lato's advance of 'n' times
 * ten is ten times one; the line is 1.2 em (the font's own figures: ascent 1974,
 * descent 426 of 2000, from its hhea table). */
static void type_is_measured_in_millimetres(void **state)
{
    (void)state;
    recede_type *type = recede_type_new(RECEDE_FONT, NULL, NULL, NULL);
    recede_style one = {10, 0, 1, RECEDE_LEFT, {0, 0, 0}, 0}, three = one;
    three.size_pt = 30;
    assert_non_null(type);
    assert_near(recede_type_line(type, 72), 25.4 * 1.2, 0.05);
    assert_near(recede_type_width(type, "nnnnnnnnnn", &one),
                10 * recede_type_width(type, "n", &one), 0.01);
    assert_near(recede_type_width(type, "n", &three), 3 * recede_type_width(type, "n", &one), 0.01);
    recede_type_free(type);
}

static void text_shrinks_wraps_and_is_cut_in_that_order(void **state)
{
    (void)state;
    recede_type_log log = {0};
    recede_type *type = recede_type_new(RECEDE_FONT, &log, NULL, NULL);
    recede_style style = {12, 8, 2, RECEDE_LEFT, {0, 0, 0}, 0};
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 100, 100);
    cairo_t *cr = cairo_create(surface);
    assert_non_null(type);
    recede_type_set(type, cr, "a far ridge", (recede_rect){0, 0, 60, 20}, &style);
    recede_type_set(type, cr, "a far ridge seen over the wood", (recede_rect){0, 0, 40, 20},
                    &style);
    recede_type_set(type, cr, "a far ridge seen over the wood by the mill",
                    (recede_rect){0, 0, 32, 20}, &style);
    recede_type_set(type, cr, long_words, (recede_rect){0, 0, 30, 20}, &style);
    recede_type_set(type, cr, "a far ridge seen over the wood", (recede_rect){0, 0, 40, 4.3},
                    &style);
    assert_int_equal(log.count, 5);
    assert_near(log.records[0].size_pt, 12, 0);
    assert_true(log.records[0].ink.h < 5);
    assert_near(log.records[1].size_pt, 12, 0);
    assert_true(log.records[1].ink.h > 5);
    assert_true(log.records[2].size_pt < 12 && log.records[2].size_pt > 8
                && !log.records[2].is_cut);
    assert_near(log.records[3].size_pt, 8, 0);
    assert_true(log.records[3].is_cut);
    assert_true(log.records[4].ink.h < 4.3 && log.records[4].size_pt < 12);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    recede_type_free(type);
    free_log(&log);
}

static void collect(const recede_plan *plan, recede_type_log *log)
{
    recede_sheet_options options = {.log = log};
    recede_buffer pdf;
    recede_buffer_start(&pdf, NULL);
    assert_int_equal(recede_study_pdf(plan, NULL, &options, &pdf), RECEDE_SHEET_OK);
    recede_buffer_free(&pdf);
}

/* How many texts on the sheet hold the words. */
static int count_texts(const recede_type_log *log, const char *words)
{
    int count = 0;
    for (size_t i = 0; i < log->count; i++)
        count += strstr(log->records[i].text, words) != NULL;
    return count;
}

static void the_key_says_what_a_painter_needs(void **state)
{
    (void)state;
    static recede_plan plan;
    recede_type_log log = {0};
    make(&plan, 3, "landscape-six", RECEDE_WATERCOLOUR);
    plan.planned[2].lit.crest.recipe.mix = (recede_mix){1, {4}, {1}, recede_water_at(0)};
    collect(&plan, &log);
    /* sky 2, three planes of 2 sides, one of which has a foot as well */
    assert_int_equal(count_texts(&log, "judge dry"), 9);
    assert_int_equal(count_texts(&log, "match: "), 9);
    /* once as a mix, once where the layers are told */
    assert_int_equal(count_texts(&log, "bare paper"), 2);
    assert_int_equal(count_texts(&log, "ultramarine blue alone"), 1);
    assert_int_equal(count_texts(&log, "no water"), 1);
    assert_int_equal(count_texts(&log, "6 phthalo blue"), 3);
    assert_int_equal(count_texts(&log, "over the dry lit wash"), 1);
    assert_int_equal(count_texts(&log, "the mix misses the colour"), 1);
    assert_int_equal(count_texts(&log, "seen as"), 3);
    assert_int_equal(count_texts(&log, "hard edge"), 2);
    assert_int_equal(count_texts(&log, "lost edge"), 1);
    assert_int_equal(count_texts(&log, "PB29"), 1);
    assert_int_equal(count_texts(&log, "30 m"), 1);
    free_log(&log);
    drop(&plan);
}

/* A paint of the painter's own has no pigment of the library to tell of it. */
static void an_own_paint_is_told_by_its_file(void **state)
{
    (void)state;
    static recede_plan plan;
    static recede_paint paints[6];
    recede_type_log log = {0};
    recede_spectrum paper = recede_paper_white();
    make(&plan, 3, "landscape-six", RECEDE_WATERCOLOUR);
    recede_palette_free(plan.palette);
    memcpy(paints, plan.scene.paints, sizeof paints);
    paints[2].ingredients = 0;
    strcpy(paints[2].colour_index, "PG23");
    strcpy(paints[2].caution, "wet the dust of this one");
    assert_int_equal(
        recede_palette_new(paints, 6, RECEDE_WATERCOLOUR, &paper, NULL, &plan.palette, NULL),
        RECEDE_OK);
    collect(&plan, &log);
    assert_int_equal(count_texts(&log, "PG23, a paint of your own"), 1);
    assert_int_equal(count_texts(&log, "wet the dust of this one"), 1);
    free_log(&log);
    drop(&plan);
}

static void an_opaque_study_has_no_water(void **state)
{
    (void)state;
    static recede_plan plan;
    recede_type_log log = {0};
    static const char *const wet[] = {"water", "drop", "milk", "tea", "paper white"};
    make(&plan, 3, "opaque-sixteen", RECEDE_OIL);
    plan.warning_count = 0;
    collect(&plan, &log);
    check_log(&log);
    for (size_t i = 0; i < sizeof wet / sizeof wet[0]; i++)
        assert_int_equal(count_texts(&log, wet[i]), 0);
    assert_int_equal(count_texts(&log, "bare ground"), 1);
    assert_true(count_texts(&log, "less white") > 3);
    free_log(&log);
    drop(&plan);
}

static void a_font_that_is_not_there_is_told(void **state)
{
    (void)state;
    static recede_plan plan;
    recede_sheet_pixels pixels;
    recede_buffer pdf;
    recede_sheet_options options = {.font_path = "/nonexistent/font.ttf"};
    make(&plan, 1, "landscape-six", RECEDE_WATERCOLOUR);
    recede_buffer_start(&pdf, NULL);
    assert_int_equal(recede_study_pixels(&plan, NULL, &options, &pixels), RECEDE_SHEET_NO_FONT);
    assert_null(pixels.rgb);
    assert_int_equal(recede_study_pdf(&plan, NULL, &options, &pdf), RECEDE_SHEET_NO_FONT);
    assert_int_equal(pdf.size, 0);
    recede_buffer_free(&pdf);
    drop(&plan);
}

/* Each allocation of ours fails in turn (those of the drawing libraries cannot
 * be made to). Every one ends the call with its code and leaves nothing. */
static void memory_running_out_is_survived(void **state)
{
    (void)state;
    static recede_plan plan;
    test_memory memory;
    recede_allocator counting = test_allocator(&memory, 0);
    recede_sheet_options options = {.allocator = &counting};
    recede_buffer pdf;
    make(&plan, 1, "landscape-six", RECEDE_WATERCOLOUR);
    recede_buffer_start(&pdf, NULL);
    assert_int_equal(recede_study_pdf(&plan, NULL, &options, &pdf), RECEDE_SHEET_OK);
    recede_buffer_free(&pdf);
    assert_int_equal(memory.live, 0);
    size_t calls = memory.calls;
    assert_true(calls > 50);
    for (size_t at = 1; at <= calls; at += 1 + at / 12) {
        recede_allocator failing = test_allocator(&memory, at);
        options.allocator = &failing;
        recede_buffer_start(&pdf, NULL);
        assert_int_equal(recede_study_pdf(&plan, NULL, &options, &pdf), RECEDE_SHEET_NO_MEMORY);
        assert_int_equal(memory.live, 0);
        recede_buffer_free(&pdf);
    }
    drop(&plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pages_are_a4_at_300_dots),
        cmocka_unit_test(the_picture_is_the_library_s),
        cmocka_unit_test(the_same_plan_gives_the_same_bytes),
        cmocka_unit_test(text_keeps_its_size_and_its_room),
        cmocka_unit_test(long_names_stay_in_their_rooms),
        cmocka_unit_test(long_names_of_paints_wrap),
        cmocka_unit_test(what_the_font_lacks_is_told),
        cmocka_unit_test(text_is_never_markup),
        cmocka_unit_test(type_is_measured_in_millimetres),
        cmocka_unit_test(text_shrinks_wraps_and_is_cut_in_that_order),
        cmocka_unit_test(the_key_says_what_a_painter_needs),
        cmocka_unit_test(an_own_paint_is_told_by_its_file),
        cmocka_unit_test(an_opaque_study_has_no_water),
        cmocka_unit_test(a_font_that_is_not_there_is_told),
        cmocka_unit_test(memory_running_out_is_survived),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
