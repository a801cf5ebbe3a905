/* Fuzz target for photographs: whatever the bytes, reading them ends in pixels or in
 * one line that says what is wrong, with nothing left over. Checksums are mended on
 * the way, or hardly any change would come past them. */
#include <stdlib.h>
#include <string.h>
#include <zlib.h>

#include "file/icc.h"
#include "file/png_read.h"
#include "fuzz/insist.h"

enum { SIGNATURE = 8, AROUND = 12 }; /* a chunk's length, type and checksum */

static size_t read_u32(const unsigned char *b)
{
    return (size_t)b[0] << 24 | (size_t)b[1] << 16 | (size_t)b[2] << 8 | b[3];
}

static void mend_checksums(unsigned char *bytes, size_t size)
{
    size_t at = SIGNATURE;
    while (at < size && size - at >= AROUND) {
        size_t length = read_u32(bytes + at);
        if (length > size - at - AROUND)
            return;
        unsigned long sum = crc32(0, bytes + at + 4, (uInt)length + 4);
        for (int i = 0; i < 4; i++)
            bytes[at + 8 + length + (size_t)i] = (unsigned char)(sum >> (24 - 8 * i));
        at += length + AROUND;
    }
}

/* Small pictures only: big ones are slow, and no different. */
static int too_big(const unsigned char *bytes, size_t size)
{
    return size >= 24 && read_u32(bytes + 16) <= RECEDE_PNG_MOST_SIDE &&
           read_u32(bytes + 20) <= RECEDE_PNG_MOST_SIDE &&
           read_u32(bytes + 16) * read_u32(bytes + 20) > 1 << 20;
}

static void read_png(const unsigned char *bytes, size_t size)
{
    recede_png_photo photo;
    recede_file_problem problem;
    memset(&problem, 0, sizeof problem);
    if (recede_png_read("a.png", bytes, size, NULL, &photo, &problem)) {
        insist(problem.text[0] != '\0' && !strchr(problem.text, '\n'));
        insist(problem.refused);
        return;
    }
    const recede_photo *p = &photo.photo;
    insist(p->width > 0 && p->height > 0);
    insist(!strchr(photo.remark, '\n') && strlen(photo.remark) < sizeof photo.remark);
    size_t sum = 0;
    for (size_t i = 0; i < p->width * p->height * 3; i++)
        sum += p->rgb[i]; /* a sanitizer sees what was never set */
    insist(sum <= p->width * p->height * 3 * 65535);
    recede_png_photo_free(&photo, NULL);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    recede_icc_is_srgb(data, size);
    if (too_big(data, size))
        return 0;
    unsigned char *bytes = malloc(size ? size : 1);
    if (!bytes)
        return 0;
    memcpy(bytes, data, size);
    read_png(bytes, size);
    mend_checksums(bytes, size);
    read_png(bytes, size);
    free(bytes);
    return 0;
}
