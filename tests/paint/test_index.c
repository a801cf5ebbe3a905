/* The index against the films it stands for, its memory, progress and refusals. */
#include "paint/index.h"

#include <stdlib.h>

#include "paint/mixes.h"
#include "paint/recipes.h"
#include "paint/sweep.h"
#include "paint/paints.h"
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

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

/* Single precision passes over mixes that are neither the darkest nor the palest. */
static void its_range_is_the_palette_s(void **state)
{
    (void)state;
    static const char *const names[] = {"landscape-six", "landscape-twelve", "opaque-sixteen"};
    for (int i = 0; i < 6; i++) {
        recede_rules rules = {1 + i % 4, 5, 1};
        recede_palette *palette = named_palette(names[i % 3]);
        recede_index *index = index_of(palette, &rules, i < 3 ? 0 : 40000);
        recede_sweep sweep;
        recede_mixes walk;
        double darkest = recede_palette_xyz(palette, palette->paper.at).y, palest = darkest;
        double found[4];
        recede_sweep_start(&sweep, palette);
        recede_mixes_start(&walk, (int)palette->count, &rules);
        while (recede_mixes_next(&walk)) {
            recede_sweep_take(&sweep, &walk.mix);
            darkest = fmin(darkest, recede_sweep_xyz(&sweep, 0).y);
            palest = fmax(palest, recede_sweep_xyz(&sweep, 0).y);
        }
        recede_palette_range(palette, &rules, &found[0], &found[1]);
        recede_index_range(index, &found[2], &found[3]);
        for (int j = 0; j < 4; j++)
            assert_near(found[j], j % 2 ? palest : darkest, 0);
        recede_index_free(index);
        recede_palette_free(palette);
    }
}

static void every_film_lies_in_its_leaf_s_box(void **state)
{
    (void)state;
    check_index("landscape-six", (recede_rules){3, 8, 1});
    check_index("landscape-twelve", (recede_rules){3, 4, 1});
    check_index("opaque-sixteen", (recede_rules){4, 6, 1});
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
        cmocka_unit_test(no_targets_are_no_work),
        cmocka_unit_test(its_range_is_the_palette_s),
        cmocka_unit_test(every_film_lies_in_its_leaf_s_box),
        cmocka_unit_test(no_memory_at_any_point_leaves_nothing_behind),
        cmocka_unit_test(the_index_is_one_block_of_the_size_it_tells),
        cmocka_unit_test(progress_is_told_and_a_stop_is_heard),
        cmocka_unit_test(what_cannot_be_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
