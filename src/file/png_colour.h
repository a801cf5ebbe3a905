/* What a PNG says about its colours. */
#ifndef RECEDE_FILE_PNG_COLOUR_H
#define RECEDE_FILE_PNG_COLOUR_H

#include <png.h>
#include <stddef.h>

typedef struct recede_png_colour {
    double exponent;  /* light = sample ^ exponent; 0: sRGB's curve */
    char remark[500]; /* "" where it is sRGB, or says nothing */
} recede_png_colour;

/* Call after png_read_info, with the file's bytes. profile_broken: libpng could not
 * make sense of an embedded profile. */
recede_png_colour recede_png_colour_of(png_structp png, png_infop info, const unsigned char *bytes,
                                       size_t size, int profile_broken);

#endif
