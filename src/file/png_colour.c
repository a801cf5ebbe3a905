#include "file/png_colour.h"

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "file/icc.h"
#include "text/buffer.h"

/* The coding of ITU-T H.273 where the file has one (chunk cICP, PNG third edition):
 * older libpngs do not know it. NULL where there is none before the pixels. */
static const unsigned char *find_coding(const unsigned char *bytes, size_t size)
{
    size_t at = 8;
    while (size - at >= 12) {
        const unsigned char *chunk = bytes + at;
        size_t length = (size_t)chunk[0] << 24 | (size_t)chunk[1] << 16 | (size_t)chunk[2] << 8 |
                        chunk[3];
        if (memcmp(chunk + 4, "IDAT", 4) == 0 || length > size - at - 12)
            return NULL;
        if (memcmp(chunk + 4, "cICP", 4) == 0)
            return length == 4 ? chunk + 8 : NULL;
        at += length + 12;
    }
    return NULL;
}

static int coding_is_srgb(const unsigned char *coding)
{
    static const unsigned char srgb[4] = {1, 13, 0, 1};
    return memcmp(coding, srgb, sizeof srgb) == 0;
}

static int primaries_differ(png_structp png, png_infop info)
{
    /* IEC 61966-2-1: white, red, green, blue */
    static const double srgb[8] = {0.3127, 0.3290, 0.64, 0.33, 0.30, 0.60, 0.15, 0.06};
    static const double close_enough = 0.005;
    double found[8];
    if (!png_get_cHRM(png, info, found, found + 1, found + 2, found + 3, found + 4, found + 5,
                      found + 6, found + 7))
        return 0;
    for (int i = 0; i < 8; i++)
        if (fabs(found[i] - srgb[i]) > close_enough)
            return 1;
    return 0;
}

static void take_exponent(png_structp png, png_infop info, recede_png_colour *out)
{
    /* 1 / 2.2 is what writers put beside sRGB's own curve. */
    static const double usual = 1 / 2.2, close_enough = 0.01, least = 0.2, most = 2.0;
    double gamma;
    recede_buffer line;
    if (!png_get_gAMA(png, info, &gamma) || fabs(gamma - usual) < close_enough)
        return;
    recede_buffer_start(&line, NULL);
    if (gamma >= least && gamma <= most) {
        out->exponent = 1 / gamma;
        recede_buffer_text(&line, "The file says that its light is coded with the exponent ");
        recede_buffer_number(&line, out->exponent, 3);
        recede_buffer_text(&line, ", and was read so.");
    } else {
        recede_buffer_text(&line, "The exponent that the file gives for its light makes no sense "
                                  "and was left aside.");
    }
    recede_copy_text(out->remark, sizeof out->remark, recede_buffer_string(&line));
    recede_buffer_free(&line);
}

static void add_remark(recede_png_colour *out, const char *remark)
{
    size_t length = strlen(out->remark);
    if (length)
        out->remark[length++] = ' ';
    recede_copy_text(out->remark + length, sizeof out->remark - length, remark);
}

#define EXPORT "export the photograph as sRGB"

recede_png_colour recede_png_colour_of(png_structp png, png_infop info, const unsigned char *bytes,
                                       size_t size, int profile_broken)
{
    recede_png_colour out = {0.0, ""};
    png_charp name;
    png_bytep profile;
    png_uint_32 profile_size;
    int method;
    const unsigned char *coding = find_coding(bytes, size);
    if (coding) {
        if (!coding_is_srgb(coding))
            add_remark(&out, "The file says that its colours are not sRGB; they were taken as "
                             "such and will be off: " EXPORT ".");
    } else if (png_get_iCCP(png, info, &name, &method, &profile, &profile_size)) {
        if (!recede_icc_is_srgb(profile, profile_size))
            add_remark(&out, "Its colour profile is not sRGB and was left aside, so colours will "
                             "be off: " EXPORT ".");
    } else if (profile_broken) {
        add_remark(&out, "Its colour profile cannot be made sense of and was left aside: " EXPORT
                         ".");
    } else if (!png_get_valid(png, info, PNG_INFO_sRGB)) {
        take_exponent(png, info, &out);
        if (primaries_differ(png, info))
            add_remark(&out, "Its primaries are not sRGB's and were left aside, so colours will "
                             "be off: " EXPORT ".");
    }
    return out;
}
