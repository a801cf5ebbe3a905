#include "text/words_chart.h"

#include "text/words.h"

static const char *const proportions[RECEDE_CHART_STEPS] = {"3 : 1", "1 : 1", "1 : 3"};
static const char *const in_water[RECEDE_CHART_STEPS] = {"cream, 1 water", "milk, 4 water",
                                                         "tea, 16 water"};
static const char *const in_white[RECEDE_CHART_STEPS] = {"no white", "1 white", "4 white"};

static const char *paint_name(const recede_palette *palette, int paint)
{
    return recede_palette_paint(palette, (size_t)paint)->name;
}

void recede_words_chart(recede_buffer *out, const recede_palette *palette,
                        const recede_chart *chart)
{
    recede_buffer_format(out, "%d %s down, each mixed with %d across", chart->rows,
                         chart->rows == 1 ? "paint" : "paints", chart->columns);
    if (chart->third >= 0)
        recede_buffer_format(out, "; 1 part in 5 of every mix is %s",
                             paint_name(palette, chart->third));
}

/* ---- what is left out */

enum { NEITHER, LET_DOWN, NOT_NAMED, REASONS };
static const char *const reasons[REASONS] = {
    [NEITHER] = ", being neither yellow or earth for the rows nor blue or green for the columns",
    [LET_DOWN] = ", for the chart itself lightens every mix with white",
    [NOT_NAMED] = ", not being among the paints that were named",
};

static int lightens(const recede_palette *palette, int paint)
{
    if (recede_medium_takes_water(recede_palette_medium(palette)))
        return 0;
    for (int i = 0; i < paint; i++)
        if (recede_palette_paint(palette, (size_t)i)->is_white)
            return 0;
    return recede_palette_paint(palette, (size_t)paint)->is_white;
}

static int is_among(const int *paints, int count, int paint)
{
    for (int i = 0; i < count; i++)
        if (paints[i] == paint)
            return 1;
    return 0;
}

/* One of the reasons; REASONS where the paint is on the chart. */
static int why_left_out(const recede_palette *palette, const recede_chart *chart, int paint)
{
    if (is_among(chart->row, chart->rows, paint) || paint == chart->third ||
        is_among(chart->column, chart->columns, paint) || lightens(palette, paint))
        return REASONS;
    if (recede_palette_paint(palette, (size_t)paint)->let_down)
        return LET_DOWN;
    return recede_paint_family_of(palette, paint) == RECEDE_FAMILY_OTHER ? NEITHER : NOT_NAMED;
}

void recede_words_chart_left_out(recede_buffer *out, const recede_palette *palette,
                                 const recede_chart *chart)
{
    int sentences = 0;
    for (int reason = 0; reason < REASONS; reason++) {
        int said = 0;
        for (int i = 0; i < (int)recede_palette_count(palette); i++) {
            if (why_left_out(palette, chart, i) != reason)
                continue;
            if (!said)
                recede_buffer_format(out, "%sLeft out%s", sentences++ ? " " : "", reasons[reason]);
            recede_buffer_format(out, "%s %s", said++ ? ";" : ":", paint_name(palette, i));
        }
        recede_buffer_text(out, said ? "." : "");
    }
}

void recede_words_chart_paints(recede_buffer *out, const recede_palette *palette,
                               const char *name)
{
    recede_buffer_format(out, "%s, %s", *name ? name : "a palette of your own",
                         recede_words_medium(recede_palette_medium(palette)));
}

void recede_words_proportion(recede_buffer *out, int proportion)
{
    recede_buffer_text(out, proportions[proportion]);
}

void recede_words_strength(recede_buffer *out, recede_medium medium, int strength)
{
    recede_buffer_text(out, recede_medium_takes_water(medium) ? in_water[strength]
                                                              : in_white[strength]);
}

void recede_words_place(recede_buffer *out, const recede_scene *scene,
                        const recede_wash_place *place)
{
    if (place->plane < 0) {
        recede_buffer_text(out, !place->graded ? "sky"
                                : place->base  ? "sky, at the horizon" : "top of the sky");
        return;
    }
    recede_buffer_format(out, "%s, %s side", scene->planes[place->plane].name,
                         place->shadow ? "shadow" : "lit");
    if (place->graded)
        recede_buffer_text(out, place->base ? ", at its foot" : ", at its crest");
}

void recede_words_rules(recede_buffer *out, const recede_rules *rules)
{
    recede_buffer_format(out, "up to %d %s and %d %s a mix", rules->most_pigments,
                         rules->most_pigments == 1 ? "paint" : "paints", rules->most_parts,
                         rules->most_parts == 1 ? "part" : "parts");
}
