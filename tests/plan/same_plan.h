/* Sides and planes of two plans that must be the same to the last bit. Not by their
 * bytes: those between members mean nothing and may differ. */
#ifndef RECEDE_TESTS_SAME_PLAN_H
#define RECEDE_TESTS_SAME_PLAN_H

#include "paint/recipes.h"

static inline void assert_same_plan_wash(const recede_wash *found, const recede_wash *expected)
{
    assert_near(found->target.lab.l, expected->target.lab.l, 0);
    assert_near(found->target.lab.a, expected->target.lab.a, 0);
    assert_near(found->target.lab.b, expected->target.lab.b, 0);
    assert_near(found->value_as_seen, expected->value_as_seen, 0);
    assert_near(found->own_share, expected->own_share, 0);
    assert_int_equal(found->ground, expected->ground);
    assert_same_recipe(&found->recipe, &expected->recipe);
}

static inline void assert_same_side(const recede_side *found, const recede_side *expected)
{
    assert_int_equal(found->graded, expected->graded);
    assert_int_equal(found->two_washes, expected->two_washes);
    assert_near(found->half_delta_e, expected->half_delta_e, 0);
    assert_same_plan_wash(&found->crest, &expected->crest);
    assert_same_plan_wash(&found->base, &expected->base);
}

static inline void assert_same_planned(const recede_planned *found, const recede_planned *expected)
{
    assert_int_equal(found->plane, expected->plane);
    assert_same_side(&found->lit, &expected->lit);
    assert_same_side(&found->shadow, &expected->shadow);
    assert_int_equal(found->edge, expected->edge);
    assert_near(found->value_step, expected->value_step, 0);
    assert_near(found->value_step_shadow, expected->value_step_shadow, 0);
    assert_near(found->colour_step, expected->colour_step, 0);
    assert_near(found->colour_step_shadow, expected->colour_step_shadow, 0);
    assert_near(found->hue_step, expected->hue_step, 0);
    assert_near(found->hue_step_shadow, expected->hue_step_shadow, 0);
    assert_int_equal(found->apart, expected->apart);
    assert_int_equal(found->apart_shadow, expected->apart_shadow);
}

#endif
