/* What palettes and the search refuse, and what is left when they fail or are stopped. */
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

#include "paint/paints.h"

static recede_code make(const char *names, size_t count, recede_medium medium,
                        const recede_allocator *allocator, recede_palette **out,
                        recede_error *error)
{
    static recede_paint paints[RECEDE_MOST_PAINTS + 1];
    recede_spectrum paper = recede_paper_white();
    size_t named = paints_of(names, paints);
    for (size_t i = named; i < count && i <= RECEDE_MOST_PAINTS; i++) {
        paints[i] = paints[0];
        paints[i].name[0] = (char)('A' + i);
    }
    return recede_palette_new(paints, count, medium, &paper, allocator, out, error);
}

static void palettes_that_cannot_be_are_refused(void **state)
{
    (void)state;
    static const struct {
        const char *names;
        size_t count;
        recede_medium medium;
        recede_code code;
        const char *found;
        double number;
    } refused[] = {
        {"", 0, RECEDE_WATERCOLOUR, RECEDE_TOO_FEW, "", 0},
        {"viridian", 25, RECEDE_WATERCOLOUR, RECEDE_TOO_MANY, "", 25},
        {"viridian|yellow ochre|viridian", 3, RECEDE_WATERCOLOUR, RECEDE_DUPLICATE, "viridian", 0},
        {"PB29|ultramarine blue", 2, RECEDE_OIL, RECEDE_DUPLICATE, "ultramarine blue", 0},
        {"viridian|yellow ochre", 2, RECEDE_OIL, RECEDE_NO_WHITE, "", 0},
        {"viridian|naples yellow hue", 2, RECEDE_GOUACHE, RECEDE_NO_WHITE, "", 0},
        {"viridian", 1, RECEDE_ACRYLIC, RECEDE_NO_WHITE, "", 0},
    };
    for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++) {
        recede_palette *palette = (recede_palette *)&refused[0];
        recede_error error;
        assert_int_equal(make(refused[i].names, refused[i].count, refused[i].medium, NULL,
                              &palette, &error), refused[i].code);
        assert_int_equal(error.code, refused[i].code);
        assert_string_equal(error.path, "paint.palette");
        assert_string_equal(error.found, refused[i].found);
        assert_near(error.number, refused[i].number, 0);
        assert_null(palette);
    }
    recede_palette_free(NULL);
}

static void figures_that_are_none_are_refused(void **state)
{
    (void)state;
    static recede_paint paint;
    recede_palette *palette;
    recede_error error;
    recede_spectrum paper = recede_paper_white();
    paint = paint_of("viridian");
    paint.k.at[20] = NAN;
    assert_int_equal(recede_palette_new(&paint, 1, RECEDE_WATERCOLOUR, &paper, NULL, &palette,
                                        &error), RECEDE_NOT_FINITE);
    paint.k.at[20] = 0.1;
    paint.s.at[3] = -1e-9;
    assert_int_equal(recede_palette_new(&paint, 1, RECEDE_WATERCOLOUR, &paper, NULL, &palette,
                                        &error), RECEDE_OUT_OF_RANGE);
    paint.s.at[3] = 0;
    paper.at[35] = 1.01;
    assert_int_equal(recede_palette_new(&paint, 1, RECEDE_WATERCOLOUR, &paper, NULL, &palette,
                                        &error), RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "paper");
}

static const char small_box[] = "hansa yellow|burnt sienna|ultramarine blue|viridian";

static void searches_that_cannot_be_are_refused(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    static const struct {
        recede_rules rules;
        recede_wash_target target;
        recede_code code;
        const char *path;
    } refused[] = {
        {{0, 8, 1}, {.graded = 0}, RECEDE_OUT_OF_RANGE, "paint.most_pigments"},
        {{5, 8, 1}, {.graded = 0}, RECEDE_OUT_OF_RANGE, "paint.most_pigments"},
        {{3, 0, 1}, {.graded = 0}, RECEDE_OUT_OF_RANGE, "paint.most_parts"},
        {{3, 13, 1}, {.graded = 0}, RECEDE_OUT_OF_RANGE, "paint.most_parts"},
        {{3, 8, -0.1}, {.graded = 0}, RECEDE_OUT_OF_RANGE, "paint.tie"},
        {{3, 8, 10.1}, {.graded = 0}, RECEDE_OUT_OF_RANGE, "paint.tie"},
        {{3, 8, NAN}, {.graded = 0}, RECEDE_NOT_FINITE, "paint.tie"},
        {{3, 8, 1}, {.from = {NAN, 0, 0}}, RECEDE_NOT_FINITE, "targets[1].from"},
        {{3, 8, 1}, {.from = {50, INFINITY, 0}}, RECEDE_NOT_FINITE, "targets[1].from"},
        {{3, 8, 1}, {.from = {50, 0, 1e300}}, RECEDE_OUT_OF_RANGE, "targets[1].from"},
        {{3, 8, 1}, {.to = {0, NAN, 0}, .graded = 1}, RECEDE_NOT_FINITE, "targets[1].to"},
        {{3, 8, 1}, {.half = {0, 0, NAN}, .graded = 1}, RECEDE_NOT_FINITE, "targets[1].half"},
    };
    for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++) {
        recede_wash_target targets[2] = {{.from = {50, 0, 0}}, refused[i].target};
        recede_wash_recipe found[2];
        recede_error error;
        assert_int_equal(recede_search_all(palette, &refused[i].rules, targets, 2, found, NULL,
                                           NULL, &error), refused[i].code);
        assert_int_equal(error.code, refused[i].code);
        assert_string_equal(error.path, refused[i].path);
    }
    /* a flat wash's other ends do not matter; no targets are no work */
    recede_wash_target flat = {.from = {50, 0, 0}, .to = {NAN, NAN, NAN}};
    recede_wash_recipe found;
    recede_rules rules = {1, 1, 1};
    assert_int_equal(recede_search_all(palette, &rules, &flat, 1, &found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_search_all(palette, &rules, NULL, 0, NULL, NULL, NULL, NULL),
                     RECEDE_OK);
    recede_palette_free(palette);
}

/* Targets that make lists grow and tables: flat and graded, with a wide tie. */
static const recede_wash_target hungry[] = {
    {.from = {60, -10, 30}},
    {.from = {95, 0, 2}},
    {.from = {60, -5, -20}, .to = {88, 0, 5}, .half = {75, -3, -8}, .graded = 1},
    {.from = {30, 0, 0}},
    {.from = {70, 10, 30}, .to = {93, 0, 5}, .half = {80, 5, 15}, .graded = 1},
};
enum { HUNGRY = sizeof hungry / sizeof hungry[0] };
static const recede_rules hungry_rules = {3, 6, 4};

static void no_memory_at_any_point_leaves_nothing_behind(void **state)
{
    (void)state;
    recede_wash_recipe whole[HUNGRY], found[HUNGRY];
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    assert_int_equal(recede_search_all(palette, &hungry_rules, hungry, HUNGRY, whole, &allocator,
                                       NULL, NULL), RECEDE_OK);
    size_t calls = memory.calls;
    print_message("%zu allocations, at most %zu bytes\n", calls, memory.peak);
    assert_int_equal(memory.live, 0);
    assert_true(calls > 10);
    for (size_t fail_at = 1; fail_at <= calls; fail_at++) {
        recede_error error;
        allocator = test_allocator(&memory, fail_at);
        assert_int_equal(recede_search_all(palette, &hungry_rules, hungry, HUNGRY, found,
                                           &allocator, NULL, &error), RECEDE_NO_MEMORY);
        assert_int_equal(error.code, RECEDE_NO_MEMORY);
        assert_int_equal(memory.live, 0);
    }
    allocator = test_allocator(&memory, calls + 1);
    assert_int_equal(recede_search_all(palette, &hungry_rules, hungry, HUNGRY, found, &allocator,
                                       NULL, NULL), RECEDE_OK);
    for (int i = 0; i < HUNGRY; i++)
        assert_near(found[i].from.delta_e, whole[i].from.delta_e, 0);
    recede_palette_free(palette);
}

static void a_palette_gives_its_memory_back(void **state)
{
    (void)state;
    test_memory memory;
    recede_palette *palette;
    recede_error error;
    recede_allocator allocator = test_allocator(&memory, 1);
    assert_int_equal(make(small_box, 4, RECEDE_WATERCOLOUR, &allocator, &palette, &error),
                     RECEDE_NO_MEMORY);
    assert_int_equal(memory.live, 0);
    assert_null(palette);
    allocator = test_allocator(&memory, 0);
    assert_int_equal(make(small_box, 4, RECEDE_WATERCOLOUR, &allocator, &palette, &error),
                     RECEDE_OK);
    assert_true(memory.live > 0);
    assert_int_equal(recede_palette_count(palette), 4);
    assert_string_equal(recede_palette_paint(palette, 3)->name, "viridian");
    assert_int_equal(recede_palette_medium(palette), RECEDE_WATERCOLOUR);
    assert_near(recede_palette_paper(palette)->at[0], recede_paper_white().at[0], 0);
    recede_palette_free(palette);
    assert_int_equal(memory.live, 0);
}

typedef struct listener { int calls, stop_at; double last; } listener;

static int listen(void *context, double share_done)
{
    listener *l = context;
    assert_true(share_done >= l->last && share_done <= 1);
    l->last = share_done;
    return ++l->calls == l->stop_at;
}

static void progress_is_told_and_a_stop_is_heard(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_wash_recipe found[HUNGRY];
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    listener whole = {0, 0, 0};
    recede_progress progress = {listen, &whole};
    assert_int_equal(recede_search_all(palette, &hungry_rules, hungry, HUNGRY, found, &allocator,
                                       &progress, NULL), RECEDE_OK);
    assert_near(whole.last, 1, 0);
    assert_in_range(whole.calls, 50, 101);
    for (int stop_at = 1; stop_at <= whole.calls; stop_at++) {
        listener stopper = {0, stop_at, 0};
        recede_error error;
        progress.context = &stopper;
        assert_int_equal(recede_search_all(palette, &hungry_rules, hungry, HUNGRY, found,
                                           &allocator, &progress, &error), RECEDE_CANCELLED);
        assert_int_equal(error.code, RECEDE_CANCELLED);
        assert_int_equal(stopper.calls, stop_at);
        assert_int_equal(memory.live, 0);
    }
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(palettes_that_cannot_be_are_refused),
        cmocka_unit_test(figures_that_are_none_are_refused),
        cmocka_unit_test(searches_that_cannot_be_are_refused),
        cmocka_unit_test(no_memory_at_any_point_leaves_nothing_behind),
        cmocka_unit_test(a_palette_gives_its_memory_back),
        cmocka_unit_test(progress_is_told_and_a_stop_is_heard),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
