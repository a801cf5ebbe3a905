#include "text/json.h"
#include "text/words_values.h"
#include "text/words_wish.h"

static void write_wish(recede_json *json, const recede_wish *wish)
{
    int steps = wish->kind == RECEDE_WISH_STEPS;
    recede_json_object(json, "wish");
    recede_json_string(json, "kind", steps ? "steps" : "value");
    if (!steps)
        recede_json_string(json, "plane", wish->plane);
    recede_json_number(json, "value", wish->value);
    if (steps) {
        recede_json_bool(json, "shadows", wish->shadows);
        recede_json_bool(json, "sky", !wish->without_sky);
    }
    recede_json_bool(json, "sun", wish->move_sun);
    recede_json_end_object(json);
}

static void write_neighbour(recede_json *json, const recede_scene *scene,
                            const recede_values *values, size_t at)
{
    const recede_plane_values *v = &values->at[at];
    recede_json_object(json, NULL);
    recede_json_string(json, "plane", scene->planes[v->plane].name);
    if (at)
        recede_json_string(json, "behind", scene->planes[values->at[at - 1].plane].name);
    recede_json_number(json, "value", v->lit);
    recede_json_number(json, "value_shadow", v->shadow);
    recede_json_number(json, "own_share", v->own_share);
    recede_json_number(json, "value_step", v->value_step);
    recede_json_number(json, "value_step_shadow", v->value_step_shadow);
    recede_json_number(json, "hue_step", v->hue_step);
    recede_json_number(json, "hue_step_shadow", v->hue_step_shadow);
    recede_json_string(json, "apart", recede_words_apart(v->apart));
    recede_json_string(json, "apart_shadow", recede_words_apart(v->apart_shadow));
    recede_json_end_object(json);
}

static void write_state(recede_json *json, const char *key, const recede_scene *scene,
                        const recede_wish_state *state)
{
    const recede_values *values = &state->values;
    recede_json_object(json, key);
    recede_json_number(json, "visibility_km", state->visibility_km);
    if (scene->sky.kind == RECEDE_SKY_CLEAR)
        recede_json_number(json, "sun_height_deg", state->sun_height_deg);
    recede_json_number(json, "reached", state->reached);
    recede_json_string(json, "plane", scene->planes[values->at[state->at].plane].name);
    recede_json_string(json, "side", state->shadow ? "shadow" : "lit");
    recede_json_number(json, "horizon", values->horizon);
    recede_json_array(json, "neighbours");
    for (size_t i = 0; i < values->count; i++)
        write_neighbour(json, scene, values, i);
    recede_json_end_array(json);
    recede_json_end_object(json);
}

void recede_wish_write(recede_buffer *out, const recede_wish_told *told)
{
    static const char *const outcomes[] = {"holds", "granted", "denied"};
    recede_json json;
    recede_buffer sentence;
    recede_buffer_start(&sentence, out->allocator);
    recede_words_wish(&sentence, told);
    out->failed |= sentence.failed;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    write_wish(&json, told->wish);
    recede_json_string(&json, "outcome", outcomes[told->answer->outcome]);
    recede_json_string(&json, "sentence", recede_buffer_string(&sentence));
    recede_json_number(&json, "change", told->answer->change);
    write_state(&json, "given", told->scene, &told->answer->given);
    write_state(&json, "found", told->scene, &told->answer->found);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
    recede_buffer_free(&sentence);
}
