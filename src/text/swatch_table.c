#include "text/swatch_table.h"

#include <stdio.h>

#include "text/columns.h"
#include "text/words.h"

enum { WIDTH = 100 };
enum { SWATCH, READ, FITTED, OFF, PHOTO, COLUMNS };
static const size_t widths[COLUMNS] = {19, 20, 20, 4, 28};

static void put(recede_buffer *out, recede_buffer *line, size_t indent)
{
    if (line->size)
        recede_columns_text(out, recede_buffer_string(line), WIDTH, indent);
    out->failed |= line->failed;
    recede_buffer_free(line);
}

/* "L* 25, C* 62, h 291": hue in degrees. */
static void add_lch(recede_buffer *out, recede_lab lab)
{
    recede_lch lch = recede_lch_of_lab(lab);
    recede_buffer_text(out, "L* ");
    recede_buffer_fixed(out, lch.l, 0);
    recede_buffer_text(out, ", C* ");
    recede_buffer_fixed(out, lch.c, 0);
    recede_buffer_text(out, ", h ");
    recede_buffer_fixed(out, lch.h_deg, 0);
}

static void add_row(const recede_learnt *learnt, size_t index, recede_buffer *out)
{
    const recede_painted *painted = learnt->painted;
    const recede_metered *read = &learnt->read[index];
    recede_medium medium = painted->pigment.medium;
    recede_buffer cell[COLUMNS];
    const char *cells[COLUMNS];
    for (int i = 0; i < COLUMNS; i++)
        recede_buffer_start(&cell[i], out->allocator);
    recede_words_thinning(&cell[SWATCH], medium,
                          recede_swatch_added(medium, &painted->swatches[index]));
    add_lch(&cell[READ], read->lab);
    add_lch(&cell[FITTED], learnt->fitted[index]);
    recede_buffer_fixed(&cell[OFF], learnt->fit.delta_e[index], 1);
    if (read->by_photo)
        recede_words_patch(&cell[PHOTO], &read->photo);
    for (int i = 0; i < COLUMNS; i++) {
        cells[i] = recede_buffer_string(&cell[i]);
        out->failed |= cell[i].failed;
    }
    recede_columns_row(out, cells, widths, COLUMNS);
    for (int i = 0; i < COLUMNS; i++)
        recede_buffer_free(&cell[i]);
}

static void add_heading(const recede_learnt *learnt, recede_buffer *out)
{
    const recede_pigment_file *pigment = &learnt->painted->pigment;
    const char *const headings[COLUMNS] = {"SWATCH", "READ", "FITTED", "OFF",
                                           learnt->read[0].by_photo ? "PHOTOGRAPH" : ""};
    recede_buffer line;
    recede_buffer_start(&line, out->allocator);
    recede_buffer_format(&line, "%s%s%s%s, %s", pigment->paint.name,
                         pigment->paint.colour_index[0] ? " (" : "", pigment->paint.colour_index,
                         pigment->paint.colour_index[0] ? ")" : "",
                         recede_words_medium(pigment->medium));
    if (learnt->surface_excluded)
        recede_buffer_text(&line, ", read without the surface's own reflection");
    put(out, &line, 2);
    recede_columns_row(out, headings, widths, COLUMNS);
}

void recede_swatch_table(const recede_learnt *learnt, recede_buffer *out)
{
    recede_buffer verdict, caution;
    const char *words = learnt->painted->pigment.paint.caution;
    add_heading(learnt, out);
    for (size_t i = 0; i < learnt->painted->count; i++)
        add_row(learnt, i, out);
    recede_buffer_start(&verdict, out->allocator);
    recede_words_learnt(&verdict, learnt);
    put(out, &verdict, 0);
    recede_buffer_start(&caution, out->allocator);
    if (words[0])
        recede_buffer_format(&caution, "Caution: %s. The label goes before this.", words);
    put(out, &caution, 0);
    recede_buffer_text(out, "\n");
}

/* ---- */

/* Adds "- " and the words, the first under a heading. */
static void add_warning(recede_buffer *out, int *any, recede_buffer *words)
{
    recede_buffer line;
    recede_buffer_start(&line, out->allocator);
    if (words->size) {
        recede_buffer_text(out, *any ? "" : "Mind:\n");
        *any = 1;
        recede_buffer_format(&line, "- %s", recede_buffer_string(words));
    }
    out->failed |= words->failed;
    recede_buffer_free(words);
    put(out, &line, 2);
}

/* The names of all patches that have a flaw. */
static void add_names(recede_buffer *out, const recede_flaw *flaw, const recede_photo_told *told)
{
    const char *between = "";
    if (told->paper && told->paper->by_photo && flaw->is_in(&told->paper->photo)) {
        recede_buffer_text(out, "the paper");
        between = "; ";
    }
    for (size_t i = 0; i < told->count; i++) {
        const recede_painted *painted = told->learnt[i].painted;
        recede_medium medium = painted->pigment.medium;
        for (size_t j = 0; j < painted->count; j++) {
            const recede_metered *read = &told->learnt[i].read[j];
            if (!read->by_photo || !flaw->is_in(&read->photo))
                continue;
            recede_buffer_format(out, "%s%s, ", between, painted->pigment.paint.name);
            recede_words_thinning(out, medium, recede_swatch_added(medium, &painted->swatches[j]));
            between = "; ";
        }
    }
}

static void warn_of_flaw(recede_buffer *out, int *any, const recede_flaw *flaw,
                         const recede_photo_told *told)
{
    recede_buffer names, words;
    recede_buffer_start(&names, out->allocator);
    recede_buffer_start(&words, out->allocator);
    add_names(&names, flaw, told);
    if (names.size)
        recede_buffer_format(&words, "%s%s%s", flaw->before, recede_buffer_string(&names),
                             flaw->after);
    words.failed |= names.failed;
    recede_buffer_free(&names);
    add_warning(out, any, &words);
}

void recede_photo_warnings(const recede_photo_told *told, recede_buffer *out)
{
    recede_buffer words;
    int any = 0;
    recede_buffer_start(&words, out->allocator);
    recede_buffer_text(&words, told->remark);
    add_warning(out, &any, &words);
    recede_buffer_start(&words, out->allocator);
    recede_words_card_warning(&words, told->card, told->card_count, told->uneven);
    add_warning(out, &any, &words);
    const recede_flaw *flaw;
    for (size_t i = 0; (flaw = recede_patch_flaw(i)) != NULL; i++)
        warn_of_flaw(out, &any, flaw, told);
    if (any)
        recede_buffer_text(out, "\n");
}
