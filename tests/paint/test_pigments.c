/* The tables of pigments, tubes, palettes and paper, and how names find them. */
#include "recede.h"
#include "support/assert_near.h"

#include "data/tables.h"
#include "paint/paints.h"

#include <string.h>

static int holds(const char *text, const char *word)
{
    return strstr(text, word) != NULL;
}

static void every_pigment_is_told_in_full(void **state)
{
    (void)state;
    assert_int_equal(recede_pigment_count(), 29);
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const recede_pigment *p = recede_pigment_at(i);
        assert_ptr_equal(recede_pigment_named(p->name), p);
        assert_true(strlen(p->colour_index) >= 3);
        assert_true(p->transparency[0] && p->permanence[0] && p->source[0]);
        assert_true(holds(p->measured, "measured") && holds(p->measured, "assumed"));
        for (int band = 0; band < RECEDE_BANDS; band++) {
            assert_true(p->k.at[band] > 0 && p->k.at[band] < 20);
            assert_true(p->s.at[band] > 0 && p->s.at[band] < 2);
        }
    }
    assert_null(recede_pigment_named("Ultramarine blue"));
    assert_null(recede_pigment_named(""));
}

/* Some figures as printed: Y. Okumura, thesis, Rochester Institute of Technology, 2005;
 * K from A. Cosentino, e-conservation Journal 2 (2014), with S assumed. */
static void figures_are_the_published_ones(void **state)
{
    (void)state;
    const recede_pigment *blue = recede_pigment_named("ultramarine blue");
    assert_near(blue->k.at[0], 0.063737, 0);
    assert_near(blue->k.at[35], 0.072155, 0);
    assert_near(blue->s.at[17], 0.012349, 0);
    const recede_pigment *green = recede_pigment_named("phthalo green, blue shade");
    assert_near(green->k.at[12], 0.059026, 0);
    assert_near(green->s.at[28], 0.51729, 0);
    const recede_pigment *earth = recede_pigment_named("green earth");
    assert_near(earth->k.at[1], 0.038438, 0);
    assert_near(earth->s.at[1], 0.02, 0);
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(recede_pigment_named("titanium white")->s.at[band], 1, 0);
}

/* Metals by Colour Index name: common knowledge. */
static void metals_carry_their_cautions(void **state)
{
    (void)state;
    static const struct { const char *index, *word; } metals[] = {
        {"PY37", "cadmium"},  {"PR108", "cadmium"}, {"PB28", "cobalt"},  {"PB36", "cobalt"},
        {"PB36", "chromium"}, {"PG19", "cobalt"},   {"PY40", "cobalt"},  {"PY41", "lead"},
        {"PY41", "antimony"}, {"PG17", "chromium"}, {"PG18", "chromium"}, {"PW6", "dust"},
        {"PBk7", "dust"},
    };
    for (size_t i = 0; i < sizeof metals / sizeof metals[0]; i++) {
        recede_paint paint = paint_of(metals[i].index);
        assert_true(holds(paint.of[0].pigment->caution, metals[i].word));
        assert_true(holds(paint.of[0].pigment->caution, "label"));
    }
    assert_true(holds(recede_pigment_named("burnt umber")->caution, "manganese"));
    assert_true(holds(recede_pigment_named("raw umber")->caution, "manganese"));
    assert_string_equal(recede_pigment_named("yellow ochre")->caution, "");
}

static void names_are_found_as_painters_write_them(void **state)
{
    (void)state;
    static const struct { const char *asked, *found; } names[] = {
        {"ultramarine blue", "ultramarine blue"},
        {" Ultramarine  BLUE ", "ultramarine blue"},
        {"Phthalo Blue (green shade)", "phthalo blue, green shade"},
        {"Payne's Grey", "payne's grey"},
        {"paynes gray", "payne's grey"},
        {"PAYNE\xE2\x80\x99S GRAY", "payne's grey"},
        {"Davy's gray", "davy's grey"},
        {"yellow ocher", "yellow ochre"},
        {"raw siena", "raw sienna"},
        {"vandyke brown hue", "van dyke brown hue"},
        {"sap-green", "sap green"},
        {"PB15:3", "phthalo blue, green shade"},
        {"pb15", "phthalo blue, green shade"},
        {"PB 15:6", "phthalo blue, green shade"},
        {"pb29", "ultramarine blue"},
        {"PBk7", "lamp black"},
        {"PBr7", "burnt sienna"}, /* the first of four earths, as docs/paint.md says */
    };
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        assert_string_equal(paint_of(names[i].asked).name, names[i].found);
}

static void strangers_are_refused_by_name(void **state)
{
    (void)state;
    static const char *const strangers[] = {"", " ", "ultramarin", "PB", "PB2", "PB291", "PB29:",
                                            ":3", "15:3", "P", "\xFF", "PB15:3:3", "PB15x3", "blue"};
    for (size_t i = 0; i < sizeof strangers / sizeof strangers[0]; i++) {
        recede_paint paint;
        recede_error error;
        assert_int_equal(recede_paint_named(strangers[i], &paint, &error), RECEDE_UNKNOWN_NAME);
        assert_int_equal(error.code, RECEDE_UNKNOWN_NAME);
        assert_string_equal(error.found, strangers[i]);
        assert_string_equal(error.path, "paint.palette");
        assert_int_equal(recede_paint_named(strangers[i], &paint, NULL), RECEDE_UNKNOWN_NAME);
    }
    char endless[3000];
    recede_paint paint;
    memset(endless, 'a', sizeof endless - 1);
    endless[sizeof endless - 1] = '\0';
    assert_int_equal(recede_paint_named(endless, &paint, NULL), RECEDE_UNKNOWN_NAME);
}

static void every_tube_resolves_to_its_parts(void **state)
{
    (void)state;
    assert_true(recede_tube_count() >= 60);
    for (size_t i = 0; i < recede_tube_count(); i++) {
        const recede_tube *tube = &recede_table_tubes[i];
        recede_paint paint = paint_of(recede_tube_name_at(i));
        int stars = 0;
        for (const char *at = tube->made_of; *at; at++)
            stars += *at == '*';
        assert_string_equal(paint.name, tube->name);
        assert_int_equal(paint.ingredients, stars);
        assert_in_range(paint.ingredients, 1, RECEDE_MOST_IN_MIX);
        for (int j = 0; j < paint.ingredients; j++) {
            assert_in_range(paint.of[j].parts, 1, 99);
            assert_true(holds(tube->made_of, paint.of[j].pigment->name));
            assert_true(holds(paint.colour_index, paint.of[j].pigment->colour_index));
        }
    }
}

static void a_tube_is_the_mean_of_its_parts(void **state)
{
    (void)state;
    recede_paint grey = paint_of("payne's grey");
    const recede_pigment *blue = recede_pigment_named("ultramarine blue");
    const recede_pigment *black = recede_pigment_named("lamp black");
    const recede_pigment *violet_blue = recede_pigment_named("indanthrone blue");
    assert_string_equal(grey.colour_index, "PB29 + PBk7 + PB60");
    for (int band = 0; band < RECEDE_BANDS; band++) {
        assert_near(grey.k.at[band], (12 * blue->k.at[band] + black->k.at[band]
                                      + violet_blue->k.at[band]) / 14, 1e-14);
        assert_near(grey.s.at[band], (12 * blue->s.at[band] + black->s.at[band]
                                      + violet_blue->s.at[band]) / 14, 1e-14);
    }
    recede_paint brown = paint_of("brown ochre");
    assert_string_equal(brown.colour_index, "PBr7");
}

static void whites_are_known(void **state)
{
    (void)state;
    assert_true(paint_of("titanium white").is_white);
    assert_true(paint_of("zinc white").is_white);
    assert_true(paint_of("PW6").is_white);
    assert_false(paint_of("naples yellow hue").is_white);
    assert_false(paint_of("lamp black").is_white);
}

/* Hues of washes in the common order of the colour circle: common practice, no source. */
static void tubes_have_the_hues_of_their_names(void **state)
{
    (void)state;
    static const struct { const char *name; double least, most; } hues[] = {
        {"permanent rose", 330, 360},    {"vermilion hue", 0, 45},  {"cadmium orange hue", 35, 75},
        {"naples yellow hue", 70, 100},  {"lemon yellow", 85, 110}, {"olive green", 90, 115},
        {"sap green", 105, 130},         {"hooker's green", 125, 155},
        {"viridian hue", 160, 200},      {"turquoise", 195, 230},   {"cerulean blue", 225, 265},
        {"french ultramarine", 255, 300}, {"mauve", 295, 330},      {"sepia", 50, 90},
    };
    recede_spectrum paper = recede_paper_white();
    for (size_t i = 0; i < sizeof hues / sizeof hues[0]; i++) {
        recede_paint paint = paint_of(hues[i].name);
        recede_spectrum wash = recede_film(&paint.k, &paint.s, recede_film_of_water(18), &paper);
        double hue = recede_colour_of_xyz(recede_xyz_of_reflectance(&wash)).lch.h_deg;
        assert_below(hue, hues[i].most);
        assert_below(-hue, -hues[i].least);
    }
}

static void palettes_hold_what_they_promise(void **state)
{
    (void)state;
    static const struct { const char *name; size_t count; int opaque; } promised[] = {
        {"landscape-six", 6, 0}, {"landscape-twelve", 12, 0},
        {"landscape-twenty-four", 24, 0}, {"opaque-sixteen", 16, 1},
    };
    assert_int_equal(recede_palette_entry_count(), sizeof promised / sizeof promised[0]);
    for (size_t i = 0; i < sizeof promised / sizeof promised[0]; i++) {
        const recede_palette_entry *entry = entry_of(promised[i].name);
        assert_int_equal(entry->opaque, promised[i].opaque);
        assert_true(entry->purpose[0]);
        recede_palette *palette =
            palette_of(entry->paints, entry->opaque ? RECEDE_OIL : RECEDE_WATERCOLOUR);
        assert_int_equal(recede_palette_count(palette), promised[i].count);
        int whites = 0;
        for (size_t j = 0; j < promised[i].count; j++) {
            const recede_paint *paint = recede_palette_paint(palette, j);
            const recede_pigment *pigment = paint->of[paint->let_down ? 1 : 0].pigment;
            assert_int_equal(paint->ingredients, paint->let_down ? 2 : 1);
            assert_true(!paint->let_down || entry->opaque);
            assert_false(holds(pigment->permanence, "fugitive"));
            assert_false(holds(pigment->caution, "lead"));
            assert_false(holds(pigment->colour_index, "PBk"));
            whites += paint->is_white;
        }
        assert_int_equal(whites, entry->opaque);
        recede_palette_free(palette);
    }
}

/* The paper's figures are invented; this holds what its comment says of them. */
static void paper_is_nearly_white_and_warm(void **state)
{
    (void)state;
    recede_spectrum paper = recede_paper_white();
    recede_lab lab = recede_colour_of_xyz(recede_xyz_of_reflectance(&paper)).lab;
    assert_near(lab.l, 96, 0.5);
    assert_true(lab.b > 1 && lab.b < 4);
    for (int band = 1; band < RECEDE_BANDS; band++)
        assert_true(paper.at[band] >= paper.at[band - 1]);
}

/* ISO 3, R20: powers of the twentieth root of ten, rounded by at most 1.26 % (that
 * figure from memory). */
static void water_goes_by_preferred_numbers(void **state)
{
    (void)state;
    assert_int_equal(recede_water_count(), 82);
    assert_near(recede_water_at(0), 0, 0);
    assert_near(recede_water_at(1), 0.1, 0);
    assert_near(recede_water_at(2), 0.112, 0);
    assert_near(recede_water_at(20), 0.9, 0);
    assert_near(recede_water_at(21), 1, 0);
    assert_near(recede_water_at(31), 3.15, 0);
    assert_near(recede_water_at(47), 20, 0);
    assert_near(recede_water_at(81), 1000, 0);
    for (int i = 1; i < 82; i++)
        assert_near(recede_water_at((size_t)i) / pow(10, (i - 21) / 20.0), 1, 0.0127);
    assert_near(recede_film_of_water(0), 8, 0);
    assert_near(recede_film_of_water(3), 2, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_pigment_is_told_in_full),
        cmocka_unit_test(figures_are_the_published_ones),
        cmocka_unit_test(metals_carry_their_cautions),
        cmocka_unit_test(names_are_found_as_painters_write_them),
        cmocka_unit_test(strangers_are_refused_by_name),
        cmocka_unit_test(every_tube_resolves_to_its_parts),
        cmocka_unit_test(a_tube_is_the_mean_of_its_parts),
        cmocka_unit_test(whites_are_known),
        cmocka_unit_test(tubes_have_the_hues_of_their_names),
        cmocka_unit_test(palettes_hold_what_they_promise),
        cmocka_unit_test(paper_is_nearly_white_and_warm),
        cmocka_unit_test(water_goes_by_preferred_numbers),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
