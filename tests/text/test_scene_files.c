/* Scenes with paints of the painter's own: files, and planes mixed of the palette.
 * All data are invented. Seen to fail with ".." let through, and with what is wrong with a
 * name not looked at: tools/mutations.txt. */
#include <stdlib.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/files_in_memory.h"
#include "text/paint_name.h"
#include "text/scene_read.h"
#include "text/scene_write.h"
#include "text/words_ladder.h"

static recede_scene scene; /* big: kept off the stack */

static const test_file kept[] = {
    {"green.json", "{\"name\":\"my green\",\"colour_index\":\"PG23\",\"caution\":\"a mask\","
                   "\"k\":" BANDS("0.5") ",\"s\":" BANDS("0.25") "}"},
    {"earth.json", "{\"name\":\"my earth\",\"colour_index\":\"PG 23\","
                   "\"k\":" BANDS("0.1") ",\"s\":" BANDS("0.25") "}"},
    {"boxes/oil.json", "{\"medium\":\"oil\",\"paper\":{\"reflectance\":" BANDS("0.5") "},"
                       "\"paints\":[\"titanium white\",\"PB29\",\"own.json\"]}"},
    {"boxes/own.json", PIGMENT("an own one", "0.5")},
    {"boxes/bad.json", "{\"paints\":[\n\"PB29\",\n\"worse.json\"]}"},
    {"boxes/worse.json", "{\n\n \"name\":3}"},
    {"boxes/lacks.json", "{\"paints\":[\n\"nix.json\"]}"},
    {NULL, NULL},
};

#define OAK "{\"name\":\"oak\",\"distance\":400,\"foliage\":\"summer oak\"}"
#define PALETTE(palette) "{\"paint\":{\"palette\":" palette "},\"planes\":[" OAK "]}"

static recede_text_status read_text(const char *text, recede_text_error *error)
{
    test_folder folder = {.files = kept};
    recede_files files = test_files(&folder);
    return recede_scene_read(text, strlen(text), &files, NULL, &scene, error);
}

static void must_read(const char *text)
{
    recede_text_error error;
    if (read_text(text, &error))
        fail_msg("%s:%zu:%zu: %s", error.file, error.line, error.column, error.what);
}

/* ---- names of files */

static void names_that_lead_out_are_refused(void **state)
{
    static const char *const good[] = {"a.json", "b/c.json", "b/c/d.json", "..a.json", "a..json",
                                       ".hidden.json", "a b.json", "gr\xC3\xBCn.json", "-.json"};
    static const char *const bad[] = {
        "/a.json", "../a.json", "b/../a.json", "b/..", "..", "./a.json", "b//a.json", "b/", "",
        "b\\a.json", "..\\a.json", "\\\\host\\a.json", "C:/a.json", "c:a.json", "//a.json"};
    char name[RECEDE_NAME_SIZE + 1];
    (void)state;
    for (size_t i = 0; i < sizeof good / sizeof good[0]; i++)
        if (recede_file_name_wrong(good[i]))
            fail_msg("%s: %s", good[i], recede_file_name_wrong(good[i]));
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++)
        if (!recede_file_name_wrong(bad[i]))
            fail_msg("%s was not refused", bad[i]);
    memset(name, 'a', sizeof name);
    name[RECEDE_NAME_SIZE] = '\0';
    assert_non_null(recede_file_name_wrong(name));
    name[RECEDE_NAME_SIZE - 1] = '\0';
    assert_null(recede_file_name_wrong(name));
}

static void names_are_taken_beside_the_file_that_has_them(void **state)
{
    char out[RECEDE_NAME_SIZE], name[RECEDE_NAME_SIZE];
    (void)state;
    assert_true(recede_file_beside("boxes/box.json", "a/b.json", out));
    assert_string_equal(out, "boxes/a/b.json");
    assert_true(recede_file_beside("box.json", "b.json", out));
    assert_string_equal(out, "b.json");
    assert_true(recede_file_beside("", "b.json", out));
    assert_string_equal(out, "b.json");
    memset(name, 'a', sizeof name);
    name[RECEDE_NAME_SIZE - 1] = '\0';
    assert_true(recede_file_beside("box.json", name, out));
    assert_false(recede_file_beside("b/box.json", name, out));
    assert_true(recede_is_file_name("a.json"));
    assert_false(recede_is_file_name("landscape-six"));
    assert_false(recede_is_file_name("json"));
}

/* ---- palettes */

static void a_list_may_name_files(void **state)
{
    (void)state;
    must_read(PALETTE("[\"PB29\",\"green.json\"," PIGMENT("inline", "2") "]"));
    assert_int_equal(scene.paint_count, 3);
    assert_string_equal(scene.palette, "");
    assert_string_equal(scene.paints[1].name, "my green");
    assert_string_equal(scene.paints[1].file, "green.json");
    assert_string_equal(scene.paints[1].caution, "a mask");
    assert_string_equal(scene.paints[2].name, "inline");
    assert_int_equal(scene.medium, RECEDE_WATERCOLOUR);
}

static void a_palette_file_brings_medium_and_paper(void **state)
{
    (void)state;
    must_read(PALETTE("\"boxes/oil.json\""));
    assert_string_equal(scene.palette, "boxes/oil.json");
    assert_int_equal(scene.paint_count, 3);
    assert_string_equal(scene.paints[2].file, "boxes/own.json");
    assert_int_equal(scene.medium, RECEDE_OIL);
    assert_int_equal(scene.shadows_over, 0);
    assert_near(scene.paper.at[20], 0.5, 0);
    /* the scene's own medium goes first, before or after */
    must_read("{\"paint\":{\"medium\":\"acrylic\",\"palette\":\"boxes/oil.json\"},\"planes\":[" OAK
              "]}");
    assert_int_equal(scene.medium, RECEDE_ACRYLIC);
    must_read("{\"paint\":{\"palette\":\"boxes/oil.json\",\"medium\":\"watercolour\"},\"planes\":["
              OAK "]}");
    assert_int_equal(scene.medium, RECEDE_WATERCOLOUR);
    assert_int_equal(scene.shadows_over, 1);
}

typedef struct {
    const char *text, *file;
    size_t line, column;
    recede_text_status status;
    const char *says[2];
} fault;

#define REFUSED RECEDE_TEXT_REFUSED
#define MIX(mix)                                                                        \
    "{\"paint\":{\"palette\":[\"hansa yellow\",\"PB29\",\"green.json\",\"earth.json\"]}," \
    "\n\"planes\":[{\"name\":\"a\",\"distance\":4,\n\"mix\":" mix "}]}"
static const fault faults[] = {
    {PALETTE("\"nix.json\""), "", 1, 21, RECEDE_TEXT_UNREADABLE, {"nix.json", "put it there"}},
    {PALETTE("[\"PB29\",\"nix.json\"]"), "", 1, 29, RECEDE_TEXT_UNREADABLE, {"nix.json", ""}},
    {PALETTE("\"../x.json\""), "", 1, 21, REFUSED, {"leads out", "same folder"}},
    {PALETTE("[\"/x.json\"]"), "", 1, 22, REFUSED, {"root", "same folder"}},
    {PALETTE("\"boxes/worse.json\""), "boxes/worse.json", 3, 2, REFUSED, {"name", "palette"}},
    {PALETTE("\"boxes/bad.json\""), "boxes/worse.json", 3, 9, REFUSED, {"name is 3", ""}},
    {PALETTE("\"boxes/lacks.json\""), "boxes/lacks.json", 2, 1, RECEDE_TEXT_UNREADABLE,
     {"boxes/nix.json", ""}},
    {MIX("{}"), "", 3, 7, REFUSED, {"no paint", "whole parts"}},
    {MIX("3"), "", 3, 7, REFUSED, {"mix is 3", "whole parts"}},
    {MIX("{\"water\":2}"), "", 3, 7, REFUSED, {"no paint", "whole parts"}},
    {MIX("{\"PB29\":0}"), "", 3, 15, REFUSED, {"0", "1 to 12"}},
    {MIX("{\"PB29\":1.5}"), "", 3, 15, REFUSED, {"1.5", "whole parts"}},
    {MIX("{\"PB29\":\"1\"}"), "", 3, 15, REFUSED, {"\"1\"", "whole parts"}},
    {MIX("{\"PB29\":13}"), "", 3, 15, REFUSED, {"13", "1 to 12"}},
    {MIX("{\"PB29\":8,\"hansa yellow\":5}"), "", 3, 32, REFUSED, {"over 12", "in all"}},
    {MIX("{\"PB29\":1,\"water\":-1}"), "", 3, 25, REFUSED, {"-1", "0 to 1000"}},
    {MIX("{\"PB29\":1,\"water\":1001}"), "", 3, 25, REFUSED, {"1001", "0 to 1000"}},
    {MIX("{\"PB29\":1,\"ultramarine blue\":1}"), "", 3, 17, REFUSED,
     {"stands before", "add the parts up"}},
    {MIX("{\"hansa yelow\":1}"), "", 3, 8, REFUSED, {"hansa yelow", "did you mean"}},
    {MIX("{\"burnt sienna\":1}"), "", 3, 8, REFUSED, {"palette has no paint", "nearest"}},
    {MIX("{\"PG23\":1}"), "", 3, 8, REFUSED, {"several", "own name"}},
    {MIX("{\"a\":1,\"b\":1,\"c\":1,\"d\":1,\"e\":1}"), "", 3, 36, REFUSED,
     {"fifth paint", "1 to 4"}},
    {"{\"paint\":{\"medium\":\"oil\"},\"planes\":[{\"name\":\"a\",\"distance\":4,"
     "\"mix\":{\"PB29\":1,\"water\":1}}]}", "", 1, 78, REFUSED,
     {"only watercolour", "leave it out"}},
    {"{\"planes\":[{\"name\":\"a\",\"distance\":4,\"foliage\":\"willow\",\"mix\":{\"PB29\":1}}]}",
     "", 1, 56, REFUSED, {"\"mix\" beside \"foliage\"", "keep one"}},
};

static void faults_are_refused_at_their_place(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        const fault *f = &faults[i];
        recede_text_error error;
        recede_text_status status = read_text(f->text, &error);
        if (status != f->status)
            fail_msg("%s: status %d, not %d", f->text, (int)status, (int)f->status);
        if (error.line != f->line || error.column != f->column || strcmp(error.file, f->file) ||
            !strstr(error.what, f->says[0]) || !strstr(error.what, f->says[1]))
            fail_msg("%s: refused at %s:%zu:%zu with '%s'; expected %s:%zu:%zu, '%s' and '%s'",
                     f->text, error.file, error.line, error.column, error.what, f->file, f->line,
                     f->column, f->says[0], f->says[1]);
    }
}

static void lines_tell_the_file(void **state)
{
    recede_text_error error;
    recede_buffer line;
    (void)state;
    read_text(PALETTE("\"boxes/bad.json\""), &error);
    recede_buffer_start(&line, NULL);
    recede_message_line(&line, "moor/scene.json", &error);
    assert_ptr_equal(strstr(line.bytes, "moor/boxes/worse.json:3:9: "), line.bytes);
    recede_buffer_free(&line);
    recede_buffer_start(&line, NULL);
    recede_message_line(&line, "standard input", &error);
    assert_ptr_equal(strstr(line.bytes, "boxes/worse.json:3:9: "), line.bytes);
    recede_buffer_free(&line);
}

/* ---- mixes */

/* Against the films of a palette ready to mix. */
static void a_mix_has_the_colour_of_its_film(void **state)
{
    recede_palette *palette;
    (void)state;
    /* the paints stand after the planes, in another order than the palette's */
    must_read("{\"planes\":[" OAK ",{\"name\":\"a\",\"distance\":40,\"mix\":{\"water\":2.5,"
              "\"my green\":1,\"PB29\":2,\"Hansa Yellow\":3}}],"
              "\"paint\":{\"palette\":[\"hansa yellow\",\"PB29\",\"green.json\"]}}");
    const recede_own *own = &scene.planes[0].own; /* the nearer */
    const recede_mix expected = {3, {0, 1, 2}, {3, 2, 1}, 2.5};
    assert_int_equal(own->kind, RECEDE_OWN_MIX);
    assert_int_equal(recede_palette_new(scene.paints, 3, scene.medium, &scene.paper, NULL,
                                        &palette, NULL), RECEDE_OK);
    recede_spectrum seen = recede_mix_reflectance(palette, &expected, NULL);
    assert_int_equal(own->mix.count, 3);
    for (int i = 0; i < 3; i++) {
        assert_int_equal(own->mix.paint[i], expected.paint[i]);
        assert_int_equal(own->mix.parts[i], expected.parts[i]);
    }
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(own->reflectance.at[band], seen.at[band], 1e-13);
    recede_palette_free(palette);
}

/* One paint by itself hides its ground in oil: the film without end. */
static void an_opaque_mix_hides_its_ground(void **state)
{
    (void)state;
    must_read("{\"paint\":{\"palette\":\"boxes/oil.json\"},\"planes\":[{\"name\":\"a\","
              "\"distance\":40,\"mix\":{\"boxes/own.json\":1}}]}");
    /* K/S = 2: R = 1 + 2 - sqrt(4 + 4) under the surface (Kubelka and Munk 1931), then
     * Saunderson 1942 with k1 = 0.03, k2 = 0.65 */
    double below = 3 - sqrt(8), seen = 0.03 + 0.97 * 0.35 * below / (1 - 0.65 * below);
    for (int band = 0; band < RECEDE_BANDS; band++)
        assert_near(scene.planes[0].own.reflectance.at[band], seen, 1e-12);
}

static void mixes_are_told_in_words(void **state)
{
    recede_buffer words;
    (void)state;
    must_read(MIX("{\"PB29\":1,\"hansa yellow\":3,\"water\":2.5}"));
    recede_buffer_start(&words, NULL);
    recede_words_own(&words, &scene.planes[0].own, &scene);
    assert_string_equal(words.bytes, "3 hansa yellow + 1 ultramarine blue + 2.5 water");
    recede_buffer_free(&words);
}

/* The core by itself: what no text can bring about. */
static void the_core_checks_mixes(void **state)
{
    static const struct {
        recede_mix mix;
        recede_code code;
    } wrong[] = {
        {{0, {0}, {0}, 0}, RECEDE_OUT_OF_RANGE},
        {{5, {0, 1, 2, 3}, {1, 1, 1, 1}, 0}, RECEDE_OUT_OF_RANGE},
        {{1, {-1}, {1}, 0}, RECEDE_OUT_OF_RANGE},
        {{1, {4}, {1}, 0}, RECEDE_OUT_OF_RANGE},
        {{1, {0}, {0}, 0}, RECEDE_OUT_OF_RANGE},
        {{2, {0, 1}, {6, 7}, 0}, RECEDE_OUT_OF_RANGE},
        {{2, {1, 1}, {1, 1}, 0}, RECEDE_DUPLICATE},
        {{1, {0}, {1}, NAN}, RECEDE_NOT_FINITE},
        {{1, {0}, {1}, 1000.5}, RECEDE_OUT_OF_RANGE},
    };
    recede_error error;
    (void)state;
    must_read(MIX("{\"PB29\":1}"));
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        scene.planes[0].own.mix = wrong[i].mix;
        assert_int_equal(recede_scene_check(&scene, &error), wrong[i].code);
        assert_string_equal(error.path, "planes[0].mix");
    }
    scene.planes[0].own.mix = (recede_mix){1, {0}, {1}, 2};
    assert_int_equal(recede_scene_check(&scene, &error), RECEDE_OK);
    scene.medium = RECEDE_GOUACHE;
    scene.shadows_over = 0;
    assert_int_equal(recede_scene_check(&scene, &error), RECEDE_CONFLICT);
}

static void paints_answer_to_their_names(void **state)
{
    (void)state;
    must_read(MIX("{\"PB29\":1}"));
    const struct {
        const char *name;
        int index;
    } asked[] = {{"hansa yellow", 0}, {"PB29", 1}, {"ultramarine blue", 1}, {"MY GREEN", 2},
                 {"green.json", 2}, {"my earth", 3}, {"earth.json", 3},
                 {"PG23", RECEDE_PAINT_MANY}, {"burnt sienna", RECEDE_PAINT_NONE},
                 {"nothing", RECEDE_PAINT_NONE}};
    for (size_t i = 0; i < sizeof asked / sizeof asked[0]; i++)
        if (recede_paint_meant(scene.paints, scene.paint_count, asked[i].name) != asked[i].index)
            fail_msg("%s is %d", asked[i].name,
                     recede_paint_meant(scene.paints, scene.paint_count, asked[i].name));
}

/* ---- written and read again */

static void scenes_read_back_the_same(void **state)
{
    static const char *const texts[] = {
        PALETTE("[\"PB29\",\"green.json\"," PIGMENT("inline", "0.1") "]"),
        PALETTE("\"boxes/oil.json\""),
        MIX("{\"water\":2.5,\"my green\":1,\"PB29\":2,\"hansa yellow\":3}"),
        MIX("{\"earth.json\":12}"),
    };
    static recede_scene before;
    (void)state;
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        recede_buffer one, two;
        recede_buffer_start(&one, NULL);
        recede_buffer_start(&two, NULL);
        must_read(texts[i]);
        before = scene;
        recede_scene_write(&scene, &one);
        must_read(recede_buffer_string(&one));
        recede_scene_write(&scene, &two);
        assert_string_equal(one.bytes, two.bytes);
        assert_memory_equal(before.planes, scene.planes, sizeof scene.planes);
        assert_int_equal(before.medium, scene.medium);
        assert_memory_equal(&before.paper, &scene.paper, sizeof scene.paper);
        for (size_t p = 0; p < scene.paint_count; p++)
            assert_memory_equal(&before.paints[p].k, &scene.paints[p].k,
                                sizeof scene.paints[p].k);
        recede_buffer_free(&one);
        recede_buffer_free(&two);
    }
}

static void memory_may_run_out_anywhere(void **state)
{
    static const char text[] = PALETTE("\"boxes/oil.json\"");
    test_folder folder = {.files = kept};
    recede_files files = test_files(&folder);
    (void)state;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_text_error error;
        recede_text_status status =
            recede_scene_read(text, strlen(text), &files, &allocator, &scene, &error);
        assert_int_equal(memory.live, 0);
        if (!status) {
            assert_true(at > 6);
            return;
        }
        assert_int_equal(status, RECEDE_TEXT_NO_MEMORY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(names_that_lead_out_are_refused),
        cmocka_unit_test(names_are_taken_beside_the_file_that_has_them),
        cmocka_unit_test(a_list_may_name_files),
        cmocka_unit_test(a_palette_file_brings_medium_and_paper),
        cmocka_unit_test(faults_are_refused_at_their_place),
        cmocka_unit_test(lines_tell_the_file),
        cmocka_unit_test(a_mix_has_the_colour_of_its_film),
        cmocka_unit_test(an_opaque_mix_hides_its_ground),
        cmocka_unit_test(mixes_are_told_in_words),
        cmocka_unit_test(the_core_checks_mixes),
        cmocka_unit_test(paints_answer_to_their_names),
        cmocka_unit_test(scenes_read_back_the_same),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
