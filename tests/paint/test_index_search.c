/* The search by index against the reference search, to the last bit. */
#include "paint/index.h"

#include "paint/recipes.h"
#include "paint/wash_targets.h"
#include "recede.h"
#include "support/assert_near.h"

enum { MOST_TARGETS = 60 };

static recede_palette *named_palette(const char *name)
{
    const recede_palette_entry *entry = entry_of(name);
    return palette_of(entry->paints, entry->opaque ? RECEDE_GOUACHE : RECEDE_WATERCOLOUR);
}

static recede_index *index_of(const recede_palette *palette, const recede_rules *rules,
                              size_t most_bytes)
{
    recede_index *index;
    assert_int_equal(
        recede_index_new(palette, rules, most_bytes, NULL, NULL, &index, NULL), RECEDE_OK);
    return index;
}

typedef recede_wash_target target_maker(const recede_palette *palette, dice *d, int kind);

static void these_as_reference(const recede_palette *palette, recede_rules rules,
                               size_t most_bytes, int count, target_maker *make, dice *d)
{
    static recede_wash_target targets[MOST_TARGETS];
    static recede_wash_recipe found[MOST_TARGETS], expected[MOST_TARGETS];
    recede_index *index = index_of(palette, &rules, most_bytes);
    for (int i = 0; i < count; i++)
        targets[i] = make(palette, d, i);
    assert_int_equal(recede_search(index, targets, (size_t)count, found, NULL, NULL, NULL),
                     RECEDE_OK);
    assert_int_equal(recede_search_all(palette, &rules, targets, (size_t)count, expected, NULL,
                                       NULL, NULL), RECEDE_OK);
    for (int i = 0; i < count; i++)
        assert_same_wash(&found[i], &expected[i], targets[i].graded);
    recede_index_free(index);
}

static void as_reference(const recede_palette *palette, recede_rules rules, size_t most_bytes,
                         int count, dice *d)
{
    these_as_reference(palette, rules, most_bytes, count, wash_target, d);
}

static void six_and_twelve_pigments_as_the_reference(void **state)
{
    (void)state;
    dice d = {2025};
    recede_palette *six = named_palette("landscape-six");
    recede_palette *twelve = named_palette("landscape-twelve");
    as_reference(six, (recede_rules){3, 8, 1}, 0, MOST_TARGETS, &d);
    as_reference(twelve, (recede_rules){3, 6, 1}, 0, MOST_TARGETS, &d);
    recede_palette_free(six);
    recede_palette_free(twelve);
}

/* A tie of nothing wants the closest exactly; a wide one a long list. */
static void whatever_the_rules_as_the_reference(void **state)
{
    (void)state;
    static const double ties[] = {0, 0.01, 0.3, 2, 10};
    dice d = {17};
    recede_palette *six = named_palette("landscape-six");
    recede_palette *three =
        palette_of("yellow ochre|ultramarine blue|burnt sienna", RECEDE_WATERCOLOUR);
    recede_palette *one = palette_of("viridian", RECEDE_WATERCOLOUR);
    for (int i = 0; i < 12; i++) {
        recede_rules rules = {1 + i % 4, 1 + (5 * i) % 12, ties[i % 5]};
        as_reference(three, rules, 0, 36, &d);
        as_reference(one, rules, 0, 12, &d);
        if (i < 5)
            as_reference(six, (recede_rules){2 + i % 2, 4 + i % 2, ties[i]}, 0, 36, &d);
    }
    recede_palette_free(six);
    recede_palette_free(three);
    recede_palette_free(one);
}

static void opaque_paints_as_the_reference(void **state)
{
    (void)state;
    dice d = {23};
    recede_palette *opaque = named_palette("opaque-sixteen");
    as_reference(opaque, (recede_rules){3, 8, 1}, 0, MOST_TARGETS, &d);
    as_reference(opaque, (recede_rules){4, 6, 0.2}, 0, MOST_TARGETS, &d);
    as_reference(opaque, (recede_rules){3, 8, 1}, 40000, MOST_TARGETS, &d);
    recede_palette_free(opaque);
}

/* Twins, one paint under two names: ties in everything but the palette's order. */
static void twins_as_the_reference(void **state)
{
    (void)state;
    dice d = {29};
    recede_palette *palette = palette_of(
        "french ultramarine|hansa yellow|ultramarine blue|lemon yellow", RECEDE_WATERCOLOUR);
    as_reference(palette, (recede_rules){3, 5, 1}, 0, MOST_TARGETS, &d);
    as_reference(palette, (recede_rules){3, 5, 0}, 0, MOST_TARGETS, &d);
    recede_palette_free(palette);
}

/* Room for the mixes of just so many pigments. */
static size_t bytes_for(const recede_palette *palette, recede_rules rules, int pigments)
{
    rules.most_pigments = pigments;
    recede_index *index = index_of(palette, &rules, 0);
    size_t bytes = recede_index_bytes(index);
    recede_index_free(index);
    return bytes;
}

/* Where memory is short the index holds mixes of few pigments, or none; the rest go
 * by in a stream. */
static void what_does_not_fit_as_the_reference(void **state)
{
    (void)state;
    static const double ties[] = {1, 0, 0.3};
    dice d = {31};
    recede_palette *six = named_palette("landscape-six");
    for (int held = 0; held <= 4; held++) {
        recede_rules rules = {4, 6, 1};
        size_t bytes = held ? bytes_for(six, rules, held) : 1;
        recede_index *index = index_of(six, &rules, bytes);
        assert_int_equal(recede_index_pigments(index), held);
        if (held)
            assert_int_equal(recede_index_bytes(index), bytes);
        recede_index_free(index);
        index = index_of(six, &rules, bytes > 1 ? bytes - 1 : 1);
        assert_int_equal(recede_index_pigments(index), held ? held - 1 : 0);
        recede_index_free(index);
        for (int tie = 0; tie < 3; tie++) {
            rules.tie = ties[tie];
            as_reference(six, rules, bytes, 30, &d);
        }
    }
    recede_palette_free(six);
}

/* A paper darker than its own surface, and paints far out: no curve holds them. */
static void what_no_curve_holds_as_the_reference(void **state)
{
    (void)state;
    dice d = {37};
    recede_palette *palette = palette_of("yellow ochre|viridian", RECEDE_WATERCOLOUR);
    recede_rules rules = {2, 4, 1};
    palette->paper.at[30] = palette->paper_internal[30] = 0;
    recede_index *index = index_of(palette, &rules, 0);
    assert_int_equal(recede_index_pigments(index), 0);
    recede_index_free(index);
    as_reference(palette, rules, 0, 24, &d);
    recede_palette_free(palette);
}

/* About as far out as counts as reached, where a wide tie chooses a mix farther off
 * than the closest: the closest alone decides. */
static recede_wash_target flat_about_the_edge(const recede_palette *palette, dice *d, int kind)
{
    (void)kind;
    return (recede_wash_target){.from = colour_in_range(palette, d, 5)};
}

static void the_edge_of_reach_as_the_reference(void **state)
{
    (void)state;
    dice d = {43};
    recede_palette *palette =
        palette_of("yellow ochre|ultramarine blue|burnt sienna|viridian", RECEDE_WATERCOLOUR);
    for (int i = 0; i < 10; i++) {
        recede_rules rules = {3, 5, i % 2 ? 10 : 2.5};
        these_as_reference(palette, rules, i % 5 ? 30000 : 0, MOST_TARGETS,
                           flat_about_the_edge, &d);
    }
    recede_palette_free(palette);
}

/* Both ends from the same three paints: they can be met exactly. */
static recede_wash_target graded_of_three(const recede_palette *palette, dice *d)
{
    recede_lab ends[2];
    int first = throw_below(d, (int)recede_palette_count(palette) - 2);
    for (int end = 0; end < 2; end++) {
        recede_mix mix = {3, {first, first + 1, first + 2},
                          {1 + throw_below(d, 3), 1 + throw_below(d, 2), 1},
                          recede_water_at((size_t)throw_below(d, 60))};
        ends[end] = colour_of_mix(palette, &mix).lab;
    }
    return graded_between(ends[0], ends[1]);
}

static recede_wash_target any_graded(const recede_palette *palette, dice *d, int kind)
{
    return kind % 2 ? graded_of_three(palette, d) : wash_target(palette, d, 1 + kind % 3);
}

/* Whether a set of more paints is better by more than the tie may hang on little. */
static void graded_washes_as_the_reference(void **state)
{
    (void)state;
    dice d = {47};
    recede_palette *six = named_palette("landscape-six");
    for (int i = 0; i < 8; i++)
        these_as_reference(six, (recede_rules){3, 6, 0.4 * i}, i % 4 == 3 ? 60000 : 0,
                           MOST_TARGETS, any_graded, &d);
    recede_palette_free(six);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(six_and_twelve_pigments_as_the_reference),
        cmocka_unit_test(whatever_the_rules_as_the_reference),
        cmocka_unit_test(opaque_paints_as_the_reference),
        cmocka_unit_test(twins_as_the_reference),
        cmocka_unit_test(what_does_not_fit_as_the_reference),
        cmocka_unit_test(what_no_curve_holds_as_the_reference),
        cmocka_unit_test(the_edge_of_reach_as_the_reference),
        cmocka_unit_test(graded_washes_as_the_reference),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
