#include "text/palette_table.h"

#include <string.h>

#include "paint/strength.h"
#include "text/columns.h"
#include "text/words.h"

enum { WIDTH = 100, INDENT = 4 };
enum { MOST_NOTES = 64 }; /* more than the library has pigments */

static const char labels[] =
    "Cautions are common knowledge and no more: labels and the makers' safety sheets go before "
    "them. Paints of one name differ from maker to maker.";

/* A line of its own, indented; the words are freed. */
static void put(recede_buffer *out, recede_buffer *words)
{
    recede_buffer_repeat(out, ' ', INDENT);
    recede_columns_text(out, recede_buffer_string(words), WIDTH - INDENT, INDENT + 2);
    out->failed |= words->failed;
    recede_buffer_free(words);
}

static void put_if_any(recede_buffer *out, recede_buffer *words)
{
    if (words->size || words->failed)
        put(out, words);
    else
        recede_buffer_free(words);
}

static recede_buffer *begin(const recede_buffer *out, recede_buffer *words)
{
    recede_buffer_start(words, out->allocator);
    return words;
}

/* ---------------------------------------------------------------- list -- */

/* "hansa yellow / ochre", from names with bars between. */
static void add_names(recede_buffer *out, const char *names)
{
    for (; *names; names++) {
        if (*names == '|')
            recede_buffer_text(out, "/");
        else
            recede_buffer_add(out, names, 1);
    }
}

static void add_palettes(recede_buffer *out)
{
    recede_buffer_text(out, "Palettes\n");
    for (size_t i = 0; i < recede_palette_entry_count(); i++) {
        const recede_palette_entry *entry = recede_palette_entry_at(i);
        recede_buffer words;
        recede_buffer_format(out, "  %s: %s\n", entry->name, entry->purpose);
        add_names(begin(out, &words), entry->paints);
        put(out, &words);
    }
}

/* Pigments whose figures have the same source and the same making share a note. */
static int same_figures(const recede_pigment *one, const recede_pigment *other)
{
    return strcmp(one->source, other->source) == 0 && strcmp(one->measured, other->measured) == 0;
}

/* The first pigment with a caution, or figures, like this one's. */
static size_t first_like(size_t index, int (*like)(const recede_pigment *, const recede_pigment *))
{
    size_t first = 0;
    while (!like(recede_pigment_at(first), recede_pigment_at(index)))
        first++;
    return first;
}

static int note_of(size_t index)
{
    int note = 0;
    size_t first = first_like(index, same_figures);
    for (size_t i = 0; i <= first; i++)
        note += first_like(i, same_figures) == i;
    return note;
}

static void add_pigments(recede_buffer *out)
{
    static const size_t widths[] = {1, 25, 6, 16, 16, 8, 11, 4};
    static const char *const heads[] = {"",           "Pigments", "", "transparency",
                                        "permanence", "staining", "granulation", "from"};
    recede_buffer_text(out, "\n");
    recede_columns_row(out, heads, widths, 8);
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const recede_pigment *pigment = recede_pigment_at(i);
        recede_buffer note;
        recede_buffer_format(begin(out, &note), "[%d]", note_of(i));
        const char *cells[] = {*pigment->caution ? "!" : "", pigment->name,
                               pigment->colour_index,        pigment->transparency,
                               pigment->permanence,          pigment->staining,
                               pigment->granulation,         recede_buffer_string(&note)};
        recede_columns_row(out, cells, widths, 8);
        out->failed |= note.failed;
        recede_buffer_free(&note);
    }
}

/* The notes marked as used, as they hold for the medium; used NULL: all, for any. */
static void add_figures(recede_buffer *out, const int *used, recede_medium medium)
{
    recede_buffer_text(out, "\nWhere the figures come from\n");
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const recede_pigment *pigment = recede_pigment_at(i);
        recede_buffer words;
        if (first_like(i, same_figures) != i || (used && !used[note_of(i)]))
            continue;
        recede_buffer_format(begin(out, &words), "[%d] %s: ", note_of(i), pigment->source);
        if (used)
            recede_words_figures(&words, pigment, medium);
        else
            recede_buffer_text(&words, pigment->measured);
        put(out, &words);
    }
}

static int same_caution(const recede_pigment *one, const recede_pigment *other)
{
    return strcmp(one->caution, other->caution) == 0;
}

/* Each caution once, with all pigments that it is for. */
static void add_cautions(recede_buffer *out)
{
    recede_buffer_text(out, "\n! Cautions\n");
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        const char *caution = recede_pigment_at(i)->caution;
        recede_buffer words;
        if (!*caution || first_like(i, same_caution) != i)
            continue;
        begin(out, &words);
        for (size_t j = i; j < recede_pigment_count(); j++)
            if (first_like(j, same_caution) == i)
                recede_buffer_format(&words, "%s%s", j > i ? ", " : "", recede_pigment_at(j)->name);
        recede_buffer_format(&words, ": %s", caution);
        put(out, &words);
    }
}

void recede_palette_list_text(recede_buffer *out)
{
    add_palettes(out);
    add_pigments(out);
    add_figures(out, NULL, RECEDE_WATERCOLOUR);
    add_cautions(out);
    recede_buffer_text(out, "\n");
    recede_columns_text(out, labels, WIDTH, 0);
    recede_columns_text(out, "recede palette NAME shows one palette in full, and -o draws its "
                             "swatches; recede names has the tubes.", WIDTH, 0);
}

/* -------------------------------------------------------- one palette -- */

static void add_title(recede_buffer *out, const recede_paints_told *told)
{
    recede_medium medium = recede_palette_medium(told->palette);
    size_t count = recede_palette_count(told->palette);
    recede_colour paper =
        recede_colour_of_xyz(recede_xyz_of_reflectance(recede_palette_paper(told->palette)));
    recede_buffer words;
    begin(out, &words);
    recede_buffer_text(&words, *told->name ? told->name : "a palette of your own");
    recede_buffer_format(&words, "%s%s", *told->purpose ? ": " : "", told->purpose);
    recede_columns_text(out, recede_buffer_string(&words), WIDTH, 2);
    words.size = 0;
    recede_buffer_format(&words, "%d %s in %s, on a %s of ", (int)count,
                         count == 1 ? "paint" : "paints", recede_words_medium(medium),
                         recede_medium_takes_water(medium) ? "paper" : "ground");
    recede_words_lch(&words, &paper);
    recede_columns_text(out, recede_buffer_string(&words), WIDTH, 2);
    out->failed |= words.failed;
    recede_buffer_free(&words);
}

static void add_masstone(recede_buffer *out, const recede_paints_told *told, size_t index)
{
    recede_colour colour = recede_strength_colour(told->palette, (int)index, 0);
    recede_buffer words;
    recede_buffer_text(begin(out, &words), "masstone ");
    recede_words_lch(&words, &colour);
    recede_buffer_text(&words, "; ");
    recede_words_covering(&words, told->palette, index);
    put(out, &words);
}

/* "transparent; permanence excellent; ...": staining and granulation only where
 * paint is thinned with water. */
static void add_nature(recede_buffer *out, const recede_paints_told *told, size_t index)
{
    int water = recede_medium_takes_water(recede_palette_medium(told->palette));
    int last = water ? RECEDE_TRAIT_GRANULATION : RECEDE_TRAIT_PERMANENCE;
    recede_buffer words, word;
    begin(out, &words);
    for (int trait = 0; trait <= last; trait++) {
        recede_words_trait(begin(out, &word), told, index, (recede_trait)trait);
        if (word.size)
            recede_buffer_format(&words, "%s%s: %s", words.size ? "; " : "",
                                 recede_words_trait_name((recede_trait)trait),
                                 recede_buffer_string(&word));
        words.failed |= word.failed;
        recede_buffer_free(&word);
    }
    put_if_any(out, &words);
}

/* A line "what: words", where there are words. */
static void add_own_trait(recede_buffer *out, const recede_pigment_file *own, recede_trait trait)
{
    const char *text = recede_own_trait(own, trait);
    recede_buffer words;
    if (!*text)
        return;
    recede_buffer_format(begin(out, &words), "%s: %s", recede_words_trait_name(trait), text);
    put(out, &words);
}

static int note_of_pigment(const recede_pigment *pigment)
{
    size_t index = 0;
    while (recede_pigment_at(index) != pigment)
        index++;
    return note_of(index);
}

/* Of the library's, the numbers of its notes; of one's own, the file's words. */
static void add_source(recede_buffer *out, const recede_paints_told *told, size_t index,
                       int used[MOST_NOTES])
{
    const recede_paint *paint = recede_palette_paint(told->palette, index);
    int mine[MOST_NOTES] = {0};
    recede_buffer words;
    if (paint->ingredients == 0) {
        if (told->own) {
            add_own_trait(out, &told->own[index], RECEDE_TRAIT_SOURCE);
            add_own_trait(out, &told->own[index], RECEDE_TRAIT_MEASURED);
        }
        return;
    }
    for (int i = 0; i < paint->ingredients; i++)
        mine[note_of_pigment(paint->of[i].pigment)] = 1;
    recede_buffer_text(begin(out, &words), "figures from");
    for (int note = 0; note < MOST_NOTES; note++)
        if (mine[note]) {
            recede_buffer_format(&words, " [%d]", note);
            used[note] = 1;
        }
    put(out, &words);
}

/* What its tube is taken for; of one's own, where it was read and measured. */
static void add_origin(recede_buffer *out, const recede_paints_told *told, size_t index)
{
    const recede_paint *paint = recede_palette_paint(told->palette, index);
    recede_buffer words;
    begin(out, &words);
    if (recede_is_taken_for(paint)) {
        recede_buffer_text(&words, "taken for ");
        recede_words_taken_for(&words, paint);
    } else if (paint->ingredients == 0) {
        recede_buffer_text(&words, "a paint of your own");
        if (paint->file[0])
            recede_buffer_format(&words, ", from %s", paint->file);
        if (told->own && told->own[index].has_medium)
            recede_buffer_format(&words, ", measured in %s",
                                 recede_words_medium(told->own[index].medium));
    }
    put_if_any(out, &words);
}

static void add_paint(recede_buffer *out, const recede_paints_told *told, size_t index,
                      int used[MOST_NOTES])
{
    const recede_paint *paint = recede_palette_paint(told->palette, index);
    const char *cautions[RECEDE_MOST_IN_MIX];
    size_t count = recede_paint_cautions(told, index, cautions);
    recede_buffer words;
    recede_buffer_format(out, "\n%s %s%s%s\n", count ? "!" : " ", paint->name,
                         paint->colour_index[0] ? ", " : "", paint->colour_index);
    add_origin(out, told, index);
    add_masstone(out, told, index);
    add_nature(out, told, index);
    add_source(out, told, index, used);
    for (size_t i = 0; i < count; i++) {
        recede_buffer_format(begin(out, &words), "caution: %s", cautions[i]);
        put(out, &words);
    }
}

void recede_palette_told_text(const recede_paints_told *told, recede_buffer *out)
{
    int used[MOST_NOTES] = {0}, any = 0;
    add_title(out, told);
    for (size_t i = 0; i < recede_palette_count(told->palette); i++)
        add_paint(out, told, i, used);
    for (int note = 0; note < MOST_NOTES; note++)
        any |= used[note];
    if (any)
        add_figures(out, used, recede_palette_medium(told->palette));
    recede_buffer_text(out, "\n");
    recede_columns_text(out, labels, WIDTH, 0);
}
