#include "text/words.h"

#include <math.h>
#include <string.h>

#include "text/numbers.h"
#include "text/scene_fields.h"
#include "text/words_amounts.h"
#include "text/words_media.h"

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

/* A word for every number below a limit; the last holds for all beyond. */
typedef struct {
    double below;
    const char *word;
} step;

static const char *word_below(const step *steps, size_t count, double number)
{
    size_t i = 0;
    while (i + 1 < count && !(number < steps[i].below))
        i++;
    return steps[i].word;
}

/* As it is printed, to a tenth, so that one number has one word. */
static double as_printed(double number)
{
    char text[RECEDE_NUMBER_SIZE];
    return recede_number_value(text, recede_number_fixed(text, number, 1));
}

/* About 1 CIEDE2000 is what a trained eye just sees side by side; the rest of
 * the scale is our own. */
const char *recede_words_difference(double delta_e)
{
    static const step steps[] = {
        {1.0, "no eye will see it"}, {2.0, "very close"},
        {4.0, "close"},              {8.0, "near, but visible"},
        {INFINITY, "out of reach of this palette"},
    };
    return word_below(steps, COUNT(steps), as_printed(delta_e));
}

int recede_medium_takes_water(recede_medium medium)
{
    return medium == RECEDE_WATERCOLOUR;
}

/* The words are the trade's (common practice, no source); the limits, in parts
 * of water to one of paint, are our own. */
const char *recede_words_consistency(double water)
{
    static const step steps[] = {
        {0.5, "butter"}, {2.5, "cream"}, {10.0, "milk"}, {63.0, "tea"}, {INFINITY, "tinted water"},
    };
    return word_below(steps, COUNT(steps), water);
}

void recede_words_water(recede_buffer *out, double water)
{
    static const double hardly_tinted = 200.5;
    if (water <= 0.0) {
        recede_buffer_text(out, "no water");
        return;
    }
    recede_words_two_figures(out, water);
    recede_buffer_text(out, " water to 1 paint (");
    if (water >= hardly_tinted) {
        recede_buffer_text(out, "hardly tinted: touch the brush tip to the paint)");
        return;
    }
    recede_words_drops(out, recede_water_to_a_pea_ml(water));
    recede_buffer_text(out, " to a pea)");
}

void recede_words_parts(recede_buffer *out, const recede_palette *palette, const recede_mix *mix)
{
    if (mix->count == 0) {
        recede_buffer_text(out, recede_trade_of(recede_palette_medium(palette))->bare);
        return;
    }
    if (mix->count == 1) {
        recede_buffer_format(out, "%s alone", recede_palette_paint(palette,
                                                                   (size_t)mix->paint[0])->name);
        return;
    }
    for (int i = 0; i < mix->count; i++)
        recede_buffer_format(out, "%s%d %s %s", i ? " + " : "", mix->parts[i],
                             mix->parts[i] == 1 ? "part" : "parts",
                             recede_palette_paint(palette, (size_t)mix->paint[i])->name);
}

void recede_words_recipe(recede_buffer *out, const recede_palette *palette, const recede_mix *mix)
{
    recede_words_parts(out, palette, mix);
    if (mix->count == 0 || !recede_medium_takes_water(recede_palette_medium(palette)))
        return;
    recede_buffer_format(out, "; %s: ", recede_words_consistency(mix->water));
    recede_words_water(out, mix->water);
}

int recede_mix_may_slip(const recede_palette *palette, const recede_mix *mix)
{
    if (recede_medium_takes_water(recede_palette_medium(palette)))
        return mix->count > 0 && mix->water > 0.0;
    for (int i = 0; i < mix->count; i++)
        if (recede_palette_paint(palette, (size_t)mix->paint[i])->is_white)
            return 1;
    return 0;
}

void recede_words_slip(recede_buffer *out, recede_medium medium, double slip)
{
    recede_buffer_format(out, "a quarter more or less %s: ",
                         recede_medium_takes_water(medium) ? "water" : "white");
    recede_buffer_fixed(out, slip, 1);
    recede_buffer_format(out, " off, %s", as_printed(slip) < 8.0 ? recede_words_difference(slip)
                                                                 : "plainly visible");
}

const char *recede_words_edge(recede_edge edge)
{
    static const char *const words[] = {"hard", "soft", "lost"};
    return words[edge];
}

const char *recede_words_reach(recede_reach reach)
{
    static const char *const words[] = {"reachable", "too dark", "too pale", "too vivid"};
    return words[reach];
}

/* Of the mix, which is seen, not of the colour wanted: that may lie well within what the
 * palette holds, between mixes of so few parts. */
const char *recede_words_missed(recede_reach reach)
{
    static const char *const words[] = {"is only near", "comes out too light",
                                        "comes out too dark", "misses the colour"};
    return words[reach];
}

const char *recede_words_ground(recede_ground ground)
{
    static const char *const words[] = {"paper", "lit"};
    return words[ground];
}

const char *recede_words_medium(recede_medium medium)
{
    return recede_word_numbered(recede_medium_words, medium)->word;
}

const char *recede_words_sky(recede_sky_kind kind)
{
    return recede_word_numbered(recede_sky_words, kind)->word;
}

const char *recede_words_haze(double angstrom)
{
    const recede_word *word = recede_word_numbered(recede_haze_words, angstrom);
    return word ? word->word : NULL;
}

/* Three figures, and metres below a kilometre. */
void recede_words_distance(recede_buffer *out, double metres)
{
    double size = fabs(metres);
    int kilometres = size >= 999.5;
    double number = kilometres ? metres / 1000.0 : metres;
    size = fabs(number);
    recede_buffer_number(out, number, size < 9.995 ? 2 : size < 99.95 ? 1 : 0);
    recede_buffer_text(out, kilometres ? " km" : " m");
}

static void add_air(recede_buffer *out, const recede_air *air)
{
    const char *haze = recede_words_haze(air->angstrom);
    recede_buffer_text(out, "visibility ");
    recede_words_distance(out, air->visibility_km * 1000.0);
    if (haze) {
        recede_buffer_format(out, strcmp(haze, "mist") == 0 || strcmp(haze, "dust") == 0
                                      ? ", %s" : ", %s haze", haze);
    } else {
        recede_buffer_text(out, ", haze of exponent ");
        recede_buffer_number(out, air->angstrom, 2);
    }
    if (air->mist_visibility_km > 0.0) {
        recede_buffer_text(out, ", mist up to ");
        recede_words_distance(out, air->mist_top_m);
        recede_buffer_text(out, " with visibility ");
        recede_words_distance(out, air->mist_visibility_km * 1000.0);
    }
    recede_buffer_text(out, ", eye at ");
    recede_words_distance(out, air->eye_m);
}

static void add_light(recede_buffer *out, const recede_sky *sky)
{
    recede_buffer_format(out, "; %s sky", recede_words_sky(sky->kind));
    if (sky->kind != RECEDE_SKY_CLEAR)
        return;
    recede_buffer_text(out, ", sun ");
    recede_buffer_number(out, sky->sun_height_deg, 1);
    recede_buffer_text(out, sky->sun_height_deg == 1.0 ? " degree high" : " degrees high");
    if (sky->sun_side_deg == 0.0) {
        recede_buffer_text(out, ", straight ahead");
    } else if (sky->sun_side_deg == 180.0) {
        recede_buffer_text(out, ", straight behind");
    } else {
        recede_buffer_text(out, ", ");
        recede_buffer_number(out, sky->sun_side_deg, 1);
        recede_buffer_text(out, " degrees to the side of the view");
    }
}

void recede_words_air_and_light(recede_buffer *out, const recede_scene *scene)
{
    add_air(out, &scene->air);
    add_light(out, &scene->sky);
}
