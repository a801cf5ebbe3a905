/* A scene whose palette is an object: what a palette file holds, in its place. Held to
 * the file with the same contents; all data are invented. */
#include "paint/recipes.h"
#include "plan/same_plan.h"
#include "text/files_in_memory.h"
#include "text/scene_read.h"
#include "text/scene_write.h"

static recede_scene scene, other; /* big: kept off the stack */

#define PLANES \
    "\"planes\":[{\"name\":\"bank\",\"distance\":30,\"mix\":{\"my green\":2,\"PY43\":1}}," \
    "{\"name\":\"oak\",\"distance\":400,\"foliage\":\"summer oak\"}," \
    "{\"name\":\"fell\",\"distance\":\"9 km\",\"surface\":\"rock\"}]"
#define SCENE(palette, more) \
    "{\"paint\":{\"palette\":" palette ",\"most_pigments\":2,\"most_parts\":5" more "},\n" \
    PLANES "}"

/* A pigment in the object, one in a file beside it, and names of the library. */
#define PAINTS \
    "\"paints\":[\"titanium white\",\"PB29\",\"yellow ochre\",\"earth.json\"," \
    "{\"name\":\"my green\",\"colour_index\":\"PG23\",\"caution\":\"a mask\"," \
    "\"k\":" BANDS("0.5") ",\"s\":" BANDS("0.25") "}]"
#define WATER_BOX "{\"purpose\":\"for the moor\",\"paper\":{\"lab\":[94.5,0.4,4.2]}," PAINTS "}"
#define OIL_BOX "{\"medium\":\"oil\",\"paper\":{\"reflectance\":" BANDS("0.4") "}," PAINTS "}"

static const test_file kept[] = {
    {"earth.json", PIGMENT("my earth", "2")},
    {"water.json", WATER_BOX},
    {"oil.json", OIL_BOX},
    {NULL, NULL},
};

static recede_text_status read_into(recede_scene *out, const char *text, recede_text_error *error)
{
    test_folder folder = {.files = kept};
    recede_files files = test_files(&folder);
    return recede_scene_read(text, strlen(text), &files, NULL, out, error);
}

static void must_read(recede_scene *out, const char *text)
{
    recede_text_error error;
    if (read_into(out, text, &error))
        fail_msg("%s:%zu:%zu: %s", error.file, error.line, error.column, error.what);
}

/* ---- the same as a file */

static recede_plan *plan_of(const recede_scene *of)
{
    recede_plan *plan = NULL;
    recede_error error;
    if (recede_plan_new(of, NULL, NULL, &plan, &error))
        fail_msg("no plan: code %d at %s", error.code, error.path);
    return plan;
}

static void assert_same_plans(const recede_plan *found, const recede_plan *expected)
{
    assert_int_equal(recede_plan_count(found), recede_plan_count(expected));
    for (size_t i = 0; i < recede_plan_count(expected); i++)
        assert_same_planned(recede_plan_at(found, i), recede_plan_at(expected, i));
    assert_same_side(recede_plan_sky(found), recede_plan_sky(expected));
}

static void an_object_plans_as_the_file_does(void **state)
{
    static const struct {
        const char *object, *file;
        recede_medium medium;
    } pairs[] = {
        {SCENE(WATER_BOX, ""), SCENE("\"water.json\"", ""), RECEDE_WATERCOLOUR},
        {SCENE(OIL_BOX, ""), SCENE("\"oil.json\"", ""), RECEDE_OIL},
        {SCENE(OIL_BOX, ",\"medium\":\"gouache\""),
         SCENE("\"oil.json\"", ",\"medium\":\"gouache\""), RECEDE_GOUACHE},
    };
    (void)state;
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
        must_read(&scene, pairs[i].object);
        must_read(&other, pairs[i].file);
        assert_int_equal(scene.medium, pairs[i].medium);
        assert_int_equal(scene.medium, other.medium);
        assert_int_equal(scene.shadows_over, other.shadows_over);
        assert_memory_equal(&scene.paper, &other.paper, sizeof scene.paper);
        assert_string_equal(scene.palette, "");
        recede_plan *found = plan_of(&scene), *expected = plan_of(&other);
        assert_same_plans(found, expected);
        recede_plan_free(found);
        recede_plan_free(expected);
    }
}

/* ---- what of it the scene takes */

static void its_paints_are_those_of_the_scene(void **state)
{
    static const char *const names[] = {"titanium white", "ultramarine blue", "yellow ochre",
                                        "my earth", "my green"};
    static const char *const files[] = {"", "", "", "earth.json", ""};
    (void)state;
    must_read(&scene, SCENE(WATER_BOX, ""));
    assert_int_equal(scene.paint_count, 5);
    for (size_t i = 0; i < 5; i++) {
        assert_string_equal(scene.paints[i].name, names[i]);
        assert_string_equal(scene.paints[i].file, files[i]);
    }
    assert_string_equal(scene.paints[4].colour_index, "PG23");
    assert_string_equal(scene.paints[4].caution, "a mask");
    assert_near(scene.paints[4].k.at[35], 0.5, 0);
    assert_near(scene.paints[3].k.at[0], 2, 0);
}

#define WITH(palette, before, after) \
    "{\"paint\":{" before "\"palette\":" palette after "}," PLANES "}"
#define ACRYLIC "\"medium\":\"acrylic\""

static void its_medium_gives_way_to_the_scenes_own(void **state)
{
    (void)state;
    must_read(&scene, SCENE(OIL_BOX, ""));
    assert_int_equal(scene.medium, RECEDE_OIL);
    assert_int_equal(scene.shadows_over, 0);
    must_read(&scene, WITH(OIL_BOX, ACRYLIC ",", ""));
    assert_int_equal(scene.medium, RECEDE_ACRYLIC);
    must_read(&scene, WITH(OIL_BOX, "", "," ACRYLIC));
    assert_int_equal(scene.medium, RECEDE_ACRYLIC);
    must_read(&scene, WITH(OIL_BOX, "", ",\"medium\":\"watercolour\""));
    assert_int_equal(scene.medium, RECEDE_WATERCOLOUR);
    assert_int_equal(scene.shadows_over, 1);
    must_read(&scene, SCENE(WATER_BOX, "")); /* neither gives one */
    assert_int_equal(scene.medium, RECEDE_WATERCOLOUR);
}

static void its_paper_is_the_ground(void **state)
{
    static const char bare[] = SCENE("{" PAINTS "}", "");
    recede_spectrum white = recede_paper_white();
    (void)state;
    must_read(&scene, SCENE(OIL_BOX, ""));
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(scene.paper.at[band], 0.4, 0);
    must_read(&scene, SCENE(WATER_BOX, ""));
    recede_lab lab = recede_lab_of_xyz(recede_xyz_of_reflectance(&scene.paper), recede_white());
    assert_near(lab.l, 94.5, 1e-6);
    assert_near(lab.a, 0.4, 1e-6);
    assert_near(lab.b, 4.2, 1e-6);
    must_read(&scene, bare);
    assert_memory_equal(&scene.paper, &white, sizeof white);
}

static void it_is_written_and_reads_back_the_same(void **state)
{
    static const char *const texts[] = {SCENE(WATER_BOX, ""), SCENE(OIL_BOX, ""),
                                        SCENE("{" PAINTS "}", "," ACRYLIC)};
    (void)state;
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        recede_buffer one, two;
        recede_buffer_start(&one, NULL);
        recede_buffer_start(&two, NULL);
        must_read(&scene, texts[i]);
        recede_scene_write(&scene, &one);
        must_read(&other, recede_buffer_string(&one));
        recede_scene_write(&other, &two);
        assert_string_equal(recede_buffer_string(&one), recede_buffer_string(&two));
        assert_int_equal(other.medium, scene.medium);
        assert_memory_equal(&other.paper, &scene.paper, sizeof scene.paper);
        assert_int_equal(other.paint_count, scene.paint_count);
        for (size_t p = 0; p < scene.paint_count; p++) {
            assert_string_equal(other.paints[p].name, scene.paints[p].name);
            assert_memory_equal(&other.paints[p].k, &scene.paints[p].k, sizeof scene.paints[p].k);
            assert_memory_equal(&other.paints[p].s, &scene.paints[p].s, sizeof scene.paints[p].s);
        }
        recede_buffer_free(&one);
        recede_buffer_free(&two);
    }
}

/* ---- what is refused */

/* The object begins in line 2, column 1. */
#define BROKEN(palette) "{\"paint\":{\"palette\":\n" palette "},\n" PLANES "}"
#define FIRST "\"paints\":[\"PB29\""

static const struct {
    const char *text;
    size_t line, column;
    const char *found, *instead; /* parts of the message */
} faults[] = {
    {BROKEN("{}"), 2, 1, "a palette has no \"paints\"", "add it: a list of 1 to 24 paints"},
    {BROKEN("{\"medium\":\"oil\",\n\"purpose\":\"a box\"}"), 2, 1, "no \"paints\"", "add it"},
    {BROKEN("{\"paints\":[]}"), 2, 11, "it is empty", "a list of 1 to 24 paints"},
    {BROKEN("{\"paints\":\"PB29\"}"), 2, 11, "PB29", "a list of 1 to 24 paints"},
    {BROKEN("{\"paints\":{\"PB29\":1}}"), 2, 11, "paints is an object", "a list of 1 to 24 paints"},
    {BROKEN("{" FIRST "],\n\"papre\":{}}"), 3, 1, "\"papre\" is not known in a palette",
     "did you mean \"paper\""},
    {BROKEN("{" FIRST "],\n\"palette\":\"b.json\"}"), 3, 1, "\"palette\" is not known in a palette",
     "the nearest known are \"paper\", \"paints\""},
    {BROKEN("{" FIRST "],\n\"most_parts\":4}"), 3, 1, "\"most_parts\" is not known in a palette",
     "\"paints\""},
    {BROKEN("{" FIRST ",\n \"ultramarine blue\"]}"), 3, 2, "stands twice in the palette",
     "keep one"},
    {BROKEN("{" FIRST ",\n {\"name\":\"PB29\",\"k\":[1]}]}"), 3, 21, "it holds 1", "36 numbers"},
    {BROKEN("{" FIRST ",\n " PIGMENT("Ultramarine Blue", "1") "]}"), 3, 2, "stands twice",
     "keep one"},
    {BROKEN("{" FIRST "],\n\"paints\":[\"PY43\"]}"), 3, 1, "\"paints\" a second time", "keep one"},
    {BROKEN("{" FIRST ",\n {\"name\":\"a\",\"k\":" BANDS("1") "}]}"), 3, 2,
     "a pigment has no \"s\"", "add it: 36 numbers"},
    {BROKEN("{" FIRST ",\n " PIGMENT("a", "-1") "]}"), 3, 19, "-1", "a number from 0"},
    {BROKEN("{" FIRST ",\n " PIGMENT("water", "1") "]}"), 3, 10, "thinned with", "another name"},
    {BROKEN("{" FIRST ",\n {\"name\":\"a\",\"kk\":3}]}"), 3, 14, "\"kk\" is not known in a pigment",
     "\"k\""},
    {BROKEN("{" FIRST ",\n 7]}"), 3, 2, "7", "the name of a paint in double quotes"},
    {BROKEN("{" FIRST ",\n \"ultramarin blue\"]}"), 3, 2, "\"ultramarin blue\" is not known",
     "did you mean"},
    {BROKEN("{" FIRST ",\n \"nix.json\"]}"), 3, 2, "nix.json", "put it there"},
    {BROKEN("{" FIRST ",\n \"water.json\"]}"), 1, 1, "a palette file where a pigment file",
     "add the other paints to the \"paints\" inside it"},
    {BROKEN("{" FIRST "],\n\"medium\":\"ink\"}"), 3, 10, "ink", "gouache"},
    {BROKEN("{" FIRST "],\n\"medium\":3}"), 3, 10, "3", "gouache"},
    {BROKEN("{" FIRST "],\n\"paper\":\"white\"}"), 3, 9, "white", "an object in braces"},
    {BROKEN("{" FIRST "],\n\"paper\":{}}"), 3, 9, "the paper has no colour",
     "add \"reflectance\", \"lab\" or \"colour\""},
    {BROKEN("{" FIRST "],\n\"purpose\":[]}"), 3, 11, "purpose is", "double quotes"},
    {BROKEN("[]"), 2, 1, "it is empty", "a list of at least one paint"},
    {BROKEN("7"), 2, 1, "palette is 7", "an object with what such a file holds"},
    {BROKEN("true"), 2, 1, "palette is true", "an object with what such a file holds"},
    {BROKEN("null"), 2, 1, "palette is null", "an object with what such a file holds"},
};

static void broken_objects_are_refused_at_their_place(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        recede_text_error error;
        if (!read_into(&scene, faults[i].text, &error))
            fail_msg("%s was not refused", faults[i].text);
        if (error.line != faults[i].line || error.column != faults[i].column ||
            !strstr(error.what, faults[i].found) || !strstr(error.what, faults[i].instead))
            fail_msg("%s: refused at %zu:%zu with '%s'; expected %zu:%zu, '%s' and '%s'",
                     faults[i].text, error.line, error.column, error.what, faults[i].line,
                     faults[i].column, faults[i].found, faults[i].instead);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_object_plans_as_the_file_does),
        cmocka_unit_test(its_paints_are_those_of_the_scene),
        cmocka_unit_test(its_medium_gives_way_to_the_scenes_own),
        cmocka_unit_test(its_paper_is_the_ground),
        cmocka_unit_test(it_is_written_and_reads_back_the_same),
        cmocka_unit_test(broken_objects_are_refused_at_their_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
