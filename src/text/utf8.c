#include "text/utf8.h"

static int continuation(const char *bytes, size_t at)
{
    return ((unsigned char)bytes[at] & 0xC0) == 0x80;
}

size_t recede_utf8_decode(const char *bytes, size_t size, unsigned long *character)
{
    static const unsigned long least[] = {0, 0, 0x80, 0x800, 0x10000};
    unsigned char first = (unsigned char)bytes[0];
    size_t length = first < 0x80 ? 1 : first < 0xC0 ? 0 : first < 0xE0 ? 2 : first < 0xF0 ? 3
                  : first < 0xF8 ? 4 : 0;
    if (length == 0 || length > size)
        return 0;
    unsigned long value = length == 1 ? first : first & (0x7FUL >> length);
    for (size_t i = 1; i < length; i++) {
        if (!continuation(bytes, i))
            return 0;
        value = value << 6 | ((unsigned char)bytes[i] & 0x3F);
    }
    if (value < least[length] || value > 0x10FFFF || (value >= 0xD800 && value <= 0xDFFF))
        return 0;
    *character = value;
    return length;
}

typedef struct {
    unsigned long first, last;
} range;

static int in_ranges(const range *ranges, size_t count, unsigned long character)
{
    for (size_t i = 0; i < count; i++)
        if (character >= ranges[i].first && character <= ranges[i].last)
            return 1;
    return 0;
}

int recede_utf8_is_control(unsigned long character)
{
    static const range controls[] = {
        {0x00, 0x1F},     {0x7F, 0x9F},     {0x061C, 0x061C}, {0x200E, 0x200F},
        {0x2028, 0x202E}, {0x2066, 0x2069},
    };
    return in_ranges(controls, sizeof controls / sizeof controls[0], character);
}

static size_t columns_of(unsigned long character)
{
    static const range combining[] = {
        {0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD}, {0x064B, 0x065F}, {0x1AB0, 0x1AFF},
        {0x1DC0, 0x1DFF}, {0x200B, 0x200D}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F},
    };
    static const range wide[] = {
        {0x1100, 0x115F}, {0x2E80, 0x303E}, {0x3041, 0x33FF}, {0x3400, 0x4DBF},
        {0x4E00, 0x9FFF}, {0xA000, 0xA4CF}, {0xAC00, 0xD7A3}, {0xF900, 0xFAFF},
        {0xFE30, 0xFE6F}, {0xFF00, 0xFF60}, {0xFFE0, 0xFFE6}, {0x1F300, 0x1FAFF},
        {0x20000, 0x3FFFD},
    };
    if (in_ranges(combining, sizeof combining / sizeof combining[0], character))
        return 0;
    return in_ranges(wide, sizeof wide / sizeof wide[0], character) ? 2 : 1;
}

size_t recede_utf8_columns(const char *text, size_t size)
{
    size_t columns = 0;
    for (size_t at = 0; at < size;) {
        unsigned long character;
        size_t length = recede_utf8_decode(text + at, size - at, &character);
        columns += length ? columns_of(character) : 1;
        at += length ? length : 1;
    }
    return columns;
}
