/* The page's order of work says what the command line says, in the same order, in every
 * medium: its answer, called from C, against the table and the JSON of that order. */
#include "page/bridge.c"
#include "page/chart.c"
#include "page/ladder.c"
#include "page/lists.c"
#include "page/match.c"
#include "page/no_system.c"
#include "page/opened.c"
#include "page/paints.c"
#include "page/picture.c"
#include "page/reply.c"
#include "page/view.c"
#include "page/work.c"

#include <cjson/cJSON.h>

#include "support/assert_near.h"
#include "text/work_write.h"

/* Invented. Two paints a mix keep it quick; in opaque media the usual palette, with six
 * paints let down. */
static const char in[] =
    "{\"air\":{\"visibility\":\"15 km\"},\"paint\":{\"medium\":\"%s\",\"most_pigments\":2,"
    "\"most_parts\":6},"
    "\"planes\":[{\"name\":\"bank\",\"distance\":30,\"foliage\":\"meadow grass\"},"
    "{\"name\":\"ridge\",\"distance\":\"11 km\",\"foliage\":\"dark conifer\"}]}";

static recede_page *page_in(const char *medium)
{
    recede_page *page = recede_page_new();
    char text[600];
    assert_non_null(page);
    size_t size = (size_t)snprintf(text, sizeof text, in, medium);
    memcpy(recede_page_room(page, size + 1), text, size);
    assert_int_equal(recede_page_read(page, size), 1);
    assert_int_equal(recede_page_mix(page), 1);
    assert_int_equal(recede_page_plan(page), 1);
    return page;
}

static const cJSON *within(const cJSON *tree, const char *key)
{
    const cJSON *item = cJSON_GetObjectItemCaseSensitive(tree, key);
    if (!item)
        fail_msg("no \"%s\"", key);
    return item;
}

static const char *text_of(const cJSON *tree, const char *key)
{
    return within(tree, key)->valuestring;
}

/* Lines run on: a break in a table is a space in a sentence. */
static void run_on(recede_buffer *text)
{
    for (size_t i = 0; i < text->size; i++)
        if (text->bytes[i] == '\n')
            text->bytes[i] = ' ';
}

/* Where a text stands in another; it must, once. */
static size_t place_of(const char *part, const char *all)
{
    const char *at = strstr(all, part);
    if (!at)
        fail_msg("'%s' is not in '%s'", part, all);
    if (strstr(at + 1, part))
        fail_msg("'%s' stands twice", part);
    return (size_t)(at - all);
}

/* What the command line would write of the same plan. */
static void command_line(const recede_page *page, int wells, recede_buffer *table,
                         recede_buffer *json_out)
{
    static recede_work work;
    const recede_work_wish wish = {wells, 0};
    double shares[RECEDE_MOST_PLANES + 1];
    recede_json json;
    assert_int_equal(recede_picture_shares(page->plan, shares, NULL, NULL), RECEDE_OK);
    assert_int_equal(recede_work_of(page->plan, shares, &wish, NULL, NULL, NULL, &work, NULL),
                     RECEDE_OK);
    const recede_work_told told = {page->plan, &work, NULL, 0};
    recede_buffer_start(table, NULL);
    recede_buffer_start(json_out, NULL);
    recede_work_table(&told, table);
    recede_json_start(&json, json_out);
    recede_json_object(&json, NULL);
    recede_work_write(&told, &json);
    recede_json_end_object(&json);
    recede_buffer_string(table); /* ends it */
    run_on(table);
}

static void assert_same_steps(const cJSON *found, const cJSON *expected)
{
    int count = cJSON_GetArraySize(expected);
    assert_int_equal(cJSON_GetArraySize(found), count);
    for (int i = 0; i < count; i++) {
        const cJSON *one = cJSON_GetArrayItem(found, i), *other = cJSON_GetArrayItem(expected, i);
        assert_string_equal(text_of(one, "sentences"), text_of(other, "sentence"));
        assert_string_equal(text_of(one, "kind"), text_of(other, "kind"));
        assert_near(within(one, "delta_e")->valuedouble, within(other, "delta_e")->valuedouble, 0);
    }
}

/* Of a reply's members: which stands first, for JSON keeps them in order. */
static int comes_before(const cJSON *tree, const char *one, const char *other)
{
    for (const cJSON *item = within(tree, one); item; item = item->next)
        if (strcmp(item->string, other) == 0)
            return 1;
    return 0;
}

static void check_in(const char *medium, int wells, int lets_down)
{
    recede_page *page = page_in(medium);
    recede_buffer table, json;
    assert_int_equal(recede_page_work(page, wells), 1);
    cJSON *answer = cJSON_Parse(recede_page_reply(page));
    command_line(page, wells, &table, &json);
    cJSON *written = cJSON_Parse(recede_buffer_string(&json));
    assert_non_null(answer);
    assert_non_null(written);
    assert_same_steps(within(answer, "steps"), within(within(written, "work"), "steps"));
    const char *beforehand = text_of(answer, "beforehand");
    size_t steps = place_of("WHAT TO DO", table.bytes);
    size_t sum = place_of(text_of(answer, "sum"), table.bytes);
    assert_int_equal(*beforehand != '\0', lets_down);
    if (lets_down)
        assert_true(place_of(beforehand, table.bytes) < steps);
    assert_true(steps < sum);
    assert_true(sum < place_of(text_of(answer, "amounts"), table.bytes));
    assert_true(comes_before(answer, "beforehand", "steps"));
    assert_true(comes_before(answer, "steps", "sum"));
    assert_true(comes_before(answer, "sum", "amounts"));
    cJSON_Delete(answer);
    cJSON_Delete(written);
    recede_buffer_free(&table);
    recede_buffer_free(&json);
    recede_page_free(page);
}

static void in_watercolour_it_says_what_the_command_line_says(void **state)
{
    (void)state;
    check_in("watercolour", 3, 0);
    check_in("watercolour", 1, 0);
}

static void in_opaque_media_too(void **state)
{
    (void)state;
    check_in("oil", 3, 1);
    check_in("oil", 1, 1);
    check_in("gouache", 2, 1);
    check_in("acrylic", 3, 1);
}

/* The tubes are those to squeeze from, the white among them: by the words alone. */
static void the_tubes_are_those_to_squeeze_from(void **state)
{
    (void)state;
    recede_page *page = page_in("oil");
    int is[RECEDE_MOST_PAINTS] = {0}, tubes = 0;
    char expected[40];
    assert_int_equal(recede_page_work(page, 3), 1);
    cJSON *answer = cJSON_Parse(recede_page_reply(page));
    const recede_palette *palette = recede_plan_palette(page->plan);
    const cJSON *step;
    cJSON_ArrayForEach(step, within(answer, "steps"))
        for (size_t i = 0; i < recede_palette_count(palette); i++) {
            char named[RECEDE_NAME_SIZE + 16];
            const char *name = recede_palette_paint(palette, i)->name;
            snprintf(named, sizeof named, "of %s", name); /* not "of pale ..." */
            is[i] |= strstr(text_of(step, "sentences"), named) != NULL;
        }
    for (size_t i = 0; i < recede_palette_count(palette); i++) {
        const char *name = recede_palette_paint(palette, i)->name;
        int pale = strncmp(name, "pale ", 5) == 0;
        char part[RECEDE_NAME_SIZE + 16];
        snprintf(part, sizeof part, "part %s with", name);
        is[i] |= strstr(text_of(answer, "beforehand"), part) != NULL ||
                 strcmp(name, "titanium white") == 0;
        tubes += is[i] && !pale;
    }
    snprintf(expected, sizeof expected, "It takes %d tubes; ", tubes);
    place_of(expected, text_of(answer, "sum"));
    cJSON_Delete(answer);
    recede_page_free(page);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(in_watercolour_it_says_what_the_command_line_says),
        cmocka_unit_test(in_opaque_media_too),
        cmocka_unit_test(the_tubes_are_those_to_squeeze_from),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
