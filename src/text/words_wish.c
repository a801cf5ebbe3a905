#include "text/words_wish.h"

#include <math.h>

#include "text/columns.h"
#include "text/numbers.h"
#include "text/words.h"
#include "text/words_values.h"

enum { WIDTH = 100 };
static const double GONE = 0.02; /* of a plane's light; as the plan warns */

static void add_visibility(recede_buffer *out, double km)
{
    recede_words_distance(out, 1000.0 * km);
}

static const char *name_at(const recede_scene *scene, const recede_values *values, size_t at)
{
    return scene->planes[values->at[at].plane].name;
}

static const char *name_behind(const recede_scene *scene, const recede_values *values, size_t at)
{
    return at ? name_at(scene, values, at - 1) : "the sky";
}

/* "every plane at least 0.7 in value from what lies behind it" */
static void add_wish(recede_buffer *out, const recede_wish *wish)
{
    if (wish->kind == RECEDE_WISH_VALUE) {
        recede_buffer_format(out, "%s at value ", wish->plane);
        recede_buffer_number(out, wish->value, 2);
        recede_buffer_text(out, " on its lit side");
        return;
    }
    recede_buffer_text(out, "every plane at least ");
    recede_buffer_number(out, wish->value, 2);
    recede_buffer_text(out, " in value from what lies behind it, ");
    recede_buffer_text(out, wish->shadows ? "lit sides and shadow sides" : "lit sides only");
    recede_buffer_text(out, wish->without_sky ? ", the sky left out" : ", the sky included");
}

/* "the least step is 0.11, on the lit side of Long Scaur against the sky" */
static void add_reached(recede_buffer *out, const recede_wish_told *told,
                        const recede_wish_state *state)
{
    const char *name = name_at(told->scene, &state->values, state->at);
    if (told->wish->kind == RECEDE_WISH_VALUE) {
        recede_buffer_format(out, "%s has value ", name);
        recede_buffer_fixed(out, state->reached, 2);
        return;
    }
    recede_buffer_text(out, "the least step is ");
    recede_buffer_fixed(out, state->reached, 2);
    recede_buffer_format(out, ", %s against %s%s", name,
                         name_behind(told->scene, &state->values, state->at),
                         state->shadow ? " on the shadow side" : "");
}

/* "visibility at 11 km instead of 25 km and the sun 30 degrees high instead of 55" */
static void add_change(recede_buffer *out, const recede_wish_answer *answer)
{
    const recede_wish_state *found = &answer->found, *given = &answer->given;
    int clearer = found->visibility_km != given->visibility_km;
    if (clearer) {
        recede_buffer_text(out, "visibility at ");
        add_visibility(out, found->visibility_km);
        recede_buffer_text(out, " instead of ");
        add_visibility(out, given->visibility_km);
    }
    if (found->sun_height_deg != given->sun_height_deg) {
        recede_buffer_text(out, clearer ? " and the sun " : "the sun ");
        recede_buffer_number(out, found->sun_height_deg, 1);
        recede_buffer_text(out, found->sun_height_deg == 1.0 ? " degree high instead of "
                                                             : " degrees high instead of ");
        recede_buffer_number(out, given->sun_height_deg, 1);
    }
}

static void add_denial(recede_buffer *out, const recede_wish_told *told)
{
    const recede_wish_answer *answer = told->answer;
    recede_buffer_text(out, "No visibility from 0.2 to 250 km");
    if (told->wish->move_sun)
        recede_buffer_text(out, ", with the sun from 1 to 90 degrees high,");
    recede_buffer_text(out, " grants it. ");
    if (answer->change > 0.0) {
        recede_buffer_text(out, "It comes nearest with ");
        add_change(out, answer);
    } else {
        recede_buffer_text(out, "It is nearest as the scene stands");
    }
    recede_buffer_text(out, ": ");
    add_reached(out, told, &answer->found);
    recede_buffer_text(out, ", ");
    recede_buffer_fixed(out, fabs(told->wish->value - answer->found.reached), 2);
    recede_buffer_text(out, told->wish->kind == RECEDE_WISH_VALUE ? " away." : " short.");
}

void recede_words_wish(recede_buffer *out, const recede_wish_told *told)
{
    switch (told->answer->outcome) {
    case RECEDE_WISH_HOLDS:
        recede_buffer_text(out, "The scene grants it as it stands: ");
        add_reached(out, told, &told->answer->given);
        recede_buffer_text(out, ".");
        break;
    case RECEDE_WISH_GRANTED:
        recede_buffer_text(out, "With ");
        add_change(out, told->answer);
        recede_buffer_text(out, " it is granted: ");
        add_reached(out, told, &told->answer->found);
        recede_buffer_text(out, ".");
        break;
    default:
        add_denial(out, told);
    }
}

/* ---- the neighbours as a table */

enum { PLANE, VALUE, STEP, WAS, APART, SHADOW, SHADOW_STEP, SHADOW_WAS, SHADOW_APART, COLUMNS };
static const size_t widths[COLUMNS] = {24, 5, 5, 5, 9, 6, 5, 5, 9};
static const char *const headings[COLUMNS] = {"PLANE",  "LIT",  "STEP", "WAS",  "READS",
                                              "SHADOW", "STEP", "WAS",  "READS"};

/* A step with its sign, so that lighter and darker can be told. */
static void signed_step(char out[RECEDE_NUMBER_SIZE], double step)
{
    char number[RECEDE_NUMBER_SIZE];
    recede_number_fixed(number, fabs(step), 2);
    out[0] = step < -0.005 ? '-' : step > 0.005 ? '+' : ' ';
    for (size_t i = 0; i + 1 < RECEDE_NUMBER_SIZE && (out[i + 1] = number[i]); i++) {}
}

static void add_neighbour(recede_buffer *out, const recede_wish_told *told, size_t at)
{
    const recede_plane_values *now = &told->answer->found.values.at[at];
    const recede_plane_values *was = &told->answer->given.values.at[at];
    char number[6][RECEDE_NUMBER_SIZE];
    recede_number_fixed(number[0], now->lit, 1);
    signed_step(number[1], now->value_step);
    signed_step(number[2], was->value_step);
    recede_number_fixed(number[3], now->shadow, 1);
    signed_step(number[4], now->value_step_shadow);
    signed_step(number[5], was->value_step_shadow);
    const char *cells[COLUMNS] = {
        name_at(told->scene, &told->answer->found.values, at),
        number[0], number[1], number[2], recede_words_apart(now->apart),
        number[3], number[4], number[5], recede_words_apart(now->apart_shadow)};
    recede_columns_row(out, cells, widths, COLUMNS);
}

static void add_neighbours(recede_buffer *out, const recede_wish_told *told)
{
    recede_columns_row(out, headings, widths, COLUMNS);
    char horizon[RECEDE_NUMBER_SIZE];
    recede_number_fixed(horizon, told->answer->found.values.horizon, 1);
    const char *sky[COLUMNS] = {"sky at the horizon", horizon, "", "", "", "", "", "", ""};
    recede_columns_row(out, sky, widths, COLUMNS);
    for (size_t i = 0; i < told->answer->found.values.count; i++)
        add_neighbour(out, told, i);
    recede_buffer_text(out, "\n");
    recede_columns_text(out, "A step is the value of what lies behind less the plane's own: with "
                             "a minus the plane is the lighter. WAS: in the scene as given. "
                             "Values are as seen, their darks fitted to the paints; no mixes are "
                             "sought, so what a study has as PAINTED may be some tenths off.",
                        WIDTH, 0);
}

/* ---- what remains */

static int falls_short(const recede_wish_told *told, size_t at)
{
    const recede_wish *wish = told->wish;
    const recede_plane_values *v = &told->answer->found.values.at[at];
    double least = wish->value - 0.01;
    if (wish->kind != RECEDE_WISH_STEPS || (at == 0 && wish->without_sky))
        return 0;
    return fabs(v->value_step) < least || (wish->shadows && fabs(v->value_step_shadow) < least);
}

static void add_pair(recede_buffer *out, const recede_wish_told *told, size_t at)
{
    const recede_values *values = &told->answer->found.values;
    recede_buffer_format(out, "- %s and %s ", name_at(told->scene, values, at),
                         name_behind(told->scene, values, at));
}

/* One plane's trouble, the gravest only; 1 where there is any. */
static int add_remaining(recede_buffer *out, const recede_wish_told *told, size_t at)
{
    const recede_values *values = &told->answer->found.values;
    const recede_plane_values *v = &values->at[at];
    if (v->own_share < GONE) {
        recede_buffer_format(out, "- %s has gone into the air", name_at(told->scene, values, at));
        return 1;
    }
    if (v->apart == RECEDE_NOT_APART) {
        add_pair(out, told, at);
        recede_buffer_text(out, "differ by ");
        recede_buffer_fixed(out, fabs(v->value_step), 2);
        recede_buffer_text(out, " in value and ");
        recede_buffer_fixed(out, v->hue_step, 1);
        recede_buffer_text(out, v->apart_shadow == RECEDE_NOT_APART
                                    ? " in colour: they will merge"
                                    : " in colour on their lit sides: only their shadow sides "
                                      "read apart");
        return 1;
    }
    if (falls_short(told, at)) {
        add_pair(out, told, at);
        recede_buffer_text(out, "are nearer than wished");
        return 1;
    }
    return 0;
}

static void add_remains(recede_buffer *out, const recede_wish_told *told)
{
    int any = 0;
    for (size_t i = 0; i < told->answer->found.values.count; i++) {
        recede_buffer line;
        recede_buffer_start(&line, out->allocator);
        if (add_remaining(&line, told, i)) {
            if (!any)
                recede_buffer_text(out, "\nWhat remains:\n");
            recede_columns_text(out, recede_buffer_string(&line), WIDTH, 2);
            any = 1;
        }
        out->failed |= line.failed;
        recede_buffer_free(&line);
    }
    if (!any)
        recede_buffer_text(out, "\nEvery plane then reads apart from what lies behind it.\n");
}

static void add_paragraph(recede_buffer *out, const recede_wish_told *told, const char *lead,
                          void (*add)(recede_buffer *, const recede_wish_told *))
{
    recede_buffer words;
    recede_buffer_start(&words, out->allocator);
    recede_buffer_text(&words, lead);
    add(&words, told);
    recede_columns_text(out, recede_buffer_string(&words), WIDTH, 0);
    out->failed |= words.failed;
    recede_buffer_free(&words);
}

static void add_wish_and_standing(recede_buffer *out, const recede_wish_told *told)
{
    add_wish(out, told->wish);
    recede_buffer_text(out, ".");
    if (told->answer->outcome == RECEDE_WISH_HOLDS)
        return;
    recede_buffer_text(out, " As given, ");
    add_reached(out, told, &told->answer->given);
    recede_buffer_text(out, ".");
}

void recede_wish_table(recede_buffer *out, const recede_wish_told *told)
{
    add_paragraph(out, told, "Wished: ", add_wish_and_standing);
    add_paragraph(out, told, "", recede_words_wish);
    recede_buffer_text(out, "\n");
    add_neighbours(out, told);
    add_remains(out, told);
}
