/* The head of a ladder: what is shown, and in which air. */
#include "text/words_ladder.h"

#include <math.h>
#include <string.h>

#include "text/words.h"
#include "text/words_ladder_parts.h"

static unsigned byte_of(double component)
{
    return (unsigned)fmin(255.0, fmax(0.0, floor(component * 255.0 + 0.5)));
}

/* "3 hansa yellow + 1 ultramarine blue + 2 water" */
static void add_mix(recede_buffer *out, const recede_mix *mix, const recede_scene *scene)
{
    for (int i = 0; i < mix->count; i++)
        recede_buffer_format(out, "%s%d %s", i ? " + " : "", mix->parts[i],
                             scene->paints[mix->paint[i]].name);
    if (mix->water <= 0.0)
        return;
    recede_buffer_text(out, " + ");
    recede_buffer_number(out, mix->water, 2);
    recede_buffer_text(out, " water");
}

void recede_words_own(recede_buffer *out, const recede_own *own, const recede_scene *scene)
{
    switch (own->kind) {
    case RECEDE_OWN_FOLIAGE:
    case RECEDE_OWN_SURFACE:
        recede_buffer_text(out, own->name);
        break;
    case RECEDE_OWN_COLOUR:
        recede_buffer_format(out, "#%02x%02x%02x", byte_of(own->srgb.r), byte_of(own->srgb.g),
                             byte_of(own->srgb.b));
        break;
    case RECEDE_OWN_MIX:
        add_mix(out, &own->mix, scene);
        break;
    default:
        recede_buffer_text(out, "a colour of your own");
    }
}

void recede_words_ladder_title(recede_buffer *out, const recede_ladder *ladder)
{
    if (recede_ladder_is_green(ladder) && recede_ladder_air_is_blue(ladder)) {
        recede_buffer_text(out, "Why far greens go pale and blue");
        return;
    }
    recede_buffer_text(out, "What the air does to ");
    recede_words_own(out, &ladder->wish.own, ladder->scene);
}

static void add_light(recede_buffer *out, const recede_sky *sky)
{
    recede_buffer_format(out, "%s sky", recede_words_sky(sky->kind));
    if (sky->kind != RECEDE_SKY_CLEAR)
        return;
    recede_buffer_text(out, ", sun ");
    recede_buffer_number(out, sky->sun_height_deg, 1);
    recede_buffer_text(out, " degrees high, ");
    recede_buffer_number(out, sky->sun_side_deg, 1);
    recede_buffer_text(out, " degrees to the side of the view");
}

void recede_words_ladder_subject(recede_buffer *out, const recede_ladder *ladder)
{
    size_t start = out->size, last = recede_ladder_last(ladder);
    recede_words_own(out, &ladder->wish.own, ladder->scene);
    recede_words_capital(out, start);
    recede_buffer_text(out, ", with ");
    recede_words_own(out, &ladder->wish.white, ladder->scene);
    recede_buffer_text(out, last ? " beside it, from " : " beside it, at ");
    recede_words_rung_distance(out, ladder, 0);
    if (last) {
        recede_buffer_text(out, " to ");
        recede_words_rung_distance(out, ladder, last);
    }
    recede_buffer_text(out, "; ");
    add_light(out, &ladder->scene->sky);
}

/* The limits are our own: about where painters say so. */
const char *recede_words_ladder_air(const recede_ladder *ladder, size_t air)
{
    static const double clear_km = 20.0, haze_km = 10.0;
    const double *km = ladder->wish.visibility_km;
    if (ladder->wish.air_count == 1)
        return km[0] >= clear_km ? "Clear air" : km[0] < haze_km ? "Haze" : "Air";
    if (air == 0)
        return km[0] >= clear_km ? "Clear air" : "Clearer air";
    return km[1] < haze_km && km[0] >= haze_km ? "Haze" : "Thicker air";
}

void recede_words_ladder_row(recede_buffer *out, const recede_ladder *ladder,
                             recede_ladder_row row)
{
    if (row == RECEDE_ROW_WHITE)
        recede_words_own(out, &ladder->wish.white, ladder->scene);
    else
        recede_buffer_text(out, row == RECEDE_ROW_LIT ? "lit side" : "shadow side");
}
