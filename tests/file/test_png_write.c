/* PNG: read back by libpng with all checks on, and passed by pngcheck. */
#include <png.h>

#include "file/folder.h"
#include "file/png_write.h"
#include "support/allocator.h"

enum { WIDTH = 67, HEIGHT = 41, ROW = 3 * WIDTH + 5 };

static unsigned char pixels[HEIGHT * ROW];
static char plan[20000];
static recede_file_problem problem;

static recede_png picture(void)
{
    unsigned noise = 1;
    for (size_t i = 0; i < sizeof pixels; i++) {
        noise = noise * 1103515245u + 12345u;
        pixels[i] = (unsigned char)(i / 7 + (noise >> 28));
    }
    strcpy(plan, "{\"planes\": \"caf\xC3\xA9\"");
    for (size_t i = strlen(plan); i < sizeof plan - 2; i++)
        plan[i] = " ,1"[i % 3];
    strcpy(plan + sizeof plan - 2, "}");
    return (recede_png){WIDTH, HEIGHT, pixels, ROW, 300.0, plan};
}

typedef struct {
    const char *bytes;
    size_t size, at;
} source;

static void give_bytes(png_structp png, png_bytep out, size_t size)
{
    source *from = png_get_io_ptr(png);
    if (from->size - from->at < size)
        png_error(png, "too short");
    memcpy(out, from->bytes + from->at, size);
    from->at += size;
}

static void check_chunks(png_structp png, png_infop info)
{
    png_uint_32 across, down;
    int unit, intent, text_count;
    png_textp text;
    assert_int_equal(png_get_bit_depth(png, info), 8);
    assert_int_equal(png_get_color_type(png, info), PNG_COLOR_TYPE_RGB);
    assert_true(png_get_sRGB(png, info, &intent));
    assert_true(png_get_pHYs(png, info, &across, &down, &unit));
    assert_int_equal(unit, PNG_RESOLUTION_METER);
    assert_int_equal(across, 11811); /* 300 / 0.0254 */
    assert_int_equal(down, 11811);
    png_get_text(png, info, &text, &text_count);
    assert_int_equal(text_count, 1);
    assert_string_equal(text[0].key, "recede plan");
    assert_int_equal(text[0].compression, PNG_ITXT_COMPRESSION_zTXt);
    assert_string_equal(text[0].text, plan);
}

static void libpng_reads_back_what_was_written(void **state)
{
    recede_png image = picture();
    recede_buffer out;
    unsigned char row[3 * WIDTH];
    (void)state;
    recede_buffer_start(&out, NULL);
    assert_int_equal(recede_png_encode(&image, &out, &problem), 0);
    assert_true(out.size < 15000); /* the plan alone is 20000: it is compressed */
    source from = {out.bytes, out.size, 0};
    png_structp png = png_create_read_struct(PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
    png_infop info = png_create_info_struct(png);
    png_set_read_fn(png, &from, give_bytes);
    png_read_info(png, info);
    assert_int_equal(png_get_image_width(png, info), WIDTH);
    assert_int_equal(png_get_image_height(png, info), HEIGHT);
    check_chunks(png, info);
    for (int y = 0; y < HEIGHT; y++) {
        png_read_row(png, row, NULL);
        assert_memory_equal(row, pixels + y * ROW, sizeof row);
    }
    png_read_end(png, info);
    assert_int_equal(from.at, from.size);
    png_destroy_read_struct(&png, &info, NULL);
    recede_buffer_free(&out);
}

static void pngcheck_passes_it(void **state)
{
    recede_png image = picture();
    recede_buffer out;
    (void)state;
    recede_buffer_start(&out, NULL);
    assert_int_equal(recede_png_encode(&image, &out, &problem), 0);
    FILE *file = fopen("a.png", "wb");
    assert_int_equal(fwrite(out.bytes, 1, out.size, file), out.size);
    fclose(file);
    assert_int_equal(system("pngcheck -q a.png"), 0);
    assert_int_equal(truncate("a.png", (off_t)out.size - 7), 0);
    assert_int_not_equal(system("pngcheck -q a.png >/dev/null"), 0); /* it can fail */
    recede_buffer_free(&out);
}

static void the_same_picture_gives_the_same_bytes(void **state)
{
    recede_png image = picture();
    recede_buffer first, second;
    (void)state;
    recede_buffer_start(&first, NULL);
    recede_buffer_start(&second, NULL);
    assert_int_equal(recede_png_encode(&image, &first, &problem), 0);
    assert_int_equal(recede_png_encode(&image, &second, &problem), 0);
    assert_int_equal(first.size, second.size);
    assert_memory_equal(first.bytes, second.bytes, first.size);
    recede_buffer_free(&first);
    recede_buffer_free(&second);
}

static void impossible_sizes_are_refused(void **state)
{
    recede_png image = picture();
    recede_buffer out;
    (void)state;
    recede_buffer_start(&out, NULL);
    image.width = 0;
    assert_int_equal(recede_png_encode(&image, &out, &problem), -1);
    image.width = (size_t)1 << 40;
    assert_int_equal(recede_png_encode(&image, &out, &problem), -1);
    image.width = WIDTH;
    image.row_bytes = 3 * WIDTH - 1;
    assert_int_equal(recede_png_encode(&image, &out, &problem), -1);
    image = picture();
    image.height = 3000000; /* beyond libpng's own limit: its error is ours */
    assert_int_equal(recede_png_encode(&image, &out, &problem), -1);
    assert_non_null(strstr(problem.text, "the picture: "));
    recede_buffer_free(&out);
}

static void memory_may_run_out_anywhere(void **state)
{
    recede_png image = picture();
    int failures = 0;
    (void)state;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_buffer out;
        recede_buffer_start(&out, &allocator);
        int result = recede_png_encode(&image, &out, &problem);
        recede_buffer_free(&out);
        assert_int_equal(memory.live, 0);
        if (result == 0 && memory.calls < at)
            break;
        if (result != 0) {
            failures++;
            if (!strstr(problem.text, "memory"))
                fail_msg("%s", problem.text);
        }
    }
    assert_true(failures > 8);
}

#define IN_FOLDER(test) cmocka_unit_test_setup_teardown(test, enter_folder, leave_folder)

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_FOLDER(libpng_reads_back_what_was_written),
        IN_FOLDER(pngcheck_passes_it),
        IN_FOLDER(the_same_picture_gives_the_same_bytes),
        IN_FOLDER(impossible_sizes_are_refused),
        IN_FOLDER(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
