#include "text/words_care.h"

#include <string.h>

#include "plan/work_needed.h"
#include "text/columns.h"
#include "text/words_media.h"

static const char always[] =
    "all paint: keep it off food and brushes out of the mouth, do not spray, sand or heat it; go "
    "by the maker's label and safety sheet, which know more";
static const char sun[] = "the sun: never look into it, and shade your eyes";

/* Who calls for a caution. */
typedef struct {
    const char *name, *caution;
} call;

enum { MOST_CALLS = RECEDE_MOST_PAINTS * RECEDE_MOST_IN_MIX };

typedef struct {
    call of[MOST_CALLS];
    size_t count;
} calls;

/* Each name with each caution once. */
static void add_call(calls *all, const char *name, const char *caution)
{
    int said = !*caution || all->count == MOST_CALLS;
    for (size_t i = 0; i < all->count && !said; i++)
        said = strcmp(all->of[i].name, name) == 0 && strcmp(all->of[i].caution, caution) == 0;
    if (!said)
        all->of[all->count++] = (call){name, caution};
}

/* A paint let down is made of others: those are named. */
static void add_paint(calls *all, const recede_paint *paint)
{
    if (paint->ingredients == 0)
        add_call(all, paint->name, paint->caution);
    for (int i = 0; i < paint->ingredients; i++)
        add_call(all, paint->let_down ? paint->of[i].pigment->name : paint->name,
                 paint->of[i].pigment->caution);
}

static unsigned long in_plan(const recede_plan *plan)
{
    recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    size_t count = recede_plan_washes(plan, places);
    unsigned long used = 0;
    for (size_t i = 0; i < count; i++)
        for (int j = 0; j < places[i].wash->recipe.mix.count; j++)
            used |= 1ul << places[i].wash->recipe.mix.paint[j];
    return used;
}

/* ---- lines */

static void add_line(recede_buffer *out, recede_buffer *words, size_t width)
{
    recede_columns_text(out, recede_buffer_string(words), width, 2);
    out->failed |= words->failed;
    recede_buffer_free(words);
}

static void add_text(recede_buffer *out, const char *text, size_t width)
{
    recede_buffer words;
    recede_buffer_start(&words, out->allocator);
    recede_buffer_format(&words, "- %s", text);
    add_line(out, &words, width);
}

static int is_first(const calls *all, size_t index)
{
    for (size_t i = 0; i < index; i++)
        if (strcmp(all->of[i].caution, all->of[index].caution) == 0)
            return 0;
    return 1;
}

/* Each caution once, after the names of all that call for it. */
static void add_cautions(recede_buffer *out, const calls *all, size_t width)
{
    for (size_t i = 0; i < all->count; i++) {
        recede_buffer words;
        if (!is_first(all, i))
            continue;
        recede_buffer_start(&words, out->allocator);
        recede_buffer_format(&words, "- %s", all->of[i].name);
        for (size_t j = i + 1; j < all->count; j++)
            if (strcmp(all->of[j].caution, all->of[i].caution) == 0)
                recede_buffer_format(&words, "; %s", all->of[j].name);
        recede_buffer_format(&words, ": %s", all->of[i].caution);
        add_line(out, &words, width);
    }
}

static int looks_toward_the_sun(const recede_scene *scene)
{
    return scene->sky.kind == RECEDE_SKY_CLEAR && scene->sky.sun_side_deg < 90.0;
}

void recede_words_care(recede_buffer *out, const recede_plan *plan, const recede_work *work,
                       size_t width)
{
    const recede_palette *palette = recede_plan_palette(plan);
    const char *medium = recede_trade_of(recede_palette_medium(palette))->caution;
    unsigned long used = work ? recede_work_in_use(work) : in_plan(plan);
    calls all = {.count = 0};
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (used >> i & 1)
            add_paint(&all, recede_palette_paint(palette, i));
    recede_buffer_text(out, "\nTake care:\n");
    add_cautions(out, &all, width);
    if (*medium)
        add_text(out, medium, width);
    if (looks_toward_the_sun(recede_plan_scene(plan)))
        add_text(out, sun, width);
    add_text(out, always, width);
}
