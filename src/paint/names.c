#include "paint/names.h"

#include <string.h>

#include "recede.h"

typedef struct folded {
    char text[2 * RECEDE_NAME_SIZE];
    size_t length;
} folded;

static const struct { const char *found, *kept; } spellings[] = {
    {"gray", "grey"},       {"ocher", "ochre"},        {"siena", "sienna"},
    {"vandyke", "van dyke"}, {"vermillion", "vermilion"},
};

static void append(folded *name, const char *word)
{
    size_t length = strlen(word), gap = name->length ? 1 : 0;
    if (name->length + gap + length >= sizeof name->text)
        return;
    if (gap)
        name->text[name->length] = ' ';
    memcpy(name->text + name->length + gap, word, length + 1);
    name->length += gap + length;
}

static void append_word(folded *name, const char *word)
{
    if (!word[0])
        return;
    for (size_t i = 0; i < sizeof spellings / sizeof spellings[0]; i++) {
        if (strcmp(word, spellings[i].found) == 0) {
            append(name, spellings[i].kept);
            return;
        }
    }
    append(name, word);
}

/* Bytes that an apostrophe takes, straight or typographic (U+2019); else 0. */
static size_t apostrophe(const char *at)
{
    if (*at == '\'')
        return 1;
    return strncmp(at, "\xE2\x80\x99", 3) == 0 ? 3 : 0;
}

/* A byte of a word in lower case, or 0 for what stands between words. ASCII
 * by hand, for the answer must not hang on a locale. */
static char letter(char byte)
{
    if (byte >= 'A' && byte <= 'Z')
        return (char)(byte - 'A' + 'a');
    if ((byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9') || byte == ':')
        return byte;
    return (unsigned char)byte >= 0x80 ? byte : '\0';
}

static void fold(folded *name, const char *text)
{
    char word[RECEDE_NAME_SIZE];
    size_t length = 0;
    name->length = 0;
    name->text[0] = '\0';
    while (*text) {
        size_t skip = apostrophe(text);
        if (skip) {
            text += skip;
            continue;
        }
        char kept = letter(*text++);
        if (kept && length + 1 < sizeof word) {
            word[length++] = kept;
        } else {
            word[length] = '\0';
            append_word(name, word);
            length = 0;
        }
    }
    word[length] = '\0';
    append_word(name, word);
}

int recede_same_paint_name(const char *one, const char *other)
{
    folded first, second;
    fold(&first, one);
    fold(&second, other);
    return strcmp(first.text, second.text) == 0;
}

static void close_gaps(folded *name)
{
    size_t kept = 0;
    for (size_t i = 0; i < name->length; i++)
        if (name->text[i] != ' ')
            name->text[kept++] = name->text[i];
    name->text[kept] = '\0';
    name->length = kept;
}

/* Cuts ":3" and the like, digits alone, off the end. */
static void cut_suffix(folded *name)
{
    size_t end = name->length;
    while (end > 0 && name->text[end - 1] >= '0' && name->text[end - 1] <= '9')
        end--;
    if (end > 0 && end < name->length && name->text[end - 1] == ':') {
        name->text[end - 1] = '\0';
        name->length = end - 1;
    }
}

int recede_same_colour_index(const char *asked, const char *colour_index)
{
    folded first, second;
    fold(&first, asked);
    fold(&second, colour_index);
    close_gaps(&first);
    close_gaps(&second);
    if (first.length && strcmp(first.text, second.text) == 0)
        return 1;
    cut_suffix(&first);
    return first.length && strcmp(first.text, second.text) == 0;
}
