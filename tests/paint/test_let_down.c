/* Paints that are let down beforehand, and what they are for: pale passages in opaque
 * media. Differences are worked out again from K and S by formulas of the test's own. */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/paints.h"

#include <stdio.h>

/* ----------------------------------------------------------- the tubes -- */

/* 1 part to 11 of white: common practice, no source. */
static void every_pigment_can_be_let_down(void **state)
{
    (void)state;
    const recede_pigment *white = recede_pigment_named("titanium white");
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const recede_pigment *strong = recede_pigment_at(i);
        char name[RECEDE_NAME_SIZE + 16];
        if (strong == white)
            continue;
        snprintf(name, sizeof name, "pale %s", strong->name);
        recede_paint paint = paint_of(name);
        assert_true(paint.let_down);
        assert_false(paint.is_white);
        assert_int_equal(paint.ingredients, 2);
        assert_ptr_equal(paint.of[0].pigment, white);
        assert_ptr_equal(paint.of[1].pigment, strong);
        assert_int_equal(paint.of[0].parts, RECEDE_LET_DOWN_WHITE);
        assert_int_equal(paint.of[1].parts, 1);
        for (int band = 0; band < RECEDE_BANDS; band++) {
            assert_near(paint.k.at[band], (11 * white->k.at[band] + strong->k.at[band]) / 12,
                        1e-13);
            assert_near(paint.s.at[band], (11 * white->s.at[band] + strong->s.at[band]) / 12,
                        1e-13);
        }
    }
}

static void what_is_sold_is_not_let_down(void **state)
{
    (void)state;
    assert_false(paint_of("titanium white").let_down);
    assert_false(paint_of("naples yellow hue").let_down);
    assert_false(paint_of("cerulean blue hue").let_down);
    size_t prepared = 0;
    for (size_t i = 0; i < recede_tube_count(); i++)
        prepared += (size_t)paint_of(recede_tube_name_at(i)).let_down;
    assert_int_equal(prepared, recede_pigment_count() - 1);
}

/* ------------------------------------------------------ a pale picture -- */

/* Kubelka and Munk 1931, an infinitely thick layer, R = 1 + K/S - sqrt((K/S)^2 + 2 K/S),
 * and Saunderson 1942 with k1 = 0.03, k2 = 0.65; CIE 1976 L*a*b*, all written out anew.
 * Pigments' K and S are mixed by parts of pigment, the let-down ones taken apart. */
static recede_lab looked_up(const recede_palette *palette, const recede_mix *mix)
{
    recede_spectrum seen;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double k = 0, s = 0;
        for (int i = 0; i < mix->count; i++) {
            const recede_paint *paint = recede_palette_paint(palette, (size_t)mix->paint[i]);
            double all = 0;
            for (int j = 0; j < paint->ingredients; j++)
                all += paint->of[j].parts;
            for (int j = 0; j < paint->ingredients; j++) {
                double parts = mix->parts[i] * paint->of[j].parts / all;
                k += parts * paint->of[j].pigment->k.at[band];
                s += parts * paint->of[j].pigment->s.at[band];
            }
        }
        double r = 1 + k / s - sqrt(k / s * (k / s + 2));
        seen.at[band] = 0.03 + 0.97 * 0.35 * r / (1 - 0.65 * r);
    }
    recede_xyz xyz = recede_xyz_of_reflectance(&seen), white = recede_white();
    double ratio[3] = {xyz.x / white.x, xyz.y / white.y, xyz.z / white.z}, f[3];
    for (int i = 0; i < 3; i++)
        f[i] = ratio[i] > 216.0 / 24389 ? cbrt(ratio[i]) : (24389.0 / 27 * ratio[i] + 16) / 116;
    return (recede_lab){116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
}

/* Far greens and heather through the thick air of a morning (invented). */
static void make_scene(recede_scene *scene, const char *palette)
{
    static const struct { const char *name, *foliage; double distance_m; } planes[] = {
        {"heath", "heather", 14000}, {"beeches", "spring beech", 5000},
        {"pines", "dark conifer", 9000}, {"last hill", "summer oak", 20000},
    };
    recede_scene_default(scene);
    scene->medium = RECEDE_OIL;
    scene->rules.most_parts = recede_usual_parts(RECEDE_OIL);
    scene->air.visibility_km = 10;
    scene->paint_count = paints_of(palette, scene->paints);
    scene->palette[0] = '\0';
    scene->plane_count = sizeof planes / sizeof planes[0];
    for (size_t i = 0; i < scene->plane_count; i++) {
        recede_plane *plane = &scene->planes[i];
        const recede_own_entry *own = recede_foliage_named(planes[i].foliage);
        *plane = (recede_plane){.distance_m = planes[i].distance_m, .base_m = NAN,
                                .crest_m = NAN, .own = {.kind = RECEDE_OWN_FOLIAGE}};
        strcpy(plane->name, planes[i].name);
        assert_non_null(own);
        strcpy(plane->own.name, own->name);
        plane->own.reflectance = own->reflectance;
    }
}

/* The largest difference of the planes' own passages; the least in *least. */
static double worst(const char *paints, double *least)
{
    static recede_scene scene;
    static recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    recede_plan *plan;
    double most = 0;
    *least = INFINITY;
    make_scene(&scene, paints);
    assert_int_equal(recede_plan_new(&scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    size_t count = recede_plan_washes(plan, places);
    for (size_t i = 0; i < count; i++) {
        const recede_wash *wash = places[i].wash;
        recede_lab mixed = looked_up(recede_plan_palette(plan), &wash->recipe.mix);
        assert_near(recede_delta_e(mixed, wash->target.lab), wash->recipe.delta_e, 1e-9);
        assert_near(mixed.l, wash->recipe.colour.lab.l, 1e-9);
        if (places[i].plane < 0)
            continue;
        assert_true(wash->target.lab.l > 78);
        most = fmax(most, wash->recipe.delta_e);
        *least = fmin(*least, wash->recipe.delta_e);
    }
    recede_plan_free(plan);
    return most;
}

/* The bounds are what the palette was chosen for (docs/paint.md): 2 to 3. */
static void let_down_paints_reach_pale_planes(void **state)
{
    (void)state;
    static const char ten[] = "titanium white|hansa yellow|diarylide yellow|yellow ochre|"
                              "pyrrole red|quinacridone magenta|burnt sienna|burnt umber|"
                              "ultramarine blue|phthalo blue, green shade";
    char names[1024] = "";
    double least;
    const char *at = entry_of("opaque-sixteen")->paints;
    for (size_t used = 0; *at; at++) /* the table's list has blanks round its bars */
        if (*at != ' ' || (at[1] != '|' && at[-1] != '|'))
            names[used++] = *at, names[used] = '\0';
    assert_true(worst(names, &least) < 3);
    assert_true(worst(ten, &least) > 6);
    assert_true(least > 4);
}

/* The palette's own names for the same. */
static void the_advice_names_what_to_let_down(void **state)
{
    (void)state;
    static recede_scene scene;
    recede_plan *plan;
    size_t told = 0;
    make_scene(&scene, "titanium white|burnt umber|ultramarine blue");
    assert_int_equal(recede_plan_new(&scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    assert_int_equal(recede_plan_advise(plan, NULL, NULL), RECEDE_OK);
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
        const recede_warning *warning = recede_plan_warning(plan, i);
        if (warning->kind != RECEDE_WARN_NOT_REACHED || warning->plane < 0)
            continue;
        assert_non_null(warning->let_down);
        assert_true(strcmp(warning->let_down->name, "ultramarine blue") == 0 ||
                    strcmp(warning->let_down->name, "burnt umber") == 0);
        assert_true(warning->number[2] < warning->number[0] - 1);
        told++;
    }
    assert_true(told >= 4);
    recede_plan_free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_pigment_can_be_let_down),
        cmocka_unit_test(what_is_sold_is_not_let_down),
        cmocka_unit_test(let_down_paints_reach_pale_planes),
        cmocka_unit_test(the_advice_names_what_to_let_down),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
