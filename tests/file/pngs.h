/* PNGs of every kind, written by libpng, and what their pixels are. */
#ifndef RECEDE_TESTS_PNGS_H
#define RECEDE_TESTS_PNGS_H

#include <png.h>
#include <stdlib.h>
#include <string.h>

#include "support/assert_near.h"

enum { PNGS_WIDTH = 19, PNGS_HEIGHT = 11, PNGS_PIXELS = PNGS_WIDTH * PNGS_HEIGHT };

typedef struct png_kind {
    int type, depth, interlace;
    int opaque_alpha;     /* alpha at the top of its scale; else it varies */
    int clear_colour;     /* tRNS: 0 none, 1 of a colour not used, 2 of one used */
    size_t width, height; /* 0: PNGS_WIDTH by PNGS_HEIGHT */
    /* chunks: adds to info before it is written */
    void (*more)(png_structp png, png_infop info);
} png_kind;

typedef struct png_bytes {
    unsigned char *bytes;
    size_t size, capacity;
} png_bytes;

static inline void pngs_take(png_structp png, png_bytep bytes, size_t size)
{
    png_bytes *out = png_get_io_ptr(png);
    if (out->size + size > out->capacity) {
        out->capacity = 2 * (out->size + size);
        out->bytes = realloc(out->bytes, out->capacity);
    }
    memcpy(out->bytes + out->size, bytes, size);
    out->size += size;
}

static inline void pngs_flush(png_structp png)
{
    (void)png;
}

static inline int pngs_channels(int type)
{
    return type == PNG_COLOR_TYPE_GRAY || type == PNG_COLOR_TYPE_PALETTE ? 1
           : type == PNG_COLOR_TYPE_GRAY_ALPHA                          ? 2
           : type == PNG_COLOR_TYPE_RGB                                 ? 3
                                                                        : 4;
}

/* The sample of a pixel's channel, 0 to 2^depth - 1; 0 is left out where it is the
 * clear colour that no pixel has. */
static inline unsigned pngs_sample(const png_kind *kind, size_t x, size_t y, int channel)
{
    unsigned most = (1u << kind->depth) - 1;
    int channels = pngs_channels(kind->type);
    int alpha = (kind->type & PNG_COLOR_MASK_ALPHA) && channel == channels - 1;
    if (alpha && kind->opaque_alpha)
        return most;
    unsigned mixed = (unsigned)(x * 7919 + y * 104729 + (size_t)channel * 1299709) * 2654435761u;
    return kind->clear_colour == 1 ? 1 + (mixed >> 11) % most : (mixed >> 11) % (most + 1);
}

static inline png_color pngs_colour(unsigned index)
{
    return (png_color){(png_byte)(index * 37 + 11), (png_byte)(255 - index * 53),
                       (png_byte)(index * index * 29 + 5)};
}

static inline size_t pngs_width(const png_kind *kind)
{
    return kind->width ? kind->width : PNGS_WIDTH;
}
static inline size_t pngs_height(const png_kind *kind)
{
    return kind->height ? kind->height : PNGS_HEIGHT;
}

static inline void pngs_set_palette(png_structp png, png_infop info, const png_kind *kind)
{
    png_color palette[256];
    png_byte alpha[2] = {0, 255};
    int count = 1 << kind->depth;
    for (int i = 0; i < count; i++)
        palette[i] = pngs_colour((unsigned)i);
    png_set_PLTE(png, info, palette, count);
    if (kind->clear_colour == 2)
        alpha[1] = 128;
    if (kind->clear_colour)
        png_set_tRNS(png, info, alpha, 2, NULL);
}

static inline void pngs_set_clear(png_structp png, png_infop info, const png_kind *kind)
{
    png_color_16 clear = {0, 0, 0, 0, 0};
    if (kind->clear_colour == 2) {
        clear.red = (png_uint_16)pngs_sample(kind, 3, 2, 0);
        clear.green = (png_uint_16)pngs_sample(kind, 3, 2, 1);
        clear.blue = (png_uint_16)pngs_sample(kind, 3, 2, 2);
        clear.gray = clear.red;
    }
    png_set_tRNS(png, info, NULL, 0, &clear);
}

static inline void pngs_fill_row(const png_kind *kind, size_t y, unsigned char *row)
{
    int channels = pngs_channels(kind->type);
    size_t bit = 0;
    for (size_t x = 0; x < pngs_width(kind); x++)
        for (int c = 0; c < channels; c++) {
            unsigned sample = pngs_sample(kind, x, y, c);
            for (int b = kind->depth - 1; b >= 0; b--, bit++)
                row[bit / 8] = (unsigned char)(row[bit / 8] |
                                               ((sample >> b & 1u) << (7 - bit % 8)));
        }
}

/* The caller frees the bytes. */
static inline png_bytes pngs_write(const png_kind *kind)
{
    png_bytes out = {NULL, 0, 0};
    size_t row_bytes = pngs_width(kind) * 8 + 1;
    unsigned char *rows = calloc(pngs_height(kind), row_bytes);
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
    png_infop info = png_create_info_struct(png);
    png_set_write_fn(png, &out, pngs_take, pngs_flush);
    png_set_IHDR(png, info, (png_uint_32)pngs_width(kind), (png_uint_32)pngs_height(kind),
                 kind->depth, kind->type, kind->interlace, 0, 0);
    if (kind->type == PNG_COLOR_TYPE_PALETTE)
        pngs_set_palette(png, info, kind);
    else if (kind->clear_colour)
        pngs_set_clear(png, info, kind);
    if (kind->more)
        kind->more(png, info);
    png_write_info(png, info);
    for (size_t y = 0; y < pngs_height(kind); y++)
        pngs_fill_row(kind, y, rows + y * row_bytes);
    int passes = png_set_interlace_handling(png);
    for (int pass = 0; pass < passes; pass++)
        for (size_t y = 0; y < pngs_height(kind); y++)
            png_write_row(png, rows + y * row_bytes);
    png_write_end(png, info);
    png_destroy_write_struct(&png, &info);
    free(rows);
    return out;
}

/* A channel of a pixel on the 16-bit scale: ISO/IEC 15948, 13.12, to the nearest. */
static inline unsigned pngs_expected(const png_kind *kind, size_t x, size_t y, int channel)
{
    unsigned most = (1u << kind->depth) - 1;
    if (kind->type == PNG_COLOR_TYPE_PALETTE) {
        png_color colour = pngs_colour(pngs_sample(kind, x, y, 0));
        const png_byte at[3] = {colour.red, colour.green, colour.blue};
        return at[channel] * 65535u / 255;
    }
    int grey = !(kind->type & PNG_COLOR_MASK_COLOR);
    return (unsigned)((2.0 * pngs_sample(kind, x, y, grey ? 0 : channel) * 65535 / most + 1) / 2);
}

#endif
