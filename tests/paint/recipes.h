/* Recipes of two searches that must be the same to the last bit. */
#ifndef RECEDE_TESTS_RECIPES_H
#define RECEDE_TESTS_RECIPES_H

#include "recede.h"
#include "support/assert_near.h"

static inline void assert_same_recipe(const recede_recipe *found, const recede_recipe *expected)
{
    assert_int_equal(found->mix.count, expected->mix.count);
    for (int i = 0; i < expected->mix.count; i++) {
        assert_int_equal(found->mix.paint[i], expected->mix.paint[i]);
        assert_int_equal(found->mix.parts[i], expected->mix.parts[i]);
    }
    assert_near(found->mix.water, expected->mix.water, 0);
    assert_near(found->delta_e, expected->delta_e, 0);
    assert_near(found->slip, expected->slip, 0);
    assert_near(found->colour.lab.l, expected->colour.lab.l, 0);
    assert_near(found->colour.lab.a, expected->colour.lab.a, 0);
    assert_near(found->colour.lab.b, expected->colour.lab.b, 0);
    assert_int_equal(found->reach, expected->reach);
}

static inline void assert_same_wash(const recede_wash_recipe *found,
                                    const recede_wash_recipe *expected, int graded)
{
    assert_same_recipe(&found->from, &expected->from);
    if (!graded)
        return;
    assert_same_recipe(&found->to, &expected->to);
    assert_near(found->half_delta_e, expected->half_delta_e, 0);
    assert_int_equal(found->two_washes, expected->two_washes);
}

#endif
