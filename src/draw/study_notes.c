/* The last pages: the paints, and what a painter should know beforehand, in two
 * columns. */
#include "draw/study_parts.h"

#include "colour/memory.h"
#include "text/words.h"
#include "text/words_layers.h"
#include "text/words_let_down.h"
#include "text/words_media.h"

#include <math.h>
#include <string.h>

enum { COLUMNS = 2, SWATCH_STEPS = 5 };

static const double top_mm = 12, bottom_mm = 196, column_mm = 129, gutter_mm = 9;
static const double swatch_width_mm = 28, swatch_height_mm = 9.5;

static const char *const care[] = {
    "Keep paint off food and brushes out of the mouth; do not spray, sand or heat it; wash your "
    "hands "
    "when you stop. The maker's label and safety sheet know more than this page: go by them.",
    "Never look into the sun. Wear a hat, drink, and move with the shade.",
};

static const char computed[] =
    "Colours are computed from measured pigments. A paint of the same name from another maker may "
    "be "
    "stronger, weaker or of another hue: trust the trial in the box, not the print.";
static const char parts[] =
    "A part is a measured amount of paint, say a pea. Value runs from 0, black, to 10, white.";
static const char parts_and_water[] =
    "A part is a measured amount of paint, say a pea: a quarter of a millilitre. A drop of water "
    "is "
    "a twentieth of a millilitre. Value runs from 0, black, to 10, white.";

/* ------------------------------------------------------------- paints -- */

static const recede_pigment *only_pigment(const recede_paint *paint)
{
    return paint->ingredients == 1 ? paint->of[0].pigment : NULL;
}

static void add_trait(recede_buffer *words, const char *trait, const char *format)
{
    if (*trait) {
        recede_buffer_text(words, ", ");
        recede_buffer_format(words, format, trait);
    }
}

/* NULL where there is nothing to say. */
static const char *words_of_granulation(const char *granulation)
{
    return !*granulation || strcmp(granulation, "none") == 0 ? NULL
           : strcmp(granulation, "slight") == 0              ? "granulates a little"
                                                             : "granulates";
}

/* The Colour Index name, and how the paint behaves where that is known. */
static void add_traits(recede_buffer *words, const recede_paint *paint, recede_medium medium)
{
    const recede_pigment *pigment = only_pigment(paint);
    int water = recede_medium_takes_water(medium);
    if (paint->let_down) {
        recede_buffer_format(words, "%s, beforehand: ", paint->colour_index);
        recede_words_let_down(words, paint);
        return;
    }
    recede_buffer_text(words, *paint->colour_index ? paint->colour_index : "a paint of your own");
    if (*paint->colour_index && paint->ingredients == 0)
        recede_buffer_text(words, ", a paint of your own");
    if (pigment) {
        add_trait(words, pigment->transparency, "%s");
        if (water)
            add_trait(words, pigment->staining, "%s staining");
        if (water && words_of_granulation(pigment->granulation))
            recede_buffer_format(words, ", %s", words_of_granulation(pigment->granulation));
        add_trait(words, pigment->permanence, "lightfastness %s");
        return;
    }
    for (int i = 0; paint->ingredients > 1 && i < paint->ingredients; i++)
        recede_buffer_format(words, "%s %d %s", i ? " +" : ", made of", paint->of[i].parts,
                             paint->of[i].pigment->name);
}

/* 1 where a tube of the palette holds the pigment: its caution stands there. */
static int stands_by_itself(const recede_palette *palette, const recede_pigment *pigment)
{
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (only_pigment(recede_palette_paint(palette, i)) == pigment)
            return 1;
    return 0;
}

/* Each caution once, however many of the ingredients call for it. */
static void add_cautions(recede_buffer *words, const recede_palette *palette,
                         const recede_paint *paint)
{
    recede_buffer_text(words, paint->caution);
    for (int i = 0; i < paint->ingredients; i++) {
        const char *caution = paint->of[i].pigment->caution;
        int said = !*caution ||
                   (paint->let_down && stands_by_itself(palette, paint->of[i].pigment));
        for (int j = 0; j < i && !said; j++)
            said = strcmp(caution, paint->of[j].pigment->caution) == 0;
        if (!said)
            recede_buffer_format(words, "%s%s", words->size ? "; " : "", caution);
    }
}

static int white_of(const recede_palette *palette)
{
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (recede_palette_paint(palette, i)->is_white)
            return (int)i;
    return -1;
}

/* From the paint by itself to the same much thinned; opaque: much lightened. */
static void swatch(const recede_study *study, const recede_page *page, int paint, recede_rect room)
{
    static const double waters[SWATCH_STEPS] = {0.5, 2, 6, 20, 80};
    static const int whites[SWATCH_STEPS] = {0, 1, 2, 5, 11};
    const recede_palette *palette = recede_plan_palette(study->plan);
    int water = recede_medium_takes_water(recede_palette_medium(palette)),
        white = white_of(palette);
    recede_srgb colours[SWATCH_STEPS];
    for (int i = 0; i < SWATCH_STEPS; i++) {
        recede_mix mix = {1, {paint}, {1}, water ? waters[i] : 0};
        if (!water && white >= 0 && paint != white && whites[i]) {
            mix.count = 2;
            mix.paint[1] = white;
            mix.parts[1] = whites[i];
        }
        recede_spectrum seen = recede_mix_reflectance(palette, &mix, NULL);
        colours[i] = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).srgb;
    }
    recede_dab_graded(page, room, (uint32_t)paint * 31 + 7, colours, SWATCH_STEPS);
}

/* -------------------------------------------------------------- blocks -- */

static recede_style name_style(void)
{
    recede_style style = recede_style_heading;
    style.size_pt = 11;
    style.least_pt = 8;
    return style;
}

/* The texts of a paint beneath its name. */
static void texts_of(const recede_study *study, const recede_note *note, recede_buffer *traits,
                     recede_buffer *cautions)
{
    const recede_palette *palette = recede_plan_palette(study->plan);
    const recede_paint *paint = recede_palette_paint(palette, (size_t)note->paint);
    recede_buffer_start(traits, study->allocator);
    recede_buffer_start(cautions, study->allocator);
    add_traits(traits, paint, recede_palette_medium(palette));
    add_cautions(cautions, palette, paint);
}

static void flow(recede_type *type, const recede_page *page, const char *text, double x, double *y,
                 double w, const recede_style *style, double after)
{
    if (!*text)
        return;
    double height = recede_type_height(type, text, w, style);
    if (page)
        recede_type_set(type, page->cr, text, (recede_rect){x, *y, w, height + 0.05}, style);
    *y += height + after;
}

static double flow_paint(recede_study *study, recede_type *type, const recede_page *page,
                         const recede_note *note, double x, double y)
{
    const recede_palette *palette = recede_plan_palette(study->plan);
    double start = y, indent = swatch_width_mm + 4, w = column_mm - indent;
    recede_style name = name_style(), line = recede_style_small;
    recede_buffer traits, cautions;
    line.size_pt = 7.5;
    texts_of(study, note, &traits, &cautions);
    if (page)
        swatch(study, page, note->paint,
               (recede_rect){x, y + 0.4, swatch_width_mm, swatch_height_mm});
    flow(type, page, recede_palette_paint(palette, (size_t)note->paint)->name, x + indent, &y, w,
         &name, 0.1);
    flow(type, page, recede_buffer_string(&traits), x + indent, &y, w, &line, 0.1);
    flow(type, page, recede_buffer_string(&cautions), x + indent, &y, w, &line, 0);
    study->failed |= traits.failed | cautions.failed;
    recede_buffer_free(&traits);
    recede_buffer_free(&cautions);
    return fmax(y - start, swatch_height_mm + 0.8) + 2.2;
}

static double flow_note(recede_study *study, recede_type *type, const recede_page *page,
                        const recede_note *note, double x, double y)
{
    double start = y;
    if (note->paint >= 0)
        return flow_paint(study, type, page, note, x, y);
    if (note->heading)
        flow(type, page, note->heading, x, &y, column_mm, &recede_style_heading, 1.5);
    if (note->text)
        flow(type, page, note->text, x, &y, column_mm, &recede_style_body, 2);
    if (note->warning) {
        recede_buffer words;
        recede_buffer_start(&words, study->allocator);
        recede_words_warning(&words, recede_plan_scene(study->plan), note->warning);
        flow(type, page, recede_buffer_string(&words), x, &y, column_mm, &recede_style_body, 2);
        study->failed |= words.failed;
        recede_buffer_free(&words);
    }
    return y - start;
}

static void add(recede_study *study, recede_note note)
{
    study->notes[study->note_count++] = note;
}

static void add_texts(recede_study *study, const char *heading, const char *const *texts,
                      size_t count)
{
    add(study, (recede_note){.heading = heading, .paint = -1});
    for (size_t i = 0; i < count; i++)
        add(study, (recede_note){.text = texts[i], .paint = -1});
}

static int collect(recede_study *study)
{
    size_t paints = recede_palette_count(recede_plan_palette(study->plan));
    size_t warnings = study->warned_first ? 0 : recede_plan_warning_count(study->plan);
    study->notes =
        recede_allocate_array(study->allocator, paints + warnings + 16, sizeof *study->notes);
    if (!study->notes)
        return -1;
    add(study, (recede_note){.heading = "The paints", .paint = -1});
    for (size_t i = 0; i < paints; i++)
        add(study, (recede_note){.paint = (int)i});
    if (warnings > 0)
        add(study, (recede_note){.heading = "Before you start", .paint = -1});
    for (size_t i = 0; i < warnings; i++)
        add(study, (recede_note){.warning = recede_plan_warning(study->plan, i), .paint = -1});
    recede_medium medium = recede_palette_medium(recede_plan_palette(study->plan));
    const recede_trade *trade = recede_trade_of(medium);
    int water = recede_medium_takes_water(medium);
    const char *const reading[] = {recede_words_layers(study->plan), computed,
                                   water ? parts_and_water : parts};
    int silent = !*reading[0];
    add_texts(study, "How to read this", reading + silent,
              sizeof reading / sizeof reading[0] - (size_t)silent);
    add_texts(study, "Take care", care, sizeof care / sizeof care[0]);
    if (*trade->caution)
        add(study, (recede_note){.text = trade->caution, .paint = -1});
    return 0;
}

/* What a block needs to stand where it is: a heading does not stand alone. */
static double needed_by(const recede_study *study, size_t i)
{
    const recede_note *note = &study->notes[i];
    double next = note->heading && i + 1 < study->note_count ? note[1].height : 0;
    return note->height + next;
}

/* Down one column, then the next. */
int recede_study_lay_notes(recede_study *study, recede_type *type)
{
    size_t column = 0;
    double y = top_mm;
    study->note_count = 0;
    if (collect(study))
        return -1;
    for (size_t i = 0; i < study->note_count; i++)
        study->notes[i].height = flow_note(study, type, NULL, &study->notes[i], 0, 0);
    for (size_t i = 0; i < study->note_count; i++) {
        recede_note *note = &study->notes[i];
        double above = note->heading && y > top_mm ? 3 : 0;
        if (y + above + needed_by(study, i) > bottom_mm && y > top_mm) {
            column++;
            y = top_mm;
            above = 0;
        }
        note->page = column / COLUMNS;
        note->x = recede_page_margin_mm + (double)(column % COLUMNS) * (column_mm + gutter_mm);
        note->y = y + above;
        y = note->y + note->height;
    }
    study->note_pages = column / COLUMNS + 1;
    return 0;
}

void recede_study_draw_notes(recede_study *study, const recede_page *page, size_t index)
{
    for (size_t i = 0; i < study->note_count; i++) {
        const recede_note *note = &study->notes[i];
        if (note->page == index)
            flow_note(study, page->type, page, note, note->x, note->y);
    }
}
