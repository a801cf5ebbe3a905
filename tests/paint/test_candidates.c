/* The list that forgets nothing it may need: streams of mixes with made-up differences,
 * held against a list that keeps them all. */
#include "recede.h"
#include "support/allocator.h"
#include "support/assert_near.h"

#include "paint/candidates.h"
#include "paint/paints.h"
#include "paint/slip.h"

enum { MOST_OFFERS = 4000 };

typedef struct stream {
    int count;
    recede_candidate offers[MOST_OFFERS];
} stream;

/* Sizes from small to large, as a walk gives them; differences of no mix at all, the
 * smaller ones rare, as it were on the way to the closest. */
static void make_stream(stream *s, int count, dice *d)
{
    s->count = count;
    for (int i = 0; i < count; i++) {
        int size = i * 5 / count; /* 1 + 1, ... in five sizes */
        recede_candidate *offer = &s->offers[i];
        memset(offer, 0, sizeof *offer);
        offer->mix = (recede_mix){2, {throw_below(d, 2), 2}, {1, 1 + size}, 0};
        offer->mix.water = recede_water_at((size_t)throw_below(d, 82));
        offer->difference = recede_millionths(12 * throw_dice(d) * throw_dice(d)
                                              + 2.0 * (count - i) / count);
    }
}

static const recede_candidate *choose_plainly(stream *s, const recede_palette *palette,
                                              recede_lab target, double tie)
{
    double closest = INFINITY;
    const recede_candidate *chosen = NULL;
    for (int i = 0; i < s->count; i++)
        closest = fmin(closest, s->offers[i].difference);
    for (int i = 0; i < s->count; i++) {
        recede_candidate *offer = &s->offers[i];
        if (offer->difference > closest + recede_millionths(tie))
            continue;
        offer->slip = recede_millionths(recede_slip(palette, &offer->mix, target));
        if (!chosen || recede_compare_candidates(offer, chosen) < 0)
            chosen = offer;
    }
    return chosen;
}

static size_t run_stream(stream *s, const recede_palette *palette, recede_lab target, double tie)
{
    test_memory memory;
    recede_allocator allocator = test_allocator(&memory, 0);
    recede_candidates list;
    recede_candidates_start(&list, palette, target, tie, &allocator);
    for (int i = 0; i < s->count; i++) {
        if (i && recede_compare_size(&s->offers[i].mix, &s->offers[i - 1].mix) != 0)
            recede_candidates_next_size(&list);
        assert_int_equal(recede_candidates_offer(&list, &s->offers[i].mix,
                                                 s->offers[i].difference), RECEDE_OK);
    }
    const recede_candidate *expected = choose_plainly(s, palette, target, tie);
    recede_candidate chosen = recede_candidates_choose(&list);
    assert_int_equal(recede_compare_candidates(&chosen, expected), 0);
    assert_near(chosen.difference, expected->difference, 0);
    recede_candidates_end(&list);
    assert_int_equal(memory.live, 0);
    return memory.peak;
}

static void the_choice_is_that_of_a_list_of_all(void **state)
{
    (void)state;
    static stream s;
    static const double ties[] = {0, 0.2, 1, 4, 10};
    static const int lengths[] = {1, 2, 30, 200, MOST_OFFERS};
    recede_palette *palette =
        palette_of("burnt sienna|ultramarine blue|hansa yellow", RECEDE_WATERCOLOUR);
    recede_lab target = {70, 2, 12};
    dice d = {99};
    size_t peak = 0;
    for (int tie = 0; tie < 5; tie++) {
        for (int round = 0; round < 60; round++) {
            make_stream(&s, lengths[round % 5], &d);
            size_t used = run_stream(&s, palette, target, ties[tie]);
            peak = used > peak ? used : peak;
        }
    }
    print_message("at most %zu bytes for %d offers\n", peak, MOST_OFFERS);
    assert_true(peak < MOST_OFFERS * sizeof(recede_candidate) / 16);
    recede_palette_free(palette);
}

static void what_is_beyond_the_limit_does_not_enter(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("burnt sienna|ultramarine blue", RECEDE_WATERCOLOUR);
    recede_candidates list;
    recede_mix one = {1, {0}, {1}, 1}, two = {2, {0, 1}, {1, 1}, 1};
    recede_candidates_start(&list, palette, (recede_lab){50, 0, 0}, 1, NULL);
    assert_true(recede_candidates_limit(&list) == INFINITY);
    assert_int_equal(recede_candidates_offer(&list, &one, 5e6), RECEDE_OK);
    assert_near(recede_candidates_limit(&list), 6e6, 0);
    assert_int_equal(recede_candidates_offer(&list, &one, 6e6), RECEDE_OK);
    assert_int_equal(recede_candidates_offer(&list, &one, 6e6 + 1), RECEDE_OK);
    assert_int_equal(list.count, 2);
    recede_candidates_next_size(&list);
    assert_near(recede_candidates_limit(&list), 5e6 - 1, 0);
    assert_int_equal(recede_candidates_offer(&list, &two, 5e6), RECEDE_OK);
    assert_int_equal(list.count, 2);
    assert_int_equal(recede_candidates_offer(&list, &two, 4e6 - 1), RECEDE_OK);
    assert_int_equal(recede_candidates_choose(&list).mix.count, 2);
    recede_candidates_end(&list);
    recede_palette_free(palette);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_choice_is_that_of_a_list_of_all),
        cmocka_unit_test(what_is_beyond_the_limit_does_not_enter),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
