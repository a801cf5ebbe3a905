/* Whether neighbours read apart. Colours and scenes here are invented. */
#include <stdlib.h>
#include <string.h>

#include "plan/apart.h"
#include "recede.h"
#include "support/assert_near.h"

static recede_colour lab_colour(double l, double a, double b)
{
    return recede_colour_of_xyz(recede_xyz_of_lab((recede_lab){l, a, b}, recede_white()));
}

/* Between colours of one lightness CIEDE2000 has no lightness term, so hue and
 * chroma are all of it. Pairs 1 to 3 and 9 of the published test data (Sharma, Wu
 * and Dalal 2005, table 1) are of one lightness. */
static void of_one_lightness_it_is_all_of_the_difference(void **state)
{
    (void)state;
    static const struct { recede_lab one, other; double delta_e; } pairs[] = {
        {{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
        {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
        {{50, 2.8361, -74.0200}, {50, 0, -82.7485}, 3.4412},
        {{50, 2.4900, -0.0010}, {50, -2.4900, 0.0009}, 7.1792},
    };
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
        recede_colour one = lab_colour(pairs[i].one.l, pairs[i].one.a, pairs[i].one.b);
        recede_colour other = lab_colour(pairs[i].other.l, pairs[i].other.a, pairs[i].other.b);
        recede_step step = recede_step_between(&one, &other);
        assert_near(step.hue, pairs[i].delta_e, 1e-4);
        assert_near(step.colour, pairs[i].delta_e, 1e-4);
    }
}

static void greys_have_no_hue_step(void **state)
{
    (void)state;
    recede_colour light = lab_colour(80, 0, 0), dark = lab_colour(30, 0, 0);
    recede_step step = recede_step_between(&light, &dark);
    assert_near(step.hue, 0.0, 1e-9);
    assert_true(step.value > 4.5);
    assert_near(step.value, light.value - dark.value, 0.0);
    assert_int_equal(step.apart, RECEDE_APART_BY_VALUE);
    assert_int_equal(recede_step_between(&dark, &light).apart, RECEDE_APART_BY_VALUE);
}

static void the_limits_hold(void **state)
{
    (void)state;
    recede_colour own = recede_colour_of_xyz(recede_white());
    static const struct { double value; recede_apart apart; } greys[] = {
        {0.49, RECEDE_NOT_APART}, {0.51, RECEDE_APART_BY_VALUE}};
    for (int i = 0; i < 2; i++) {
        double y = recede_y_of_value(own.value - greys[i].value);
        recede_xyz white = recede_white(), grey = {white.x * y, white.y * y, white.z * y};
        recede_colour behind = recede_colour_of_xyz(grey);
        assert_int_equal(recede_step_between(&behind, &own).apart, greys[i].apart);
    }
    /* from grey, chroma alone: the step grows with it, and passes 4 */
    int seen[3] = {0};
    recede_colour grey = lab_colour(60, 0, 0);
    for (double chroma = 0; chroma < 10; chroma += 0.5) {
        recede_colour green = lab_colour(60, -chroma, 0);
        recede_step step = recede_step_between(&grey, &green);
        assert_near(step.hue, recede_delta_e(grey.lab, green.lab), 1e-9);
        assert_int_equal(step.apart, step.hue >= 4.0 ? RECEDE_APART_BY_COLOUR : RECEDE_NOT_APART);
        seen[step.apart]++;
    }
    assert_true(seen[RECEDE_APART_BY_COLOUR] > 3 && seen[RECEDE_NOT_APART] > 3);
}

/* ---- in a plan */

static void add_plane(recede_scene *scene, const char *name, double distance_m, recede_lab own)
{
    recede_plane *plane = &scene->planes[scene->plane_count++];
    memset(plane, 0, sizeof *plane);
    strcpy(plane->name, name);
    plane->distance_m = distance_m;
    plane->base_m = plane->crest_m = NAN;
    plane->own.kind = RECEDE_OWN_LAB;
    plane->own.lab = own;
    plane->own.reflectance =
        recede_smooth_of_xyz(recede_xyz_of_lab(own, recede_white())).reflectance;
}

static recede_scene *new_scene(void)
{
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 4;
    return scene;
}

static recede_plan *planned(const recede_scene *scene)
{
    recede_plan *plan;
    assert_int_equal(recede_plan_new(scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    return plan;
}

static const recede_warning *merging(const recede_plan *plan, size_t index)
{
    int plane = (int)recede_plan_at(plan, index)->plane;
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
        const recede_warning *w = recede_plan_warning(plan, i);
        if (w->kind == RECEDE_WARN_MERGE && w->plane == plane)
            return w;
    }
    return NULL;
}

/* Steps of the plan are those between its mixes, and a warning comes exactly
 * where lit sides do not read apart. */
static void the_plan_goes_by_its_mixes(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    scene->air.visibility_km = 15;
    add_plane(scene, "bank", 20, (recede_lab){48, -14, 30});
    add_plane(scene, "same bank", 24, (recede_lab){48, -14, 30});
    add_plane(scene, "heath", 28, (recede_lab){48, 12, 2});
    add_plane(scene, "wood", 900, (recede_lab){34, -10, 18});
    add_plane(scene, "hill", 5000, (recede_lab){40, -6, 12});
    add_plane(scene, "ridge", 14000, (recede_lab){40, -6, 12});
    recede_plan *plan = planned(scene);
    const recede_wash *lit = &recede_plan_sky(plan)->base, *shadow = lit;
    if (!recede_plan_sky(plan)->graded)
        lit = shadow = &recede_plan_sky(plan)->crest;
    int warned = 0, seen[3] = {0};
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *p = recede_plan_at(plan, i);
        const recede_wash *own = &p->lit.crest, *dark = &p->shadow.crest;
        recede_step a = recede_step_between(&lit->recipe.colour, &own->recipe.colour);
        recede_step b = recede_step_between(&shadow->recipe.colour, &dark->recipe.colour);
        assert_near(p->value_step, lit->recipe.colour.value - own->recipe.colour.value, 0.0);
        assert_near(p->colour_step_shadow,
                    recede_delta_e(shadow->recipe.colour.lab, dark->recipe.colour.lab), 0.0);
        assert_near(p->hue_step, a.hue, 0.0);
        assert_near(p->hue_step_shadow, b.hue, 0.0);
        assert_int_equal(p->apart, a.apart);
        assert_int_equal(p->apart_shadow, b.apart);
        const recede_warning *w = merging(plan, i);
        assert_int_equal(w != NULL, p->apart == RECEDE_NOT_APART && own->own_share >= 0.02);
        if (w) {
            assert_near(w->number[0], fabs(p->value_step), 0.0);
            assert_near(w->number[1], p->hue_step, 0.0);
            assert_near(w->number[2], p->apart_shadow != RECEDE_NOT_APART, 0.0);
            warned++;
        }
        seen[p->apart]++;
        lit = p->lit.graded ? &p->lit.base : &p->lit.crest;
        shadow = p->shadow.graded ? &p->shadow.base : &p->shadow.crest;
    }
    assert_true(warned > 0 && seen[RECEDE_APART_BY_VALUE] && seen[RECEDE_APART_BY_COLOUR] &&
                seen[RECEDE_NOT_APART]);
    recede_plan_free(plan);
    free(scene);
}

/* The quick values are those of the targets of the whole plan. */
static void the_quick_values_are_the_plan_s_targets(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_values values;
    add_plane(scene, "bank", 20, (recede_lab){48, -14, 30});
    add_plane(scene, "wood", 2900, (recede_lab){34, -10, 18});
    add_plane(scene, "peak", 14000, (recede_lab){40, -6, 12});
    scene->planes[2].base_m = 0;
    scene->planes[2].crest_m = 1900;
    scene->air.mist_visibility_km = 2;
    scene->air.mist_top_m = 90;
    recede_plan *plan = planned(scene);
    assert_int_equal(recede_plan_values(scene, NULL, &values, NULL), RECEDE_OK);
    assert_int_equal(values.count, 3);
    assert_near(values.horizon, recede_plan_sky(plan)->base.target.value, 0.0);
    double behind = values.horizon, behind_shadow = behind;
    int graded = 0;
    for (size_t i = 0; i < 3; i++) {
        const recede_planned *p = recede_plan_at(plan, i);
        const recede_plane_values *v = &values.at[i];
        assert_int_equal(v->plane, p->plane);
        assert_near(v->lit, p->lit.crest.target.value, 0.0);
        assert_near(v->shadow, p->shadow.crest.target.value, 0.0);
        assert_near(v->own_share, p->lit.crest.own_share, 0.0);
        assert_near(v->value_step, behind - v->lit, 0.0);
        assert_near(v->value_step_shadow, behind_shadow - v->shadow, 0.0);
        behind = (p->lit.graded ? &p->lit.base : &p->lit.crest)->target.value;
        behind_shadow = (p->shadow.graded ? &p->shadow.base : &p->shadow.crest)->target.value;
        graded += p->lit.graded;
    }
    assert_true(graded > 0);
    recede_plan_free(plan);
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_one_lightness_it_is_all_of_the_difference),
        cmocka_unit_test(greys_have_no_hue_step),
        cmocka_unit_test(the_limits_hold),
        cmocka_unit_test(the_plan_goes_by_its_mixes),
        cmocka_unit_test(the_quick_values_are_the_plan_s_targets),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
