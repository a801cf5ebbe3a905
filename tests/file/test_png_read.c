/* Reading PNGs: files of every kind, written here by libpng; broken ones; limits. Seen to fail
 * with the limits on bytes and on pixels lifted: tools/mutations.txt. */
#include "file/png_read.h"

#include <zlib.h>

#include "file/pngs.h"
#include "support/allocator.h"

static recede_file_problem problem;
static recede_png_photo read_photo;

static const struct {
    int type, depth;
} kinds[] = {
    {PNG_COLOR_TYPE_GRAY, 1},        {PNG_COLOR_TYPE_GRAY, 2},       {PNG_COLOR_TYPE_GRAY, 4},
    {PNG_COLOR_TYPE_GRAY, 8},        {PNG_COLOR_TYPE_GRAY, 16},      {PNG_COLOR_TYPE_PALETTE, 1},
    {PNG_COLOR_TYPE_PALETTE, 2},     {PNG_COLOR_TYPE_PALETTE, 4},    {PNG_COLOR_TYPE_PALETTE, 8},
    {PNG_COLOR_TYPE_RGB, 8},         {PNG_COLOR_TYPE_RGB, 16},       {PNG_COLOR_TYPE_GRAY_ALPHA, 8},
    {PNG_COLOR_TYPE_GRAY_ALPHA, 16}, {PNG_COLOR_TYPE_RGB_ALPHA, 8},  {PNG_COLOR_TYPE_RGB_ALPHA, 16},
};
enum { KINDS = sizeof kinds / sizeof kinds[0] };

static png_kind kind_of(size_t i, int interlace)
{
    return (png_kind){.type = kinds[i].type, .depth = kinds[i].depth, .interlace = interlace,
                      .opaque_alpha = 1};
}

static int read_bytes(const void *bytes, size_t size)
{
    memset(&problem, 0, sizeof problem);
    return recede_png_read("card.png", bytes, size, NULL, &read_photo, &problem);
}

static void assert_pixels(const png_kind *kind)
{
    assert_int_equal(read_photo.photo.width, pngs_width(kind));
    assert_int_equal(read_photo.photo.height, pngs_height(kind));
    assert_ptr_equal(read_photo.photo.rgb, read_photo.rgb);
    for (size_t y = 0; y < pngs_height(kind); y++)
        for (size_t x = 0; x < pngs_width(kind); x++)
            for (int c = 0; c < 3; c++) {
                unsigned found = read_photo.rgb[(y * pngs_width(kind) + x) * 3 + (size_t)c];
                if (found != pngs_expected(kind, x, y, c))
                    fail_msg("type %d depth %d interlace %d at %zu, %zu, %d: %u, expected %u",
                             kind->type, kind->depth, kind->interlace, x, y, c, found,
                             pngs_expected(kind, x, y, c));
            }
}

static void check_kind(const png_kind *kind)
{
    png_bytes file = pngs_write(kind);
    if (read_bytes(file.bytes, file.size))
        fail_msg("type %d depth %d: %s", kind->type, kind->depth, problem.text);
    assert_pixels(kind);
    assert_string_equal(read_photo.remark, "");
    recede_png_photo_free(&read_photo, NULL);
    assert_null(read_photo.rgb);
    free(file.bytes);
}

static void every_colour_type_and_depth_is_read(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++)
        for (int interlace = 0; interlace < 2; interlace++) {
            png_kind kind = kind_of(i, interlace);
            check_kind(&kind);
        }
}

/* Passes of an interlaced picture may be empty. */
static void every_small_size_is_read(void **state)
{
    (void)state;
    for (size_t width = 1; width <= 9; width++)
        for (size_t height = 1; height <= 9; height++)
            for (int interlace = 0; interlace < 2; interlace++) {
                png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 16, .width = width,
                                 .height = height, .interlace = interlace};
                check_kind(&kind);
                kind.type = PNG_COLOR_TYPE_PALETTE;
                kind.depth = 2;
                check_kind(&kind);
            }
}

static void check_clear(png_kind kind)
{
    png_bytes file = pngs_write(&kind);
    int refused = kind.clear_colour == 2 || !kind.opaque_alpha;
    assert_int_equal(read_bytes(file.bytes, file.size), refused ? -1 : 0);
    if (refused) {
        assert_int_equal(problem.refused, 1);
        assert_string_equal(problem.text,
                            "card.png: the picture has see-through pixels, and what lies behind "
                            "them is not known; save it without transparency (without an alpha "
                            "channel)");
    } else {
        assert_pixels(&kind);
        recede_png_photo_free(&read_photo, NULL);
    }
    free(file.bytes);
}

static void see_through_pixels_are_refused(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++)
        for (int interlace = 0; interlace < 2; interlace++) {
            png_kind kind = kind_of(i, interlace);
            if (kind.type & PNG_COLOR_MASK_ALPHA) {
                kind.opaque_alpha = 0;
                check_clear(kind);
                continue;
            }
            kind.clear_colour = 1; /* a clear colour that no pixel has does not matter */
            check_clear(kind);
            kind.clear_colour = 2;
            check_clear(kind);
        }
}

static void expect_line(const void *bytes, size_t size, int result)
{
    if (read_bytes(bytes, size) != result)
        fail_msg("%zu bytes: %s", size, problem.text);
    if (result == 0) {
        recede_png_photo_free(&read_photo, NULL);
        return;
    }
    assert_int_equal(problem.refused, 1);
    assert_true(strncmp(problem.text, "card.png: ", 10) == 0);
    assert_non_null(strchr(problem.text, ';'));
    assert_null(strchr(problem.text, '\n'));
}

static void a_file_cut_anywhere_is_refused(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        png_kind kind = kind_of(i, (int)(i & 1));
        png_bytes file = pngs_write(&kind);
        for (size_t size = 0; size < file.size; size++) {
            unsigned char *part = malloc(size ? size : 1); /* so that a sanitizer sees its end */
            memcpy(part, file.bytes, size);
            expect_line(part, size, -1);
            free(part);
        }
        assert_non_null(strstr(problem.text, "cut short: it ends after "));
        assert_non_null(strstr(problem.text, "copy or export it again"));
        free(file.bytes);
    }
}

/* A checksum guards every byte but the signature and the lengths; those are guarded
 * by what must follow. */
static void a_changed_byte_is_refused(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        png_kind kind = kind_of(i, 0);
        png_bytes file = pngs_write(&kind);
        for (size_t at = 0; at < file.size; at++) {
            file.bytes[at] ^= 0x11;
            expect_line(file.bytes, file.size, -1);
            file.bytes[at] ^= 0x11;
        }
        expect_line(file.bytes, file.size, 0);
        free(file.bytes);
    }
}

static void other_files_are_refused(void **state)
{
    static const unsigned char jpeg[] = {0xFF, 0xD8, 0xFF, 0xE0, 0, 16, 'J', 'F', 'I', 'F', 0};
    (void)state;
    expect_line("", 0, -1);
    assert_string_equal(problem.text,
                        "card.png: the file is empty; save the photograph again as PNG");
    expect_line(jpeg, sizeof jpeg, -1);
    assert_string_equal(problem.text,
                        "card.png: this is not a PNG file; save the photograph as PNG");
}

static void put_u32(unsigned char *to, size_t value)
{
    for (int i = 0; i < 4; i++)
        to[i] = (unsigned char)(value >> (24 - 8 * i));
}

/* The first chunk says the size; its checksum is mended. */
static void set_size(png_bytes *file, size_t width, size_t height)
{
    put_u32(file->bytes + 16, width);
    put_u32(file->bytes + 20, height);
    put_u32(file->bytes + 29, crc32(0, file->bytes + 12, 17));
}

static void limits_are_held_before_memory_is_taken(void **state)
{
    static const struct {
        size_t width, height;
        int refused; /* for its size */
    } sizes[] = {{8193, 1, 1}, {1, 8193, 1}, {8192, 3073, 1}, {0x7FFFFFFF, 0x7FFFFFFF, 1},
                 {0xFFFFFFFF, 0xFFFFFFFF, 1}, {8192, 3072, 0}, {0, 4, 0}};
    png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 8};
    png_bytes file = pngs_write(&kind);
    (void)state;
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        set_size(&file, sizes[i].width, sizes[i].height);
        assert_int_equal(recede_png_read("card.png", file.bytes, file.size, &allocator,
                                         &read_photo, &problem), -1);
        assert_int_equal(strstr(problem.text, "24 megapixels are read") != NULL,
                         sizes[i].refused);
        if (sizes[i].refused)
            assert_int_equal(memory.calls, 0);
        assert_int_equal(memory.live, 0);
    }
    assert_int_equal(read_bytes(file.bytes, RECEDE_PNG_MOST_BYTES + 1), -1); /* not looked at */
    assert_non_null(strstr(problem.text, "128 MiB"));
    free(file.bytes);
}

static void the_widest_and_highest_are_read(void **state)
{
    png_kind wide = {.type = PNG_COLOR_TYPE_GRAY, .depth = 1, .width = 8192, .height = 2};
    png_kind high = {.type = PNG_COLOR_TYPE_GRAY, .depth = 1, .width = 3, .height = 8192,
                     .interlace = 1};
    (void)state;
    check_kind(&wide);
    check_kind(&high);
}

/* Compressed text that unpacks to far more than the file. */
static void add_bomb(png_structp png, png_infop info)
{
    static char text[3 << 20], key[] = "Comment";
    png_text bomb = {.compression = PNG_TEXT_COMPRESSION_zTXt, .key = key, .text = text};
    memset(text, 'a', sizeof text - 1);
    bomb.text_length = sizeof text - 1;
    png_set_text(png, info, &bomb, 1);
}

static void what_is_not_wanted_is_not_unpacked(void **state)
{
    png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 8, .more = add_bomb};
    png_bytes file = pngs_write(&kind);
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    (void)state;
    assert_int_equal(recede_png_read("card.png", file.bytes, file.size, &allocator, &read_photo,
                                     &problem), 0);
    assert_below((double)memory.peak, 200000);
    recede_png_photo_free(&read_photo, &allocator);
    assert_int_equal(memory.live, 0);
    free(file.bytes);
}

static void run_out_of_memory(const png_bytes *file)
{
    size_t failures = 0;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        int result = recede_png_read("card.png", file->bytes, file->size, &allocator,
                                     &read_photo, &problem);
        if (result == 0) {
            assert_true(memory.calls < at);
            assert_int_equal(memory.live, 1);
            recede_png_photo_free(&read_photo, &allocator);
            assert_int_equal(memory.live, 0);
            break;
        }
        failures++;
        assert_int_equal(memory.live, 0);
        if (!strstr(problem.text, "memory") || problem.refused)
            fail_msg("%s", problem.text);
    }
    assert_true(failures > 5);
}

static void add_exponent(png_structp png, png_infop info)
{
    png_set_gAMA_fixed(png, info, 100000);
}

static void memory_may_run_out_anywhere(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        png_kind kind = kind_of(i, 1);
        kind.more = add_exponent;
        kind.clear_colour = !(kind.type & PNG_COLOR_MASK_ALPHA);
        png_bytes file = pngs_write(&kind);
        run_out_of_memory(&file);
        free(file.bytes);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_colour_type_and_depth_is_read),
        cmocka_unit_test(every_small_size_is_read),
        cmocka_unit_test(see_through_pixels_are_refused),
        cmocka_unit_test(a_file_cut_anywhere_is_refused),
        cmocka_unit_test(a_changed_byte_is_refused),
        cmocka_unit_test(other_files_are_refused),
        cmocka_unit_test(limits_are_held_before_memory_is_taken),
        cmocka_unit_test(the_widest_and_highest_are_read),
        cmocka_unit_test(what_is_not_wanted_is_not_unpacked),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
