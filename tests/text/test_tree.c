/* The scanner and cJSON hold the same view of whatever the scanner passes:
 * cJSON parses it, to the same values in the same order. Documents come from a
 * generator and from changing bytes at random. */
#include <stdlib.h>
#include <string.h>

#include "support/allocator.h"
#include "support/assert_near.h"
#include "text/numbers.h"
#include "text/tree.h"

static unsigned long seed = 20240229;

static unsigned draw(unsigned below)
{
    seed = (seed * 6364136223846793005UL + 1442695040888963407UL) & 0xFFFFFFFFFFFFFFFFUL;
    return (unsigned)(seed >> 33) % below;
}

static const char start[] =
    "{\"title\": \"Tarn \\u00c9 \xC3\xA9\", \"air\": {\"visibility\": \"18 km\", "
    "\"eye\": -1.5e2},\n"
    " \"planes\": [{\"name\": \"a\", \"lab\": [1, 2.25, -0.5e1]}, {}, [], true, false, null]}";

static size_t mutate(char *text, size_t size)
{
    static const char likely[] = "{}[]\":,0123456789.-+eE\\u tfn\n/";
    unsigned changes = 1 + draw(3);
    while (changes--) {
        size_t at = draw((unsigned)size);
        switch (draw(3)) {
        case 0:
            text[at] = likely[draw(sizeof likely - 1)];
            break;
        case 1:
            memmove(text + at, text + at + 1, size - at - 1);
            size--;
            break;
        default:
            memmove(text + at + 1, text + at, size - at);
            text[at] = likely[draw(sizeof likely - 1)];
            size++;
        }
    }
    return size;
}

/* Walks cJSON's tree on its own and checks each value against its bytes. */
static size_t check_value(const recede_tree *tree, const cJSON *item, size_t value)
{
    const recede_scanned *place = recede_tree_place(tree, value);
    char first = tree->bytes[place->start];
    assert_ptr_equal(recede_tree_item(tree, value), item);
    assert_int_equal(first == '{', cJSON_IsObject(item) != 0);
    assert_int_equal(first == '[', cJSON_IsArray(item) != 0);
    assert_int_equal(first == '"', cJSON_IsString(item) != 0);
    if (cJSON_IsNumber(item)) {
        double read = recede_tree_number(tree, value);
        assert_memory_equal(&read, &item->valuedouble, sizeof read);
    }
    size_t next = value + 1;
    const cJSON *child;
    cJSON_ArrayForEach(child, item) next = check_value(tree, child, next);
    assert_int_equal(recede_tree_next(tree, value), next);
    return next;
}

static void what_passes_is_what_cjson_reads(void **state)
{
    enum { TRIALS = 40000 };
    int passed = 0, refused = 0;
    (void)state;
    for (int i = 0; i < TRIALS; i++) {
        char text[sizeof start + 8];
        recede_tree tree;
        recede_text_error error;
        memcpy(text, start, sizeof start);
        size_t size = mutate(text, sizeof start - 1);
        recede_text_status status = recede_tree_read(text, size, NULL, &tree, &error);
        if (status == RECEDE_TEXT_OK) {
            check_value(&tree, tree.root, 0);
            passed++;
        } else {
            assert_int_equal(status, RECEDE_TEXT_REFUSED);
            assert_true(error.line >= 1 && error.column >= 1);
            refused++;
        }
        recede_tree_free(&tree);
    }
    assert_true(passed > 1000);
    assert_true(refused > 1000);
}

static void paths_are_found(void **state)
{
    static const struct {
        const char *path;
        int whole;
        size_t column;
    } cases[] = {
        {"", 1, 1},           {"a", 1, 6},      {"a.b", 1, 11},    {"list[1].x", 1, 34},
        {"list[2].x", 0, 23}, {"a.c", 0, 6},    {"a.b.c", 0, 11},  {"none", 0, 1},
        {"list[1]", 1, 29},   {"list[9]", 0, 23}, {"..", 0, 1},    {"[0]", 0, 1},
    };
    static const char text[] = "{\"a\":{\"b\":12},\"list\": [1,   {\"x\":2}]}";
    recede_tree tree;
    recede_text_error error;
    (void)state;
    assert_int_equal(recede_tree_read(text, strlen(text), NULL, &tree, &error), 0);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        int whole;
        size_t value = recede_tree_find(&tree, cases[i].path, &whole);
        assert_int_equal(whole, cases[i].whole);
        if (recede_tree_place(&tree, value)->value.column != cases[i].column)
            fail_msg("%s leads to column %zu, expected %zu", cases[i].path,
                     recede_tree_place(&tree, value)->value.column, cases[i].column);
    }
    recede_tree_free(&tree);
}

/* cJSON keeps to malloc; here it is given one that fails, as only a program
 * may do. */
static int cjson_left;
static void *cjson_allocate(size_t size)
{
    return cjson_left-- > 0 ? malloc(size) : NULL;
}

static void cjson_may_run_out_of_memory(void **state)
{
    cJSON_Hooks failing = {cjson_allocate, free};
    int failures = 0;
    (void)state;
    cJSON_InitHooks(&failing);
    for (int allowed = 0;; allowed++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, 0);
        recede_tree tree;
        recede_text_error error;
        cjson_left = allowed;
        recede_text_status status =
            recede_tree_read(start, sizeof start - 1, &allocator, &tree, &error);
        recede_tree_free(&tree);
        assert_int_equal(memory.live, 0);
        if (status == RECEDE_TEXT_OK)
            break;
        assert_int_equal(status, RECEDE_TEXT_NO_MEMORY);
        failures++;
    }
    cJSON_InitHooks(NULL);
    assert_true(failures > 20);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_passes_is_what_cjson_reads),
        cmocka_unit_test(paths_are_found),
        cmocka_unit_test(cjson_may_run_out_of_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
