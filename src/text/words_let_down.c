#include "text/words_let_down.h"

#include <math.h>

#include "text/words_work.h"

static void add_parts(recede_buffer *out, const recede_ingredient *of)
{
    recede_buffer_format(out, "%d %s %s", of->parts, of->parts == 1 ? "part" : "parts",
                         of->pigment->name);
}

/* The strong paint first, though its recipe may begin with the white. */
void recede_words_let_down(recede_buffer *out, const recede_paint *paint)
{
    for (int i = paint->ingredients; i-- > 0;) {
        add_parts(out, &paint->of[i]);
        recede_buffer_text(out, i == 0 ? "" : i == paint->ingredients - 1 ? " with " : " and ");
    }
}

void recede_words_beforehand(recede_buffer *out, const recede_palette *palette,
                             const recede_mix *mix)
{
    int said = 0;
    for (int i = 0; i < mix->count; i++) {
        const recede_paint *paint = recede_palette_paint(palette, (size_t)mix->paint[i]);
        if (!paint->let_down)
            continue;
        recede_buffer_text(out, said++ ? "; " : "beforehand: ");
        recede_words_let_down(out, paint);
    }
}

const char *recede_words_let_down_note(const recede_palette *palette)
{
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (recede_palette_paint(palette, i)->let_down)
            return " What is called pale is mixed beforehand, 1 part with 11 of white.";
    return "";
}

/* ---- all of a picture */

typedef struct {
    double ml[RECEDE_MOST_PAINTS];
    int used[RECEDE_MOST_PAINTS];
} usage;

static usage usage_of_plan(const recede_plan *plan)
{
    usage u = {{0}, {0}};
    recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    size_t count = recede_plan_washes(plan, places);
    for (size_t i = 0; i < count; i++) {
        const recede_mix *mix = &places[i].wash->recipe.mix;
        for (int j = 0; j < mix->count; j++)
            u.used[mix->paint[j]] = 1;
    }
    return u;
}

static usage usage_of_work(const recede_work *work)
{
    usage u = {{0}, {0}};
    for (size_t i = 0; i < work->count; i++) {
        const recede_work_step *step = &work->steps[i];
        for (int j = 0; j < step->mix.count; j++) {
            u.used[step->mix.paint[j]] = 1;
            u.ml[step->mix.paint[j]] += step->paint_ml[j];
        }
    }
    return u;
}

void recede_words_beforehand_all(recede_buffer *out, const recede_plan *plan,
                                 const recede_work *work)
{
    const recede_palette *palette = recede_plan_palette(plan);
    usage u = work ? usage_of_work(work) : usage_of_plan(plan);
    int said = 0;
    for (size_t i = 0; i < recede_palette_count(palette); i++) {
        const recede_paint *paint = recede_palette_paint(palette, i);
        if (!u.used[i] || !paint->let_down)
            continue;
        recede_buffer_text(out, said++ ? "; " : "Let down beforehand: ");
        recede_words_let_down(out, paint);
        if (u.ml[i] > 0) {
            recede_buffer_text(out, ", ");
            recede_words_ml(out, u.ml[i]);
            recede_buffer_text(out, " in all");
        }
    }
    if (said)
        recede_buffer_text(out, ".");
}

/* ---- advice */

void recede_words_let_down_advice(recede_buffer *out, const recede_paint *paint, double delta_e)
{
    recede_buffer_format(out, "%s let down beforehand (1 part with %d of white), as one more "
                              "paint, would bring it within ",
                         paint->name, RECEDE_LET_DOWN_WHITE);
    recede_buffer_fixed(out, ceil(10.0 * delta_e) / 10.0, 1);
}
