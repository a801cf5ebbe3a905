#include "file/png_read.h"

#include <errno.h>
#include <math.h>
#include <png.h>
#include <setjmp.h>
#include <stdio.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "file/png_colour.h"

enum {
    PIXEL_BYTES = 8, /* of a row: red, green, blue, alpha; two each, the high one first */
    LEVELS = 65536,
    MOST_CHUNK = 4 << 20
};

/* A libpng error comes back here and no further. */
typedef struct {
    const recede_allocator *allocator;
    const unsigned char *bytes;
    size_t size, at;
    jmp_buf back;
    int no_memory, cut_short, profile_broken, see_through;
    char text[160];
    png_bytep row;
    unsigned short *curve; /* NULL: samples are sRGB's already */
    recede_png_photo photo;
} decoder;

static png_voidp allocate(png_structp png, png_alloc_size_t size)
{
    decoder *d = png_get_mem_ptr(png);
    void *block = recede_allocate_array(d->allocator, size, 1);
    d->no_memory |= !block;
    return block;
}

static void release(png_structp png, png_voidp block)
{
    decoder *d = png_get_mem_ptr(png);
    recede_release(d->allocator, block);
}

static void take_error(png_structp png, png_const_charp text)
{
    decoder *d = png_get_error_ptr(png);
    recede_copy_text(d->text, sizeof d->text, text);
    longjmp(d->back, 1);
}

static void take_warning(png_structp png, png_const_charp text)
{
    decoder *d = png_get_error_ptr(png);
    d->profile_broken |= strncmp(text, "iCCP", 4) == 0;
}

static void give_bytes(png_structp png, png_bytep out, size_t size)
{
    decoder *d = png_get_io_ptr(png);
    if (size > d->size - d->at) {
        d->cut_short = 1;
        png_error(png, "cut short");
    }
    memcpy(out, d->bytes + d->at, size);
    d->at += size;
}

static void *need(png_structp png, decoder *d, size_t count, size_t size)
{
    void *block = recede_allocate_array(d->allocator, count, size);
    d->no_memory |= !block;
    if (!block)
        png_error(png, "out of memory");
    return block;
}

static void set_limits(png_structp png)
{
    /* Nothing in these is wanted, and some of them unpack to any size. */
    static const png_byte left_out[] = "bKGD\0eXIf\0hIST\0iTXt\0oFFs\0pCAL\0pHYs\0sCAL\0"
                                       "sPLT\0tEXt\0tIME\0zTXt";
    png_set_user_limits(png, RECEDE_PNG_MOST_SIDE, RECEDE_PNG_MOST_SIDE);
    png_set_chunk_malloc_max(png, MOST_CHUNK);
    png_set_keep_unknown_chunks(png, PNG_HANDLE_CHUNK_NEVER, NULL, 0);
    png_set_keep_unknown_chunks(png, PNG_HANDLE_CHUNK_NEVER, left_out, sizeof left_out / 5);
}

/* Samples coded with an exponent, coded as sRGB's are. */
static void make_curve(png_structp png, decoder *d, double exponent)
{
    d->curve = need(png, d, LEVELS, sizeof *d->curve);
    for (int i = 0; i < LEVELS; i++) {
        double y = pow(i / (LEVELS - 1.0), exponent);
        recede_xyz white = recede_white();
        recede_xyz grey = {y * white.x, y * white.y, y * white.z};
        d->curve[i] = (unsigned short)(recede_srgb_of_xyz(grey).g * (LEVELS - 1) + 0.5);
    }
}

static void set_transformations(png_structp png)
{
    png_set_expand_16(png); /* palettes, small depths and tRNS too */
    png_set_gray_to_rgb(png);
    png_set_add_alpha(png, 0xFFFF, PNG_FILLER_AFTER);
}

/* One row of a pass: pixels left, left + step, ... of the picture's row y. */
static void place_row(decoder *d, size_t y, size_t left, size_t step, size_t count)
{
    unsigned short *out = d->photo.rgb + (y * d->photo.photo.width + left) * 3;
    const unsigned char *in = d->row;
    for (size_t i = 0; i < count; i++, in += PIXEL_BYTES, out += step * 3) {
        for (int k = 0; k < 3; k++) {
            unsigned sample = (unsigned)in[2 * (size_t)k] << 8 | in[2 * (size_t)k + 1];
            out[k] = d->curve ? d->curve[sample] : (unsigned short)sample;
        }
        d->see_through |= (in[6] & in[7]) != 0xFF;
    }
}

/* libpng is not asked to put passes together: it would need all the picture with
 * alpha for that. */
static void read_pass(png_structp png, decoder *d, int pass)
{
    size_t width = d->photo.photo.width, height = d->photo.photo.height;
    size_t columns = PNG_PASS_COLS(width, pass), rows = PNG_PASS_ROWS(height, pass);
    for (size_t y = 0; columns && y < rows; y++) {
        png_read_row(png, d->row, NULL);
        place_row(d, PNG_ROW_FROM_PASS_ROW(y, pass), PNG_PASS_START_COL(pass),
                  PNG_PASS_COL_OFFSET(pass), columns);
    }
}

static void read_rows(png_structp png, png_infop info, decoder *d)
{
    size_t width = d->photo.photo.width, height = d->photo.photo.height;
    d->row = need(png, d, width, PIXEL_BYTES);
    d->photo.rgb = need(png, d, width * height, 3 * sizeof *d->photo.rgb);
    if (png_get_interlace_type(png, info) == PNG_INTERLACE_NONE) {
        for (size_t y = 0; y < height; y++) {
            png_read_row(png, d->row, NULL);
            place_row(d, y, 0, 1, width);
        }
    } else {
        for (int pass = 0; pass < PNG_INTERLACE_ADAM7_PASSES; pass++)
            read_pass(png, d, pass);
    }
}

static void decode(png_structp png, png_infop info, decoder *d)
{
    set_limits(png);
    png_read_info(png, info);
    recede_png_colour colour =
        recede_png_colour_of(png, info, d->bytes, d->size, d->profile_broken);
    memcpy(d->photo.remark, colour.remark, sizeof colour.remark);
    if (colour.exponent > 0)
        make_curve(png, d, colour.exponent);
    d->photo.photo.width = png_get_image_width(png, info);
    d->photo.photo.height = png_get_image_height(png, info);
    set_transformations(png);
    png_read_update_info(png, info);
    if (png_get_rowbytes(png, info) != d->photo.photo.width * PIXEL_BYTES)
        png_error(png, "rows of an unexpected size");
    read_rows(png, info, d);
    png_read_end(png, NULL);
}

/* Runs decode where take_error finds its way back to. */
static int decode_guarded(png_structp png, png_infop info, decoder *d)
{
    if (setjmp(d->back))
        return -1;
    decode(png, info, d);
    return d->no_memory ? -1 : 0; /* libpng goes on without what it can do without */
}

static int create(png_structp *png, png_infop *info, decoder *d)
{
    if (setjmp(d->back))
        return -1;
    *png = png_create_read_struct_2(PNG_LIBPNG_VER_STRING, d, take_error, take_warning, d,
                                    allocate, release);
    if (!*png)
        return -1;
    png_set_read_fn(*png, d, give_bytes);
    *info = png_create_info_struct(*png);
    return *info ? 0 : -1;
}

static size_t read_u32(const unsigned char *b)
{
    return (size_t)b[0] << 24 | (size_t)b[1] << 16 | (size_t)b[2] << 8 | b[3];
}

/* What can be seen before libpng is asked, worded for a painter. */
static int check_start(const char *name, const unsigned char *bytes, size_t size,
                       recede_file_problem *problem)
{
    char what[200];
    if (size > RECEDE_PNG_MOST_BYTES)
        return recede_file_say(problem, 1, name,
                               "the file is larger than the 128 MiB that are read; "
                               "make the photograph smaller");
    if (size < 8 || png_sig_cmp(bytes, 0, 8) != 0)
        return recede_file_say(problem, 1, name,
                               size ? "this is not a PNG file; save the photograph as PNG"
                                    : "the file is empty; save the photograph again as PNG");
    if (size < 24 || memcmp(bytes + 12, "IHDR", 4) != 0)
        return 0; /* libpng will tell */
    size_t width = read_u32(bytes + 16), height = read_u32(bytes + 20);
    if (width <= RECEDE_PNG_MOST_SIDE && height <= RECEDE_PNG_MOST_SIDE &&
        width * height <= RECEDE_PNG_MOST_PIXELS)
        return 0;
    snprintf(what, sizeof what,
             "the photograph has %zu by %zu pixels; 8192 a side and 24 megapixels are read: "
             "make it smaller or cut out the part with the card and the swatches",
             width, height);
    return recede_file_say(problem, 1, name, what);
}

static int tell(const char *name, const decoder *d, recede_file_problem *problem)
{
    char what[320];
    if (d->no_memory)
        return recede_file_fail(problem, name, "read", ENOMEM);
    if (d->cut_short)
        snprintf(what, sizeof what, "the PNG is cut short: it ends after %zu bytes; copy or "
                                    "export it again", d->size);
    else
        snprintf(what, sizeof what, "the PNG is damaged (%s); export it again", d->text);
    return recede_file_say(problem, 1, name, what);
}

static int check_opaque(const char *name, const decoder *d, recede_file_problem *problem)
{
    if (!d->see_through)
        return 0;
    return recede_file_say(problem, 1, name,
                           "the picture has see-through pixels, and what lies behind them is not "
                           "known; save it without transparency (without an alpha channel)");
}

int recede_png_read(const char *name, const void *bytes, size_t size,
                    const recede_allocator *allocator, recede_png_photo *out,
                    recede_file_problem *problem)
{
    decoder d = {.allocator = allocator, .bytes = bytes, .size = size};
    png_structp png = NULL;
    png_infop info = NULL;
    if (check_start(name, bytes, size, problem))
        return -1;
    int result = create(&png, &info, &d);
    if (!result)
        result = decode_guarded(png, info, &d);
    png_destroy_read_struct(&png, &info, NULL);
    recede_release(allocator, d.row);
    recede_release(allocator, d.curve);
    d.photo.photo.rgb = d.photo.rgb;
    result = result ? tell(name, &d, problem) : check_opaque(name, &d, problem);
    if (result)
        recede_png_photo_free(&d.photo, allocator);
    else
        *out = d.photo;
    return result;
}

void recede_png_photo_free(recede_png_photo *photo, const recede_allocator *allocator)
{
    recede_release(allocator, photo->rgb);
    photo->rgb = NULL;
    photo->photo = (recede_photo){0, 0, NULL};
}
