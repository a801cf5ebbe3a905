/* What lies on what in a plan: watercolour shadows over the dried lit wash, or beside
 * it. Scenes here are invented. */
#include <stdlib.h>
#include <string.h>

#include "paint/two_films.h"
#include "plan/plan.h"
#include "plan/same_plan.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

static void add_plane(recede_scene *scene, const char *name, double distance_m,
                      const recede_own_entry *own, recede_own_kind kind)
{
    recede_plane *plane = &scene->planes[scene->plane_count++];
    memset(plane, 0, sizeof *plane);
    strcpy(plane->name, name);
    plane->distance_m = distance_m;
    plane->base_m = plane->crest_m = NAN;
    plane->own.kind = kind;
    strcpy(plane->own.name, own->name);
    plane->own.reflectance = own->reflectance;
}

/* Few pigments and parts: a plan in a blink. */
static recede_scene *new_scene(void)
{
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_parts = 4;
    add_plane(scene, "grass", 40.0, recede_foliage_named("meadow grass"), RECEDE_OWN_FOLIAGE);
    add_plane(scene, "oaks", 900.0, recede_foliage_named("summer oak"), RECEDE_OWN_FOLIAGE);
    add_plane(scene, "moor", 9000.0, recede_foliage_named("heather"), RECEDE_OWN_FOLIAGE);
    return scene;
}

static recede_plan *planned(const recede_scene *scene)
{
    recede_plan *plan;
    recede_error error;
    recede_code code = recede_plan_new(scene, NULL, NULL, &plan, &error);
    if (code)
        print_error("code %d at %s, found '%s' %g\n", code, error.path, error.found, error.number);
    assert_int_equal(code, RECEDE_OK);
    return plan;
}

static const recede_wash *end_of(const recede_side *side, int base)
{
    return base && side->graded ? &side->base : &side->crest;
}

/* The mix's colour, difference and slip of one end, by two films written out plainly. */
static void check_end(const recede_plan *plan, const recede_planned *at, int base)
{
    const recede_palette *palette = recede_plan_palette(plan);
    const recede_wash *wash = end_of(&at->shadow, base);
    recede_spectrum ground = *recede_palette_paper(palette);
    if (wash->ground == RECEDE_ON_LIT)
        ground = plain_mix(palette, &end_of(&at->lit, base)->recipe.mix, &ground);
    recede_spectrum seen = plain_mix(palette, &wash->recipe.mix, &ground);
    recede_lab lab = lab_of_spectrum(&seen);
    assert_near_lab(wash->recipe.colour.lab, lab, 1e-7);
    assert_near(wash->recipe.delta_e, recede_delta_e(lab, wash->target.lab), 1e-7);
    recede_mix less = wash->recipe.mix, more = less;
    less.water *= 0.75;
    more.water *= 1.25;
    seen = plain_mix(palette, &less, &ground);
    double slip = recede_delta_e(lab_of_spectrum(&seen), wash->target.lab);
    seen = plain_mix(palette, &more, &ground);
    slip = fmax(slip, recede_delta_e(lab_of_spectrum(&seen), wash->target.lab));
    assert_near(wash->recipe.slip, less.count ? slip : 0, 1e-7);
}

static void shadows_lie_over_the_dry_lit_wash(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_plan *plan = planned(scene);
    assert_int_equal(recede_plan_scene(plan)->shadows_over, 1);
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *at = recede_plan_at(plan, i);
        assert_int_equal(at->lit.crest.ground, RECEDE_ON_PAPER);
        assert_int_equal(at->shadow.crest.ground, RECEDE_ON_LIT);
        assert_true(at->shadow.crest.recipe.mix.count <= 2);
        check_end(plan, at, 0);
    }
    assert_int_equal(recede_plan_sky(plan)->crest.ground, RECEDE_ON_PAPER);
    recede_plan_free(plan);
    free(scene);
}

/* The lit washes and the sky do not depend on what is laid over them. */
static void lit_washes_stay_what_they_are(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_plan *over = planned(scene);
    scene->shadows_over = 0;
    recede_plan *beside = planned(scene);
    assert_same_side(recede_plan_sky(over), recede_plan_sky(beside));
    for (size_t i = 0; i < recede_plan_count(over); i++)
        assert_same_side(&recede_plan_at(over, i)->lit, &recede_plan_at(beside, i)->lit);
    recede_plan_free(over);
    recede_plan_free(beside);
    free(scene);
}

/* Beside, each shadow is the reference search's mix on bare paper. */
static void beside_is_the_ordinary_search_on_paper(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    scene->shadows_over = 0;
    recede_plan *plan = planned(scene);
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_side *shadow = &recede_plan_at(plan, i)->shadow;
        recede_wash_target target = {.from = shadow->crest.target.lab};
        recede_wash_recipe expected;
        assert_int_equal(shadow->crest.ground, RECEDE_ON_PAPER);
        assert_false(shadow->graded);
        assert_int_equal(recede_search_all(recede_plan_palette(plan), &scene->rules, &target, 1,
                                           &expected, NULL, NULL, NULL), RECEDE_OK);
        assert_same_recipe(&shadow->crest.recipe, &expected.from);
    }
    recede_plan_free(plan);
    free(scene);
}

static void plans_come_out_the_same_again(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_plan *one = planned(scene), *other = planned(scene);
    for (size_t i = 0; i < recede_plan_count(one); i++)
        assert_same_planned(recede_plan_at(one, i), recede_plan_at(other, i));
    recede_plan_free(one);
    recede_plan_free(other);
    free(scene);
}

/* In haze a tall hillside is paler at its foot: both sides are graded, and each end of
 * the shadow lies over the end of the same name. */
static void graded_shadows_lie_end_over_end(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    int graded = 0;
    scene->air.visibility_km = 12.0;
    scene->planes[2].distance_m = 5000.0;
    scene->planes[2].base_m = 0.0;
    scene->planes[2].crest_m = 1600.0;
    scene->planes[1].base_m = 0.0;
    scene->planes[1].crest_m = 500.0;
    recede_plan *plan = planned(scene);
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *at = recede_plan_at(plan, i);
        if (at->shadow.crest.ground != RECEDE_ON_LIT)
            continue;
        if (at->lit.graded)
            assert_true(at->shadow.graded);
        check_end(plan, at, 0);
        if (!at->shadow.graded)
            continue;
        graded++;
        check_end(plan, at, 1);
        const recede_mix *crest = &at->shadow.crest.recipe.mix, *base = &at->shadow.base.recipe.mix;
        assert_int_equal(at->shadow.base.ground, RECEDE_ON_LIT);
        assert_int_equal(crest->count, base->count);
        assert_memory_equal(crest->paint, base->paint, (size_t)crest->count * sizeof(int));
    }
    assert_true(graded >= 1);
    recede_plan_free(plan);
    free(scene);
}

/* Snow by an orange light: its shadows are darker, but its lit side is bare paper,
 * on which nothing lies to be laid over. */
static void on_bare_paper_there_is_nothing_to_lie_over(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    scene->plane_count = 0;
    add_plane(scene, "snow", 30.0, recede_surface_named("snow"), RECEDE_OWN_SURFACE);
    scene->rules.tie = 8.0;
    recede_plan *plan = planned(scene);
    const recede_planned *at = recede_plan_at(plan, 0);
    assert_int_equal(at->lit.crest.recipe.mix.count, 0);
    assert_int_equal(at->shadow.crest.ground, RECEDE_ON_PAPER);
    recede_plan_free(plan);
    free(scene);
}

/* One colour over two grounds. The targets are set by hand: crest and foot of a lit
 * side far apart, its shadow flat. */
static void a_flat_shadow_over_a_graded_wash_is_graded(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    struct recede_plan *plan;
    recede_index *index;
    recede_wash_target targets[RECEDE_MOST_WASHES];
    const recede_lab crest = {68, -12, 24}, half = {72, -9, 18}, base = {76, -6, 12};
    const recede_lab shade = {50, -4, 2};
    assert_int_equal(recede_plan_start(scene, NULL, &plan, NULL), RECEDE_OK);
    assert_int_equal(recede_plan_look(plan, targets, NULL), RECEDE_OK);
    assert_int_equal(recede_index_new(plan->palette, &plan->scene.rules, 0, NULL, NULL, &index,
                                      NULL), RECEDE_OK);
    recede_planned *at = &plan->planes[0];
    targets[1] = (recede_wash_target){crest, base, half, 1};
    targets[2] = (recede_wash_target){shade, shade, shade, 0};
    at->lit.graded = 1;
    at->shadow.graded = 0;
    at->shadow.crest.target = at->shadow.base.target =
        recede_colour_of_xyz(recede_xyz_of_lab(shade, recede_white()));
    assert_int_equal(recede_plan_recipes(plan, index, targets, NULL, NULL), RECEDE_OK);
    assert_int_equal(at->shadow.graded, 1);
    assert_int_equal(at->shadow.crest.ground, RECEDE_ON_LIT);
    check_end(plan, at, 0);
    check_end(plan, at, 1);
    recede_index_free(index);
    recede_plan_free(plan);
    free(scene);
}

/* The recipes are asked for directly: shadows paler than what the lit wash turned out to
 * be, by more than a tie and by less, and darker. */
static void a_paler_shadow_lies_beside(void **state)
{
    (void)state;
    static const double steps[] = {3, 0.4, -12};
    static const recede_ground grounds[] = {RECEDE_ON_PAPER, RECEDE_ON_LIT, RECEDE_ON_LIT};
    recede_scene *scene = new_scene();
    struct recede_plan *plan;
    recede_index *index;
    recede_wash_target targets[RECEDE_MOST_WASHES];
    assert_int_equal(recede_plan_start(scene, NULL, &plan, NULL), RECEDE_OK);
    assert_int_equal(recede_plan_look(plan, targets, NULL), RECEDE_OK);
    assert_int_equal(recede_index_new(plan->palette, &plan->scene.rules, 0, NULL, NULL, &index,
                                      NULL), RECEDE_OK);
    assert_int_equal(recede_plan_recipes(plan, index, targets, NULL, NULL), RECEDE_OK);
    for (int i = 0; i < 3; i++) {
        recede_lab lab = plan->planes[i].lit.crest.recipe.colour.lab;
        lab.l += steps[i];
        targets[2 + 2 * i] = (recede_wash_target){.from = lab};
        plan->planes[i].shadow.graded = 0;
        plan->planes[i].shadow.crest.target =
            recede_colour_of_xyz(recede_xyz_of_lab(lab, recede_white()));
    }
    assert_int_equal(recede_plan_recipes(plan, index, targets, NULL, NULL), RECEDE_OK);
    for (int i = 0; i < 3; i++)
        assert_int_equal(plan->planes[i].shadow.crest.ground, grounds[i]);
    assert_int_equal(plan->planes[1].shadow.crest.recipe.mix.count, 0);
    assert_true(plan->planes[2].shadow.crest.recipe.mix.count > 0);
    recede_index_free(index);
    recede_plan_free(plan);
    free(scene);
}

/* ---- the scene's field */

static void left_open_it_goes_by_the_medium(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_error error;
    assert_int_equal(scene->shadows_over, -1);
    assert_int_equal(recede_scene_check(scene, NULL), RECEDE_OK);
    assert_int_equal(scene->shadows_over, 1);
    scene->medium = RECEDE_OIL;
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_CONFLICT);
    assert_string_equal(error.path, "paint.shadows");
    assert_string_equal(error.found, "over");
    scene->shadows_over = -1;
    assert_int_equal(recede_scene_check(scene, NULL), RECEDE_OK);
    assert_int_equal(scene->shadows_over, 0);
    scene->shadows_over = 2;
    scene->medium = RECEDE_WATERCOLOUR;
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "paint.shadows");
    free(scene);
}

/* ---- by a ready index */

static void a_ready_index_gives_the_same_plan(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_plan *plan = planned(scene), *again;
    recede_palette *palette;
    recede_index *index;
    assert_int_equal(recede_palette_new(scene->paints, scene->paint_count, scene->medium,
                                        &scene->paper, NULL, &palette, NULL), RECEDE_OK);
    assert_int_equal(recede_index_new(palette, &scene->rules, 0, NULL, NULL, &index, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_plan_with_index(scene, index, NULL, NULL, &again, NULL), RECEDE_OK);
    recede_index_free(index);
    recede_palette_free(palette);
    assert_same_side(recede_plan_sky(plan), recede_plan_sky(again));
    for (size_t i = 0; i < recede_plan_count(plan); i++)
        assert_same_planned(recede_plan_at(plan, i), recede_plan_at(again, i));
    recede_plan_free(plan);
    recede_plan_free(again);
    free(scene);
}

static void check_misfit(const recede_scene *scene, const recede_index *index)
{
    recede_plan *plan;
    recede_error error;
    assert_int_equal(recede_plan_with_index(scene, index, NULL, NULL, &plan, &error),
                     RECEDE_CONFLICT);
    assert_null(plan);
    assert_string_equal(error.path, "paint");
}

static void an_index_for_other_paints_is_refused(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(), *other = malloc(sizeof *other);
    recede_palette *palette;
    recede_index *index;
    assert_non_null(other);
    assert_int_equal(recede_palette_new(scene->paints, scene->paint_count, scene->medium,
                                        &scene->paper, NULL, &palette, NULL), RECEDE_OK);
    assert_int_equal(recede_index_new(palette, &scene->rules, 0, NULL, NULL, &index, NULL),
                     RECEDE_OK);
    *other = *scene;
    other->rules.tie = 0.5;
    check_misfit(other, index);
    *other = *scene;
    other->rules.most_parts = 5;
    check_misfit(other, index);
    *other = *scene;
    other->rules.most_pigments = 2;
    check_misfit(other, index);
    *other = *scene;
    other->paint_count--;
    check_misfit(other, index);
    *other = *scene;
    other->paints[2].k.at[9] *= 1.001;
    check_misfit(other, index);
    *other = *scene;
    other->paper.at[0] = 0.5;
    check_misfit(other, index);
    recede_index_free(index);
    recede_palette_free(palette);
    free(other);
    free(scene);
}

/* ---- failures */

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_code code = RECEDE_NO_MEMORY;
    size_t fail_at = 0;
    scene->plane_count = 2;
    scene->rules.most_parts = 2;
    while (code) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, ++fail_at);
        recede_plan *plan = NULL;
        recede_error error;
        code = recede_plan_new(scene, &allocator, NULL, &plan, &error);
        if (code) {
            assert_int_equal(code, RECEDE_NO_MEMORY);
            assert_null(plan);
        } else {
            assert_int_equal(plan->planes[0].shadow.crest.ground, RECEDE_ON_LIT);
            recede_plan_free(plan);
        }
        assert_int_equal(memory.live, 0);
    }
    assert_true(fail_at > 10);
    free(scene);
}

typedef struct {
    double last;
    int calls, stop_at;
} told;

static int listen(void *context, double share)
{
    told *t = context;
    assert_true(share >= t->last);
    assert_true(share <= 1.0);
    t->last = share;
    return ++t->calls == t->stop_at;
}

/* Progress only grows, to the end, and the plan can be stopped at every call. */
static void progress_goes_on_to_the_end(void **state)
{
    (void)state;
    recede_scene *scene = new_scene();
    recede_plan *plan;
    told all = {0, 0, -1};
    recede_progress progress = {listen, &all};
    assert_int_equal(recede_plan_new(scene, NULL, &progress, &plan, NULL), RECEDE_OK);
    assert_near(all.last, 1.0, 1e-12);
    recede_plan_free(plan);
    for (int i = 1; i <= all.calls; i++) {
        told some = {0, 0, i};
        progress.context = &some;
        assert_int_equal(recede_plan_new(scene, NULL, &progress, &plan, NULL), RECEDE_CANCELLED);
        assert_null(plan);
    }
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(shadows_lie_over_the_dry_lit_wash),
        cmocka_unit_test(lit_washes_stay_what_they_are),
        cmocka_unit_test(beside_is_the_ordinary_search_on_paper),
        cmocka_unit_test(plans_come_out_the_same_again),
        cmocka_unit_test(graded_shadows_lie_end_over_end),
        cmocka_unit_test(on_bare_paper_there_is_nothing_to_lie_over),
        cmocka_unit_test(a_flat_shadow_over_a_graded_wash_is_graded),
        cmocka_unit_test(a_paler_shadow_lies_beside),
        cmocka_unit_test(left_open_it_goes_by_the_medium),
        cmocka_unit_test(a_ready_index_gives_the_same_plan),
        cmocka_unit_test(an_index_for_other_paints_is_refused),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(progress_goes_on_to_the_end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
