/* Memory through the caller's allocator, and the allocator the tests use. Seen to fail with
 * the product not checked: tools/mutations.txt. */
#include "colour/memory.h"

#include "support/allocator.h"
#include "support/assert_near.h"

#include <stdint.h>
#include <string.h>

static void without_an_allocator_the_heap_is_used(void **state)
{
    (void)state;
    const recede_allocator *heap = recede_allocator_or_default(NULL);
    assert_non_null(heap);
    char *block = heap->allocate(heap->context, 100);
    assert_non_null(block);
    memset(block, 1, 100);
    heap->release(heap->context, block);
    heap->release(heap->context, NULL);
    block = recede_allocate_array(NULL, 10, 10);
    assert_non_null(block);
    recede_release(NULL, block);
}

static void the_callers_allocator_is_used(void **state)
{
    (void)state;
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    assert_ptr_equal(recede_allocator_or_default(&allocator), &allocator);
    void *block = recede_allocate_array(&allocator, 7, 9);
    assert_non_null(block);
    assert_int_equal(memory.calls, 1);
    assert_int_equal(memory.live, 1);
    assert_int_equal(memory.bytes, 63);
    recede_release(&allocator, block);
    recede_release(&allocator, NULL);
    assert_int_equal(memory.live, 0);
    assert_int_equal(memory.bytes, 0);
    assert_int_equal(memory.peak, 63);
}

static void a_product_that_overflows_is_no_memory(void **state)
{
    (void)state;
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    assert_null(recede_allocate_array(&allocator, SIZE_MAX / 8 + 1, 8));
    assert_null(recede_allocate_array(&allocator, 8, SIZE_MAX / 8 + 1));
    assert_null(recede_allocate_array(&allocator, SIZE_MAX, SIZE_MAX));
    assert_int_equal(memory.calls, 0);
}

static void nothing_is_still_a_block(void **state)
{
    (void)state;
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    void *none = recede_allocate_array(&allocator, 0, 8);
    void *empty = recede_allocate_array(&allocator, 8, 0);
    assert_non_null(none);
    assert_non_null(empty);
    recede_release(&allocator, none);
    recede_release(&allocator, empty);
    assert_int_equal(memory.live, 0);
}

static void the_call_named_fails_and_no_other(void **state)
{
    (void)state;
    for (size_t fail_at = 1; fail_at <= 3; fail_at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, fail_at);
        for (size_t call = 1; call <= 4; call++) {
            void *block = recede_allocate_array(&allocator, 1, 4);
            assert_int_equal(block == NULL, call == fail_at);
            recede_release(&allocator, block);
        }
        assert_int_equal(memory.calls, 4);
        assert_int_equal(memory.live, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_an_allocator_the_heap_is_used),
        cmocka_unit_test(the_callers_allocator_is_used),
        cmocka_unit_test(a_product_that_overflows_is_no_memory),
        cmocka_unit_test(nothing_is_still_a_block),
        cmocka_unit_test(the_call_named_fails_and_no_other),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
