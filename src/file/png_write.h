/* Pixels to PNG bytes (ISO/IEC 15948), in memory. */
#ifndef RECEDE_FILE_PNG_WRITE_H
#define RECEDE_FILE_PNG_WRITE_H

#include "file/problem.h"
#include "text/buffer.h"

typedef struct recede_png {
    size_t width, height;
    const unsigned char *rgb; /* 3 bytes a pixel, sRGB, rows from the top */
    size_t row_bytes;         /* from one row to the next */
    double dots_per_inch;     /* 0: no physical size */
    const char *plan;         /* JSON kept inside as compressed text, or NULL */
} recede_png;

/* Adds the PNG to out (started by the caller; its allocator also serves
 * libpng). Same input, same bytes. Returns 0, or -1 with the problem worded. */
int recede_png_encode(const recede_png *png, recede_buffer *out, recede_file_problem *problem);

#endif
