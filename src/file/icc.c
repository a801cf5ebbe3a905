#include "file/icc.h"

#include <math.h>
#include <string.h>

#include "recede.h"

enum { COUNT_AT = 128, TAGS_AT = 132, TAG_BYTES = 12, MOST_TAGS = 100 };

typedef struct piece {
    const unsigned char *bytes;
    size_t size;
} piece;

static unsigned long read_u32(const unsigned char *b)
{
    return (unsigned long)b[0] << 24 | (unsigned long)b[1] << 16 | (unsigned long)b[2] << 8 | b[3];
}

/* s15Fixed16Number */
static double read_fixed(const unsigned char *b)
{
    unsigned long bits = read_u32(b);
    return (bits & 0x80000000ul ? (double)bits - 4294967296.0 : (double)bits) / 65536.0;
}

/* What a tag holds, of the type wanted; size 0 where there is no such tag. */
static piece find_tag(piece profile, const char *tag, const char *type)
{
    static const piece none = {NULL, 0};
    unsigned long count = read_u32(profile.bytes + COUNT_AT);
    if (count > MOST_TAGS || TAGS_AT + count * TAG_BYTES > profile.size)
        return none;
    for (unsigned long i = 0; i < count; i++) {
        const unsigned char *entry = profile.bytes + TAGS_AT + i * TAG_BYTES;
        unsigned long offset = read_u32(entry + 4), size = read_u32(entry + 8);
        if (memcmp(entry, tag, 4) != 0)
            continue;
        if (offset > profile.size || size > profile.size - offset || size < 12 ||
            memcmp(profile.bytes + offset, type, 4) != 0)
            return none;
        return (piece){profile.bytes + offset, size};
    }
    return none;
}

static int colorants_agree(piece profile)
{
    /* sRGB's primaries carried to D50: IEC 61966-2-1 with the Bradford transform of
     * ISO 15076-1. Profiles differ in the last digit or two. */
    static const double close_enough = 0.002;
    static const struct {
        const char *tag;
        double xyz[3];
    } colorants[] = {
        {"rXYZ", {0.4360, 0.2225, 0.0139}},
        {"gXYZ", {0.3851, 0.7169, 0.0971}},
        {"bXYZ", {0.1431, 0.0606, 0.7141}},
    };
    for (int i = 0; i < 3; i++) {
        piece tag = find_tag(profile, colorants[i].tag, "XYZ ");
        if (tag.size < 20)
            return 0;
        for (int k = 0; k < 3; k++)
            if (fabs(read_fixed(tag.bytes + 8 + 4 * (size_t)k) - colorants[i].xyz[k]) > close_enough)
                return 0;
    }
    return 1;
}

/* curveType: nothing (the identity), an exponent, or a table. */
static double table_at(piece curve, double x)
{
    unsigned long count = read_u32(curve.bytes + 8);
    if (count == 0)
        return x;
    if (count > (curve.size - 12) / 2)
        return NAN;
    const unsigned char *b = curve.bytes + 12;
    if (count == 1)
        return pow(x, (b[0] * 256 + b[1]) / 256.0);
    double place = x * (double)(count - 1);
    unsigned long below = (unsigned long)place;
    if (below > count - 2)
        below = count - 2;
    b += 2 * below;
    double low = b[0] * 256 + b[1], high = b[2] * 256 + b[3];
    return (low + (high - low) * (place - (double)below)) / 65535.0;
}

/* parametricCurveType, function 3: (a x + b)^g from d on, c x below it. */
static double formula_at(piece curve, double x)
{
    double p[5];
    if (curve.size < 32 || curve.bytes[8] != 0 || curve.bytes[9] != 3)
        return NAN;
    for (int i = 0; i < 5; i++)
        p[i] = read_fixed(curve.bytes + 12 + 4 * (size_t)i);
    return x >= p[4] ? pow(p[1] * x + p[2], p[0]) : p[3] * x;
}

static int curve_agrees(piece profile, const char *tag)
{
    static const double close_enough = 0.002;
    piece table = find_tag(profile, tag, "curv"), formula = find_tag(profile, tag, "para");
    if (!table.size && !formula.size)
        return 0;
    for (int i = 1; i <= 8; i++) {
        double x = i / 8.0;
        double y = table.size ? table_at(table, x) : formula_at(formula, x);
        double wanted = recede_xyz_of_srgb((recede_srgb){x, x, x}).y;
        if (!(fabs(y - wanted) <= close_enough))
            return 0;
    }
    return 1;
}

int recede_icc_is_srgb(const unsigned char *bytes, size_t size)
{
    piece profile = {bytes, size};
    return size >= TAGS_AT && memcmp(bytes + 16, "RGB ", 4) == 0 && colorants_agree(profile) &&
           curve_agrees(profile, "rTRC") && curve_agrees(profile, "gTRC") &&
           curve_agrees(profile, "bTRC");
}
