/* The frontier of a best-first search: a heap, held to what sorting gives. */
#include "paint/frontier.h"

#include <stdlib.h>

#include "paint/paints.h"
#include "support/allocator.h"
#include "support/assert_near.h"

enum { PLACES = 5000 };

static int by_bound(const void *one, const void *other)
{
    float a = *(const float *)one, b = *(const float *)other;
    return (a > b) - (a < b);
}

static void places_come_nearest_first(void **state)
{
    (void)state;
    static float bounds[PLACES];
    recede_frontier frontier;
    recede_place_ahead place;
    dice d = {8};
    recede_frontier_start(&frontier, NULL);
    assert_true(isinf(recede_frontier_least(&frontier)));
    for (uint32_t i = 0; i < PLACES; i++) {
        bounds[i] = (float)throw_below(&d, 700);
        place = (recede_place_ahead){bounds[i], i, 0, 0};
        assert_int_equal(recede_frontier_add(&frontier, place), RECEDE_OK);
    }
    static float sorted[PLACES];
    memcpy(sorted, bounds, sizeof sorted);
    qsort(sorted, PLACES, sizeof sorted[0], by_bound);
    for (int i = 0; i < PLACES; i++) {
        assert_near(recede_frontier_least(&frontier), sorted[i], 0);
        assert_true(recede_frontier_take(&frontier, &place));
        assert_near(place.bound, sorted[i], 0);
        assert_near(place.bound, bounds[place.at], 0);
        bounds[place.at] = -1; /* each comes once */
    }
    assert_false(recede_frontier_take(&frontier, &place));
    recede_frontier_end(&frontier);
}

static void taken_and_added_in_turn_it_keeps_its_order(void **state)
{
    (void)state;
    recede_frontier frontier;
    recede_place_ahead place;
    dice d = {9};
    float last = 0;
    recede_frontier_start(&frontier, NULL);
    for (uint32_t i = 0; i < 20; i++)
        recede_frontier_add(&frontier, (recede_place_ahead){0, i, 0, 9});
    for (int i = 0; i < 3000; i++) {
        assert_true(recede_frontier_take(&frontier, &place));
        assert_true(place.bound >= last);
        last = place.bound;
        for (int more = 0; more < 1 + i % 2; more++) { /* children are no nearer */
            place.bound += (float)throw_dice(&d);
            assert_int_equal(recede_frontier_add(&frontier, place), RECEDE_OK);
        }
    }
    recede_frontier_end(&frontier);
}

static void of_equals_the_one_farther_down_comes_first(void **state)
{
    (void)state;
    recede_frontier frontier;
    recede_place_ahead place;
    dice d = {10};
    recede_frontier_start(&frontier, NULL);
    for (uint32_t i = 0; i < 500; i++)
        recede_frontier_add(&frontier,
                            (recede_place_ahead){0, i, 0, (uint8_t)throw_below(&d, 9)});
    for (int level = 0; recede_frontier_take(&frontier, &place); level = place.level)
        assert_true(place.level >= level);
    recede_frontier_end(&frontier);
}

static void no_memory_leaves_it_as_it_was(void **state)
{
    (void)state;
    test_memory memory;
    recede_frontier frontier;
    recede_place_ahead place = {1, 7, 2, 3};
    recede_allocator allocator = test_allocator(&memory, 2);
    size_t added = 0;
    recede_frontier_start(&frontier, &allocator);
    assert_int_equal(memory.live, 0);
    while (!recede_frontier_add(&frontier, place))
        added++;
    assert_true(added > 0);
    while (recede_frontier_take(&frontier, &place)) {
        assert_int_equal(place.at, 7);
        added--;
    }
    assert_int_equal(added, 0);
    recede_frontier_end(&frontier);
    assert_int_equal(memory.live, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(places_come_nearest_first),
        cmocka_unit_test(taken_and_added_in_turn_it_keeps_its_order),
        cmocka_unit_test(of_equals_the_one_farther_down_comes_first),
        cmocka_unit_test(no_memory_leaves_it_as_it_was),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
