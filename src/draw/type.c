#include "draw/type.h"

#include <errno.h>
#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct recede_type {
    PangoFontMap *map;
    PangoContext *context;
    PangoFontDescription *font;
    recede_type_log *log;
    recede_missing_glyphs *missing;
    void *missing_context;
    size_t page;
    int is_troubled;
};

static const double mm_per_inch = 25.4, steps_down_pt = 0.5;

/* Nothing but the one file: no fonts of the machine, no configuration of its. */
static FcConfig *config_of_file(const char *font_path)
{
    FcConfig *config = FcConfigCreate();
    if (config && !FcConfigAppFontAddFile(config, (const FcChar8 *)font_path)) {
        FcConfigDestroy(config);
        return NULL;
    }
    return config;
}

/* The family's name as the file gives it; the configuration's. */
static const char *family_of(FcConfig *config)
{
    FcFontSet *fonts = FcConfigGetFonts(config, FcSetApplication);
    FcChar8 *family = NULL;
    if (!fonts || fonts->nfont < 1
        || FcPatternGetString(fonts->fonts[0], FC_FAMILY, 0, &family) != FcResultMatch)
        return NULL;
    return (const char *)family;
}

/* A millimetre of the sheet is a unit, so a "dot" of Pango's is one too. */
static PangoContext *context_of(PangoFontMap *map)
{
    PangoContext *context = pango_font_map_create_context(map);
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context, options);
    cairo_font_options_destroy(options);
    pango_cairo_context_set_resolution(context, mm_per_inch);
    pango_context_set_round_glyph_positions(context, FALSE);
    pango_context_set_language(context, pango_language_from_string("en-gb"));
    return context;
}

recede_type *recede_type_new(const char *font_path, recede_type_log *log,
                             recede_missing_glyphs *missing, void *missing_context)
{
    FcConfig *config = config_of_file(font_path);
    const char *family = config ? family_of(config) : NULL;
    recede_type *type = family ? calloc(1, sizeof *type) : NULL;
    if (type) {
        /* Made current before Pango starts, it keeps Pango from reading the
         * machine's own configuration and fonts. */
        FcConfigSetCurrent(config);
        type->map = pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT);
        type->context = context_of(type->map);
        type->font = pango_font_description_new();
        pango_font_description_set_family(type->font, family);
        type->log = log;
        type->missing = missing;
        type->missing_context = missing_context;
    }
    int error = family && !type ? ENOMEM : ENOENT;
    if (config)
        FcConfigDestroy(config);
    errno = error;
    return type;
}

void recede_type_free(recede_type *type)
{
    if (!type)
        return;
    pango_font_description_free(type->font);
    g_object_unref(type->context);
    g_object_unref(type->map);
    free(type);
}

int recede_type_is_troubled(const recede_type *type)
{
    return type->is_troubled;
}

void recede_type_turn_to(recede_type *type, size_t page)
{
    type->page = page;
}

static double mm(int pango_units)
{
    return (double)pango_units / PANGO_SCALE;
}

static PangoFontMetrics *metrics_of(recede_type *type, double size_pt)
{
    pango_font_description_set_size(type->font, (int)lround(size_pt * PANGO_SCALE));
    return pango_context_get_metrics(type->context, type->font, NULL);
}

static void set_size(recede_type *type, PangoLayout *layout, double size_pt)
{
    pango_font_description_set_size(type->font, (int)lround(size_pt * PANGO_SCALE));
    pango_layout_set_font_description(layout, type->font);
}

static PangoLayout *layout_of(recede_type *type, const char *text, const recede_style *style)
{
    static const PangoAlignment alignments[] = {PANGO_ALIGN_LEFT, PANGO_ALIGN_CENTER,
                                                PANGO_ALIGN_RIGHT};
    PangoLayout *layout = pango_layout_new(type->context);
    pango_layout_set_single_paragraph_mode(layout, TRUE);
    pango_layout_set_line_spacing(layout, 1);
    pango_layout_set_text(layout, text, -1);
    pango_layout_set_alignment(layout, alignments[style->align]);
    return layout;
}

/* What lies between one line and the next, beyond the line's own height. */
static double leading(recede_type *type, double size_pt)
{
    PangoFontMetrics *metrics = metrics_of(type, size_pt);
    int own = pango_font_metrics_get_ascent(metrics) + pango_font_metrics_get_descent(metrics);
    double between = mm(pango_font_metrics_get_height(metrics) - own);
    pango_font_metrics_unref(metrics);
    return between;
}

static int lines_that_fit(recede_type *type, double size_pt, double height, int most)
{
    double line = recede_type_line(type, size_pt);
    int fit = (int)fmin(floor((height + leading(type, size_pt)) / line + 0.02), most);
    return fit < 1 ? 1 : fit;
}

/* Lays the text out in the room, at the largest size that holds all of it; at
 * the least size what is left over is cut. Returns the size. */
static double fit(recede_type *type, PangoLayout *layout, recede_rect room,
                  const recede_style *style)
{
    double size = style->size_pt, least = style->least_pt > 0 ? style->least_pt : size;
    int most = style->most_lines > 0 ? style->most_lines : 1;
    pango_layout_set_width(layout, (int)floor(room.w * PANGO_SCALE));
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    for (;;) {
        set_size(type, layout, size);
        pango_layout_set_height(layout, -lines_that_fit(type, size, room.h, most));
        if (!pango_layout_is_ellipsized(layout) || size <= least)
            return size;
        size = fmax(least, size - steps_down_pt);
    }
}

/* The room a layout takes: whole lines, the space beneath the last included. */
static recede_rect extent(recede_type *type, PangoLayout *layout, double size_pt)
{
    PangoRectangle taken;
    pango_layout_get_extents(layout, NULL, &taken);
    return (recede_rect){mm(taken.x), mm(taken.y), mm(taken.width),
                         mm(taken.height) + leading(type, size_pt)};
}

static void note(recede_type *type, PangoLayout *layout, recede_rect room, double size_pt,
                 const recede_style *style)
{
    recede_type_log *log = type->log;
    if (!log)
        return;
    if (log->count == log->room) {
        size_t more = log->room ? log->room * 2 : 256;
        recede_type_record *records = realloc(log->records, more * sizeof *records);
        if (!records)
            return;
        log->records = records;
        log->room = more;
    }
    PangoRectangle ink;
    pango_layout_get_extents(layout, &ink, NULL);
    recede_type_record *record = &log->records[log->count++];
    record->page = type->page;
    record->ink =
        (recede_rect){room.x + mm(ink.x), room.y + mm(ink.y), mm(ink.width), mm(ink.height)};
    record->room = room;
    record->size_pt = size_pt;
    record->is_recipe = style->is_recipe;
    record->is_cut = pango_layout_is_ellipsized(layout);
    snprintf(record->text, sizeof record->text, "%s", pango_layout_get_text(layout));
}

static int is_whole(PangoLayoutRun *run)
{
    if (!run)
        return 1; /* the end of a line */
    PangoFont *font = run->item->analysis.font;
    cairo_scaled_font_t *scaled =
        font ? pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(font)) : NULL;
    return scaled && cairo_scaled_font_status(scaled) == CAIRO_STATUS_SUCCESS &&
           run->glyphs->num_glyphs > 0;
}

/* Short of memory Pango goes on without a font or without glyphs. */
static void check_runs(recede_type *type, PangoLayout *layout)
{
    PangoLayoutIter *at = pango_layout_get_iter(layout);
    do {
        if (!is_whole(pango_layout_iter_get_run_readonly(at)))
            type->is_troubled = 1;
    } while (pango_layout_iter_next_run(at));
    pango_layout_iter_free(at);
}

/* The font has all of ASCII; where that is missing there was no memory to look it up. */
static void note_missing(recede_type *type, const char *text, int unknown)
{
    int others = 0;
    for (const char *at = text; *at; at++)
        others += (signed char)*at < 0;
    if (unknown > others)
        type->is_troubled = 1;
    else if (unknown > 0 && type->missing)
        type->missing(type->missing_context, text, unknown);
}

recede_rect recede_type_set(recede_type *type, cairo_t *cr, const char *text, recede_rect room,
                            const recede_style *style)
{
    PangoLayout *layout = layout_of(type, text, style);
    double size = fit(type, layout, room, style);
    check_runs(type, layout);
    note_missing(type, text, pango_layout_get_unknown_glyphs_count(layout));
    note(type, layout, room, size, style);
    cairo_set_source_rgb(cr, style->ink.r, style->ink.g, style->ink.b);
    cairo_move_to(cr, room.x, room.y);
    pango_cairo_show_layout(cr, layout);
    recede_rect taken = extent(type, layout, size);
    g_object_unref(layout);
    return (recede_rect){room.x + taken.x, room.y, taken.w, taken.h};
}

double recede_type_height(recede_type *type, const char *text, double width,
                          const recede_style *style)
{
    PangoLayout *layout = layout_of(type, text, style);
    double size = fit(type, layout, (recede_rect){0, 0, width, 1e4}, style);
    recede_rect taken = extent(type, layout, size);
    g_object_unref(layout);
    return taken.h;
}

double recede_type_width(recede_type *type, const char *text, const recede_style *style)
{
    PangoLayout *layout = layout_of(type, text, style);
    set_size(type, layout, style->size_pt);
    recede_rect taken = extent(type, layout, style->size_pt);
    g_object_unref(layout);
    return taken.w;
}

double recede_type_line(recede_type *type, double size_pt)
{
    PangoFontMetrics *metrics = metrics_of(type, size_pt);
    double height = mm(pango_font_metrics_get_height(metrics));
    pango_font_metrics_unref(metrics);
    return height;
}

recede_rect recede_type_middle(recede_type *type, recede_rect room, const recede_style *style)
{
    double own = recede_type_line(type, style->size_pt) - leading(type, style->size_pt);
    return (recede_rect){room.x, room.y + 0.5 * (room.h - own), room.w, own};
}
