/* The search for an order of work against trying everything, on small made-up
 * pictures. All figures here are invented. */
#include <stdlib.h>
#include <string.h>

#include "colour/memory.h"
#include "plan/work_bound.h"
#include "plan/work_labels.h"
#include "plan/work_search.h"
#include "plan/work_volumes.h"
#include "support/allocator.h"
#include "support/assert_near.h"

enum { PAINTS = 4, PARTS = PAINTS + 1, MOST_WASHES = 6 };

/* ---- made-up pictures */

static unsigned seed;

static unsigned chance(unsigned of)
{
    seed = seed * 1664525u + 1013904223u;
    return (seed >> 16) % of;
}

static recede_mix any_mix(void)
{
    static const double waters[] = {0, 0.5, 2, 8, 31.5, 80};
    recede_mix mix = {0};
    unsigned paints = 1 + chance((1 << PAINTS) - 1);
    for (int i = 0; i < PAINTS && mix.count < 3; i++)
        if (paints >> i & 1) {
            mix.paint[mix.count] = i;
            mix.parts[mix.count++] = 1 + (int)chance(3);
        }
    mix.water = waters[chance(6)];
    return mix;
}

static void offer(recede_work_wash *wash, recede_mix mix)
{
    wash->offers[wash->count].mix = mix;
    wash->offers[wash->count++].puddle = recede_puddle_of_mix(&mix);
}

/* A wash over another, an end of a graded side and a bare ground now and then; offers
 * differ by so many hundredths. */
static void make_up(recede_washes *washes, size_t count, int offers, unsigned apart)
{
    recede_mix bare = {0};
    memset(washes->wash, 0, count * sizeof *washes->wash);
    washes->plan = NULL;
    washes->count = count;
    for (size_t i = 0; i < count; i++) {
        recede_work_wash *wash = &washes->wash[i];
        wash->need_ml = 0.2 + 0.1 * chance(40);
        wash->ground = wash->partner = -1;
        if (i && chance(4) == 0)
            wash->partner = washes->wash[i - 1].partner < 0 ? (int)i - 1 : -1;
        if (i && wash->partner < 0 && chance(3) == 0 && washes->wash[i - 1].ground < 0)
            wash->ground = (int)i - 1;
        if (wash->partner >= 0)
            wash->ground = washes->wash[wash->partner].ground;
        for (int j = 0; j < offers; j++)
            offer(wash, chance(8) ? any_mix() : bare);
        for (int g = 0; g < (wash->ground < 0 ? 1 : offers); g++)
            for (int j = 0; j < offers; j++)
                wash->difference[g][j] = 1e4 * chance(apart);
    }
}

/* ---- trying everything */

/* What stands in a well, in millilitres: the paints, then water. */
typedef struct {
    int used;
    double ml[PARTS];
} well;

typedef struct {
    const recede_washes *washes;
    int wells;
    int offer[MOST_WASHES];
    double least;
} trial;

/* The shares of a recipe in its volume, written out anew. */
static void shares_of(const recede_mix *mix, double *share)
{
    double parts = 0;
    for (int i = 0; i < PARTS; i++)
        share[i] = 0;
    for (int i = 0; i < mix->count; i++)
        parts += mix->parts[i];
    for (int i = 0; i < mix->count; i++)
        share[mix->paint[i]] = mix->parts[i] / (parts * (1 + mix->water));
    share[PAINTS] = mix->water / (1 + mix->water);
}

/* Pours until the recipe's proportions hold. Returns the cost, or -1 where something
 * would have to be taken out; all but what the wash needs stays in the well. */
static double pour(well *w, const recede_mix *mix, double need_ml, int anew)
{
    double share[PARTS], least_ml = 0, cost = anew && w->used ? 1.0 : 0;
    shares_of(mix, share);
    if (anew)
        memset(w->ml, 0, sizeof w->ml);
    for (int i = 0; i < PARTS; i++) {
        if (w->ml[i] > 0 && share[i] == 0)
            return -1;
        if (w->ml[i] > 0)
            least_ml = fmax(least_ml, w->ml[i] / share[i]);
    }
    /* how many things to pour in if the rest is used up just so, or from nothing */
    for (int i = 0; i < PARTS; i++)
        cost += share[i] > 0 && (anew || w->ml[i] < share[i] * least_ml * (1 - 1e-9)) ? 0.1 : 0;
    double mixed_ml = fmax(least_ml, 1.5 * need_ml);
    cost += 0.5 * (mixed_ml / (1.5 * need_ml) - 1);
    for (int i = 0; i < PARTS; i++)
        w->ml[i] = share[i] * (mixed_ml - need_ml);
    w->used = 1;
    return cost;
}

static void try_from(trial *t, size_t i, const well *wells, double cost)
{
    if (cost >= t->least)
        return;
    if (i == t->washes->count) {
        t->least = cost;
        return;
    }
    const recede_work_wash *wash = &t->washes->wash[i];
    for (int j = 0; j < wash->count; j++) {
        double with =
            cost + 1e-6 * wash->difference[wash->ground < 0 ? 0 : t->offer[wash->ground]][j];
        if (wash->partner >= 0 && t->offer[wash->partner] != j)
            continue;
        t->offer[i] = j;
        if (!wash->offers[j].mix.count)
            try_from(t, i + 1, wells, with);
        for (int which = 0; wash->offers[j].mix.count && which < 2 * t->wells; which++) {
            well now[RECEDE_MOST_WELLS];
            memcpy(now, wells, sizeof now);
            if (which % 2 && !now[which / 2].used)
                continue;
            double poured = pour(&now[which / 2], &wash->offers[j].mix, wash->need_ml,
                                 !(which % 2));
            if (poured >= 0)
                try_from(t, i + 1, now, with + poured);
        }
    }
}

/* ---- the path found, followed with the same hands */

static double cost_of_path(const recede_washes *washes, const recede_work_path *path)
{
    well wells[RECEDE_MOST_STEPS];
    double cost = 0;
    int used = 0, place[MOST_WASHES];
    memset(wells, 0, sizeof wells);
    for (size_t i = 0; i < washes->count; i++) {
        const recede_work_wash *wash = &washes->wash[i];
        const recede_mix *mix = &wash->offers[path->offer[i]].mix;
        cost += 1e-6 *
                wash->difference[wash->ground < 0 ? 0 : path->offer[wash->ground]][path->offer[i]];
        if (wash->partner >= 0)
            assert_int_equal(path->offer[i], path->offer[wash->partner]);
        if (!mix->count) {
            assert_int_equal(path->move[i], RECEDE_MOVE_BARE);
            continue;
        }
        place[i] = path->before[i] < 0 ? used++ : place[path->before[i]];
        double poured = pour(&wells[place[i]], mix, wash->need_ml,
                             path->move[i] == RECEDE_MOVE_START);
        assert_true(poured >= 0);
        cost += poured;
    }
    return cost;
}

/* How often each kind of move came up, and searches that went over all twice. */
typedef struct {
    int added, washed, bare, twice;
} tally;

static int count_reports(void *context, double share_done)
{
    (void)share_done;
    ++*(int *)context;
    return 0;
}

/* What the search takes for the least that all washes can cost, wells clean. */
static double bound_of(const recede_washes *washes, int wells)
{
    recede_work_bound bound;
    recede_label start = {0};
    for (int i = wells; i < RECEDE_MOST_WELLS; i++)
        start.well[i] = RECEDE_NO_WELL;
    assert_int_equal(recede_work_bound_start(&bound, washes, recede_allocator_or_default(NULL)),
                     RECEDE_OK);
    double least = recede_work_bound_of(&bound, 0, &start);
    recede_work_bound_end(&bound);
    return 1e-6 * least;
}

static void try_wells(const recede_washes *washes, int wells, tally *sum)
{
    recede_work_path path;
    well clean[RECEDE_MOST_WELLS] = {{0}};
    int reports = 0;
    const recede_progress progress = {count_reports, &reports};
    trial t = {.washes = washes, .wells = wells, .least = INFINITY};
    assert_int_equal(recede_work_search(washes, wells, recede_allocator_or_default(NULL), &progress,
                                        &path), RECEDE_OK);
    assert_true(path.exact);
    t.least = 1e-6 * path.cost + 1e-4; /* nothing dearer is of interest */
    try_from(&t, 0, clean, 0);
    assert_near(1e-6 * path.cost, t.least, 1e-5);
    assert_near(cost_of_path(washes, &path), t.least, 1e-5);
    assert_below(bound_of(washes, wells), 1e-6 * path.cost + 1e-12);
    sum->twice += reports > (int)washes->count;
    for (size_t i = 0; i < washes->count; i++) {
        sum->added += path.move[i] == RECEDE_MOVE_ADD;
        sum->washed += path.move[i] == RECEDE_MOVE_START && path.before[i] >= 0;
        sum->bare += path.move[i] == RECEDE_MOVE_BARE;
    }
}

/* Small pictures, where all that there is gets followed at once, and some so large
 * that it first takes a quick look and then prunes by it. */
static void nothing_is_better_than_what_is_found(void **state)
{
    (void)state;
    recede_washes washes;
    tally sum = {0};
    washes.wash = calloc(MOST_WASHES, sizeof *washes.wash);
    seed = 20;
    for (int picture = 0; picture < 440; picture++) {
        int large = picture >= 400;
        make_up(&washes, large ? MOST_WASHES : 2 + chance(3), large ? 8 : 4,
                large ? 60 : 300);
        for (int wells = 1; wells <= RECEDE_MOST_WELLS; wells++)
            try_wells(&washes, wells, &sum);
    }
    assert_true(sum.added > 100 && sum.washed > 100 && sum.bare > 100);
    assert_true(sum.twice > 20);
    free(washes.wash);
}

/* ---- puddles by hand */

/* One of A and one of B with eight of water is 1/18, 1/18 and 8/9. To become two of
 * A, one of B with four of water, 8/15 x ... : 2/15, 1/15, 4/5: the water grows by
 * (8/9) / (4/5) = 10/9, A by 5/12, B by 5/6. So 10/9, and A and B to be added. */
static void a_puddle_grows_as_worked_out_by_hand(void **state)
{
    (void)state;
    const recede_mix from = {2, {0, 1}, {1, 1}, 8}, to = {2, {0, 1}, {2, 1}, 4};
    const recede_mix other = {2, {0, 2}, {1, 1}, 8}, dry = {2, {0, 1}, {1, 1}, 0}, none = {0};
    recede_puddle a = recede_puddle_of_mix(&from), b = recede_puddle_of_mix(&to);
    assert_near(a.share[0], 1.0 / 18, 1e-15);
    assert_near(a.water, 8.0 / 9, 1e-15);
    recede_pour pour = recede_pour_between(&a, &b);
    assert_near(pour.growth, 10.0 / 9, 1e-12);
    assert_int_equal(pour.additions, 2);
    pour = recede_pour_between(&a, &a);
    assert_near(pour.growth, 1, 1e-12);
    assert_int_equal(pour.additions, 0);
    const recede_mix *impossible[] = {&other, &dry, &none};
    for (int i = 0; i < 3; i++) {
        recede_puddle c = recede_puddle_of_mix(impossible[i]);
        assert_true(isinf(recede_pour_between(&a, &c).growth));
    }
    /* back again, all that water: 2/15 of A must become 1/18 */
    pour = recede_pour_between(&b, &a);
    assert_near(pour.growth, 18 * 2.0 / 15, 1e-12);
    assert_int_equal(pour.additions, 2);
}

/* Two washes of 1 ml from one puddle that needs only more paint: the second needs 1.5,
 * so the first must leave 1.5 / growth, and 1 + 1.35 is mixed for it. */
static void a_puddle_is_mixed_for_what_comes_after(void **state)
{
    (void)state;
    static recede_work_wash wash[2];
    recede_washes washes = {NULL, 2, wash};
    recede_work_path path = {.move = {RECEDE_MOVE_START, RECEDE_MOVE_ADD}, .before = {-1, 0}};
    double mixed_ml[2];
    memset(wash, 0, sizeof wash);
    offer(&wash[0], (recede_mix){1, {0}, {1}, 9});
    offer(&wash[1], (recede_mix){1, {0}, {1}, 4.2632}); /* water 0.81: growth 10/9 */
    wash[0].need_ml = wash[1].need_ml = 1;
    recede_work_volumes(&washes, &path, mixed_ml);
    assert_near(mixed_ml[1], 1.5, 1e-12);
    assert_near(mixed_ml[0], 1 + 1.5 * 0.9, 1e-5);
    /* too much is left of a large wash: the second takes all of it in */
    wash[0].need_ml = 10;
    recede_work_volumes(&washes, &path, mixed_ml);
    assert_near(mixed_ml[0], 15, 1e-12);
    assert_near(mixed_ml[1], 5 * 10.0 / 9, 1e-4);
}

/* ---- memory */

static recede_code seek(recede_washes *washes, const recede_allocator *memory)
{
    recede_work_path path;
    return recede_work_search(washes, 3, memory, NULL, &path);
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    recede_washes washes;
    test_memory memory;
    washes.wash = calloc(MOST_WASHES, sizeof *washes.wash);
    seed = 3;
    make_up(&washes, MOST_WASHES, 8, 60);
    recede_allocator allocator = test_allocator(&memory, 0);
    assert_int_equal(seek(&washes, &allocator), RECEDE_OK);
    assert_int_equal(memory.live, 0);
    size_t calls = memory.calls;
    assert_true(calls > 20);
    for (size_t at = 1; at <= calls; at++) {
        allocator = test_allocator(&memory, at);
        assert_int_equal(seek(&washes, &allocator), RECEDE_NO_MEMORY);
        assert_int_equal(memory.live, 0);
    }
    free(washes.wash);
}

static int stop_at_once(void *context, double share_done)
{
    (void)share_done;
    ++*(int *)context;
    return 1;
}

static void it_can_be_stopped(void **state)
{
    (void)state;
    recede_washes washes;
    recede_work_path path;
    int calls = 0;
    const recede_progress progress = {stop_at_once, &calls};
    washes.wash = calloc(MOST_WASHES, sizeof *washes.wash);
    seed = 4;
    make_up(&washes, 3, 3, 300);
    assert_int_equal(recede_work_search(&washes, 3, recede_allocator_or_default(NULL), &progress,
                                        &path), RECEDE_CANCELLED);
    assert_int_equal(calls, 1);
    free(washes.wash);
}

/* ---- labels */

static void the_cheapest_labels_are_kept_when_room_runs_out(void **state)
{
    (void)state;
    recede_labels labels;
    recede_labels_start(&labels, 64, recede_allocator_or_default(NULL));
    seed = 5;
    double least = INFINITY;
    for (int i = 0; i < 1000; i++) {
        recede_label label = {.cost = 1e6 * chance(30000), .well = {(uint16_t)(i + 1), 2000, 3000}};
        least = fmin(least, label.cost);
        assert_int_equal(recede_labels_offer(&labels, &label), RECEDE_OK);
    }
    assert_true(labels.dropped);
    assert_int_equal(recede_labels_cut(&labels, 8), RECEDE_OK);
    assert_int_equal(labels.count, 8);
    int found = 0;
    for (size_t i = 0; i < labels.count; i++)
        found |= labels.items[i].cost == least;
    assert_true(found);
    recede_labels_end(&labels);
}

/* Of one key: cheaper with less left goes before; cheaper with more left, beside. */
static void a_label_goes_only_where_another_is_no_worse(void **state)
{
    (void)state;
    recede_labels labels;
    recede_label label = {.cost = 5, .left_ml = {1, 1, 1}, .well = {1, 2, 3}};
    recede_labels_start(&labels, 64, recede_allocator_or_default(NULL));
    assert_int_equal(recede_labels_offer(&labels, &label), RECEDE_OK);
    label.cost = 4;
    label.left_ml[1] = 2;
    assert_int_equal(recede_labels_offer(&labels, &label), RECEDE_OK);
    assert_int_equal(recede_labels_offer(&labels, &label), RECEDE_OK);
    recede_labels_settle(&labels);
    assert_int_equal(labels.count, 2);
    recede_labels_clear(&labels);
    label.cost = 6;
    assert_int_equal(recede_labels_offer(&labels, &label), RECEDE_OK);
    label.cost = 5;
    label.left_ml[1] = 1;
    assert_int_equal(recede_labels_offer(&labels, &label), RECEDE_OK);
    recede_labels_settle(&labels);
    assert_int_equal(labels.count, 1);
    assert_near(labels.items[0].cost, 5, 0);
    recede_labels_end(&labels);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_is_better_than_what_is_found),
        cmocka_unit_test(a_puddle_grows_as_worked_out_by_hand),
        cmocka_unit_test(a_puddle_is_mixed_for_what_comes_after),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(it_can_be_stopped),
        cmocka_unit_test(the_cheapest_labels_are_kept_when_room_runs_out),
        cmocka_unit_test(a_label_goes_only_where_another_is_no_worse),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
