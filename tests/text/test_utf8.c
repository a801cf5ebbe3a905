/* UTF-8 against the C library's own converter, iconv. */
#include <iconv.h>
#include <string.h>

#include "support/assert_near.h"
#include "text/utf8.h"

static iconv_t converter;

/* What iconv makes of the first character: its length, 0 where it is refused. */
static size_t by_iconv(const char *bytes, size_t size, unsigned long *character)
{
    for (size_t length = 1; length <= size; length++) {
        char copy[8], *in = copy;
        unsigned char out[8], *out_at = out;
        char *out_bytes = (char *)out_at;
        size_t in_left = length, out_left = 4;
        memcpy(copy, bytes, length);
        iconv(converter, NULL, NULL, NULL, NULL);
        if (iconv(converter, &in, &in_left, &out_bytes, &out_left) == 0 && in_left == 0 &&
            out_left == 0) {
            *character = (unsigned long)out[0] | (unsigned long)out[1] << 8 |
                         (unsigned long)out[2] << 16;
            return length;
        }
    }
    return 0;
}

static void check(const unsigned char *bytes, size_t size)
{
    unsigned long found = 0, expected = 0;
    size_t expected_length = by_iconv((const char *)bytes, size, &expected);
    size_t length = recede_utf8_decode((const char *)bytes, size, &found);
    if (length != expected_length || found != expected)
        fail_msg("%02x %02x %02x %02x (%zu): length %zu, expected %zu", bytes[0], bytes[1],
                 bytes[2], bytes[3], size, length, expected_length);
}

static void every_short_sequence_and_many_long_ones(void **state)
{
    static const unsigned char ends[] = {0x00, 0x22, 0x7F, 0x80, 0x8F, 0x90, 0x9F,
                                         0xA0, 0xBF, 0xC0, 0xFF};
    enum { ENDS = sizeof ends };
    (void)state;
    converter = iconv_open("UTF-32LE", "UTF-8");
    assert_true(converter != (iconv_t)-1);
    for (unsigned a = 0; a < 256; a++)
        for (unsigned b = 0; b < 256; b++) {
            unsigned char two[4] = {(unsigned char)a, (unsigned char)b, 0, 0};
            check(two, 1);
            check(two, 2);
            for (unsigned c = 0; a >= 0xE0 && c < ENDS; c++) {
                unsigned char three[4] = {two[0], two[1], ends[c], 0};
                check(three, 3);
                for (unsigned d = 0; d < ENDS; d++) {
                    unsigned char four[4] = {two[0], two[1], ends[c], ends[d]};
                    check(four, 4);
                }
            }
        }
    iconv_close(converter);
}

static void columns_are_counted(void **state)
{
    (void)state;
    assert_int_equal(recede_utf8_columns("abc", 3), 3);
    assert_int_equal(recede_utf8_columns("caf\xC3\xA9", 5), 4);
    assert_int_equal(recede_utf8_columns("cafe\xCC\x81", 6), 4);       /* a combining acute */
    assert_int_equal(recede_utf8_columns("\xE5\xB1\xB1\xE6\xB0\xB4", 6), 4); /* two wide ones */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_short_sequence_and_many_long_ones),
        cmocka_unit_test(columns_are_counted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
