/* Swatch descriptions: what is read, and what is refused and where. All data are
 * invented. Seen to fail with the limits on swatches and on patches moved by one:
 * tools/mutations.txt. */
#include "text/swatch_read.h"

#include <stdlib.h>
#include <string.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/files_in_memory.h"

static recede_swatch_card card; /* big */
static recede_text_error error;

static recede_text_status read_text(const char *text)
{
    return recede_swatch_card_read(text, strlen(text), NULL, &card, &error);
}

static void must_read(const char *text)
{
    if (read_text(text))
        fail_msg("%zu:%zu: %s: %s", error.line, error.column, error.what, text);
}

static void every_field_of_watercolour_is_read(void **state)
{
    (void)state;
    must_read("{\"card\":[{\"patch\":[1,2,30,40],\"reflectance\":0.18},\n"
              "{\"reflectance\":0.9,\"patch\":[0,0,8192,1]}],\n"
              "\"paper\":{\"patch\":[5,6,7,8]},\"medium\":\"watercolour\",\n"
              "\"paints\":[{\"name\":\"my green\",\"colour_index\":\"PG23\","
              "\"transparency\":\"clear\",\"permanence\":\"good\",\"caution\":\"a mask\","
              "\"source\":\"my card\",\"is_white\":true,\"swatches\":[\n"
              "{\"water\":0,\"lab\":[30,-20,15]},{\"water\":2.5,\"colour\":\"#0080ff\"},\n"
              "{\"water\":1000,\"sample\":\"A1\"},{\"patch\":[9,8,7,6],\"water\":8},\n"
              "{\"reflectance\":" BANDS("0.25") ",\"water\":1}]}]}");
    assert_int_equal(card.medium, RECEDE_WATERCOLOUR);
    assert_int_equal(card.surface_excluded, 0);
    assert_int_equal(card.card_count, 2);
    assert_near(card.card[0].reflectance, 0.18, 0);
    assert_near(card.card[0].patch.reflectance, 0.18, 0);
    assert_int_equal(card.card[0].patch.height, 40);
    assert_int_equal(card.card[1].place.line, 2);
    assert_int_equal(card.card[1].patch.width, 8192);
    assert_int_equal(card.paper.kind, RECEDE_SOURCE_PATCH);
    assert_int_equal(card.paper.patch.left, 5);
    assert_int_equal(card.count, 1);
    const recede_pigment_file *pigment = &card.paints[0].pigment;
    assert_string_equal(pigment->paint.name, "my green");
    assert_string_equal(pigment->paint.colour_index, "PG23");
    assert_string_equal(pigment->paint.caution, "a mask");
    assert_string_equal(pigment->transparency, "clear");
    assert_string_equal(pigment->permanence, "good");
    assert_string_equal(pigment->source, "my card");
    assert_int_equal(pigment->paint.is_white, 1);
    assert_int_equal(pigment->has_medium, 1);
}

static void every_source_is_read(void **state)
{
    every_field_of_watercolour_is_read(state);
    const recede_painted *paint = &card.paints[0];
    const recede_source_kind kinds[] = {RECEDE_SOURCE_LAB, RECEDE_SOURCE_COLOUR,
                                        RECEDE_SOURCE_SAMPLE, RECEDE_SOURCE_PATCH,
                                        RECEDE_SOURCE_REFLECTANCE};
    assert_int_equal(paint->count, 5);
    for (size_t i = 0; i < 5; i++)
        assert_int_equal(paint->swatches[i].source.kind, kinds[i]);
    assert_near(paint->swatches[0].source.own.lab.a, -20, 0);
    assert_near(paint->swatches[1].water, 2.5, 0);
    assert_near(paint->swatches[1].source.own.srgb.g, 128 / 255.0, 1e-15);
    assert_string_equal(paint->swatches[2].source.sample, "A1");
    assert_int_equal(paint->swatches[2].place.line, 6);
    assert_int_equal(paint->swatches[2].source.place.column, 24);
    assert_int_equal(paint->swatches[3].source.patch.height, 6);
    assert_near(paint->swatches[4].source.own.reflectance.at[35], 0.25, 0);
}

#define SWATCH "{\"white\":0,\"lab\":[30,0,0]}"
static void opaque_media_have_a_white(void **state)
{
    (void)state;
    must_read("{\"medium\":\"oil\",\"surface\":\"included\",\"paints\":[{\"name\":\"a\","
              "\"swatches\":[" SWATCH ",{\"white\":100,\"lab\":[80,0,0]}]}]}");
    assert_int_equal(card.medium, RECEDE_OIL);
    assert_string_equal(card.white.name, "titanium white");
    assert_near(card.paints[0].swatches[1].white, 100, 0);
    assert_int_equal(card.paints[0].pigment.medium, RECEDE_OIL);
    must_read("{\"medium\":\"gouache\",\"white\":\"PW6\",\"paints\":[{\"name\":\"a\","
              "\"swatches\":[" SWATCH "]}]}");
    assert_int_equal(card.white.is_white, 1);
}

static void surfaces_may_be_excluded_from_spectra(void **state)
{
    (void)state;
    must_read("{\"surface\":\"excluded\",\"paper\":{\"reflectance\":" BANDS("0.8") "},"
              "\"paints\":[{\"name\":\"a\",\"swatches\":[{\"water\":0,\"sample\":\"x\"}]}]}");
    assert_int_equal(card.surface_excluded, 1);
}

/* ---- */

static recede_text_status count_kinds(void *context, const recede_source *source)
{
    int *seen = context;
    seen[source->kind]++;
    seen[RECEDE_SOURCES] = seen[RECEDE_SOURCES] * 10 + (int)source->kind + 1;
    return source->kind == RECEDE_SOURCE_PATCH && seen[RECEDE_SOURCE_PATCH] == 2
               ? RECEDE_TEXT_REFUSED
               : RECEDE_TEXT_OK;
}

/* The paper first, the swatches in their order, no farther than told. */
static void sources_are_visited_in_order(void **state)
{
    int seen[RECEDE_SOURCES + 1] = {0};
    every_field_of_watercolour_is_read(state);
    assert_int_equal(recede_sources_visit(&card, count_kinds, seen), RECEDE_TEXT_REFUSED);
    assert_int_equal(seen[RECEDE_SOURCES], 52345);
    assert_string_equal(recede_source_key(RECEDE_SOURCE_PATCH), "patch");
    opaque_media_have_a_white(state);
    memset(seen, 0, sizeof seen);
    must_read("{\"medium\":\"oil\",\"paints\":[{\"name\":\"a\",\"swatches\":[" SWATCH "]}]}");
    assert_int_equal(recede_sources_visit(&card, count_kinds, seen), RECEDE_TEXT_OK);
    assert_int_equal(seen[RECEDE_SOURCES], RECEDE_SOURCE_LAB + 1);
}

/* ---- faults */

typedef struct {
    const char *text;
    size_t line, column;
    const char *says[2];
} fault;

#define PAPER "\"paper\":{\"lab\":[95,0,3]}"
#define LAB "{\"water\":0,\"lab\":[30,0,0]}"
#define WITH(swatch) "{" PAPER ",\"paints\":[{\"name\":\"a\",\"swatches\":[\n" swatch "]}]}"
#define NO_PAPER(source) \
    "{\"paints\":[{\"name\":\"a\",\"swatches\":[{\"water\":0," source "}]}]}"
#define PAINTS(paints) "{" PAPER ",\n\"paints\":" paints "}"
#define ONE "{\"name\":\"a\",\"swatches\":[" LAB "]}"
#define CARD(patch) "{\"card\":[\n" patch "]," PAPER ",\"paints\":[" ONE "]}"

static const fault faults[] = {
    {"[]", 1, 1, {"a swatch description", "braces"}},
    {"{" PAPER "}", 1, 1, {"no \"paints\"", "1 to 24"}},
    {"{" PAPER ",\"paint\":[]}", 1, 27, {"\"paint\" is not known", "did you mean \"paints\""}},
    {"{\"paints\":[" ONE "]}", 1, 1, {"read the bare paper", "\"paper\": {\"lab\": [95, 0, 3]}"}},
    {NO_PAPER("\"patch\":[0,0,9,9]"), 1, 1,
     {"no \"paper\"", "\"paper\": {\"patch\": [left, top, width, height]}"}},
    {NO_PAPER("\"sample\":\"A1\""), 1, 1, {"no \"paper\"", "\"paper\": {\"sample\": \"paper\"}"}},
    {NO_PAPER("\"colour\":\"#808080\""), 1, 1, {"no \"paper\"", "{\"colour\": \"#"}},
    {NO_PAPER("\"reflectance\":" BANDS("0.5")), 1, 1,
     {"no \"paper\"", "{\"reflectance\": [36 numbers]}"}},
    {PAINTS("[{\"name\":\"\",\"swatches\":[" LAB "]}]"), 2, 19, {"it is empty", "a name"}},
    {WITH("{\"water\":3,5,\"lab\":[30,0,0]}"), 2, 10, {"found 3,5", "write 3.5"}},
    {WITH("{\"water\":3,\"lab\":[86,5,0,0]}"), 2, 18, {"it holds 4", "decimal takes a point"}},
    {"{\"medium\":\"ink\"}", 1, 11, {"\"ink\"", "\"watercolour\""}},
    {"{\"surface\":\"gloss\"}", 1, 12, {"\"gloss\"", "\"excluded\""}},
    {PAINTS("[]"), 2, 10, {"empty", "1 to 24"}},
    {PAINTS("{}"), 2, 10, {"an object", "a list"}},
    {PAINTS("[7]"), 2, 11, {"7", "a paint as an object"}},
    {PAINTS("[" ONE "," ONE "]"), 2, 64, {"\"a\" stands twice", "name them apart"}},
    {PAINTS("[{\"swatches\":[" LAB "]}]"), 2, 11, {"no \"name\"", "a name"}},
    {PAINTS("[{\"name\":\"a\"}]"), 2, 11, {"no \"swatches\"", "two or more thinner"}},
    {PAINTS("[{\"name\":\"WATER\",\"swatches\":[" LAB "]}]"), 2, 19, {"WATER", "thinned"}},
    {PAINTS("[{\"name\":\"a\",\"swatches\":[]}]"), 2, 34, {"empty", "masstone"}},
    {PAINTS("[{\"name\":\"a\",\"k\":[]}]"), 2, 23, {"\"k\" is not known", "name"}},
    {WITH("{\"water\":0}"), 2, 1, {"no reading", "\"sample\" or \"patch\""}},
    {WITH("{\"lab\":[30,0,0],\"water\":0,\"patch\":[0,0,9,9]}"), 2, 27,
     {"\"patch\" beside \"lab\"", "keep one"}},
    {WITH("{\"lab\":[30,0,0]}"), 2, 1, {"no \"water\"", "0 for the masstone"}},
    {WITH("{\"white\":1,\"lab\":[30,0,0]}"), 2, 1, {"has \"white\"", "give \"water\""}},
    {WITH("{\"water\":-1,\"lab\":[30,0,0]}"), 2, 10, {"-1", "0 (masstone) to 1000"}},
    {WITH("{\"water\":1001,\"lab\":[30,0,0]}"), 2, 10, {"1001", "to 1000"}},
    {WITH("{\"water\":\"3\",\"lab\":[30,0,0]}"), 2, 10, {"\"3\"", "water to 1"}},
    {WITH("{\"water\":1,\"lab\":[101,0,0]}"), 2, 19, {"101", "0 to 100"}},
    {WITH("{\"water\":1,\"colour\":\"red\"}"), 2, 21, {"\"red\"", "#rrggbb"}},
    {WITH("{\"water\":1,\"sample\":\" \"}"), 2, 21, {"\" \"", "a name"}},
    {WITH("{\"water\":1,\"reflectance\":[1]}"), 2, 26, {"it holds 1;", "36 reflectances"}},
    {WITH("{\"water\":1,\"patch\":[1,2,3]}"), 2, 20, {"list", "[left, top, width, height]"}},
    {WITH("{\"water\":1,\"patch\":[1,-2,9,9]}"), 2, 23, {"-2", "whole pixels"}},
    {WITH("{\"water\":1,\"patch\":[1,2.5,9,9]}"), 2, 23, {"2.5", "whole pixels"}},
    {WITH("{\"water\":1,\"patch\":[1,2,9,8193]}"), 2, 27, {"8193", "8192"}},
    {WITH("{\"water\":1,\"patch\":[1,2,0,9]}"), 2, 25, {"0", "whole pixels"}},
    {WITH("{\"water\":1,\"patch\":[1,2,3,5]}"), 2, 20, {"fewer than 16", "the larger"}},
    {CARD("7"), 2, 1, {"7", "a patch of the card"}},
    {CARD("{\"patch\":[0,0,9,9]}"), 2, 1, {"no \"reflectance\"", "0.02 to 1"}},
    {CARD("{\"reflectance\":0.18}"), 2, 1, {"no \"patch\"", "pixels"}},
    {CARD("{\"reflectance\":18,\"patch\":[0,0,9,9]}"), 2, 16, {"18", "0.02 to 1"}},
    {"{\"paper\":{},\"paints\":[" ONE "]}", 1, 10, {"the paper has no reading", "\"lab\""}},
    {"{\"paper\":{\"lab\":[95,90,-90]},\"paints\":[" ONE "]}", 1, 17,
     {"no surface has that colour", "measured on the paper"}},
    {"{\"paper\":{\"water\":1,\"lab\":[95,0,0]},\"paints\":[" ONE "]}", 1, 11,
     {"\"water\" is not known", "the paper"}},
    {"{" PAPER ",\"white\":\"titanium white\",\"paints\":[" ONE "]}", 1, 35,
     {"opaque media", "leave it out"}},
    {"{" PAPER ",\"medium\":\"oil\",\"paints\":[{\"name\":\"a\",\"swatches\":[" SWATCH "]}]}", 1,
     10, {"hide what they lie on", "leave \"paper\" out"}},
    {"{\"medium\":\"oil\",\"paints\":[" ONE "]}", 1, 51, {"has \"water\"", "give \"white\""}},
    {"{\"medium\":\"oil\",\"white\":\"titanum white\"}", 1, 25,
     {"titanum white", "did you mean \"titanium white\""}},
    {"{\"medium\":\"oil\",\"white\":\"lamp black\"}", 1, 25, {"lamp black", "titanium white"}},
    {"{\"medium\":\"oil\",\"white\":6}", 1, 25, {"6", "the name of a white"}},
    {"{\"surface\":\"excluded\"," PAPER ",\"paints\":[" ONE "]}", 1, 38,
     {"only spectra", "leave \"surface\" out"}},
    {PAINTS("[" ONE "]} x"), 2, 66, {"x", ""}},
};

static void faults_are_refused_at_their_place(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        const fault *f = &faults[i];
        if (read_text(f->text) != RECEDE_TEXT_REFUSED)
            fail_msg("%s was not refused", f->text);
        if (error.line != f->line || error.column != f->column ||
            !strstr(error.what, f->says[0]) || !strstr(error.what, f->says[1]))
            fail_msg("%s: refused at %zu:%zu with '%s'; expected %zu:%zu, '%s' and '%s'", f->text,
                     error.line, error.column, error.what, f->line, f->column, f->says[0],
                     f->says[1]);
    }
}

/* ---- limits */

static void add_many(recede_buffer *out, const char *item, size_t count)
{
    for (size_t i = 0; i < count; i++)
        recede_buffer_format(out, "%s%s", i ? "," : "", item);
}

/* So many card patches, paints, and swatches of each. */
static recede_text_status read_many(size_t patches, size_t paints, size_t swatches)
{
    recede_buffer text;
    recede_buffer_start(&text, NULL);
    recede_buffer_text(&text, "{\"card\":[");
    add_many(&text, "{\"reflectance\":0.2,\"patch\":[0,0,4,4]}", patches);
    recede_buffer_text(&text, "]," PAPER ",\"paints\":[");
    for (size_t i = 0; i < paints; i++) {
        recede_buffer_format(&text, "%s{\"name\":\"p%zu\",\"swatches\":[", i ? "," : "", i);
        add_many(&text, "{\"water\":0,\"patch\":[0,0,4,4]}", swatches);
        recede_buffer_text(&text, "]}");
    }
    recede_buffer_text(&text, "]}");
    recede_text_status status =
        recede_swatch_card_read(text.bytes, text.size, NULL, &card, &error);
    recede_buffer_free(&text);
    return status;
}

static void limits_hold(void **state)
{
    (void)state;
    assert_int_equal(read_many(8, 24, 5), RECEDE_TEXT_OK); /* 128 patches */
    assert_int_equal(card.count, 24);
    assert_int_equal(read_many(9, 24, 5), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "128 are read off one photograph"));
    assert_int_equal(read_many(8, 5, 24), RECEDE_TEXT_OK);
    assert_int_equal(read_many(1, 1, 25), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "it holds 25, at most 24"));
    assert_int_equal(read_many(1, 25, 1), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "it holds 25, at most 24"));
    assert_int_equal(read_many(129, 1, 1), RECEDE_TEXT_REFUSED);
    assert_non_null(strstr(error.what, "it holds 129, at most 128"));
}

static void memory_may_run_out_anywhere(void **state)
{
    static const char text[] = "{" PAPER ",\"paints\":[" ONE "]}";
    (void)state;
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        recede_text_status status =
            recede_swatch_card_read(text, strlen(text), &allocator, &card, &error);
        assert_int_equal(memory.live, 0);
        if (!status) {
            assert_true(at > 2);
            return;
        }
        assert_int_equal(status, RECEDE_TEXT_NO_MEMORY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_field_of_watercolour_is_read),
        cmocka_unit_test(every_source_is_read),
        cmocka_unit_test(opaque_media_have_a_white),
        cmocka_unit_test(surfaces_may_be_excluded_from_spectra),
        cmocka_unit_test(sources_are_visited_in_order),
        cmocka_unit_test(faults_are_refused_at_their_place),
        cmocka_unit_test(limits_hold),
        cmocka_unit_test(memory_may_run_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
