#include "picture/landform.h"

#include "picture/noise.h"

#include <math.h>

typedef struct form_word {
    const char *word;
    recede_landform form;
} form_word;

/* Words that name a kind of land. The last one in a name decides: a wooded
 * bank is a bank, a bank wood a wood. */
static const form_word form_words[] = {
    {"ridge", RECEDE_LANDFORM_HILL},        {"hill", RECEDE_LANDFORM_HILL},
    {"mountain", RECEDE_LANDFORM_HILL},     {"moor", RECEDE_LANDFORM_HILL},
    {"fell", RECEDE_LANDFORM_HILL},         {"down", RECEDE_LANDFORM_HILL},
    {"crag", RECEDE_LANDFORM_HILL},         {"cliff", RECEDE_LANDFORM_HILL},
    {"peak", RECEDE_LANDFORM_HILL},         {"slope", RECEDE_LANDFORM_HILL},
    {"wood", RECEDE_LANDFORM_WOOD},         {"tree", RECEDE_LANDFORM_WOOD},
    {"hedge", RECEDE_LANDFORM_WOOD},        {"copse", RECEDE_LANDFORM_WOOD},
    {"grove", RECEDE_LANDFORM_WOOD},        {"orchard", RECEDE_LANDFORM_WOOD},
    {"forest", RECEDE_LANDFORM_WOOD},       {"alder", RECEDE_LANDFORM_WOOD},
    {"oak", RECEDE_LANDFORM_WOOD},          {"beech", RECEDE_LANDFORM_WOOD},
    {"birch", RECEDE_LANDFORM_WOOD},        {"maple", RECEDE_LANDFORM_WOOD},
    {"willow", RECEDE_LANDFORM_WOOD},       {"poplar", RECEDE_LANDFORM_WOOD},
    {"conifer", RECEDE_LANDFORM_CONIFERS},  {"pine", RECEDE_LANDFORM_CONIFERS},
    {"spruce", RECEDE_LANDFORM_CONIFERS},   {"larch", RECEDE_LANDFORM_CONIFERS},
    {"fir", RECEDE_LANDFORM_CONIFERS},      {"bank", RECEDE_LANDFORM_BANK},
    {"bracken", RECEDE_LANDFORM_BANK},      {"heather", RECEDE_LANDFORM_BANK},
    {"heath", RECEDE_LANDFORM_BANK},        {"rush", RECEDE_LANDFORM_BANK},
    {"reed", RECEDE_LANDFORM_BANK},         {"scrub", RECEDE_LANDFORM_BANK},
    {"bramble", RECEDE_LANDFORM_BANK},      {"gorse", RECEDE_LANDFORM_BANK},
    {"field", RECEDE_LANDFORM_FIELD},       {"meadow", RECEDE_LANDFORM_FIELD},
    {"grass", RECEDE_LANDFORM_FIELD},       {"pasture", RECEDE_LANDFORM_FIELD},
    {"stubble", RECEDE_LANDFORM_FIELD},     {"path", RECEDE_LANDFORM_FIELD},
    {"soil", RECEDE_LANDFORM_FIELD},        {"sand", RECEDE_LANDFORM_FIELD},
    {"snow", RECEDE_LANDFORM_FIELD},        {"common", RECEDE_LANDFORM_FIELD},
    {"water", RECEDE_LANDFORM_WATER},       {"lake", RECEDE_LANDFORM_WATER},
    {"tarn", RECEDE_LANDFORM_WATER},        {"river", RECEDE_LANDFORM_WATER},
    {"pond", RECEDE_LANDFORM_WATER},        {"sea", RECEDE_LANDFORM_WATER},
    {"house", RECEDE_LANDFORM_HOUSES},      {"cottage", RECEDE_LANDFORM_HOUSES},
    {"village", RECEDE_LANDFORM_HOUSES},    {"hamlet", RECEDE_LANDFORM_HOUSES},
    {"farm", RECEDE_LANDFORM_HOUSES},       {"barn", RECEDE_LANDFORM_HOUSES},
    {"mill", RECEDE_LANDFORM_HOUSES},       {"roof", RECEDE_LANDFORM_HOUSES},
    {"town", RECEDE_LANDFORM_HOUSES},       {"croft", RECEDE_LANDFORM_HOUSES},
};

enum { FORM_WORDS = sizeof form_words / sizeof form_words[0] };

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c + 'a' - 'A') : c;
}

static int is_letter(char c)
{
    return (lower(c) >= 'a' && lower(c) <= 'z') || (c & 0x80);
}

/* Whether the word stands at the start of `text`: alone or in the plural. */
static int word_stands(const char *text, const char *word)
{
    while (*word && lower(*text) == *word)
        text++, word++;
    if (*word)
        return 0;
    if (lower(text[0]) == 'e' && lower(text[1]) == 's')
        text++;
    if (lower(*text) == 's')
        text++;
    return !is_letter(*text);
}

/* The form of the last form word in a text; 0 when there is none. */
static int form_of_text(const char *text, recede_landform *form)
{
    int found = 0;
    for (const char *at = text; *at; at++) {
        if (at != text && is_letter(at[-1]))
            continue;
        for (int i = 0; i < FORM_WORDS; i++) {
            if (word_stands(at, form_words[i].word)) {
                *form = form_words[i].form;
                found = 1;
            }
        }
    }
    return found;
}

/* Where no word helps: hills far off, then trees, then rough ground; a surface
 * is no tree. */
static recede_landform form_of_distance(const recede_plane *plane)
{
    int bare = plane->own.kind == RECEDE_OWN_SURFACE;
    return plane->distance_m > 2500 ? RECEDE_LANDFORM_HILL
         : bare                     ? RECEDE_LANDFORM_FIELD
         : plane->distance_m > 60   ? RECEDE_LANDFORM_WOOD
                                    : RECEDE_LANDFORM_BANK;
}

/* Low ground far off is hills: what is seen is the lie of the land. A hill near
 * by is the slope one stands on. */
static recede_landform form_of(const recede_plane *plane)
{
    recede_landform form = form_of_distance(plane);
    if (!form_of_text(plane->name, &form))
        form_of_text(plane->own.name, &form);
    int low = form == RECEDE_LANDFORM_BANK || form == RECEDE_LANDFORM_FIELD;
    if (low && plane->distance_m > 1200)
        return RECEDE_LANDFORM_HILL;
    return form == RECEDE_LANDFORM_HILL && plane->distance_m < 600 ? RECEDE_LANDFORM_BANK : form;
}

static double within(double x, double least, double most)
{
    return x < least ? least : x > most ? most : x;
}

/* Of what stands on a form, trees being 1. */
static const double height_of_growth[] = {
    [RECEDE_LANDFORM_HILL] = 0, [RECEDE_LANDFORM_WOOD] = 1,   [RECEDE_LANDFORM_CONIFERS] = 1.2,
    [RECEDE_LANDFORM_BANK] = 0.15, [RECEDE_LANDFORM_FIELD] = 0.03, [RECEDE_LANDFORM_WATER] = 0,
    [RECEDE_LANDFORM_HOUSES] = 0.6,
};

recede_look recede_look_of(const recede_plane *plane)
{
    recede_look look;
    double d = plane->distance_m;
    look.form = form_of(plane);
    look.seed = recede_seed_of_text(plane->name);
    look.nearness = within(1 - log(d / 20) / log(12000.0 / 20), 0, 1);
    /* Trees shrink with distance, though slower than perspective has it: a
     * picture that kept to the rule would lose its middle distance. */
    look.growth = within(0.085 * pow(366 / d, 0.62), 0.004, 0.36);
    look.growth *= height_of_growth[look.form];
    look.relief = 0.05 + 0.09 * pow(1 - look.nearness, 1.5);
    return look;
}
