/* Scenes: each field read as the format's description has it, every fault
 * refused at its place, and what is written reads back the same. */
#include <stdlib.h>
#include <string.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/scene_read.h"
#include "text/scene_write.h"

static recede_scene scene, again; /* big */

static recede_text_status read_text(const char *text, recede_scene *out, recede_text_error *error)
{
    memset(error, 0, sizeof *error);
    return recede_scene_read(text, strlen(text), NULL, NULL, out, error);
}

static void read_good(const char *text)
{
    recede_text_error error;
    if (read_text(text, &scene, &error))
        fail_msg("%s was refused: %zu:%zu: %s", text, error.line, error.column, error.what);
}

#define OAK "{\"name\":\"oak\",\"distance\":400,\"foliage\":\"summer oak\"}"
#define WITH(members) "{" members ",\"planes\":[" OAK "]}"

static void every_field_arrives(void **state)
{
    (void)state;
    read_good("{\"title\":\"Tarn\","
              "\"air\":{\"visibility\":\"18 km\",\"haze\":\"dust\",\"eye\":\"40 m\","
              "        \"mist\":{\"visibility\":300,\"top\":\"60 m\"}},"
              "\"light\":{\"sky\":\"clear\",\"sun_height\":\"2 fists\",\"sun_side\":\"into\"},"
              "\"paint\":{\"palette\":\"landscape-six\",\"medium\":\"watercolour\","
              "          \"most_pigments\":2,\"most_parts\":5,\"tie\":0.5,"
              "          \"shadows\":\"beside\"},"
              "\"paper\":{\"width\":\"15 in\",\"height\":\"28 cm\"},"
              "\"picture\":{\"sky_value\":9,\"adaptation\":0.6,\"darks\":\"as seen\"},"
              "\"planes\":["
              " {\"name\":\"far ridge\",\"distance\":\"9 km\",\"base\":\"120 m\",\"crest\":380,"
              "  \"share\":0.25,\"surface\":\"rock\"}," OAK "]}");
    assert_string_equal(scene.title, "Tarn");
    assert_near(scene.air.visibility_km, 18.0, 0.0);
    assert_near(scene.air.angstrom, 0.5, 0.0);
    assert_near(scene.air.eye_m, 40.0, 0.0);
    assert_near(scene.air.mist_visibility_km, 0.3, 0.0);
    assert_near(scene.air.mist_top_m, 60.0, 0.0);
    assert_int_equal(scene.sky.kind, RECEDE_SKY_CLEAR);
    assert_near(scene.sky.sun_height_deg, 20.0, 0.0);
    assert_near(scene.sky.sun_side_deg, 0.0, 0.0);
    assert_string_equal(scene.palette, "landscape-six");
    assert_int_equal(scene.paint_count, 6);
    assert_int_equal(scene.rules.most_pigments, 2);
    assert_int_equal(scene.rules.most_parts, 5);
    assert_near(scene.rules.tie, 0.5, 0.0);
    assert_int_equal(scene.shadows_over, 0);
    assert_near(scene.paper_width_m, 0.381, 0.0);
    assert_near(scene.paper_height_m, 0.28, 0.0);
    assert_near(scene.sky_value, 9.0, 0.0);
    assert_near(scene.adaptation, 0.6, 0.0);
    assert_int_equal(scene.darks_fitted, 0);
    assert_int_equal(scene.plane_count, 2);
    assert_string_equal(scene.planes[0].name, "oak"); /* nearest first */
    assert_string_equal(scene.planes[1].name, "far ridge");
    assert_near(scene.planes[1].distance_m, 9000.0, 0.0);
    assert_near(scene.planes[1].base_m, 120.0, 0.0);
    assert_near(scene.planes[1].crest_m, 380.0, 0.0);
    assert_near(scene.planes[1].share, 0.25, 0.0);
    assert_int_equal(scene.planes[1].own.kind, RECEDE_OWN_SURFACE);
    assert_string_equal(scene.planes[1].own.name, "rock");
    assert_memory_equal(&scene.planes[0].own.reflectance,
                        &recede_foliage_named("summer oak")->reflectance, sizeof(recede_spectrum));
}

static void own_colours_have_their_colour(void **state)
{
    recede_lab lab;
    (void)state;
    read_good("{\"planes\":[{\"name\":\"a\",\"distance\":1,\"colour\":\"#7A8b40\"},"
              "{\"name\":\"b\",\"distance\":2,\"lab\":[40,-10.5,20]}]}");
    lab = recede_lab_of_xyz(recede_xyz_of_reflectance(&scene.planes[0].own.reflectance),
                            recede_white());
    recede_srgb srgb = {0x7a / 255.0, 0x8b / 255.0, 0x40 / 255.0};
    assert_below(recede_delta_e(lab, recede_lab_of_xyz(recede_xyz_of_srgb(srgb), recede_white())),
                 0.1);
    lab = recede_lab_of_xyz(recede_xyz_of_reflectance(&scene.planes[1].own.reflectance),
                            recede_white());
    assert_below(recede_delta_e(lab, (recede_lab){40, -10.5, 20}), 0.1);
}

static void a_painted_sky_takes_two_colours(void **state)
{
    (void)state;
    read_good(WITH("\"light\":{\"sky\":\"painted\",\"horizon\":\"#e8c9a0\","
                   "\"light\":\"#fff2dc\"}"));
    recede_srgb srgb =
        recede_srgb_of_xyz(recede_xyz_of_reflectance(&scene.sky.horizon_colour));
    assert_near(srgb.r, 0xe8 / 255.0, 0.002);
    assert_near(srgb.g, 0xc9 / 255.0, 0.002);
    assert_near(srgb.b, 0xa0 / 255.0, 0.002);
    srgb = recede_srgb_of_xyz(recede_xyz_of_reflectance(&scene.sky.light_colour));
    assert_near(srgb.b, 0xdc / 255.0, 0.002);
}

static void opaque_media_take_the_palette_with_white(void **state)
{
    int whites = 0;
    (void)state;
    read_good(WITH("\"paint\":{\"medium\":\"gouache\"}"));
    assert_int_equal(scene.medium, RECEDE_GOUACHE);
    for (size_t i = 0; i < scene.paint_count; i++)
        whites += scene.paints[i].is_white;
    assert_int_equal(whites, 1);
}

static void a_palette_may_be_a_list(void **state)
{
    (void)state;
    read_good(WITH("\"paint\":{\"palette\":[\"PB29\",\"Hansa Yellow\",\"sap green\"]}"));
    assert_string_equal(scene.palette, "");
    assert_int_equal(scene.paint_count, 3);
    assert_string_equal(scene.paints[0].name, "ultramarine blue");
    assert_string_equal(scene.paints[1].name, "hansa yellow");
    assert_true(scene.paints[2].ingredients > 1);
}

/* docs/scene.md: level with the eye; where one height is given, the other is
 * the eye's, or the same where that would be the wrong way round. */
static void heights_left_open_follow_the_eye(void **state)
{
    static const double expected[][2] = {{40, 40}, {40, 100}, {30, 30}, {10, 40}, {50, 50}};
    (void)state;
    read_good("{\"air\":{\"eye\":40},\"planes\":["
              "{\"name\":\"a\",\"distance\":1,\"foliage\":\"willow\"},"
              "{\"name\":\"b\",\"distance\":2,\"foliage\":\"willow\",\"crest\":100},"
              "{\"name\":\"c\",\"distance\":3,\"foliage\":\"willow\",\"crest\":30},"
              "{\"name\":\"d\",\"distance\":4,\"foliage\":\"willow\",\"base\":10},"
              "{\"name\":\"e\",\"distance\":5,\"foliage\":\"willow\",\"base\":50}]}");
    for (int i = 0; i < 5; i++) {
        assert_near(scene.planes[i].base_m, expected[i][0], 0.0);
        assert_near(scene.planes[i].crest_m, expected[i][1], 0.0);
    }
}

/* ---- faults */

typedef struct {
    const char *text;
    size_t line, column;
    const char *says[2];
} fault;

#define PLANE(rest) "{\"planes\":[{\"name\":\"a\"," rest "}]}"

static const fault faults[] = {
    {"", 1, 1, {"empty", "expected"}},
    {"[]", 1, 1, {"list", "the scene as an object"}},
    {"{}", 1, 1, {"\"planes\"", "add it"}},
    {"{\"planes\":[]}", 1, 11, {"empty", "1 to 64"}},
    {"{\"planes\":{}}", 1, 11, {"object", "a list of 1 to 64 planes"}},
    {"{\"planes\":[7]}", 1, 12, {"7", "a plane"}},
    {"{\"plains\":[" OAK "]}", 1, 2, {"\"plains\"", "\"planes\"?"}},
    {WITH("\"air\":{\"visability\":1}"), 1, 9, {"visability", "did you mean \"visibility\""}},
    {WITH("\"air\":[]"), 1, 8, {"list", "air as an object"}},
    {WITH("\"air\":{\"visibility\":\"18 kn\"}"), 1, 22, {"\"18 kn\"", "mm, cm, m, km"}},
    {WITH("\"air\":{\"visibility\":\"clearish\"}"), 1, 22, {"\"clearish\"", "a word such as"}},
    {WITH("\"air\":{\"visibility\":true}"), 1, 22, {"true", "expected a number"}},
    {WITH("\"air\":{\"visibility\":\"300 km\"}"), 1, 22, {"\"300 km\"", "0.02 km to 250 km"}},
    {WITH("\"air\":{\"visibility\":0}"), 1, 22, {"0", "0.02 km to 250 km"}},
    {WITH("\"air\":{\"haze\":\"thick\"}"), 1, 16, {"\"thick\"", "\"ordinary\""}},
    {WITH("\"air\":{\"haze\":3}"), 1, 16, {"3", "0 to 2.5"}},
    {WITH("\"air\":{\"mist\":{\"top\":5}}"), 1, 16, {"mist has no \"visibility\"", "add it"}},
    {WITH("\"air\":{\"mist\":{\"top\":5,\"visibility\":1}}"), 1, 38, {"1", "0.02 km to"}},
    {WITH("\"light\":{\"sky\":\"blue\"}"), 1, 17,
     {"\"blue\"", "\"clear\", \"overcast\" or \"painted\""}},
    {WITH("\"light\":{\"sun_height\":\"2 hands\"}"), 1, 24, {"2 hands", "fists"}},
    {WITH("\"light\":{\"sun_height\":0.1}"), 1, 24, {"0.1", "0.5 degrees to 90 degrees"}},
    {WITH("\"light\":{\"sun_side\":-1}"), 1, 22, {"-1", "0 degrees to 180 degrees"}},
    {WITH("\"light\":{\"sun_side\":\"left\"}"), 1, 22, {"\"left\"", "\"behind\""}},
    {WITH("\"light\":{\"sky\":\"painted\",\"light\":\"#ffffff\"}"), 1, 10,
     {"\"horizon\"", "add it"}},
    {WITH("\"light\":{\"horizon\":\"#ffffff\"}"), 1, 11, {"only a painted sky", "drop it"}},
    {WITH("\"light\":{\"sky\":\"painted\",\"horizon\":\"white\",\"light\":\"#ffffff\"}"), 1, 37,
     {"\"white\"", "#rrggbb"}},
    {WITH("\"paint\":{\"palette\":\"landscape-ten\"}"), 1, 21,
     {"landscape-ten", "did you mean \"landscape-"}},
    {WITH("\"paint\":{\"palette\":\"my-box\"}"), 1, 21, {"my-box", "nearest known"}},
    {WITH("\"paint\":{\"palette\":\"my-box.json\"}"), 1, 21,
     {"my-box.json", "cannot be read here"}},
    {WITH("\"paint\":{\"palette\":[]}"), 1, 21, {"empty", "at least one paint"}},
    {WITH("\"paint\":{\"palette\":[\"PB29\",3]}"), 1, 29, {"3", "name of a paint"}},
    {WITH("\"paint\":{\"palette\":[\"PB29\",\"ultramarine blu\"]}"), 1, 29,
     {"ultramarine blu", "did you mean \"ultramarine"}},
    {WITH("\"paint\":{\"palette\":[\"PB29\",\"ultramarine blue\"]}"), 1, 29,
     {"stands twice", "keep one"}},
    {WITH("\"paint\":{\"medium\":\"pastel\"}"), 1, 20, {"\"pastel\"", "\"gouache\""}},
    {WITH("\"paint\":{\"medium\":\"oil\",\"palette\":\"landscape-six\"}"), 1, 36,
     {"oil is lightened with white", "titanium white"}},
    {WITH("\"paint\":{\"most_pigments\":2.5}"), 1, 27, {"2.5", "a whole number"}},
    {WITH("\"paint\":{\"most_pigments\":5}"), 1, 27, {"5", "1 to 4"}},
    {WITH("\"paint\":{\"most_parts\":0}"), 1, 24, {"0", "1 to 12"}},
    {WITH("\"paint\":{\"tie\":-1}"), 1, 17, {"-1", "0 to 10"}},
    {WITH("\"paint\":{\"shadows\":\"under\"}"), 1, 21, {"\"under\"", "\"beside\""}},
    {WITH("\"paint\":{\"shadows\":\"over\",\"medium\":\"gouache\"}"), 1, 21,
     {"gouache hides", "\"beside\""}},
    {WITH("\"paper\":{\"width\":\"0 cm\"}"), 1, 19, {"\"0 cm\"", "0.01 m to 10 m"}},
    {WITH("\"picture\":{\"sky_value\":11}"), 1, 25, {"11", "1 to 10"}},
    {WITH("\"picture\":{\"darks\":\"dark\"}"), 1, 21, {"\"dark\"", "\"as seen\""}},
    {WITH("\"title\":5"), 1, 10, {"5", "a text"}},
    {PLANE("\"foliage\":\"willow\""), 1, 12, {"no \"distance\"", "add it"}},
    {"{\"planes\":[{\"distance\":5,\"foliage\":\"willow\"}]}", 1, 12, {"no \"name\"", "add it"}},
    {"{\"planes\":[{\"name\":\" \",\"distance\":5,\"foliage\":\"willow\"}]}", 1, 20,
     {"\" \"", "a name"}},
    {PLANE("\"distance\":-4,\"foliage\":\"willow\""), 1, 35, {"-4", "0.1 m to 300000 m"}},
    {PLANE("\"distance\":\"-4 yd\",\"foliage\":\"willow\""), 1, 35,
     {"\"-4 yd\"", "0.1 m to 300000 m"}},
    {PLANE("\"distance\":NaN,\"foliage\":\"willow\""), 1, 35, {"NaN", "finite"}},
    {PLANE("\"distance\":5"), 1, 12, {"no own colour", "\"foliage\""}},
    {PLANE("\"distance\":5,\"foliage\":\"baobab\""), 1, 47, {"\"baobab\"", "nearest known"}},
    {PLANE("\"distance\":5,\"foliage\":\"wilow\""), 1, 47, {"wilow", "did you mean \"willow\""}},
    {PLANE("\"distance\":5,\"surface\":\"rok\""), 1, 47, {"rok", "did you mean \"rock\""}},
    {PLANE("\"distance\":5,\"foliage\":\"willow\",\"lab\":[1,2,3]"), 1, 56,
     {"\"lab\" beside \"foliage\"", "keep one"}},
    {PLANE("\"distance\":5,\"colour\":\"#12345\""), 1, 46, {"#12345", "#rrggbb"}},
    {PLANE("\"distance\":5,\"colour\":\"#12345g\""), 1, 46, {"#12345g", "#rrggbb"}},
    {PLANE("\"distance\":5,\"lab\":[1,2]"), 1, 43, {"list in brackets: it holds 2; expected",
                                                    "three numbers"}},
    {PLANE("\"distance\":5,\"lab\":[86,5, -5, 88]"), 1, 43,
     {"it holds 4, and a decimal takes a point", "three numbers"}},
    {PLANE("\"distance\":3,5,\"foliage\":\"willow\""), 1, 35, {"found 3,5", "write 3.5"}},
    {PLANE("\"distance\":5,\"lab\":[101,2,3]"), 1, 44, {"101", "0 to 100"}},
    {PLANE("\"distance\":5,\"lab\":[1,\"2\",3]"), 1, 46, {"\"2\"", "a number"}},
    {PLANE("\"distance\":5,\"reflectance\":[0.5]"), 1, 51, {"list", "36 reflectances"}},
    {PLANE("\"distance\":5,\"base\":20,\"crest\":10,\"foliage\":\"willow\""), 1, 55,
     {"10", "20 m to 9000 m"}},
    {PLANE("\"distance\":5,\"share\":1.5,\"foliage\":\"willow\""), 1, 45, {"1.5", "0 to 1"}},
    {"{\"planes\":[" OAK ",\n" OAK "]}", 2, 9, {"\"oak\" stands twice", "its own"}},
};

static void faults_are_refused_at_their_place(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        const fault *f = &faults[i];
        recede_text_error error;
        if (read_text(f->text, &scene, &error) != RECEDE_TEXT_REFUSED)
            fail_msg("%s was not refused", f->text);
        if (error.line != f->line || error.column != f->column ||
            !strstr(error.what, f->says[0]) || !strstr(error.what, f->says[1]))
            fail_msg("%s: refused at %zu:%zu with '%s'; expected %zu:%zu, '%s' and '%s'", f->text,
                     error.line, error.column, error.what, f->line, f->column, f->says[0],
                     f->says[1]);
        if (!strchr(error.what, ';') || strchr(error.what, '\n'))
            fail_msg("%s: '%s' is not one line with a remedy", f->text, error.what);
    }
}

static void too_many_planes_are_refused_at_the_first_too_many(void **state)
{
    char text[8000], *end = text + sprintf(text, "{\"planes\":[\n");
    recede_text_error error;
    (void)state;
    for (int i = 0; i < 64; i++)
        end += sprintf(end, "{\"name\":\"%d\",\"distance\":%d,\"foliage\":\"willow\"}%s\n", i,
                       i + 1, i < 63 ? "," : "");
    strcpy(end, "]}");
    assert_int_equal(read_text(text, &scene, &error), RECEDE_TEXT_OK);
    assert_int_equal(scene.plane_count, 64);
    strcpy(end, ",{\"name\":\"x\",\"distance\":3,\"foliage\":\"willow\"}\n]}");
    assert_int_equal(read_text(text, &scene, &error), RECEDE_TEXT_REFUSED);
    assert_int_equal(error.line, 66);
    assert_int_equal(error.column, 2);
    assert_non_null(strstr(error.what, "65 planes"));
}

static void too_large_a_file_is_refused(void **state)
{
    size_t size = RECEDE_SCENE_MOST_BYTES + 1;
    char *text = malloc(size);
    recede_text_error error;
    (void)state;
    memset(text, ' ', size);
    assert_int_equal(recede_scene_read(text, size, NULL, NULL, &scene, &error), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "1048576"));
    memcpy(text, WITH("\"title\":\"t\""), strlen(WITH("\"title\":\"t\"")));
    assert_int_equal(recede_scene_read(text, size - 1, NULL, NULL, &scene, &error), RECEDE_TEXT_OK);
    free(text);
}

static void later_errors_find_their_place(void **state)
{
    static const char text[] = "{\"paint\":{\n \"palette\":[\"PB29\"]},\"planes\":[" OAK "]}";
    recede_error core = {.code = RECEDE_NO_WHITE, .path = "paint.palette"};
    recede_text_error error;
    (void)state;
    assert_int_equal(recede_scene_explain(text, strlen(text), NULL, &core, &error),
                     RECEDE_TEXT_REFUSED);
    assert_int_equal(error.line, 2);
    assert_int_equal(error.column, 12);
    core.code = RECEDE_NO_MEMORY;
    assert_int_equal(recede_scene_explain(text, strlen(text), NULL, &core, &error),
                     RECEDE_TEXT_NO_MEMORY);
}

/* ---- round trips */

static void check_round_trip(const char *text)
{
    recede_buffer first, second;
    recede_text_error error;
    read_good(text);
    recede_buffer_start(&first, NULL);
    recede_buffer_start(&second, NULL);
    recede_scene_write(&scene, &first);
    if (recede_scene_read(first.bytes, first.size, NULL, NULL, &again, &error))
        fail_msg("%zu:%zu: %s in\n%s", error.line, error.column, error.what, first.bytes);
    recede_scene_write(&again, &second);
    assert_string_equal(first.bytes, second.bytes);
    /* The plan depends on nothing else. Both were cleared before, so that the
     * bytes between members are the same. */
    assert_memory_equal(&scene, &again, sizeof scene);
    recede_buffer_free(&first);
    recede_buffer_free(&second);
}

static void what_is_written_reads_back_the_same(void **state)
{
    static const char *const texts[] = {
        WITH("\"title\":\"caf\xC3\xA9 \\\"quoted\\\" \\\\ \\u00e9\""),
        WITH("\"air\":{\"visibility\":\"23.456789 mi\",\"haze\":0.777,\"eye\":\"3 yd\","
             "\"mist\":{\"visibility\":\"777 ft\",\"top\":12.5}}"),
        WITH("\"air\":{\"visibility\":\"thin fog\",\"haze\":\"mist\"}"),
        WITH("\"light\":{\"sky\":\"overcast\"}"),
        WITH("\"light\":{\"sky\":\"painted\",\"horizon\":\"#e8C9a0\",\"light\":\"#fff2dc\"}"),
        WITH("\"light\":{\"sun_height\":\"3.3 fists\",\"sun_side\":\"behind\"}"),
        WITH("\"paint\":{\"medium\":\"oil\",\"most_pigments\":4,\"most_parts\":12,\"tie\":0.1}"),
        WITH("\"paint\":{\"palette\":[\"PB29\",\"sap green\",\"PY74\",\"french ultramarine\"]}"),
        WITH("\"paint\":{\"shadows\":\"over\"}"),
        WITH("\"paint\":{\"shadows\":\"beside\",\"medium\":\"acrylic\"}"),
        WITH("\"paper\":{\"width\":\"11.7 in\",\"height\":0.3}"),
        WITH("\"picture\":{\"darks\":\"as seen\",\"adaptation\":0}"),
        "{\"planes\":[{\"name\":\"a\",\"distance\":\"0.1234567 mi\",\"colour\":\"#010203\"},"
        "{\"name\":\"b\",\"distance\":\"77 yd\",\"lab\":[33.3333333333333333,-0.1,1e-9],"
        "\"crest\":\"100 ft\"},"
        "{\"name\":\"c\",\"distance\":3,\"reflectance\":[0,0.1,0.2,0.3,0.4,0.5,0.6,0.7,0.8,0.9,1,"
        "0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1,"
        "0.1,0.1,0.1,0.3333333333333333]},"
        "{\"name\":\"d\",\"distance\":77,\"surface\":\"whitewash\",\"base\":-5,\"share\":0.3}]}",
    };
    (void)state;
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        memset(&scene, 0, sizeof scene);
        memset(&again, 0, sizeof again);
        check_round_trip(texts[i]);
    }
}

/* Miles and feet as km seldom have a short decimal: many of them. */
static void any_visibility_reads_back_the_same(void **state)
{
    static const char *const units[] = {"mi", "yd", "ft", "km", "m", "in"};
    static const double least[] = {1, 100, 500, 1, 100, 2000};
    (void)state;
    for (int i = 0; i < 3000; i++) {
        char text[300];
        double number = least[i % 6] * (1.0 + i * 0.00137);
        snprintf(text, sizeof text, WITH("\"air\":{\"visibility\":\"%.9g %s\"}"), number,
                 units[i % 6]);
        recede_buffer out;
        recede_text_error error;
        read_good(text);
        recede_buffer_start(&out, NULL);
        recede_scene_write(&scene, &out);
        assert_int_equal(recede_scene_read(out.bytes, out.size, NULL, NULL, &again, &error), 0);
        assert_memory_equal(&again.air.visibility_km, &scene.air.visibility_km, sizeof(double));
        recede_buffer_free(&out);
    }
}

static void memory_may_run_out_anywhere(void **state)
{
    static const char text[] = WITH("\"air\":{\"visibility\":\"18 km\"}");
    (void)state;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_text_error error;
        recede_buffer out;
        recede_text_status status =
            recede_scene_read(text, strlen(text), NULL, &allocator, &scene, &error);
        recede_buffer_start(&out, &allocator);
        if (!status)
            recede_scene_write(&scene, &out);
        int failed = status || out.failed;
        recede_buffer_free(&out);
        assert_int_equal(memory.live, 0);
        if (!failed) {
            assert_true(at > 4);
            return;
        }
        assert_true(status == RECEDE_TEXT_OK || status == RECEDE_TEXT_NO_MEMORY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_field_arrives),
        cmocka_unit_test(own_colours_have_their_colour),
        cmocka_unit_test(a_painted_sky_takes_two_colours),
        cmocka_unit_test(opaque_media_take_the_palette_with_white),
        cmocka_unit_test(a_palette_may_be_a_list),
        cmocka_unit_test(heights_left_open_follow_the_eye),
        cmocka_unit_test(faults_are_refused_at_their_place),
        cmocka_unit_test(too_many_planes_are_refused_at_the_first_too_many),
        cmocka_unit_test(too_large_a_file_is_refused),
        cmocka_unit_test(later_errors_find_their_place),
        cmocka_unit_test(what_is_written_reads_back_the_same),
        cmocka_unit_test(any_visibility_reads_back_the_same),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
