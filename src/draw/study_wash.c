/* One wash of the key: its dab, the box for a trial, and the recipe. */
#include "draw/study_parts.h"

#include "picture/noise.h"
#include "text/words.h"
#include "text/words_media.h"
#include "text/words_wet.h"

#include <math.h>
#include <string.h>

static const double dab_width_mm = 20, dab_height_mm = 15.5, box_height_mm = 14,
                    least_height_mm = 31.5;
static const double wet_width_mm = 4.6, wet_height_mm = 6.5, after_dry_mm = 0.5;
static const double dot_mm = 3.2, dot_pitch_mm = 3.4, after_dots_mm = 1.4;

/* The recipe is laid out once for measuring, with page NULL, and once drawn. */
typedef struct column {
    recede_study *study;
    recede_type *type;
    const recede_page *page;
    double x, y, width;
} column;

/* A text in the column, which goes on beneath it. */
static void put(column *c, const char *text, double indent, const recede_style *style, double after)
{
    double height = recede_type_height(c->type, text, c->width - indent, style);
    if (c->page)
        recede_type_set(c->type, c->page->cr, text,
                        (recede_rect){c->x + indent, c->y, c->width - indent, height + 0.05},
                        style);
    c->y += height + after;
}

static void put_words(column *c, recede_buffer *words, const recede_style *style, double after)
{
    put(c, recede_buffer_string(words), 0, style, after);
    c->study->failed |= words->failed;
    recede_buffer_free(words);
}

static void put_dots(const column *c, recede_srgb colour, int parts, uint32_t seed)
{
    recede_rect line = {0, c->y, 0, recede_type_line(c->type, recede_style_recipe.size_pt)};
    recede_rect middle = recede_type_middle(c->type, line, &recede_style_recipe);
    double y = c->y - (middle.y - c->y) + 0.5 * (line.h - dot_mm);
    for (int i = 0; i < parts; i++)
        recede_dab_round(c->page, (recede_rect){c->x + i * dot_pitch_mm, y, dot_mm, dot_mm},
                         recede_seed_with(seed, (uint32_t)i), colour);
}

/* A pigment's line: a dab for each part, how many, and the name. */
static void put_paint(column *c, const recede_mix *mix, int i)
{
    const recede_palette *palette = recede_plan_palette(c->study->plan);
    const char *name = recede_palette_paint(palette, (size_t)mix->paint[i])->name;
    double indent = mix->parts[i] * dot_pitch_mm + after_dots_mm;
    recede_buffer words;
    recede_buffer_start(&words, c->study->allocator);
    if (mix->count == 1)
        recede_buffer_format(&words, "%s alone", name);
    else
        recede_buffer_format(&words, "%d %s", mix->parts[i], name);
    if (c->page)
        put_dots(c, recede_study_paint_colour(palette, mix->paint[i]), mix->parts[i],
                 (uint32_t)mix->paint[i] * 97);
    put(c, recede_buffer_string(&words), indent, &recede_style_recipe, 0.1);
    c->study->failed |= words.failed;
    recede_buffer_free(&words);
}

/* In one line where that holds it; else the drops stand under the parts. */
static void put_water(column *c, const recede_mix *mix)
{
    recede_buffer words, drops;
    recede_buffer_start(&words, c->study->allocator);
    recede_buffer_start(&drops, c->study->allocator);
    recede_buffer_format(&words, "%s: ", recede_words_consistency(mix->water));
    recede_words_water(&words, mix->water);
    char *bracket = words.failed ? NULL : strchr(words.bytes, '(');
    if (bracket && recede_type_width(c->type, words.bytes, &recede_style_recipe) > c->width) {
        recede_buffer_text(&drops, bracket);
        bracket[-1] = '\0';
    }
    put_words(c, &words, &recede_style_recipe, drops.size ? 0 : 0.3);
    if (drops.size)
        put(c, drops.bytes, 0, &recede_style_recipe, 0.3);
    c->study->failed |= drops.failed;
    recede_buffer_free(&drops);
}

/* Which wash it is, its value, and how near the mix comes. */
static void put_label(column *c, const char *label, const recede_wash *wash)
{
    recede_buffer words;
    recede_buffer_start(&words, c->study->allocator);
    recede_buffer_format(&words, "%s, value ", label);
    recede_study_value(&words, wash->recipe.colour.value);
    if (fabs(wash->value_as_seen - wash->target.value) >= 0.15
        && fabs(wash->value_as_seen - wash->recipe.colour.value) >= 0.15) {
        recede_buffer_text(&words, " (seen as ");
        recede_study_value(&words, wash->value_as_seen);
        recede_buffer_text(&words, ")");
    }
    recede_buffer_format(&words, "; match: %s", recede_words_difference(wash->recipe.delta_e));
    put_words(c, &words, &recede_style_small, 0.4);
}

/* Where it goes, what keeps it from coming nearer, how much a slip tells. */
static void put_remarks(column *c, const recede_side *side, const recede_wash *wash)
{
    const recede_recipe *recipe = &wash->recipe;
    recede_medium medium = recede_palette_medium(recede_plan_palette(c->study->plan));
    recede_buffer words;
    recede_buffer_start(&words, c->study->allocator);
    if (wash->ground == RECEDE_ON_LIT && recipe->mix.count > 0)
        recede_buffer_text(&words, "over the dry lit wash; ");
    const char *wet =
        recede_words_wet_beside(recede_wet_look_in(c->study->plan, wash).darker);
    if (*wet)
        recede_buffer_format(&words, "%s; ", wet);
    if (recipe->reach != RECEDE_REACHABLE)
        recede_buffer_format(&words, "the mix %s; ", recede_words_missed(recipe->reach));
    if (side->graded && side->two_washes)
        recede_buffer_format(&words, "%s; ", recede_trade_of(medium)->middle_mix);
    if (recede_mix_may_slip(recede_plan_palette(c->study->plan), &recipe->mix))
        recede_words_slip(&words, medium, recipe->slip);
    put_words(c, &words, &recede_style_small, 0);
}

/* What a mix of nothing leaves. */
static const char *bare_words(const recede_wash *wash, recede_medium medium)
{
    return wash->ground == RECEDE_ON_LIT ? "the lit wash as it is"
                                         : recede_trade_of(medium)->bare;
}

static void put_recipe(column *c, const recede_side *side, const recede_wash *wash,
                       const char *label)
{
    const recede_mix *mix = &wash->recipe.mix;
    const recede_palette *palette = recede_plan_palette(c->study->plan);
    recede_medium medium = recede_palette_medium(palette);
    put_label(c, label, wash);
    for (int i = 0; i < mix->count; i++)
        put_paint(c, mix, i);
    if (mix->count == 0)
        put(c, bare_words(wash, medium), 0, &recede_style_recipe, 0.3);
    else if (recede_medium_takes_water(medium))
        put_water(c, mix);
    put_remarks(c, side, wash);
}

static column column_of(recede_study *study, recede_type *type, const recede_page *page,
                        recede_rect room)
{
    double indent = dab_width_mm + 3;
    return (column){study, type, page, room.x + indent, room.y, room.w - indent};
}

double recede_study_wash_height(recede_study *study, recede_type *type, const recede_side *side,
                                const recede_wash *wash, double width)
{
    column c = column_of(study, type, NULL, (recede_rect){0, 0, width, 0});
    put_recipe(&c, side, wash, "shadow side, at its crest");
    return fmax(c.y, least_height_mm);
}

/* The mix in the colour wanted; where it dries lighter, small beside it the mix wet. */
static void put_dab(recede_study *study, const recede_page *page, const recede_wash *wash,
                    recede_rect dab, uint32_t seed)
{
    recede_wet_look look = recede_wet_look_in(study->plan, wash);
    if (*recede_words_wet(look.darker)) {
        recede_rect wet = {dab.x + dab.w - wet_width_mm, dab.y + dab.h - wet_height_mm,
                           wet_width_mm, wet_height_mm};
        recede_dab(page, wet, seed + 5, look.colour.srgb);
        dab.w -= wet_width_mm + after_dry_mm;
    }
    recede_dab_ringed(page, dab, seed, wash->recipe.colour.srgb, wash->target.srgb);
}

void recede_study_draw_wash(recede_study *study, const recede_page *page, const recede_side *side,
                            const recede_wash *wash, const char *label, recede_rect room)
{
    recede_rect dab = {room.x, room.y + 0.6, dab_width_mm, dab_height_mm};
    recede_rect box = {room.x + 0.5, dab.y + dab.h + 1.2, dab_width_mm - 1, box_height_mm};
    recede_style judge = {7, 7, 1, RECEDE_CENTRE, recede_ink_pale, 0};
    column c = column_of(study, page->type, page, room);
    put_dab(study, page, wash, dab, recede_seed_of_text(label) + (uint32_t)(room.y * 8));
    recede_page_fill(page, box, recede_mount_tone);
    recede_page_frame(page, box, 0.18);
    recede_medium medium = recede_palette_medium(recede_plan_palette(study->plan));
    recede_type_set(page->type, page->cr, recede_trade_of(medium)->box,
                    (recede_rect){box.x, box.y + box.h - 3.6, box.w, 3.4}, &judge);
    put_recipe(&c, side, wash, label);
}
