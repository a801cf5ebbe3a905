/* What no paint can be learnt from, and what is left when learning fails or is stopped. */
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

#include "paint/swatch_maker.h"

static recede_swatches swatches;
static swatch_pot pot;

static void start(const char *pigment, recede_medium medium, int spectral)
{
    static const double strengths[] = {0, 1, 4, 16};
    pot = pot_of(recede_pigment_named(pigment), medium);
    fill_swatches(&pot, strengths, 4, spectral, NOISE_NONE, 0, &swatches);
}

static recede_error refusal(recede_code code)
{
    recede_paint_fit fit;
    recede_error error;
    assert_int_equal(recede_paint_learn(&swatches, NULL, NULL, &fit, NULL), code);
    assert_int_equal(recede_paint_learn(&swatches, NULL, NULL, &fit, &error), code);
    if (code)
        assert_int_equal(error.code, code);
    return error;
}

static void refuse(recede_code code, const char *path)
{
    assert_string_equal(refusal(code).path, path);
}

static void too_few_or_many_are_refused(void **state)
{
    (void)state;
    for (int spectral = 0; spectral < 2; spectral++) {
        start("viridian", RECEDE_WATERCOLOUR, spectral);
        size_t least = spectral ? 2 : 3;
        for (swatches.count = 0; swatches.count < least; swatches.count++) {
            recede_error error = refusal(RECEDE_TOO_FEW);
            assert_string_equal(error.path, "swatches");
            assert_near(error.number, (double)swatches.count, 0);
            /* among none there is no spectrum */
            assert_near(error.least, swatches.count ? (double)least : 3, 0);
            assert_near(error.most, RECEDE_MOST_SWATCHES, 0);
        }
        refusal(RECEDE_OK);
    }
    swatches.count = RECEDE_MOST_SWATCHES + 1;
    recede_error error = refusal(RECEDE_TOO_MANY);
    assert_string_equal(error.path, "swatches");
    assert_near(error.number, RECEDE_MOST_SWATCHES + 1, 0);
}

static void masstone_must_be_there(void **state)
{
    (void)state;
    start("viridian", RECEDE_WATERCOLOUR, 0);
    swatches.of[0].water = 0.5;
    refuse(RECEDE_TOO_FEW, "swatches.masstone");
    start("viridian", RECEDE_GOUACHE, 1);
    swatches.of[0].white = 0.5;
    refuse(RECEDE_TOO_FEW, "swatches.masstone");
}

static void two_of_one_strength_are_refused(void **state)
{
    (void)state;
    start("viridian", RECEDE_WATERCOLOUR, 0);
    swatches.of[3].water = swatches.of[1].water;
    refuse(RECEDE_DUPLICATE, "swatches[3]");
    start("viridian", RECEDE_OIL, 0);
    swatches.of[2].white = 0;
    refuse(RECEDE_DUPLICATE, "swatches[2]");
}

static void figures_beyond_their_limits_are_refused(void **state)
{
    (void)state;
    enum { COUNT = 12 };
    static const struct {
        recede_medium medium;
        int spectral;
        size_t offset; /* within the second swatch */
        double number;
        const char *path;
    } wrong[COUNT] = {
        {RECEDE_WATERCOLOUR, 0, offsetof(recede_swatch, water), -0.1, "swatches[1].water"},
        {RECEDE_WATERCOLOUR, 0, offsetof(recede_swatch, water), 1000.5, "swatches[1].water"},
        {RECEDE_WATERCOLOUR, 0, offsetof(recede_swatch, white), 1, "swatches[1].white"},
        {RECEDE_OIL, 0, offsetof(recede_swatch, water), 1, "swatches[1].water"},
        {RECEDE_OIL, 0, offsetof(recede_swatch, white), 100.5, "swatches[1].white"},
        {RECEDE_OIL, 0, offsetof(recede_swatch, white), -1, "swatches[1].white"},
        {RECEDE_OIL, 0, offsetof(recede_swatch, lab.l), 111, "swatches[1].lab"},
        {RECEDE_OIL, 0, offsetof(recede_swatch, lab.l), -1, "swatches[1].lab"},
        {RECEDE_OIL, 0, offsetof(recede_swatch, lab.a), 201, "swatches[1].lab"},
        {RECEDE_OIL, 0, offsetof(recede_swatch, lab.b), -201, "swatches[1].lab"},
        {RECEDE_OIL, 1, offsetof(recede_swatch, reflectance), 1.01, "swatches[1].reflectance"},
        {RECEDE_OIL, 1, offsetof(recede_swatch, reflectance) + 35 * sizeof(double), -0.01,
         "swatches[1].reflectance"},
    };
    for (int i = 0; i < COUNT; i++) {
        start("viridian", wrong[i].medium, wrong[i].spectral);
        char *at = (char *)&swatches.of[1] + wrong[i].offset;
        memcpy(at, &wrong[i].number, sizeof wrong[i].number);
        recede_error error = refusal(RECEDE_OUT_OF_RANGE);
        assert_string_equal(error.path, wrong[i].path);
        assert_near(error.number, wrong[i].number, 0);
        memcpy(at, &(double){NAN}, sizeof(double));
        refuse(RECEDE_NOT_FINITE, wrong[i].path);
    }
    start("viridian", RECEDE_WATERCOLOUR, 1);
    swatches.paper.at[3] = 1.2;
    refuse(RECEDE_OUT_OF_RANGE, "swatches.paper");
    swatches.paper.at[3] = INFINITY;
    refuse(RECEDE_NOT_FINITE, "swatches.paper");
}

static void white_must_be_given(void **state)
{
    (void)state;
    start("viridian", RECEDE_ACRYLIC, 0);
    recede_paint green = paint_of("viridian"), white = pot.white;
    swatches.white = NULL;
    refuse(RECEDE_CONFLICT, "swatches.white");
    swatches.white = &green;
    assert_string_equal(refusal(RECEDE_CONFLICT).found, "viridian");
    swatches.white = &white;
    white.s.at[9] = -1;
    refuse(RECEDE_OUT_OF_RANGE, "swatches.white");
    start("viridian", RECEDE_WATERCOLOUR, 0);
    swatches.white = NULL;
    refusal(RECEDE_OK);
}

static void grey_the_paper(double y)
{
    for (int band = 0; band < RECEDE_BANDS; band++)
        pot.paper.at[band] = y;
}

/* L* 50 is Y = 0.1842: ISO/CIE 11664-4, ((50 + 16) / 116)^3. */
static void dark_paper_is_refused(void **state)
{
    (void)state;
    static const double strengths[] = {0, 1, 4, 16};
    for (int light = 0; light < 2; light++) {
        start("lamp black", RECEDE_WATERCOLOUR, 0);
        grey_the_paper(light ? 0.1845 : 0.1838);
        fill_swatches(&pot, strengths, 4, 0, NOISE_NONE, 0, &swatches);
        recede_error error = refusal(light ? RECEDE_OK : RECEDE_CONFLICT);
        if (light)
            continue;
        assert_string_equal(error.path, "swatches.paper");
        assert_near(error.number, 50, 0.1);
        assert_near(error.least, 50, 0);
    }
}

static void wash_darker_than_the_masstone_is_refused(void **state)
{
    (void)state;
    for (int spectral = 0; spectral < 2; spectral++) {
        start("burnt sienna", RECEDE_WATERCOLOUR, spectral);
        double masstone = spectral ? lab_of_spectrum(&swatches.of[0].reflectance).l
                                   : swatches.of[0].lab.l;
        swatches.of[2].has_reflectance = 0;
        swatches.of[2].lab = (recede_lab){masstone - 0.9, 10, 10};
        refusal(RECEDE_OK);
        swatches.of[2].lab.l = masstone - 1.1;
        recede_error error = refusal(RECEDE_CONFLICT);
        assert_string_equal(error.path, "swatches[2]");
        assert_near(error.number, masstone - 1.1, 1e-9);
        assert_near(error.most, masstone, 1e-9);
    }
}

/* Over a cream paper the washes of a white are darker than its masstone, and so are those
 * of a yellow over a bluish one: they are what paint does. Darker than the paper too is
 * not. A tint is no darker than the darker of paint and white. */
static void pale_paints_may_grow_darker_toward_the_paper(void **state)
{
    (void)state;
    static const char *const pale[] = {"titanium white", "naples yellow",
                                       "cadmium yellow, light", "hansa yellow"};
    static const double strengths[] = {0, 1, 4, 16};
    int darker = 0;
    for (int i = 0; i < 4; i++)
        for (int cool = 0; cool < 2; cool++) {
            start(pale[i], RECEDE_WATERCOLOUR, 0);
            for (int band = 0; band < RECEDE_BANDS; band++)
                pot.paper.at[band] = cool ? 0.55 - 0.008 * band : 0.2 + 0.01 * band;
            fill_swatches(&pot, strengths, 4, 0, NOISE_NONE, 0, &swatches);
            darker += swatches.of[3].lab.l < swatches.of[0].lab.l - 1;
            refusal(RECEDE_OK);
            swatches.of[3].lab.l = lab_of_spectrum(&pot.paper).l - 30;
            refuse(RECEDE_CONFLICT, "swatches[3]");
        }
    assert_true(darker >= 6);
    start("titanium white", RECEDE_OIL, 1);
    refusal(RECEDE_OK);
    start("lamp black", RECEDE_OIL, 0);
    swatches.of[1].lab = (recede_lab){swatches.of[0].lab.l - 2, 0, 0};
    refuse(RECEDE_CONFLICT, "swatches[1]");
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_paint_fit fit, untouched;
    recede_error error;
    start("viridian", RECEDE_WATERCOLOUR, 0);
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    assert_int_equal(recede_paint_learn(&swatches, &allocator, NULL, &fit, &error), RECEDE_OK);
    size_t calls = memory.calls;
    assert_true(calls > 0);
    assert_int_equal(memory.live, 0);
    printf("learning takes %zu bytes\n", memory.peak);
    untouched = fit;
    for (size_t at = 1; at <= calls; at++) {
        allocator = test_allocator(&memory, at);
        assert_int_equal(recede_paint_learn(&swatches, &allocator, NULL, &fit, &error),
                         RECEDE_NO_MEMORY);
        assert_int_equal(error.code, RECEDE_NO_MEMORY);
        assert_int_equal(memory.live, 0);
        assert_memory_equal(&fit, &untouched, sizeof fit);
    }
}

typedef struct patience { int calls, most; double last; } patience;

static int report(void *context, double share_done)
{
    patience *p = context;
    assert_true(share_done >= p->last && share_done <= 1);
    p->last = share_done;
    return ++p->calls == p->most;
}

static void learning_can_be_stopped(void **state)
{
    (void)state;
    recede_paint_fit fit;
    recede_error error;
    start("viridian", RECEDE_WATERCOLOUR, 0);
    patience p = {0, 0, 0};
    recede_progress progress = {report, &p};
    assert_int_equal(recede_paint_learn(&swatches, NULL, &progress, &fit, &error), RECEDE_OK);
    assert_true(p.calls > 3);
    const int stops[] = {1, p.calls / 2, p.calls};
    for (int i = 0; i < 3; i++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        p = (patience){0, stops[i], 0};
        assert_int_equal(recede_paint_learn(&swatches, &allocator, &progress, &fit, &error),
                         RECEDE_CANCELLED);
        assert_int_equal(error.code, RECEDE_CANCELLED);
        assert_int_equal(p.calls, stops[i]);
        assert_int_equal(memory.live, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(too_few_or_many_are_refused),
        cmocka_unit_test(masstone_must_be_there),
        cmocka_unit_test(two_of_one_strength_are_refused),
        cmocka_unit_test(figures_beyond_their_limits_are_refused),
        cmocka_unit_test(white_must_be_given),
        cmocka_unit_test(dark_paper_is_refused),
        cmocka_unit_test(wash_darker_than_the_masstone_is_refused),
        cmocka_unit_test(pale_paints_may_grow_darker_toward_the_paper),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(learning_can_be_stopped),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
