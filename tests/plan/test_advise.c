/* What a plan says of the washes that its palette does not reach. */
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

#include <string.h>

/* Few paints and vivid colours, so that much is out of reach; slopes high enough to
 * be graded. */
static void make_scene(recede_scene *scene, int shadows_over)
{
    static const double labs[][3] = {{60, -50, 50}, {45, 40, 30}, {70, 5, -30}, {80, 2, 60}};
    static const char *const names[] = {"gorse", "scree", "tarn", "stubble"};
    static const char *const paints[] = {"yellow ochre", "burnt umber", "cobalt blue"};
    recede_scene_default(scene);
    scene->palette[0] = '\0';
    scene->paint_count = 0;
    for (int i = 0; i < 3; i++)
        assert_int_equal(recede_paint_named(paints[i], &scene->paints[scene->paint_count++], NULL),
                         RECEDE_OK);
    scene->rules = (recede_rules){3, 4, 1};
    scene->shadows_over = shadows_over;
    scene->plane_count = 4;
    for (size_t i = 0; i < 4; i++) {
        recede_plane *plane = &scene->planes[i];
        memset(plane, 0, sizeof *plane);
        strcpy(plane->name, names[i]);
        plane->distance_m = 200 * (double)(i + 1) * (double)(i + 1);
        plane->crest_m = 600 * (double)i;
        plane->own.kind = RECEDE_OWN_LAB;
        plane->own.lab = (recede_lab){labs[i][0], labs[i][1], labs[i][2]};
        plane->own.reflectance =
            recede_smooth_of_xyz(recede_xyz_of_lab(plane->own.lab, recede_white())).reflectance;
    }
}

static recede_plan *plan_of(int shadows_over)
{
    static recede_scene scene;
    recede_plan *plan;
    make_scene(&scene, shadows_over);
    assert_int_equal(recede_plan_new(&scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    return plan;
}

static const recede_warning *warning_of(const recede_plan *plan, const recede_wash_place *place)
{
    const recede_warning *found = NULL;
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++) {
        const recede_warning *w = recede_plan_warning(plan, i);
        if (w->kind == RECEDE_WARN_NOT_REACHED && w->plane == place->plane &&
            w->shadow == place->shadow && w->base == place->base) {
            assert_null(found);
            found = w;
        }
    }
    return found;
}

/* Each wash by itself, on its own ground; over a dried wash go two paints at most. */
static void advice_is_that_of_each_wash(const recede_plan *plan, size_t *laid_over)
{
    static recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    size_t count = recede_plan_washes(plan, places), wanting = 0;
    for (size_t i = 0; i < count; i++) {
        const recede_wash_place *place = &places[i];
        const recede_warning *warning = warning_of(plan, place);
        recede_addition alone;
        recede_rules rules = recede_plan_scene(plan)->rules;
        recede_spectrum ground = recede_plan_scene(plan)->paper;
        assert_true((warning != NULL) == (place->wash->recipe.reach != RECEDE_REACHABLE));
        assert_true((place->under != NULL) == (place->wash->ground == RECEDE_ON_LIT));
        if (!warning)
            continue;
        wanting++;
        *laid_over += place->under != NULL;
        if (place->under) {
            ground = recede_mix_reflectance(recede_plan_palette(plan), &place->under->recipe.mix,
                                            NULL);
            rules.most_pigments = 2;
        }
        assert_int_equal(recede_best_additions(recede_plan_palette(plan), &rules, &ground,
                                               &place->wash->target.lab, 1, &alone, NULL, NULL,
                                               NULL), RECEDE_OK);
        assert_ptr_equal(warning->pigment, alone.pigment);
        assert_near(warning->number[0], place->wash->recipe.delta_e, 0);
        assert_near(warning->number[1], alone.delta_e, 0);
        assert_ptr_equal(warning->let_down, alone.let_down);
        assert_near(warning->number[2], alone.let_down_delta_e, 0);
        assert_true(alone.without <= place->wash->recipe.delta_e + 1e-6);
    }
    assert_true(wanting >= 3);
}

static void every_wash_out_of_reach_gets_its_pigment(void **state)
{
    (void)state;
    for (int over = 0; over <= 1; over++) {
        recede_plan *plan = plan_of(over);
        size_t laid_over = 0;
        for (size_t i = 0; i < recede_plan_warning_count(plan); i++)
            assert_null(recede_plan_warning(plan, i)->pigment);
        assert_int_equal(recede_plan_advise(plan, NULL, NULL), RECEDE_OK);
        advice_is_that_of_each_wash(plan, &laid_over);
        assert_true((laid_over > 0) == over);
        recede_plan_free(plan);
    }
}

/* Far to near, lit before shadow, crest before base; each wash once. */
static void washes_come_in_their_order(void **state)
{
    (void)state;
    static recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    recede_plan *plan = plan_of(1);
    size_t at = 0, count = recede_plan_washes(plan, places);
    const recede_side *sky = recede_plan_sky(plan);
    assert_ptr_equal(places[at++].wash, &sky->crest);
    if (sky->graded)
        assert_ptr_equal(places[at++].wash, &sky->base);
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *planned = recede_plan_at(plan, i);
        for (int shadow = 0; shadow < 2; shadow++) {
            const recede_side *side = shadow ? &planned->shadow : &planned->lit;
            for (int base = 0; base <= (side->graded != 0); base++, at++) {
                assert_ptr_equal(places[at].wash, base ? &side->base : &side->crest);
                assert_int_equal(places[at].plane, (int)planned->plane);
                assert_int_equal(places[at].shadow, shadow);
                assert_int_equal(places[at].base, base);
                assert_int_equal(places[at].graded, side->graded != 0);
                if (places[at].under)
                    assert_ptr_equal(places[at].under, base && planned->lit.graded
                                                           ? &planned->lit.base
                                                           : &planned->lit.crest);
            }
        }
    }
    assert_int_equal(at, count);
    recede_plan_free(plan);
}

static int stop(void *context, double share_done)
{
    int *calls = context;
    (void)share_done;
    return ++*calls == 4;
}

static void advice_that_fails_leaves_the_plan_as_it_was(void **state)
{
    (void)state;
    recede_plan *plan = plan_of(0);
    int calls = 0;
    recede_progress progress = {stop, &calls};
    assert_int_equal(recede_plan_advise(plan, &progress, NULL), RECEDE_CANCELLED);
    for (size_t i = 0; i < recede_plan_warning_count(plan); i++)
        assert_null(recede_plan_warning(plan, i)->pigment);
    recede_plan_free(plan);
}

static void advice_may_lack_memory(void **state)
{
    (void)state;
    static recede_scene scene;
    make_scene(&scene, 0);
    for (size_t nth = 1; nth <= 3; nth++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        recede_plan *plan;
        recede_error error;
        assert_int_equal(recede_plan_new(&scene, &allocator, NULL, &plan, NULL), RECEDE_OK);
        memory.fail_at = memory.calls + nth;
        assert_int_equal(recede_plan_advise(plan, NULL, &error), RECEDE_NO_MEMORY);
        for (size_t i = 0; i < recede_plan_warning_count(plan); i++)
            assert_null(recede_plan_warning(plan, i)->pigment);
        recede_plan_free(plan);
        assert_int_equal(memory.live, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_wash_out_of_reach_gets_its_pigment),
        cmocka_unit_test(washes_come_in_their_order),
        cmocka_unit_test(advice_that_fails_leaves_the_plan_as_it_was),
        cmocka_unit_test(advice_may_lack_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
