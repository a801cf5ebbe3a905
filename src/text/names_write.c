#include "text/names_write.h"

#include <string.h>

#include "text/columns.h"
#include "text/words_paint.h"

enum { WIDTH = 100 };

static void add_entries(recede_buffer *out, const char *heading, size_t count,
                        const recede_own_entry *(*at)(size_t))
{
    recede_buffer line;
    recede_buffer_start(&line, out->allocator);
    for (size_t i = 0; i < count; i++)
        recede_buffer_format(&line, "%s%s", i ? ", " : "", at(i)->name);
    recede_buffer_format(out, "%s\n  ", heading);
    recede_columns_text(out, recede_buffer_string(&line), WIDTH - 2, 2);
    out->failed |= line.failed;
    recede_buffer_free(&line);
}

/* The paints of a palette stand between bars. */
static void add_paints(recede_buffer *line, const char *paints)
{
    for (; *paints; paints++) {
        if (*paints != '|')
            recede_buffer_add(line, paints, 1);
        else
            recede_buffer_text(line, "/");
    }
}

static void add_palettes(recede_buffer *out)
{
    recede_buffer_text(out, "\nPalettes\n");
    for (size_t i = 0; i < recede_palette_entry_count(); i++) {
        const recede_palette_entry *entry = recede_palette_entry_at(i);
        recede_buffer line;
        recede_buffer_start(&line, out->allocator);
        recede_buffer_format(&line, "%s (%s): ", entry->name, entry->purpose);
        add_paints(&line, entry->paints);
        recede_buffer_text(out, "  ");
        recede_columns_text(out, recede_buffer_string(&line), WIDTH - 2, 4);
        out->failed |= line.failed;
        recede_buffer_free(&line);
    }
}

static void add_pigments(recede_buffer *out)
{
    recede_buffer_text(out, "\nPigments\n");
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        static const size_t widths[] = {2, 26, 6, 18, 38};
        const recede_pigment *pigment = recede_pigment_at(i);
        const char *cells[] = {"", pigment->name, pigment->colour_index, pigment->transparency,
                               pigment->permanence};
        recede_columns_row(out, cells, widths, 5);
    }
}

static void add_tubes(recede_buffer *out)
{
    recede_buffer_text(out, "\nTubes, and what each is taken for\n");
    for (size_t i = 0; i < recede_tube_count(); i++) {
        static const size_t widths[] = {2, 26, 68};
        recede_paint paint;
        recede_buffer made_of;
        if (recede_paint_named(recede_tube_name_at(i), &paint, NULL))
            continue;
        recede_buffer_start(&made_of, out->allocator);
        recede_words_taken_for(&made_of, &paint);
        const char *cells[] = {"", recede_tube_name_at(i), recede_buffer_string(&made_of)};
        recede_columns_row(out, cells, widths, 3);
        out->failed |= made_of.failed;
        recede_buffer_free(&made_of);
    }
}

void recede_names_write(recede_buffer *out)
{
    add_entries(out, "Foliage", recede_foliage_count(), recede_foliage_at);
    add_entries(out, "\nSurfaces", recede_surface_count(), recede_surface_at);
    add_palettes(out);
    add_pigments(out);
    add_tubes(out);
    recede_buffer_text(out, "\nA paint may also be named by its Colour Index name, such as "
                            "PB29 or PB15:3.\n");
}
