/* The order of work of whole plans: what is offered, what is poured, what is waited
 * for. Scenes here are invented; tests/plan/replay.py follows the scenes of the
 * house in millilitres. */
#include <stdlib.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/mixes.h"
#include "plan/work_sets.h"
#include "plan/work_tubes.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

static void add_plane(recede_scene *scene, const char *name, double distance_m, double crest_m,
                      const char *foliage)
{
    recede_plane *plane = &scene->planes[scene->plane_count++];
    const recede_own_entry *own = recede_foliage_named(foliage);
    memset(plane, 0, sizeof *plane);
    strcpy(plane->name, name);
    plane->distance_m = distance_m;
    plane->base_m = 0;
    plane->crest_m = crest_m;
    plane->own.kind = RECEDE_OWN_FOLIAGE;
    strcpy(plane->own.name, own->name);
    plane->own.reflectance = own->reflectance;
}

/* Few pigments and parts: quickly sought. */
static recede_scene *new_scene(int planes)
{
    recede_scene *scene = malloc(sizeof *scene);
    assert_non_null(scene);
    recede_scene_default(scene);
    assert_int_equal(recede_scene_use_palette(scene, "landscape-six", NULL), RECEDE_OK);
    scene->rules.most_pigments = 2;
    scene->rules.most_parts = 4;
    add_plane(scene, "bank", 30, 4, "meadow grass");
    if (planes > 1)
        add_plane(scene, "oaks", 900, 25, "summer oak");
    if (planes > 2)
        add_plane(scene, "moor", 9000, 60, "heather");
    return scene;
}

typedef struct {
    recede_plan *plan;
    double shares[RECEDE_MOST_PLANES + 1];
    recede_work *work;
} order;

static void seek(order *o, const recede_scene *scene, int wells, int tubes)
{
    const recede_work_wish wish = {wells, tubes};
    recede_error error;
    assert_int_equal(recede_plan_new(scene, NULL, NULL, &o->plan, &error), RECEDE_OK);
    assert_int_equal(recede_picture_shares(o->plan, o->shares, NULL, &error), RECEDE_OK);
    o->work = malloc(sizeof *o->work);
    assert_non_null(o->work);
    assert_int_equal(recede_work_of(o->plan, o->shares, &wish, NULL, NULL, NULL, o->work, &error),
                     RECEDE_OK);
}

static void drop(order *o)
{
    recede_plan_free(o->plan);
    free(o->work);
}

/* ---- what is offered: by index and by looking at every mix */

static void check_sets(recede_sets *by_index, recede_sets *by_hand, recede_lab target,
                       const recede_spectrum *ground, uint32_t paints, double width)
{
    assert_int_equal(recede_sets_find(by_index, target, ground, paints, width), RECEDE_OK);
    assert_int_equal(recede_sets_find(by_hand, target, ground, paints, width), RECEDE_OK);
    int found = 0;
    for (size_t set = 0; set < by_index->count; set++) {
        const recede_set_mix *one = &by_index->closest[set], *other = &by_hand->closest[set];
        assert_true(one->difference == other->difference);
        if (isinf(one->difference))
            continue;
        found++;
        assert_int_equal(one->mix.count, other->mix.count);
        assert_true(one->mix.water == other->mix.water);
        for (int i = 0; i < one->mix.count; i++) {
            assert_int_equal(one->mix.paint[i], other->mix.paint[i]);
            assert_int_equal(one->mix.parts[i], other->mix.parts[i]);
            assert_true(paints >> one->mix.paint[i] & 1);
        }
    }
    assert_true(found > 0);
}

/* Every set's closest, over a ground also with more paints in the rules than may be
 * laid over it. */
static void an_index_finds_the_same_sets(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(1);
    scene->rules.most_pigments = 3;
    recede_palette *palette;
    recede_index *index;
    recede_sets one, other;
    const recede_allocator *memory = recede_allocator_or_default(NULL);
    assert_int_equal(recede_palette_new(scene->paints, scene->paint_count, scene->medium,
                                        &scene->paper, NULL, &palette, NULL), RECEDE_OK);
    assert_int_equal(recede_index_new(palette, &scene->rules, 0, NULL, NULL, &index, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_sets_start(&one, palette, &scene->rules, index, memory), RECEDE_OK);
    assert_int_equal(recede_sets_start(&other, palette, &scene->rules, NULL, memory), RECEDE_OK);
    static const recede_lab targets[] = {{84, -2, -6}, {52, -18, 24}, {30, 4, 8}, {60, 50, -30}};
    const recede_mix lit = {2, {0, 4}, {2, 1}, 10};
    recede_spectrum ground = recede_mix_reflectance(palette, &lit, NULL);
    for (int i = 0; i < 4; i++) {
        check_sets(&one, &other, targets[i], NULL, 0x3f, 2.8e6);
        check_sets(&one, &other, targets[i], NULL, 0x35, 6e6);
        check_sets(&one, &other, targets[i], NULL, 0x02, 1e9);
        check_sets(&one, &other, targets[i], &ground, 0x3f, 2.8e6);
    }
    for (size_t set = 0; set < one.count; set++)
        if (!isinf(one.closest[set].difference))
            assert_true(one.closest[set].mix.count <= RECEDE_MOST_LAID_OVER);
    recede_sets_end(&one);
    recede_sets_end(&other);
    recede_index_free(index);
    recede_palette_free(palette);
    free(scene);
}

/* Two sides, three paints, worked out by hand: without paint 0 the first side is 3
 * farther off, without 1 nothing is, without 2 the second is out: 1 goes, then 0. */
static void the_tube_least_missed_stays_at_home(void **state)
{
    (void)state;
    recede_tube_uses uses;
    recede_tubes tubes = {.count = 3, .paints = 0x7, .lost = {0x1, 0x2, 0x4}};
    int left = 3;
    recede_tube_uses_start(&uses, recede_allocator_or_default(NULL));
    recede_tube_uses_clear(&uses);
    recede_tube_uses_side(&uses, 50);
    const recede_tube_use first[] = {{0x3, 1}, {0x5, 1}, {0x4, 4}};
    for (int i = 0; i < 3; i++)
        assert_int_equal(recede_tube_uses_add(&uses, first[i]), RECEDE_OK);
    recede_tube_uses_side(&uses, 50);
    assert_int_equal(recede_tube_uses_add(&uses, (recede_tube_use){0x4, 2}), RECEDE_OK);
    recede_tubes_leave_out(&tubes, &uses, &left, 1);
    assert_int_equal(left, 1);
    assert_int_equal(tubes.order[0], 1);
    assert_int_equal(tubes.order[1], 0);
    assert_int_equal(recede_tubes_left(&tubes, 3), 0x7);
    assert_int_equal(recede_tubes_left(&tubes, 2), 0x5);
    assert_int_equal(recede_tubes_left(&tubes, 1), 0x4);
    recede_tube_uses_end(&uses);
}

/* ---- the steps */

/* In millilitres: what stands in each well after every step, and in what proportions. */
static void check_amounts(const recede_work *work)
{
    double well[RECEDE_MOST_WELLS][RECEDE_MOST_PAINTS + 1] = {{0}};
    int used[RECEDE_MOST_WELLS] = {0};
    for (size_t i = 0; i < work->count; i++) {
        const recede_work_step *step = &work->steps[i];
        if (step->kind == RECEDE_STEP_BARE) {
            assert_int_equal(step->mix.count, 0);
            continue;
        }
        assert_true(step->well >= 0 && step->well < work->wells);
        double *ml = well[step->well], all = 0, parts = 0;
        assert_int_equal(used[step->well], step->kind != RECEDE_STEP_START);
        used[step->well] = 1;
        for (int j = 0; j <= RECEDE_MOST_PAINTS; j++) {
            all += ml[j];
            ml[j] = step->kind == RECEDE_STEP_ADDED ? ml[j] : 0;
        }
        assert_near(step->left_ml, all, 1e-9);
        for (int j = 0; j < step->mix.count; j++) {
            assert_true(step->paint_ml[j] >= 0);
            ml[step->mix.paint[j]] += step->paint_ml[j];
            parts += step->mix.parts[j];
        }
        assert_true(step->water_ml >= 0);
        ml[RECEDE_MOST_PAINTS] += step->water_ml;
        all = 0;
        for (int j = 0; j <= RECEDE_MOST_PAINTS; j++)
            all += ml[j];
        assert_near(step->mixed_ml, all, 1e-9);
        assert_true(all >= 1.5 * step->need_ml * (1 - 1e-12));
        double paint_ml = all / (1 + step->mix.water);
        assert_near(ml[RECEDE_MOST_PAINTS], all - paint_ml, 1e-9);
        for (int j = 0; j < step->mix.count; j++)
            assert_near(ml[step->mix.paint[j]], paint_ml * step->mix.parts[j] / parts, 1e-9);
        for (int j = 0; j <= RECEDE_MOST_PAINTS; j++)
            ml[j] *= (all - step->need_ml) / all;
    }
}

/* The colour of a step by its own mix and that of what it lies on. */
static void check_colours(const order *o)
{
    double difference = 0;
    const recede_palette *palette = recede_plan_palette(o->plan);
    for (size_t i = 0; i < o->work->count; i++) {
        const recede_work_step *step = &o->work->steps[i];
        recede_spectrum under = *recede_palette_paper(palette);
        for (size_t j = 0; step->ground == RECEDE_ON_LIT && j < i; j++) {
            const recede_work_step *lit = &o->work->steps[j];
            if (lit->plane == step->plane && !lit->shadow &&
                (!lit->graded || lit->base == step->base))
                under = recede_mix_reflectance(palette, &lit->mix, NULL);
        }
        recede_spectrum seen = recede_mix_reflectance(palette, &step->mix, &under);
        recede_lab lab = recede_lab_of_xyz(recede_xyz_of_reflectance(&seen), recede_white());
        assert_below(recede_delta_e(lab, step->colour.lab), 1e-9);
        if (step->ground == RECEDE_ON_LIT)
            assert_true(step->mix.count <= RECEDE_MOST_LAID_OVER);
        difference += step->delta_e;
    }
    assert_near(o->work->difference, difference, 1e-9);
}

/* The sum is what the header says it is, the excess apart. */
static void check_sum(const recede_work *work)
{
    int additions = 0, washings = 0;
    for (size_t i = 0; i < work->count; i++) {
        additions += work->steps[i].additions;
        washings += work->steps[i].kind == RECEDE_STEP_WASHED;
    }
    assert_int_equal(work->additions, additions);
    assert_int_equal(work->washings, washings);
    double least = work->difference + 0.1 * additions + washings;
    assert_true(work->sum >= least - 1e-4);
    assert_true(work->exact);
}

static void check(const order *o)
{
    check_amounts(o->work);
    check_colours(o);
    check_sum(o->work);
}

static void the_order_can_be_followed(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3);
    for (int wells = 1; wells <= 3; wells++) {
        order o;
        seek(&o, scene, wells, 0);
        check(&o);
        assert_int_equal(o.work->wells, wells);
        drop(&o);
    }
    free(scene);
}

/* The areas of the washes by hand: a lit side under its shadow is the whole plane, the
 * shadow half, the sky's ends half of the sky; a film of 0.15 mm. */
static void needs_follow_from_paper_and_film(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3);
    order o;
    scene->paper_width_m = 0.4;
    scene->paper_height_m = 0.3;
    seek(&o, scene, 3, 0);
    double sheet_ml = 40 * 30 * 0.015, sky_ml = sheet_ml * o.shares[3];
    for (size_t i = 0; i < o.work->count; i++) {
        const recede_work_step *step = &o.work->steps[i];
        if (step->kind == RECEDE_STEP_BARE)
            continue;
        if (step->plane < 0) {
            assert_near(step->need_ml, step->graded ? sky_ml / 2 : sky_ml, 1e-9);
            continue;
        }
        size_t plane = 2 - (size_t)step->plane; /* the scene counts from near */
        int over = recede_plan_at(o.plan, plane)->shadow.crest.ground == RECEDE_ON_LIT;
        double share = !step->shadow && over ? 1 : 0.5;
        assert_near(step->need_ml, sheet_ml * o.shares[plane] * share * (step->graded ? 0.5 : 1),
                    1e-9);
    }
    drop(&o);
    free(scene);
}

/* Mist up to a tall peak's shoulder: its sides are graded. Common practice, no source:
 * a second end goes into the first while that is wet, or waits until it is dry; what
 * lies over a wash waits until that is dry; hard edges meet what is dry. */
static void each_wash_waits_for_what_it_should(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(2);
    order o;
    int graded = 0, over = 0;
    scene->air.mist_visibility_km = 4;
    scene->air.mist_top_m = 150;
    add_plane(scene, "peak", 6000, 900, "dark conifer");
    seek(&o, scene, 3, 0);
    check(&o);
    for (size_t i = 0; i < o.work->count; i++) {
        const recede_work_step *step = &o.work->steps[i];
        const recede_work_step *after = step->after < 0 ? NULL : &o.work->steps[step->after];
        assert_true(step->after < (int)i);
        if (after)
            assert_int_not_equal(after->kind, RECEDE_STEP_BARE);
        if (step->kind == RECEDE_STEP_BARE)
            continue;
        if (step->second && step->after == (int)i - 1) {
            assert_int_not_equal(step->paper, RECEDE_PAPER_DAMP);
            assert_int_equal(after->plane, step->plane);
            assert_int_equal(after->shadow, step->shadow);
            graded++;
        } else if (step->ground == RECEDE_ON_LIT) {
            assert_int_equal(step->paper, RECEDE_PAPER_DRY);
            assert_int_equal(after->plane, step->plane);
            assert_false(after->shadow);
            over++;
        } else if (step->plane >= 0 && step->edge == RECEDE_EDGE_HARD) {
            assert_int_equal(step->paper, RECEDE_PAPER_DRY);
        }
    }
    assert_true(graded >= 2 && over >= 2);
    drop(&o);
    free(scene);
}

/* The sky first, then far to near; lit before shadow; the paler end first. */
static void the_order_is_that_of_painting(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3);
    order o;
    seek(&o, scene, 3, 0);
    check(&o);
    assert_int_equal(o.work->steps[0].plane, -1);
    for (size_t i = 1; i < o.work->count; i++) {
        const recede_work_step *one = &o.work->steps[i - 1], *next = &o.work->steps[i];
        if (one->plane >= 0)
            assert_true(next->plane <= one->plane);
        if (next->plane == one->plane) {
            assert_true(next->shadow >= one->shadow);
            if (next->shadow == one->shadow)
                assert_true(next->second && next->base != one->base);
        }
    }
    drop(&o);
    free(scene);
}

/* Nothing is thinned in oil: no water in any step, and the shadow beside. */
static void an_opaque_medium_takes_no_water(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3);
    order o;
    scene->medium = RECEDE_OIL;
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        if (recede_palette_entry_at(i)->opaque)
            assert_int_equal(recede_scene_use_palette(scene, recede_palette_entry_at(i)->name,
                                                      NULL), RECEDE_OK);
    seek(&o, scene, 3, 0);
    check(&o);
    for (size_t i = 0; i < o.work->count; i++) {
        assert_true(o.work->steps[i].water_ml == 0);
        assert_int_equal(o.work->steps[i].ground, RECEDE_ON_PAPER);
    }
    drop(&o);
    free(scene);
}

/* ---- wells and tubes */

/* By their members: bytes between those mean nothing. */
static void assert_same_work(const recede_work *found, const recede_work *expected)
{
    assert_int_equal(found->wells, expected->wells);
    assert_int_equal(found->most_tubes, expected->most_tubes);
    assert_near(found->sum, expected->sum, 0);
    assert_int_equal(found->count, expected->count);
    for (size_t i = 0; i < found->count; i++) {
        const recede_work_step *one = &found->steps[i], *other = &expected->steps[i];
        assert_int_equal(one->plane, other->plane);
        assert_int_equal(one->kind, other->kind);
        assert_int_equal(one->well, other->well);
        assert_int_equal(one->before, other->before);
        assert_int_equal(one->after, other->after);
        assert_int_equal(one->mix.count, other->mix.count);
        for (int j = 0; j < one->mix.count; j++) {
            assert_int_equal(one->mix.paint[j], other->mix.paint[j]);
            assert_int_equal(one->mix.parts[j], other->mix.parts[j]);
            assert_near(one->paint_ml[j], other->paint_ml[j], 0);
        }
        assert_near(one->mix.water, other->mix.water, 0);
        assert_near(one->water_ml, other->water_ml, 0);
        assert_near(one->mixed_ml, other->mixed_ml, 0);
        assert_near(one->delta_e, other->delta_e, 0);
    }
}

/* Orders that keep to so many tubes, from 1 to 3 wells: followed, and no dearer than
 * the row that told of them. */
static void check_within(const recede_scene *scene, int tubes, double sum)
{
    double fewer = INFINITY;
    for (int wells = 1; wells <= 3; wells++) {
        order o;
        seek(&o, scene, wells, tubes);
        check(&o);
        assert_true(o.work->tubes <= tubes);
        assert_true(o.work->sum <= fewer);
        if (wells == 2)
            assert_true(o.work->sum <= sum);
        fewer = o.work->sum;
        drop(&o);
    }
}

static void fewer_never_cost_less(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3);
    order o;
    recede_work_choice choices[RECEDE_MOST_WORK_CHOICES];
    size_t count;
    const recede_work_wish wish = {2, 0};
    seek(&o, scene, 3, 0);
    assert_int_equal(recede_work_choices(o.plan, o.shares, &wish, NULL, NULL, NULL, choices, &count,
                                         NULL), RECEDE_OK);
    for (int i = 0; i < 3; i++) {
        assert_int_equal(choices[i].wells, i + 1);
        if (i)
            assert_true(choices[i].sum <= choices[i - 1].sum);
    }
    assert_near(choices[2].sum, o.work->sum, 0);
    double sum = choices[1].sum;
    int tubes = choices[1].tubes;
    assert_true(count > 4);
    for (size_t i = 3; i < count; i++) {
        assert_int_equal(choices[i].wells, 2);
        assert_true(choices[i].sum >= sum);
        assert_true(choices[i].tubes < tubes);
        sum = choices[i].sum;
        tubes = choices[i].tubes;
        check_within(scene, tubes, sum);
    }
    assert_int_equal(choices[count - 1].tubes, 1);
    drop(&o);
    free(scene);
}

static void the_scene_may_say_how_many_tubes(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3);
    order by_scene, by_wish;
    seek(&by_wish, scene, 3, 3);
    scene->most_tubes = 3;
    seek(&by_scene, scene, 3, 0);
    assert_int_equal(by_scene.work->most_tubes, 3);
    assert_same_work(by_scene.work, by_wish.work);
    drop(&by_scene);
    drop(&by_wish);
    scene->most_tubes = 25;
    recede_error error;
    assert_int_equal(recede_scene_check(scene, &error), RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "paint.most_tubes");
    free(scene);
}

/* ---- calls */

/* With an index given and without, the same bytes; twice, the same bytes. */
static void the_same_plan_gives_the_same_order(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(3);
    order o;
    recede_index *index;
    const recede_work_wish wish = {3, 0};
    recede_work *again = malloc(sizeof *again);
    seek(&o, scene, 3, 0);
    assert_int_equal(recede_index_new(recede_plan_palette(o.plan), &scene->rules, 0, NULL, NULL,
                                      &index, NULL), RECEDE_OK);
    assert_int_equal(recede_work_of(o.plan, o.shares, &wish, index, NULL, NULL, again, NULL),
                     RECEDE_OK);
    assert_same_work(again, o.work);
    recede_index_free(index);
    scene->rules.most_parts = 3;
    assert_int_equal(recede_index_new(recede_plan_palette(o.plan), &scene->rules, 0, NULL, NULL,
                                      &index, NULL), RECEDE_OK);
    recede_error error;
    assert_int_equal(recede_work_of(o.plan, o.shares, &wish, index, NULL, NULL, again, &error),
                     RECEDE_CONFLICT);
    assert_string_equal(error.path, "index");
    recede_index_free(index);
    free(again);
    drop(&o);
    free(scene);
}

static void a_wish_out_of_range_is_refused(void **state)
{
    (void)state;
    static const struct {
        recede_work_wish wish;
        const char *path;
    } cases[] = {{{0, 0}, "wells"}, {{4, 0}, "wells"}, {{3, -1}, "most_tubes"},
                 {{3, 25}, "most_tubes"}};
    recede_scene *scene = new_scene(1);
    order o;
    seek(&o, scene, 3, 0);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_error error;
        assert_int_equal(recede_work_of(o.plan, o.shares, &cases[i].wish, NULL, NULL, NULL, o.work,
                                        &error), RECEDE_OUT_OF_RANGE);
        assert_string_equal(error.path, cases[i].path);
    }
    drop(&o);
    free(scene);
}

typedef recede_code call(const order *o, const recede_allocator *memory,
                         const recede_progress *progress, recede_error *error);

static recede_code call_work(const order *o, const recede_allocator *memory,
                             const recede_progress *progress, recede_error *error)
{
    const recede_work_wish wish = {3, 3};
    return recede_work_of(o->plan, o->shares, &wish, NULL, memory, progress, o->work, error);
}

static recede_code call_choices(const order *o, const recede_allocator *memory,
                                const recede_progress *progress, recede_error *error)
{
    const recede_work_wish wish = {3, 0};
    recede_work_choice choices[RECEDE_MOST_WORK_CHOICES];
    size_t count;
    return recede_work_choices(o->plan, o->shares, &wish, NULL, memory, progress, choices, &count,
                               error);
}

static call *const calls[] = {call_work, call_choices};

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(1);
    scene->rules.most_pigments = 1;
    order o;
    seek(&o, scene, 3, 0);
    for (int which = 0; which < 2; which++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        assert_int_equal(calls[which](&o, &allocator, NULL, NULL), RECEDE_OK);
        assert_int_equal(memory.live, 0);
        size_t needed = memory.calls;
        for (size_t at = 1; at <= needed; at++) {
            recede_error error;
            allocator = test_allocator(&memory, at);
            assert_int_equal(calls[which](&o, &allocator, NULL, &error), RECEDE_NO_MEMORY);
            assert_int_equal(error.code, RECEDE_NO_MEMORY);
            assert_int_equal(memory.live, 0);
        }
    }
    drop(&o);
    free(scene);
}

/* Stops at the report of that number; shares done never go back. */
typedef struct {
    int stop_at, reports;
    double done;
} watch;

static int look(void *context, double share_done)
{
    watch *w = context;
    assert_true(share_done >= w->done - 1e-12 && share_done <= 1 + 1e-12);
    w->done = share_done;
    return ++w->reports == w->stop_at;
}

static void it_tells_how_far_it_is_and_can_be_stopped(void **state)
{
    (void)state;
    recede_scene *scene = new_scene(2);
    order o;
    seek(&o, scene, 3, 0);
    for (int which = 0; which < 2; which++) {
        watch w = {0};
        const recede_progress progress = {look, &w};
        assert_int_equal(calls[which](&o, NULL, &progress, NULL), RECEDE_OK);
        int reports = w.reports;
        for (int stop = 1; stop <= reports; stop += 1 + reports / 7) {
            w = (watch){.stop_at = stop};
            assert_int_equal(calls[which](&o, NULL, &progress, NULL), RECEDE_CANCELLED);
            assert_int_equal(w.reports, stop);
        }
    }
    drop(&o);
    free(scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_index_finds_the_same_sets),
        cmocka_unit_test(the_tube_least_missed_stays_at_home),
        cmocka_unit_test(the_order_can_be_followed),
        cmocka_unit_test(needs_follow_from_paper_and_film),
        cmocka_unit_test(each_wash_waits_for_what_it_should),
        cmocka_unit_test(the_order_is_that_of_painting),
        cmocka_unit_test(an_opaque_medium_takes_no_water),
        cmocka_unit_test(fewer_never_cost_less),
        cmocka_unit_test(the_scene_may_say_how_many_tubes),
        cmocka_unit_test(the_same_plan_gives_the_same_order),
        cmocka_unit_test(a_wish_out_of_range_is_refused),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(it_tells_how_far_it_is_and_can_be_stopped),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
