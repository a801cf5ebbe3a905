#include "text/words_skies.h"

#include <math.h>
#include <string.h>

#include "text/words.h"
#include "text/words_media.h"

void recede_words_light_line(recede_buffer *out, const recede_air *air, const recede_sky *sky)
{
    recede_buffer_text(out, "visibility ");
    recede_words_distance(out, 1000.0 * air->visibility_km);
    if (sky->kind != RECEDE_SKY_CLEAR) {
        recede_buffer_format(out, "; %s sky", recede_words_sky(sky->kind));
        return;
    }
    recede_buffer_text(out, "; sun ");
    recede_buffer_number(out, sky->sun_height_deg, 1);
    recede_buffer_text(out, sky->sun_height_deg == 1.0 ? " degree high" : " degrees high");
    if (sky->sun_side_deg == 0.0 || sky->sun_side_deg == 180.0) {
        recede_buffer_text(out, sky->sun_side_deg == 0.0 ? ", straight ahead" : ", straight behind");
        return;
    }
    recede_buffer_text(out, ", ");
    recede_buffer_number(out, sky->sun_side_deg, 1);
    recede_buffer_text(out, " degrees to the side");
}

const char *recede_words_sky_name(const recede_skies *skies, size_t plan)
{
    return plan == 0 ? "as planned" : skies->light[plan - 1].name;
}

/* ---- water */

/* New water to old: the words for every ratio below a limit. */
static const struct {
    double below;
    const char *words;
} ratios[] = {
    {0.13, "a tenth of the water"},  {0.18, "a sixth of the water"},
    {0.22, "a fifth of the water"},  {0.29, "a quarter of the water"},
    {0.41, "a third of the water"},  {0.58, "half the water"},
    {0.70, "a third less water"},    {0.84, "a quarter less water"},
    {0.94, "a little less water"},   {1.07, ""},
    {1.19, "a little more water"},   {1.29, "a quarter more water"},
    {1.45, "a third more water"},    {1.75, "half as much water again"},
    {2.45, "twice the water"},       {3.5, "three times the water"},
    {4.5, "four times the water"},   {5.5, "five times the water"},
};

void recede_words_water_ratio(recede_buffer *out, double ratio)
{
    if (ratio < 0.09) {
        recede_buffer_text(out, "far less water");
        return;
    }
    for (size_t i = 0; i < sizeof ratios / sizeof ratios[0]; i++) {
        if (ratio < ratios[i].below) {
            recede_buffer_text(out, ratios[i].words);
            return;
        }
    }
    recede_buffer_number(out, ratio, 0);
    recede_buffer_text(out, " times the water");
}

/* ---- value */

void recede_words_value_step(recede_buffer *out, double step)
{
    static const char *const wholes[] = {"", "a step", "two steps", "three steps", "four steps",
                                         "five steps", "six steps", "seven steps", "eight steps",
                                         "nine steps", "ten steps"};
    static const char *const halves[] = {"half a step", "a step and a half", "two steps and a half",
                                         "three steps and a half", "four steps and a half",
                                         "five steps and a half", "six steps and a half",
                                         "seven steps and a half", "eight steps and a half",
                                         "nine steps and a half"};
    double size = fabs(step);
    int half_steps = (int)fmin(20.0, floor(2.0 * size + 0.5));
    if (size < 0.15) {
        recede_buffer_text(out, "value as before");
        return;
    }
    if (size < 0.35)
        recede_buffer_text(out, "a touch");
    else
        recede_buffer_text(out, half_steps % 2 ? halves[half_steps / 2] : wholes[half_steps / 2]);
    recede_buffer_text(out, step > 0.0 ? " lighter" : " darker");
}

/* ---- paints */

static const char *paint_name(const recede_palette *palette, int paint)
{
    return recede_palette_paint(palette, (size_t)paint)->name;
}

/* A comma within a name would look like one between names: what follows it is
 * left out where no other paint of the palette is called the same so far. */
static void add_name(recede_buffer *out, const recede_palette *palette, int paint)
{
    const char *name = paint_name(palette, paint);
    size_t length = strcspn(name, ",");
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if ((int)i != paint && strncmp(paint_name(palette, (int)i), name, length) == 0)
            length = strlen(name);
    recede_buffer_add(out, name, length);
}

static void add_names(recede_buffer *out, const recede_palette *palette, const int *paints, int count)
{
    for (int i = 0; i < count; i++) {
        recede_buffer_text(out, i == 0 ? "" : i + 1 < count ? ", " : " and ");
        add_name(out, palette, paints[i]);
    }
}

static void add_paints(recede_buffer *out, const recede_palette *palette, const recede_change *change)
{
    static const double noticed = 0.08; /* of the mix */
    if (change->going_count) {
        add_names(out, palette, change->going, change->going_count);
        recede_buffer_text(out, change->going_count == 1 ? " goes" : " go");
    }
    if (change->coming_count) {
        recede_buffer_text(out, change->going_count ? ", " : "");
        add_names(out, palette, change->coming, change->coming_count);
        recede_buffer_text(out, change->coming_count == 1 ? " comes in" : " come in");
    }
    if (!change->going_count && !change->coming_count && change->more >= 0 && change->more_by >= noticed) {
        recede_buffer_text(out, "more ");
        add_name(out, palette, change->more);
        recede_buffer_text(out, " in it");
    }
}

static void add_water(recede_buffer *out, const recede_mix *from, const recede_mix *to, double ratio)
{
    if (ratio > 0.0)
        recede_words_water_ratio(out, ratio);
    else if (from->count && to->count && from->water <= 0.0 && to->water > 0.0)
        recede_buffer_text(out, "now with water");
    else if (from->count && to->count && from->water > 0.0)
        recede_buffer_text(out, "no water now");
}

/* A semicolon, if something stands before and something follows. */
static void add_part(recede_buffer *out, size_t start, recede_buffer *part)
{
    if (part->size)
        recede_buffer_format(out, "%s%s", out->size > start ? "; " : "", recede_buffer_string(part));
    out->failed |= part->failed;
    recede_buffer_free(part);
}

/* What a wash of no paints is. */
static const char *nothing_laid(const recede_wash *wash, int takes_water)
{
    return wash->ground == RECEDE_ON_LIT ? "nothing over the lit wash now"
           : takes_water                 ? "bare paper now" : "bare ground now";
}

void recede_words_change(recede_buffer *out, const recede_palette *palette,
                         const recede_wash *from, const recede_wash *to)
{
    const recede_change change = recede_change_of_wash(from, to);
    int takes_water = recede_medium_takes_water(recede_palette_medium(palette));
    size_t start = out->size;
    recede_buffer part;
    if (change.same) {
        recede_buffer_text(out, "as before");
        return;
    }
    recede_buffer_start(&part, out->allocator);
    if (to->recipe.mix.count == 0)
        recede_buffer_text(&part, nothing_laid(to, takes_water));
    else
        add_paints(&part, palette, &change);
    add_part(out, start, &part);
    if (change.other_ground && to->recipe.mix.count)
        recede_buffer_text(&part, to->ground == RECEDE_ON_LIT ? "over the dry lit wash"
                                                              : "on the paper itself");
    add_part(out, start, &part);
    if (takes_water)
        add_water(&part, &from->recipe.mix, &to->recipe.mix, change.water_ratio);
    add_part(out, start, &part);
    recede_words_value_step(&part, change.value_step);
    add_part(out, start, &part);
}
