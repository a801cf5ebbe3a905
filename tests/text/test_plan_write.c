/* The plan's JSON, read by cJSON and held against the plan itself. */
#include <cjson/cJSON.h>

#include "support/allocator.h"
#include "text/plan_write.h"
#include "text/plans.h"
#include "text/words.h"

static const cJSON *get(const cJSON *object, const char *key)
{
    const cJSON *item = cJSON_GetObjectItemCaseSensitive(object, key);
    if (!item)
        fail_msg("no \"%s\"", key);
    return item;
}

static void assert_number(const cJSON *object, const char *key, double expected)
{
    assert_near(get(object, key)->valuedouble, expected, 0.0);
}

static void assert_numbers(const cJSON *list, const double *expected, int count)
{
    assert_int_equal(cJSON_GetArraySize(list), count);
    for (int i = 0; i < count; i++)
        assert_near(cJSON_GetArrayItem(list, i)->valuedouble, expected[i], 0.0);
}

static void check_colour(const cJSON *json, const recede_colour *colour)
{
    assert_numbers(get(json, "lab"), &colour->lab.l, 3);
    assert_numbers(get(json, "lch"), &colour->lch.l, 3);
    assert_numbers(get(json, "srgb"), &colour->srgb.r, 3);
    assert_number(json, "value", colour->value);
}

static void check_recipe(const cJSON *json, const recede_plan *plan, const recede_mix *mix)
{
    const cJSON *pigments = get(json, "pigments");
    const recede_palette *palette = recede_plan_palette(plan);
    int watercolour = recede_palette_medium(palette) == RECEDE_WATERCOLOUR;
    assert_int_equal(cJSON_GetArraySize(pigments), mix->count);
    for (int i = 0; i < mix->count; i++) {
        const cJSON *pigment = cJSON_GetArrayItem(pigments, i);
        const recede_paint *paint = recede_palette_paint(palette, (size_t)mix->paint[i]);
        assert_string_equal(get(pigment, "name")->valuestring, paint->name);
        assert_string_equal(get(pigment, "colour_index")->valuestring, paint->colour_index);
        assert_number(pigment, "parts", mix->parts[i]);
        const cJSON *made_of = cJSON_GetObjectItemCaseSensitive(pigment, "made_of");
        int is_tube = strcmp(paint->name, "sap green") == 0 || paint->let_down;
        assert_int_equal(cJSON_GetArraySize(made_of), is_tube ? paint->ingredients : 0);
        assert_int_equal(cJSON_HasObjectItem(pigment, "let_down"), paint->let_down);
    }
    assert_int_equal(cJSON_HasObjectItem(json, "film"), watercolour);
    assert_int_equal(cJSON_HasObjectItem(json, "water_per_paint"), watercolour && mix->count);
    if (watercolour && mix->count) {
        assert_number(json, "water_per_paint", mix->water);
        assert_near(get(json, "paint_fraction")->valuedouble, 1 / (1 + mix->water), 1e-15);
        assert_near(get(json, "film")->valuedouble, 8 / (1 + mix->water), 1e-14);
    }
}

/* Darker by no more than the surface's 1.5 % can make it; in watercolour alone. */
static void check_wet(const cJSON *mix, const recede_plan *plan, const recede_wash *wash)
{
    const cJSON *wet = cJSON_GetObjectItemCaseSensitive(mix, "wet");
    int watercolour =
        recede_palette_medium(recede_plan_palette(plan)) == RECEDE_WATERCOLOUR;
    assert_int_equal(wet != NULL, watercolour);
    if (!wet)
        return;
    double l = get(wet, "lab")->child->valuedouble, dry = wash->recipe.colour.lab.l;
    recede_lab lab = {l, get(wet, "lab")->child->next->valuedouble,
                      get(wet, "lab")->child->next->next->valuedouble};
    recede_xyz xyz = recede_xyz_of_lab(lab, recede_white());
    if (wash->recipe.mix.count == 0)
        assert_near(l, dry, 1e-9);
    else
        assert_true(l < dry && xyz.y > wash->recipe.colour.xyz.y - 0.015);
    recede_colour colour = recede_colour_of_xyz(xyz);
    assert_near(get(wet, "srgb")->child->valuedouble, colour.srgb.r, 1e-9);
    assert_int_equal(cJSON_GetArraySize(wet), 2);
}

static void check_wash(const cJSON *json, const recede_plan *plan, const recede_wash *wash)
{
    check_colour(get(json, "target"), &wash->target);
    check_colour(get(json, "mix"), &wash->recipe.colour);
    assert_number(get(json, "target"), "value_as_seen", wash->value_as_seen);
    check_wet(get(json, "mix"), plan, wash);
    assert_number(json, "own_share", wash->own_share);
    assert_string_equal(get(json, "ground")->valuestring, recede_words_ground(wash->ground));
    check_recipe(get(json, "recipe"), plan, &wash->recipe.mix);
    assert_number(json, "delta_e", wash->recipe.delta_e);
    assert_number(json, "slip", wash->recipe.slip);
    assert_string_equal(get(json, "reachable")->valuestring,
                        recede_words_reach(wash->recipe.reach));
}

static void check_side(const cJSON *json, const recede_plan *plan, const recede_side *side)
{
    if (side->graded) {
        check_wash(get(json, "crest"), plan, &side->crest);
        check_wash(get(json, "base"), plan, &side->base);
        assert_number(json, "half_delta_e", side->half_delta_e);
        assert_int_equal(cJSON_IsTrue(get(json, "two_washes")), side->two_washes);
    } else {
        check_wash(json, plan, &side->crest);
    }
}

static void check_plan(const recede_plan *plan)
{
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_plan_write(plan, &out);
    cJSON *json = cJSON_ParseWithLength(out.bytes, out.size);
    assert_non_null(json);
    const cJSON *planes = get(json, "planes"), *warnings = get(json, "warnings");
    const recede_scene *scene = recede_plan_scene(plan);
    assert_int_equal(cJSON_GetArraySize(planes), recede_plan_count(plan));
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const cJSON *plane = cJSON_GetArrayItem(planes, (int)i);
        const recede_planned *planned = recede_plan_at(plan, i);
        assert_string_equal(get(plane, "name")->valuestring, scene->planes[planned->plane].name);
        assert_number(plane, "distance_m", scene->planes[planned->plane].distance_m);
        check_side(get(plane, "lit"), plan, &planned->lit);
        check_side(get(plane, "shadow"), plan, &planned->shadow);
        assert_string_equal(get(plane, "edge")->valuestring, recede_words_edge(planned->edge));
        assert_number(plane, "value_step", planned->value_step);
        assert_number(plane, "value_step_shadow", planned->value_step_shadow);
        assert_number(plane, "colour_step", planned->colour_step);
    }
    const recede_side *sky = recede_plan_sky(plan);
    check_wash(cJSON_GetArrayItem(get(json, "sky"), 0), plan,
               sky->graded ? &sky->base : &sky->crest);
    check_wash(cJSON_GetArrayItem(get(json, "sky"), 1), plan, &sky->crest);
    assert_int_equal(cJSON_GetArraySize(warnings), recede_plan_warning_count(plan));
    const cJSON *paint = get(json, "paint");
    assert_numbers(get(paint, "paper"), scene->paper.at, RECEDE_BANDS);
    assert_int_equal(cJSON_GetArraySize(get(paint, "palette")), scene->paint_count);
    assert_numbers(get(get(json, "air"), "haze_per_km"),
                   recede_plan_atmosphere(plan)->haze_per_km.at, RECEDE_BANDS);
    assert_numbers(get(get(json, "light"), "lit"), recede_plan_light(plan)->lit.at, RECEDE_BANDS);
    cJSON_Delete(json);
    recede_buffer_free(&out);
}

static void the_json_says_what_the_plan_holds(void **state)
{
    const char *const scenes[] = {test_watercolour, test_oil};
    (void)state;
    for (int i = 0; i < 2; i++) {
        recede_plan *plan = test_plan(scenes[i]);
        check_plan(plan);
        recede_plan_free(plan);
    }
}

static void the_test_scene_is_worth_testing(void **state)
{
    recede_plan *plan = test_plan(test_watercolour);
    int graded = 0;
    (void)state;
    for (size_t i = 0; i < recede_plan_count(plan); i++)
        graded += recede_plan_at(plan, i)->lit.graded;
    assert_true(graded > 0);
    assert_true(recede_plan_warning_count(plan) > 2);
    recede_plan_free(plan);
}

static void the_scene_inside_plans_to_the_same_bytes(void **state)
{
    const char *const scenes[] = {test_watercolour, test_oil};
    (void)state;
    for (int i = 0; i < 2; i++) {
        recede_plan *plan = test_plan(scenes[i]);
        recede_buffer first, second;
        recede_buffer_start(&first, NULL);
        recede_buffer_start(&second, NULL);
        recede_plan_write(plan, &first);
        recede_plan_free(plan);
        cJSON *json = cJSON_ParseWithLength(first.bytes, first.size);
        char *inside = cJSON_Print(get(json, "scene"));
        plan = test_plan(inside);
        recede_plan_write(plan, &second);
        recede_plan_free(plan);
        assert_string_equal(first.bytes, second.bytes);
        cJSON_free(inside);
        cJSON_Delete(json);
        recede_buffer_free(&first);
        recede_buffer_free(&second);
    }
}

static void opaque_plans_speak_of_no_water(void **state)
{
    recede_plan *plan = test_plan(test_oil);
    recede_buffer out;
    (void)state;
    recede_buffer_start(&out, NULL);
    recede_plan_write(plan, &out);
    assert_null(strstr(out.bytes, "water"));
    recede_buffer_free(&out);
    recede_plan_table(plan, &out);
    assert_null(strstr(out.bytes, "water"));
    assert_non_null(strstr(out.bytes, "titanium white"));
    recede_buffer_free(&out);
    recede_plan_free(plan);
}

static void memory_may_run_out_anywhere(void **state)
{
    recede_plan *plan = test_plan(test_watercolour);
    (void)state;
    for (size_t at = 1, failures = 0;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_buffer out;
        recede_buffer_start(&out, &allocator);
        recede_plan_write(plan, &out);
        recede_plan_table(plan, &out);
        failures += (size_t)out.failed;
        int failed = out.failed;
        recede_buffer_free(&out);
        assert_int_equal(memory.live, 0);
        if (!failed) {
            assert_true(memory.calls < at); /* the failure was never reached */
            assert_int_equal(failures, at - 1);
            break;
        }
    }
    recede_plan_free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_json_says_what_the_plan_holds),
        cmocka_unit_test(the_test_scene_is_worth_testing),
        cmocka_unit_test(the_scene_inside_plans_to_the_same_bytes),
        cmocka_unit_test(opaque_plans_speak_of_no_water),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
