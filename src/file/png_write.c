#include "file/png_write.h"

#include <errno.h>
#include <limits.h>
#include <png.h>
#include <setjmp.h>
#include <string.h>

#include "colour/memory.h"

/* A libpng error comes back here and no further. */
typedef struct {
    recede_buffer *out;
    jmp_buf back;
    int no_memory; /* libpng words it in many ways */
    char text[160];
} encoder;

static png_voidp allocate(png_structp png, png_alloc_size_t size)
{
    encoder *e = png_get_mem_ptr(png);
    void *block = recede_allocate_array(e->out->allocator, size, 1);
    e->no_memory |= !block;
    return block;
}

static void release(png_structp png, png_voidp block)
{
    encoder *e = png_get_mem_ptr(png);
    recede_release(e->out->allocator, block);
}

static void take_error(png_structp png, png_const_charp text)
{
    encoder *e = png_get_error_ptr(png);
    strncpy(e->text, text, sizeof e->text - 1);
    longjmp(e->back, 1);
}

static void take_warning(png_structp png, png_const_charp text)
{
    (void)png;
    (void)text;
}

static void take_bytes(png_structp png, png_bytep bytes, size_t size)
{
    encoder *e = png_get_io_ptr(png);
    recede_buffer_add(e->out, bytes, size);
    e->no_memory |= e->out->failed;
    if (e->out->failed)
        png_error(png, "out of memory");
}

static void take_flush(png_structp png)
{
    (void)png;
}

static void set_header(png_structp png, png_infop info, const recede_png *image)
{
    static const double inches_per_metre = 1.0 / 0.0254;
    /* Set, so that the same zlib gives the same bytes. For pixels level 1 on
     * differences to the row above: a tenth of the time of level 6 with libpng's
     * own choice of filters, for a quarter more bytes. */
    static const int pixel_level = 1, text_level = 9;
    png_set_compression_level(png, pixel_level);
    png_set_text_compression_level(png, text_level);
    png_set_filter(png, PNG_FILTER_TYPE_BASE, PNG_FILTER_UP);
    png_set_IHDR(png, info, (png_uint_32)image->width, (png_uint_32)image->height, 8,
                 PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_BASE,
                 PNG_FILTER_TYPE_BASE);
    png_set_sRGB(png, info, PNG_sRGB_INTENT_PERCEPTUAL);
    if (image->dots_per_inch > 0.0) {
        png_uint_32 dots = (png_uint_32)(image->dots_per_inch * inches_per_metre + 0.5);
        png_set_pHYs(png, info, dots, dots, PNG_RESOLUTION_METER);
    }
}

static void set_plan(png_structp png, png_infop info, const char *plan)
{
    static char keyword[] = "recede plan", none[] = "";
    png_text text;
    memset(&text, 0, sizeof text);
    text.compression = PNG_ITXT_COMPRESSION_zTXt;
    text.key = keyword;
    text.text = (char *)plan; /* libpng only reads it */
    text.itxt_length = strlen(plan);
    text.lang = none;
    text.lang_key = none;
    png_set_text(png, info, &text, 1);
}

static void encode(png_structp png, png_infop info, const recede_png *image)
{
    set_header(png, info, image);
    if (image->plan)
        set_plan(png, info, image->plan);
    png_write_info(png, info);
    for (size_t y = 0; y < image->height; y++)
        png_write_row(png, image->rgb + y * image->row_bytes);
    png_write_end(png, info);
}

static int size_fits(const recede_png *image)
{
    return image->width > 0 && image->height > 0 && image->width <= INT_MAX / 3 &&
           image->height <= INT_MAX && image->row_bytes >= 3 * image->width;
}

/* Runs encode where take_error finds its way back to. */
static int encode_guarded(png_structp png, png_infop info, const recede_png *image, encoder *e)
{
    if (setjmp(e->back))
        return -1;
    encode(png, info, image);
    return 0;
}

static int create(png_structp *png, png_infop *info, encoder *e)
{
    if (setjmp(e->back))
        return -1;
    *png = png_create_write_struct_2(PNG_LIBPNG_VER_STRING, e, take_error, take_warning, e,
                                     allocate, release);
    if (!*png)
        return -1;
    png_set_write_fn(*png, e, take_bytes, take_flush);
    *info = png_create_info_struct(*png);
    return *info ? 0 : -1;
}

int recede_png_encode(const recede_png *image, recede_buffer *out, recede_file_problem *problem)
{
    encoder e = {.out = out};
    png_structp png = NULL;
    png_infop info = NULL;
    if (!size_fits(image))
        return recede_file_say(problem, 1, "the picture", "its size is not one a PNG can have");
    int result = create(&png, &info, &e);
    if (!result)
        result = encode_guarded(png, info, image, &e);
    png_destroy_write_struct(&png, &info);
    if (result && e.no_memory)
        return recede_file_fail(problem, "the picture", "made", ENOMEM);
    if (result)
        return recede_file_say(problem, 0, "the picture", e.text);
    return 0;
}
