/* Recipes for one colour as JSON. */
#include "text/match_write.h"

#include "text/plan_write.h"
#include "text/words.h"
#include "text/words_match.h"

static void write_paint(recede_json *json, const recede_match_told *told)
{
    recede_json_object(json, "paint");
    recede_json_string(json, "medium",
                       recede_words_medium(recede_palette_medium(told->palette)));
    recede_json_array(json, "palette");
    for (size_t i = 0; i < recede_palette_count(told->palette); i++)
        recede_json_string(json, NULL, recede_palette_paint(told->palette, i)->name);
    recede_json_end_array(json);
    recede_json_whole(json, "most_pigments", told->rules->most_pigments);
    recede_json_whole(json, "most_parts", told->rules->most_parts);
    recede_json_number(json, "tie", told->rules->tie);
    recede_json_end_object(json);
}

static void write_lamp(recede_json *json, const recede_matches *matches)
{
    recede_json_object(json, "lamp_light");
    recede_json_string(json, "illuminant", "A");
    recede_json_string(json, "adaptation", "CAT16");
    recede_colour_write(json, "colour", &matches->by_lamp, NULL);
    recede_json_number(json, "stand_in_delta_e", matches->target.delta_e);
    recede_json_end_object(json);
}

static void write_recipe(recede_json *json, const recede_match_told *told, recede_match_kind kind)
{
    const recede_match_recipe *match = &told->matches->of[kind];
    recede_json_object(json, recede_words_match_key(kind));
    const recede_wet_look wet = recede_wet_look_of(told->palette, &match->recipe.mix, NULL);
    int water = recede_medium_takes_water(recede_palette_medium(told->palette));
    recede_mix_colour_write(json, &match->recipe.colour, water ? &wet : NULL);
    recede_mix_write(json, told->palette, &match->recipe.mix);
    recede_json_number(json, "delta_e", match->recipe.delta_e);
    recede_json_number(json, "slip", match->recipe.slip);
    recede_json_string(json, "reachable", recede_words_reach(match->recipe.reach));
    recede_colour_write(json, "by_lamp", &match->by_lamp, NULL);
    recede_json_number(json, "lamp_delta_e", match->lamp_delta_e);
    recede_json_end_object(json);
}

static void write_addition(recede_json *json, const recede_addition *addition)
{
    if (!addition || !addition->pigment)
        return;
    recede_json_object(json, "addition");
    recede_json_string(json, "pigment", addition->pigment->name);
    recede_json_string(json, "colour_index", addition->pigment->colour_index);
    recede_json_number(json, "delta_e", addition->delta_e);
    recede_json_end_object(json);
}

static void write_let_down(recede_json *json, const recede_addition *addition)
{
    if (!addition || !addition->let_down)
        return;
    recede_json_object(json, "let_down");
    recede_json_string(json, "paint", addition->let_down->name);
    recede_json_number(json, "delta_e", addition->let_down_delta_e);
    recede_json_end_object(json);
}

void recede_match_write(const recede_match_told *told, recede_buffer *out)
{
    recede_json json;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    recede_colour_write(&json, "target", &told->target, NULL);
    write_paint(&json, told);
    recede_json_whole(&json, "within_tie", (long)told->matches->within_tie);
    write_lamp(&json, told->matches);
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++)
        write_recipe(&json, told, (recede_match_kind)kind);
    write_addition(&json, told->addition);
    write_let_down(&json, told->addition);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}
