/* Facts of the painting trade that the paint model must show: common practice, no
 * source. Each stands in its own test. */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/paints.h"

#include <math.h>

/* The colour of a wash of up to three paints, by name and parts, on white paper. */
typedef struct recipe { const char *name[3]; int parts[3]; } recipe;

static recede_lch wash(recipe r, double water)
{
    recede_spectrum k = {{0}}, s = {{0}}, paper = recede_paper_white();
    double total = r.parts[0] + r.parts[1] + r.parts[2];
    for (int i = 0; i < 3; i++) {
        if (!r.parts[i])
            continue;
        recede_paint paint = paint_of(r.name[i]);
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k.at[band] += r.parts[i] / total * paint.k.at[band];
            s.at[band] += r.parts[i] / total * paint.s.at[band];
        }
    }
    recede_spectrum seen = recede_film(&k, &s, recede_film_of_water(water), &paper);
    return recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lch;
}

static const char greenish_blue[] = "phthalo blue, green shade";
static const char *const reddish_blues[] = {"ultramarine blue", "cobalt blue", "indanthrone blue"};
static const char *const yellows[] = {"hansa yellow", "diarylide yellow", "yellow ochre"};
static const char *const brown_earths[] = {"raw sienna", "burnt umber"};
static const double waters[] = {0, 4, 8, 16, 28};
#define EACH(i, list) for (size_t i = 0; i < sizeof list / sizeof list[0]; i++)

/* The most chroma that two paints give as a middle green: L* 65, hue 130 degrees. -1
 * where they give no such green. */
static double best_green(const char *one, const char *other)
{
    static const double preferred[] = {0, 1, 1.6, 2.5, 4, 6.3, 10, 16, 25, 40, 63, 100};
    double best = -1;
    for (int i = 1; i <= 20; i++) {
        for (int j = 1; j <= 20; j++) {
            EACH(w, preferred) {
                recede_lch lch = wash((recipe){{one, other}, {i, j}}, preferred[w]);
                if (fabs(lch.l - 65) < 4 && fabs(lch.h_deg - 130) < 8)
                    best = fmax(best, lch.c);
            }
        }
    }
    return best;
}

static void yellow_with_greenish_blue_is_the_brighter_green(void **state)
{
    (void)state;
    EACH(y, yellows) {
        double bright = best_green(yellows[y], greenish_blue);
        EACH(b, reddish_blues) {
            double dull = best_green(yellows[y], reddish_blues[b]);
            print_message("%s: chroma %.0f with %s, %.0f with %s\n", yellows[y], bright,
                          greenish_blue, dull, reddish_blues[b]);
            assert_true(dull > 0);
            assert_true(bright > dull + 5);
        }
    }
}

static void reddish_blue_with_brown_earth_is_the_dullest_green(void **state)
{
    (void)state;
    EACH(e, brown_earths) {
        double dullest = best_green(brown_earths[e], "ultramarine blue");
        double earth_with_greenish = best_green(brown_earths[e], greenish_blue);
        double yellow_with_reddish = best_green("hansa yellow", "ultramarine blue");
        print_message("%s with ultramarine: chroma %.0f; with %s %.0f; yellow with "
                      "ultramarine %.0f\n", brown_earths[e], dullest, greenish_blue,
                      earth_with_greenish, yellow_with_reddish);
        assert_true(dullest >= 0 && dullest < 20);
        assert_true(dullest + 5 < earth_with_greenish);
        assert_true(dullest + 5 < yellow_with_reddish);
    }
}

static void a_touch_of_yellow_brings_the_dull_green_back(void **state)
{
    (void)state;
    static const recipe dull[] = {{{"burnt umber", "ultramarine blue"}, {3, 5}},
                                  {{"raw sienna", "ultramarine blue"}, {5, 3}}};
    EACH(d, dull) EACH(w, waters) {
        recipe touched = dull[d];
        touched.name[2] = "hansa yellow";
        touched.parts[2] = 1;
        recede_lch before = wash(dull[d], waters[w]), after = wash(touched, waters[w]);
        double green_before = -before.c * cos(before.h_deg * 3.14159265358979 / 180);
        double green_after = -after.c * cos(after.h_deg * 3.14159265358979 / 180);
        assert_true(green_after > green_before);
        assert_true(waters[w] > 20 || after.h_deg > 90);
        assert_true(after.h_deg < 180);
    }
}

static const recipe bright_greens[] = {
    {{"hansa yellow", "phthalo blue, green shade"}, {12, 2}},
    {{"hansa yellow", "phthalo green, blue shade"}, {12, 2}},
    {{"diarylide yellow", "phthalo blue, green shade"}, {12, 2}},
};

/* A little: one part in eight. */
static recede_lch with_a_little(recipe green, const char *name, double water)
{
    green.name[2] = name;
    green.parts[2] = 2;
    return wash(green, water);
}

static void a_little_brown_earth_dulls_a_green_without_making_it_bluer(void **state)
{
    (void)state;
    static const char *const browns[] = {"burnt sienna", "burnt umber", "raw umber"};
    EACH(g, bright_greens) EACH(w, waters) EACH(b, browns) {
        recede_lch before = wash(bright_greens[g], waters[w]);
        recede_lch after = with_a_little(bright_greens[g], browns[b], waters[w]);
        assert_true(after.c < before.c - 1.5);
        assert_true(after.h_deg < before.h_deg);
    }
}

static void a_little_reddish_blue_dulls_a_green_and_makes_it_bluer(void **state)
{
    (void)state;
    static const char *const blues[] = {"ultramarine blue", "indanthrone blue"};
    EACH(g, bright_greens) EACH(w, waters) EACH(b, blues) {
        recede_lch before = wash(bright_greens[g], waters[w]);
        recede_lch after = with_a_little(bright_greens[g], blues[b], waters[w]);
        assert_true(after.c < before.c - 1.5);
        assert_true(after.h_deg > before.h_deg);
    }
}

static void a_dark_green_with_reddish_blue_goes_nearly_black(void **state)
{
    (void)state;
    static const recipe darks[] = {
        {{"phthalo green, blue shade", "indanthrone blue"}, {1, 1}},
        {{"hooker's green", "indanthrone blue"}, {1, 2}},
        {{"hooker's green", "ultramarine blue"}, {1, 3}},
    };
    recede_lch black = wash((recipe){{"lamp black"}, {1}}, 0);
    EACH(d, darks) {
        recede_lch dark = wash(darks[d], 0);
        recede_lch green = wash((recipe){{darks[d].name[0]}, {1}}, 0);
        print_message("%s with %s: L* %.1f, C* %.1f (alone %.1f, %.1f; lamp black %.1f)\n",
                      darks[d].name[0], darks[d].name[1], dark.l, dark.c, green.l, green.c,
                      black.l);
        assert_true(dark.l < black.l + 3);
        assert_true(dark.c < 10);
        assert_true(dark.l < green.l - 5 && dark.c < green.c - 10);
    }
}

static void more_water_is_lighter(void **state)
{
    (void)state;
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const char *name = recede_pigment_at(i)->name;
        if (paint_of(name).is_white || strcmp(name, "cadmium yellow, light") == 0)
            continue; /* as pale as the paper itself */
        double before = -1;
        for (size_t level = 0; level < recede_water_count(); level++) {
            double l = wash((recipe){{name}, {1}}, recede_water_at(level)).l;
            assert_true(l > before - 1e-9);
            before = l;
        }
        assert_true(before - wash((recipe){{name}, {1}}, 0).l > 5);
    }
}

/* Colours within sight of what landscapes hold: the more pigments a mix may have, the
 * more of them it meets, and it comes no less near to any. */
static void a_third_pigment_widens_the_range(void **state)
{
    (void)state;
    enum { TARGETS = 60 };
    static recede_wash_target targets[TARGETS];
    static recede_wash_recipe found[TARGETS];
    double before[TARGETS];
    int met[4] = {0};
    dice d = {1};
    recede_palette *palette = palette_of(entry_of("landscape-six")->paints, RECEDE_WATERCOLOUR);
    for (int i = 0; i < TARGETS; i++) {
        targets[i].from.l = 35 + 55 * throw_dice(&d);
        targets[i].from.a = -30 + 45 * throw_dice(&d);
        targets[i].from.b = -20 + 60 * throw_dice(&d);
        before[i] = INFINITY;
    }
    for (int pigments = 1; pigments <= 3; pigments++) {
        recede_rules rules = {pigments, 6, 0};
        assert_int_equal(recede_search_all(palette, &rules, targets, TARGETS, found, NULL, NULL,
                                           NULL), RECEDE_OK);
        for (int i = 0; i < TARGETS; i++) {
            assert_below(found[i].from.delta_e, before[i] + 1e-6);
            before[i] = found[i].from.delta_e;
            met[pigments] += before[i] <= 2;
        }
    }
    print_message("met within 2: %d with one, %d with two, %d with three of %d\n", met[1],
                  met[2], met[3], TARGETS);
    assert_true(met[1] < met[2] && met[2] < met[3]);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(yellow_with_greenish_blue_is_the_brighter_green),
        cmocka_unit_test(reddish_blue_with_brown_earth_is_the_dullest_green),
        cmocka_unit_test(a_touch_of_yellow_brings_the_dull_green_back),
        cmocka_unit_test(a_little_brown_earth_dulls_a_green_without_making_it_bluer),
        cmocka_unit_test(a_little_reddish_blue_dulls_a_green_and_makes_it_bluer),
        cmocka_unit_test(a_dark_green_with_reddish_blue_goes_nearly_black),
        cmocka_unit_test(more_water_is_lighter),
        cmocka_unit_test(a_third_pigment_widens_the_range),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
