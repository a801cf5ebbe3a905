/* The value plan and wishes in words. Numbers here are invented. */
#include <cjson/cJSON.h>
#include <string.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/words.h"
#include "text/words_values.h"
#include "text/words_wish.h"

static recede_scene scene;
static recede_wish wish;
static recede_wish_answer answer;
static const recede_wish_told told = {&scene, &wish, &answer};

static void set_state(recede_wish_state *state, double visibility_km, double step)
{
    memset(state, 0, sizeof *state);
    state->visibility_km = visibility_km;
    state->sun_height_deg = 40;
    state->reached = step;
    state->at = 1;
    state->values.count = 2;
    state->values.horizon = 8.5;
    state->values.at[0] = (recede_plane_values){
        1, 7.5, 7.0, 0.3, 1.0, 1.5, 6, 7, RECEDE_APART_BY_VALUE, RECEDE_APART_BY_VALUE};
    state->values.at[1] = (recede_plane_values){
        0, 7.5 - step, 5.0, 0.8, step, 2.0, 1.12, 9, RECEDE_APART_BY_VALUE,
        RECEDE_APART_BY_VALUE};
    if (step < 0.5)
        state->values.at[1].apart = RECEDE_NOT_APART;
}

static int set_up(void **state)
{
    (void)state;
    recede_scene_default(&scene);
    scene.plane_count = 2;
    strcpy(scene.planes[0].name, "alder line");
    strcpy(scene.planes[1].name, "far ridge");
    wish = (recede_wish){.kind = RECEDE_WISH_STEPS, .value = 0.7};
    answer = (recede_wish_answer){.outcome = RECEDE_WISH_GRANTED, .change = 0.8};
    set_state(&answer.given, 25, 0.21);
    set_state(&answer.found, 11, 0.7);
    return 0;
}

static recede_buffer out;

static const char *sentence(void)
{
    recede_buffer_free(&out);
    recede_buffer_start(&out, NULL);
    recede_words_wish(&out, &told);
    return recede_buffer_string(&out);
}

static const char *table(void)
{
    recede_buffer_free(&out);
    recede_buffer_start(&out, NULL);
    recede_wish_table(&out, &told);
    return recede_buffer_string(&out);
}

static void a_granted_wish_names_the_change(void **state)
{
    (void)state;
    assert_string_equal(sentence(), "With visibility at 11 km instead of 25 km it is granted: the "
                                    "least step is 0.70, alder line against far ridge.");
    answer.found.sun_height_deg = 31;
    assert_string_equal(sentence(), "With visibility at 11 km instead of 25 km and the sun 31 "
                                    "degrees high instead of 40 it is granted: the least step is "
                                    "0.70, alder line against far ridge.");
    answer.found.visibility_km = 25;
    answer.found.shadow = 1;
    answer.found.at = 0;
    assert_string_equal(sentence(), "With the sun 31 degrees high instead of 40 it is granted: the "
                                    "least step is 0.70, far ridge against the sky on the shadow "
                                    "side.");
    wish.kind = RECEDE_WISH_VALUE;
    assert_non_null(strstr(sentence(), "granted: far ridge has value 0.70."));
}

static void what_holds_and_what_is_denied(void **state)
{
    (void)state;
    answer.outcome = RECEDE_WISH_HOLDS;
    assert_string_equal(sentence(), "The scene grants it as it stands: the least step is 0.21, "
                                    "alder line against far ridge.");
    answer.outcome = RECEDE_WISH_DENIED;
    set_state(&answer.found, 11, 0.58);
    assert_string_equal(sentence(), "No visibility from 0.2 to 250 km grants it. It comes nearest "
                                    "with visibility at 11 km instead of 25 km: the least step is "
                                    "0.58, alder line against far ridge, 0.12 short.");
    wish.move_sun = 1;
    assert_non_null(strstr(sentence(), ", with the sun from 1 to 90 degrees high, grants it."));
    answer.found = answer.given;
    answer.change = 0;
    assert_non_null(strstr(sentence(), "It is nearest as the scene stands: the least step is 0.21"));
}

static void the_table_shows_neighbours_and_what_remains(void **state)
{
    (void)state;
    const char *text = table();
    assert_non_null(strstr(text, "Wished: every plane at least 0.7 in value from what lies behind "
                                 "it, lit sides only, the sky"));
    assert_non_null(strstr(text, "alder line                6.8    +0.70  +0.21  by value"));
    assert_non_null(strstr(text, "Every plane then reads apart"));
    set_state(&answer.found, 11, -0.31);
    answer.outcome = RECEDE_WISH_DENIED;
    text = table();
    assert_non_null(strstr(text, "alder line                7.8    -0.31  +0.21  not apart"));
    assert_non_null(strstr(text, "What remains:\n- alder line and far ridge differ by 0.31 in value "
                                 "and 1.1 in colour on their lit sides:"));
    answer.found.values.at[1].apart_shadow = RECEDE_NOT_APART;
    assert_non_null(strstr(table(), "and 1.1 in colour: they will merge\n"));
    answer.found.values.at[1].apart = RECEDE_APART_BY_COLOUR;
    assert_non_null(strstr(table(), "- alder line and far ridge are nearer than wished\n"));
    answer.found.values.at[1].own_share = 0.01;
    assert_non_null(strstr(table(), "- alder line has gone into the air\n"));
    for (const char *line = table(); line; line = strchr(line, '\n')) {
        line += *line == '\n';
        assert_true(strcspn(line, "\n") <= 100);
    }
}

static const cJSON *get(const cJSON *object, const char *key)
{
    const cJSON *item = cJSON_GetObjectItemCaseSensitive(object, key);
    if (!item)
        fail_msg("no \"%s\"", key);
    return item;
}

static void the_json_says_what_the_answer_holds(void **state)
{
    (void)state;
    recede_buffer_free(&out);
    recede_buffer_start(&out, NULL);
    recede_wish_write(&out, &told);
    cJSON *json = cJSON_ParseWithLength(out.bytes, out.size);
    assert_non_null(json);
    assert_string_equal(get(json, "outcome")->valuestring, "granted");
    assert_near(get(json, "change")->valuedouble, 0.8, 0.0);
    const cJSON *found = get(json, "found"), *given = get(json, "given");
    assert_near(get(found, "visibility_km")->valuedouble, 11, 0.0);
    assert_near(get(given, "visibility_km")->valuedouble, 25, 0.0);
    assert_near(get(found, "reached")->valuedouble, 0.7, 0.0);
    assert_string_equal(get(found, "plane")->valuestring, "alder line");
    const cJSON *near = cJSON_GetArrayItem(get(found, "neighbours"), 1);
    assert_string_equal(get(near, "behind")->valuestring, "far ridge");
    assert_near(get(near, "value_step")->valuedouble, 0.7, 0.0);
    assert_near(get(near, "hue_step_shadow")->valuedouble, 9, 0.0);
    assert_null(cJSON_GetObjectItemCaseSensitive(
        cJSON_GetArrayItem(get(found, "neighbours"), 0), "behind"));
    cJSON_Delete(json);
    scene.sky.kind = RECEDE_SKY_OVERCAST;
    recede_buffer_free(&out);
    recede_buffer_start(&out, NULL);
    recede_wish_write(&out, &told);
    assert_null(strstr(out.bytes, "sun_height"));
}

/* A merge, with shadow sides that read apart and without. */
static void merging_says_what_to_do(void **state)
{
    (void)state;
    recede_warning warning = {.kind = RECEDE_WARN_MERGE, .plane = 0, .other = 1,
                              .number = {0.21, 1.12, 0}};
    static const struct { int other; double apart; const char *text; } cases[] = {
        {1, 0, "alder line and far ridge differ by 0.2 in value and 1.1 in colour: they will "
               "merge; let the edge go, or set one of them a step lighter"},
        {1, 1, "the lit sides of alder line and far ridge differ by 0.2 in value and 1.1 in "
               "colour: they will merge; let the shadow sides tell them apart"},
        {-1, 1, "the lit side of alder line and the sky differ by 0.2 in value and 1.1 in colour: "
                "they will merge; let the shadow side tell them apart"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        warning.other = cases[i].other;
        warning.number[2] = cases[i].apart;
        recede_buffer_free(&out);
        recede_buffer_start(&out, NULL);
        recede_words_warning(&out, &scene, &warning);
        assert_string_equal(recede_buffer_string(&out), cases[i].text);
    }
}

static void memory_may_run_out_anywhere(void **state)
{
    (void)state;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_buffer text;
        recede_buffer_start(&text, &allocator);
        recede_wish_table(&text, &told);
        recede_wish_write(&text, &told);
        int failed = text.failed;
        recede_buffer_free(&text);
        assert_int_equal(memory.live, 0);
        assert_int_equal(failed, memory.calls >= at);
        if (!failed)
            break;
    }
}

static int tear_down(void **state)
{
    (void)state;
    recede_buffer_free(&out);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_granted_wish_names_the_change, set_up, tear_down),
        cmocka_unit_test_setup_teardown(what_holds_and_what_is_denied, set_up, tear_down),
        cmocka_unit_test_setup_teardown(the_table_shows_neighbours_and_what_remains, set_up,
                                        tear_down),
        cmocka_unit_test_setup_teardown(the_json_says_what_the_answer_holds, set_up, tear_down),
        cmocka_unit_test_setup_teardown(merging_says_what_to_do, set_up, tear_down),
        cmocka_unit_test_setup_teardown(memory_may_run_out_anywhere, set_up, tear_down),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
