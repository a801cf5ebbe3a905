/* Sizes that cannot be: a buffer refuses them before any sum or product of its own
 * wraps round. Seen to fail with that check broken, as tools/mutations.txt lists. */
#include <stdint.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/buffer.h"

static void a_size_that_cannot_be_is_refused(void **state)
{
    static const size_t sizes[] = {SIZE_MAX, SIZE_MAX - 5, SIZE_MAX / 2};
    (void)state;
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        recede_buffer buffer;
        recede_buffer_start(&buffer, &allocator);
        recede_buffer_text(&buffer, "ten bytes.");
        size_t calls = memory.calls;
        recede_buffer_add(&buffer, "", sizes[i]);
        assert_true(buffer.failed);
        assert_int_equal(buffer.size, 10);
        assert_int_equal(memory.calls, calls);
        recede_buffer_text(&buffer, "no more"); /* once failed, for good */
        assert_int_equal(buffer.size, 10);
        recede_buffer_free(&buffer);
        assert_int_equal(memory.live, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_size_that_cannot_be_is_refused)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
