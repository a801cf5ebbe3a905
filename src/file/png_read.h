/* PNG bytes (ISO/IEC 15948) to the pixels of a photograph, in memory. */
#ifndef RECEDE_FILE_PNG_READ_H
#define RECEDE_FILE_PNG_READ_H

#include "file/problem.h"
#include "recede.h"

#define RECEDE_PNG_MOST_BYTES ((size_t)128 << 20)
#define RECEDE_PNG_MOST_SIDE 8192
#define RECEDE_PNG_MOST_PIXELS ((size_t)24 << 20)

typedef struct recede_png_photo {
    recede_photo photo;
    unsigned short *rgb;  /* what photo looks at */
    char remark[500];     /* "", or a sentence or two on what it says about its colours */
} recede_png_photo;

/* Any colour type and depth, interlaced or not. Alpha is no light: a see-through
 * pixel is refused, an opaque alpha channel is not. Samples are taken as sRGB, but
 * those of a file that gives another exponent (gAMA) and nothing else are coded
 * anew; where a file says that its colours are not sRGB's, remark tells. name is
 * for the problem's text. Returns 0, or -1 with the problem worded and nothing to
 * free. */
int recede_png_read(const char *name, const void *bytes, size_t size,
                    const recede_allocator *allocator, recede_png_photo *out,
                    recede_file_problem *problem);
void recede_png_photo_free(recede_png_photo *photo, const recede_allocator *allocator);

#endif
