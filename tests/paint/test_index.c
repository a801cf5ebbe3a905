/* The search by index against the reference search, to the last bit, and the index
 * itself against the films it stands for. */
#include "paint/index.h"

#include <stdlib.h>

#include "paint/mixes.h"
#include "paint/recipes.h"
#include "paint/sweep.h"
#include "paint/wash_targets.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

enum { MOST_TARGETS = 60 };

static recede_palette *named_palette(const char *name)
{
    const recede_palette_entry *entry = entry_of(name);
    return palette_of(entry->paints, entry->opaque ? RECEDE_GOUACHE : RECEDE_WATERCOLOUR);
}

static recede_index *index_of(const recede_palette *palette, const recede_rules *rules,
                              size_t most_bytes)
{
    recede_index *index;
    assert_int_equal(
        recede_index_new(palette, rules, most_bytes, NULL, NULL, &index, NULL), RECEDE_OK);
    return index;
}

static void as_reference(const recede_palette *palette, recede_rules rules, size_t most_bytes,
                         int count, dice *d)
{
    static recede_wash_target targets[MOST_TARGETS];
    static recede_wash_recipe found[MOST_TARGETS], expected[MOST_TARGETS];
    recede_index *index = index_of(palette, &rules, most_bytes);
    for (int i = 0; i < count; i++)
        targets[i] = wash_target(palette, d, i);
    assert_int_equal(recede_search(index, targets, (size_t)count, found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_search_all(palette, &rules, targets, (size_t)count, expected, NULL,
                                       NULL, NULL), RECEDE_OK);
    for (int i = 0; i < count; i++)
        assert_same_wash(&found[i], &expected[i], targets[i].graded);
    recede_index_free(index);
}

static void six_and_twelve_pigments_as_the_reference(void **state)
{
    (void)state;
    dice d = {2025};
    recede_palette *six = named_palette("landscape-six");
    recede_palette *twelve = named_palette("landscape-twelve");
    as_reference(six, (recede_rules){3, 8, 1}, 0, MOST_TARGETS, &d);
    as_reference(twelve, (recede_rules){3, 6, 1}, 0, MOST_TARGETS, &d);
    recede_palette_free(six);
    recede_palette_free(twelve);
}

/* A tie of nothing wants the closest exactly; a wide one a long list. */
static void whatever_the_rules_as_the_reference(void **state)
{
    (void)state;
    static const double ties[] = {0, 0.01, 0.3, 2, 10};
    dice d = {17};
    recede_palette *six = named_palette("landscape-six");
    recede_palette *three =
        palette_of("yellow ochre|ultramarine blue|burnt sienna", RECEDE_WATERCOLOUR);
    recede_palette *one = palette_of("viridian", RECEDE_WATERCOLOUR);
    for (int i = 0; i < 12; i++) {
        recede_rules rules = {1 + i % 4, 1 + (5 * i) % 12, ties[i % 5]};
        as_reference(three, rules, 0, 36, &d);
        as_reference(one, rules, 0, 12, &d);
        if (i < 5)
            as_reference(six, (recede_rules){2 + i % 2, 4 + i % 2, ties[i]}, 0, 36, &d);
    }
    recede_palette_free(six);
    recede_palette_free(three);
    recede_palette_free(one);
}

static void opaque_paints_as_the_reference(void **state)
{
    (void)state;
    dice d = {23};
    recede_palette *ten = named_palette("opaque-ten");
    as_reference(ten, (recede_rules){3, 8, 1}, 0, MOST_TARGETS, &d);
    as_reference(ten, (recede_rules){4, 6, 0.2}, 0, MOST_TARGETS, &d);
    as_reference(ten, (recede_rules){3, 8, 1}, 40000, MOST_TARGETS, &d);
    recede_palette_free(ten);
}

/* Twins, one paint under two names: ties in everything but the palette's order. */
static void twins_as_the_reference(void **state)
{
    (void)state;
    dice d = {29};
    recede_palette *palette = palette_of(
        "french ultramarine|hansa yellow|ultramarine blue|lemon yellow", RECEDE_WATERCOLOUR);
    as_reference(palette, (recede_rules){3, 5, 1}, 0, MOST_TARGETS, &d);
    as_reference(palette, (recede_rules){3, 5, 0}, 0, MOST_TARGETS, &d);
    recede_palette_free(palette);
}

/* Where memory is short the index holds mixes of few pigments, or none; the rest go
 * by in a stream. */
static void what_does_not_fit_as_the_reference(void **state)
{
    (void)state;
    static const struct { size_t bytes; int held; } caps[] = {
        {1, 0}, {50000, 1}, {200000, 2}, {250000, 3}, {0, 4},
    };
    static const double ties[] = {1, 0, 0.3};
    dice d = {31};
    recede_palette *six = named_palette("landscape-six");
    for (int i = 0; i < 5; i++) {
        recede_rules rules = {4, 6, 1};
        recede_index *index = index_of(six, &rules, caps[i].bytes);
        assert_int_equal(recede_index_pigments(index), caps[i].held);
        if (caps[i].held)
            assert_true(!caps[i].bytes || recede_index_bytes(index) <= caps[i].bytes);
        recede_index_free(index);
        for (int tie = 0; tie < 3; tie++) {
            rules.tie = ties[tie];
            as_reference(six, rules, caps[i].bytes, 30, &d);
        }
    }
    recede_palette_free(six);
}

/* A paper darker than its own surface, and paints far out: no curve holds them. */
static void what_no_curve_holds_as_the_reference(void **state)
{
    (void)state;
    dice d = {37};
    recede_palette *palette = palette_of("yellow ochre|viridian", RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 4, 1};
    palette->paper.at[30] = palette->paper_internal[30] = 0;
    recede_index *index = index_of(palette, &rules, 0);
    assert_int_equal(recede_index_pigments(index), 0);
    recede_index_free(index);
    as_reference(palette, rules, 0, 24, &d);
    recede_palette_free(palette);
}

static void no_targets_are_no_work(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("viridian", RECEDE_WATERCOLOUR);
    recede_rules rules = {1, 1, 1};
    recede_index *index = index_of(palette, &rules, 0);
    assert_int_equal(recede_search(index, NULL, 0, NULL, NULL, NULL, NULL), RECEDE_OK);
    recede_index_free(index);
    recede_index_free(NULL);
    recede_palette_free(palette);
}

static void assert_in_box(recede_lab lab, const recede_boxes *boxes, int lane)
{
    recede_box box = recede_box_of(boxes, lane);
    const double at[3] = {lab.l, lab.a, lab.b};
    for (int i = 0; i < 3; i++)
        assert_true(at[i] >= (double)box.low[i] && at[i] <= (double)box.high[i]);
}

/* Every leaf of a class: its films lie in its box, and each of the class's films is
 * in just one leaf. */
static void check_leaves(const recede_index *index, const recede_class *class)
{
    recede_sweep sweep;
    size_t stretches = (size_t)index->stretches.count;
    unsigned char *seen = calloc(class->mixes * stretches, 1);
    assert_non_null(seen);
    recede_sweep_start(&sweep, index->palette);
    for (size_t i = 0; i < class->leaves; i++) {
        const recede_leaves *leaves =
            &recede_index_leaves(index)[class->first_block[0] + i / RECEDE_BLOCK];
        int lane = (int)(i % RECEDE_BLOCK), stretch = leaves->stretch[lane];
        size_t own = leaves->mix[lane] - class->first_mix;
        assert_true(own < class->mixes && !seen[own * stretches + (size_t)stretch]);
        seen[own * stretches + (size_t)stretch] = 1;
        recede_mix mix = recede_mix_of_small(&recede_index_mixes(index)[leaves->mix[lane]]);
        assert_int_equal(mix.count, class->pigments);
        recede_sweep_take(&sweep, &mix);
        for (int j = 0; j < index->stretches.levels[stretch]; j++) {
            size_t level = (size_t)(index->stretches.first[stretch] + j);
            assert_in_box(recede_lab_of_xyz(recede_sweep_xyz(&sweep, level),
                                            index->palette->white), &leaves->boxes, lane);
        }
    }
    free(seen);
}

/* A node's box holds the eight below it. */
static void check_nodes(const recede_index *index, const recede_class *class)
{
    for (int level = 1; level < class->height; level++) {
        for (size_t i = 0; i < class->blocks[level - 1]; i++) {
            const recede_boxes *above =
                recede_block_boxes(index, class, level, i / RECEDE_BLOCK);
            const recede_boxes *below = recede_block_boxes(index, class, level - 1, i);
            recede_box node = recede_box_of(above, (int)(i % RECEDE_BLOCK));
            assert_int_equal(above->arc[i % RECEDE_BLOCK], recede_box_arc(&node));
            for (int lane = 0; lane < recede_block_count(class, level - 1, i); lane++) {
                recede_box box = recede_box_of(below, lane);
                for (int axis = 0; axis < 3; axis++)
                    assert_true(node.low[axis] <= box.low[axis] &&
                                node.high[axis] >= box.high[axis]);
            }
        }
    }
    assert_int_equal(class->blocks[class->height - 1], 1);
}

static void check_index(const char *name, recede_rules rules)
{
    recede_palette *palette = named_palette(name);
    recede_index *index = index_of(palette, &rules, 0);
    recede_mixes walk;
    size_t mixes = 0;
    recede_mixes_start(&walk, (int)recede_palette_count(palette), &rules);
    for (; recede_mixes_next(&walk); mixes++) {
        const recede_small_mix *small = &recede_index_mixes(index)[mixes];
        recede_mix mix = recede_mix_of_small(small);
        assert_memory_equal(&mix, &walk.mix, sizeof mix);
        assert_int_equal(small->set, walk.set);
    }
    for (int i = 0; i < index->classes; i++) {
        mixes -= index->class[i].mixes;
        check_leaves(index, &index->class[i]);
        check_nodes(index, &index->class[i]);
    }
    assert_int_equal(mixes, 0);
    recede_index_free(index);
    recede_palette_free(palette);
}

static void every_film_lies_in_its_leaf_s_box(void **state)
{
    (void)state;
    check_index("landscape-six", (recede_rules){3, 8, 1});
    check_index("landscape-twelve", (recede_rules){3, 4, 1});
    check_index("opaque-ten", (recede_rules){4, 6, 1});
}

static const char small_box[] = "hansa yellow|burnt sienna|ultramarine blue|viridian";

/* Flat and graded, some that a stream must answer. */
static const recede_wash_target hungry[] = {
    {.from = {60, -10, 30}},
    {.from = {50, 60, -60}},
    {.from = {60, -5, -20}, .to = {88, 0, 5}, .half = {75, -3, -8}, .graded = 1},
    {.from = {20, 40, 0}, .to = {30, 60, 5}, .half = {75, -3, -8}, .graded = 1},
    {.from = {30, 0, 0}},
};
enum { HUNGRY = sizeof hungry / sizeof hungry[0] };

static recede_code build_and_search(const recede_palette *palette, size_t most_bytes,
                                    const recede_allocator *allocator,
                                    const recede_progress *progress, recede_wash_recipe *found,
                                    recede_error *error)
{
    recede_rules rules = {3, 5, 1};
    recede_index *index;
    recede_code code =
        recede_index_new(palette, &rules, most_bytes, allocator, progress, &index, error);
    if (code) {
        assert_null(index);
        return code;
    }
    code = recede_search(index, hungry, HUNGRY, found, allocator, progress, error);
    recede_index_free(index);
    return code;
}

static const size_t tight[] = {0, 100000, 1};

static void no_memory_at_any_point_leaves_nothing_behind(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    for (int cap = 0; cap < 3; cap++) {
        recede_wash_recipe whole[HUNGRY], found[HUNGRY];
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        assert_int_equal(build_and_search(palette, tight[cap], &allocator, NULL, whole, NULL),
                         RECEDE_OK);
        size_t calls = memory.calls;
        assert_int_equal(memory.live, 0);
        assert_true(calls > 8);
        for (size_t fail_at = 1; fail_at <= calls; fail_at++) {
            recede_error error;
            allocator = test_allocator(&memory, fail_at);
            assert_int_equal(
                build_and_search(palette, tight[cap], &allocator, NULL, found, &error),
                RECEDE_NO_MEMORY);
            assert_int_equal(error.code, RECEDE_NO_MEMORY);
            assert_int_equal(memory.live, 0);
        }
        allocator = test_allocator(&memory, calls + 1);
        assert_int_equal(build_and_search(palette, tight[cap], &allocator, NULL, found, NULL),
                         RECEDE_OK);
        for (int i = 0; i < HUNGRY; i++)
            assert_same_wash(&found[i], &whole[i], hungry[i].graded);
    }
    recede_palette_free(palette);
}

static void the_index_is_one_block_of_the_size_it_tells(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    recede_rules rules = {3, 6, 1};
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    recede_index *index;
    assert_int_equal(recede_index_new(palette, &rules, 0, &allocator, NULL, &index, NULL),
                     RECEDE_OK);
    assert_int_equal(memory.live, 1);
    assert_int_equal(memory.bytes, recede_index_bytes(index));
    recede_index_free(index);
    assert_int_equal(memory.live, 0);
    recede_palette_free(palette);
}

typedef struct listener { int calls, stop_at, restarts; double last; } listener;

static int listen(void *context, double share_done)
{
    listener *l = context;
    assert_true(share_done >= 0 && share_done <= 1);
    l->restarts += share_done < l->last; /* the search after the index */
    l->last = share_done;
    return ++l->calls == l->stop_at;
}

static void progress_is_told_and_a_stop_is_heard(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(small_box, RECEDE_WATERCOLOUR);
    for (int cap = 0; cap < 3; cap++) {
        recede_wash_recipe found[HUNGRY];
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        listener whole = {0, 0, 0, 0};
        recede_progress progress = {listen, &whole};
        assert_int_equal(
            build_and_search(palette, tight[cap], &allocator, &progress, found, NULL),
            RECEDE_OK);
        assert_true(whole.calls >= 3);
        assert_in_range(whole.restarts, 0, 1);
        for (int stop_at = 1; stop_at <= whole.calls; stop_at++) {
            listener stopper = {0, stop_at, 0, 0};
            recede_error error;
            progress.context = &stopper;
            assert_int_equal(
                build_and_search(palette, tight[cap], &allocator, &progress, found, &error),
                RECEDE_CANCELLED);
            assert_int_equal(error.code, RECEDE_CANCELLED);
            assert_int_equal(stopper.calls, stop_at);
            assert_int_equal(memory.live, 0);
        }
    }
    recede_palette_free(palette);
}

static void what_cannot_be_is_refused(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("viridian", RECEDE_WATERCOLOUR);
    recede_rules rules = {0, 8, 1};
    recede_wash_target target = {.from = {NAN, 0, 0}};
    recede_wash_recipe found;
    recede_index *index;
    recede_error error;
    assert_int_equal(recede_index_new(palette, &rules, 0, NULL, NULL, &index, &error),
                     RECEDE_OUT_OF_RANGE);
    assert_string_equal(error.path, "paint.most_pigments");
    assert_null(index);
    rules.most_pigments = 1;
    index = index_of(palette, &rules, 0);
    assert_int_equal(recede_search(index, &target, 1, &found, NULL, NULL, &error),
                     RECEDE_NOT_FINITE);
    assert_string_equal(error.path, "targets[0].from");
    recede_index_free(index);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(six_and_twelve_pigments_as_the_reference),
        cmocka_unit_test(whatever_the_rules_as_the_reference),
        cmocka_unit_test(opaque_paints_as_the_reference),
        cmocka_unit_test(twins_as_the_reference),
        cmocka_unit_test(what_does_not_fit_as_the_reference),
        cmocka_unit_test(what_no_curve_holds_as_the_reference),
        cmocka_unit_test(no_targets_are_no_work),
        cmocka_unit_test(every_film_lies_in_its_leaf_s_box),
        cmocka_unit_test(no_memory_at_any_point_leaves_nothing_behind),
        cmocka_unit_test(the_index_is_one_block_of_the_size_it_tells),
        cmocka_unit_test(progress_is_told_and_a_stop_is_heard),
        cmocka_unit_test(what_cannot_be_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
