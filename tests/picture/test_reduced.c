/* The picture in a few values, from plans of invented colours. */
#include "picture/fake_plan.c"
#include "support/allocator.h"
#include "support/assert_near.h"

#include <stdlib.h>

enum { WIDTH = 420, HEIGHT = 300 };

static const fake_light lights[] = {0, 1, 2, 3};

static unsigned char *painted(const recede_plan *plan, const recede_groups *groups, int targets)
{
    recede_picture_options options = {WIDTH, HEIGHT, 1, targets, groups};
    unsigned char *rgb = malloc(3 * WIDTH * HEIGHT);
    assert_non_null(rgb);
    assert_int_equal(recede_picture_paint(plan, &options, rgb, 3 * WIDTH, NULL, NULL), RECEDE_OK);
    return rgb;
}

/* ASTM D1535 (the quintic over its value at 10) and IEC 61966-2-1, written out
 * anew: the encoded grey of a Munsell value. */
static double grey_of_value(double v)
{
    double y = ((((0.00081939 * v - 0.020484) * v + 0.23352) * v - 0.22533) * v + 1.1914) * v;
    double white = ((((0.00081939 * 10 - 0.020484) * 10 + 0.23352) * 10 - 0.22533) * 10 + 1.1914) * 10;
    double linear = y / white;
    return 255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * pow(linear, 1 / 2.4) - 0.055);
}

/* Each pixel is one of the groups' greys, and the one nearest in value to what
 * the greys in full have there, but where an edge passes over it. */
static void check_picture(const unsigned char *rgb, const unsigned char *full,
                          const recede_groups *groups)
{
    size_t used[RECEDE_MOST_GROUPS] = {0}, other = 0;
    for (size_t i = 0; i < WIDTH * HEIGHT; i++) {
        const unsigned char *p = rgb + 3 * i;
        assert_true(p[0] == p[1] && p[1] == p[2]);
        int group = -1, nearest = 0;
        for (int g = 0; g < groups->count; g++) {
            if (fabs(grey_of_value(groups->value[g]) - p[1]) <= 0.51)
                group = g;
            double below = g ? (groups->value[g - 1] + groups->value[g]) / 2 : 0;
            if (full[3 * i + 1] >= grey_of_value(below))
                nearest = g;
        }
        assert_true(group >= 0);
        used[group]++;
        other += group != nearest;
    }
    for (int g = 0; g < groups->count; g++)
        assert_true(used[g] > 0);
    assert_true(other < WIDTH * HEIGHT / 25);
}

static void only_the_groups_values_are_painted(void **state)
{
    (void)state;
    static recede_plan plan;
    for (size_t l = 0; l < 4; l++) {
        fake_plan_make(&plan, 7, lights[l]);
        unsigned char *full = painted(&plan, NULL, 0);
        for (int wanted = 3; wanted <= 5; wanted++) {
            recede_grouping grouping;
            assert_int_equal(recede_picture_group(&plan, wanted, &grouping, NULL, NULL), RECEDE_OK);
            assert_int_equal(grouping.groups.count, wanted);
            unsigned char *rgb = painted(&plan, &grouping.groups, 0);
            check_picture(rgb, full, &grouping.groups);
            free(rgb);
        }
        free(full);
    }
}

static double value_of_group(const recede_grouping *grouping, int group)
{
    assert_true(group >= 0 && group < grouping->groups.count);
    return grouping->groups.value[group];
}

static void check_side(const recede_grouping *grouping, const recede_side *side,
                       recede_side_groups groups)
{
    const recede_wash *ends[] = {&side->crest, side->graded ? &side->base : &side->crest};
    const int group[] = {groups.crest, groups.base};
    for (int i = 0; i < 2; i++) {
        double off = fabs(value_of_group(grouping, group[i]) - ends[i]->recipe.colour.value);
        for (int g = 0; g < grouping->groups.count; g++)
            assert_true(off <= fabs(value_of_group(grouping, g) - ends[i]->recipe.colour.value));
    }
}

/* Every wash is in the group nearest to its mix; and each group's value is the
 * mean of its washes, weighed by the picture's shares. */
static void washes_are_weighed_by_their_area(void **state)
{
    (void)state;
    static recede_plan plan;
    fake_plan_make(&plan, 6, lights[0]);
    plan.planned[2].lit.graded = 1;
    plan.planned[2].lit.base = fake_wash(76, -3, 2);
    double shares[7], weight[RECEDE_MOST_GROUPS] = {0}, sum[RECEDE_MOST_GROUPS] = {0};
    recede_grouping grouping;
    assert_int_equal(recede_picture_shares(&plan, shares, NULL, NULL), RECEDE_OK);
    assert_int_equal(recede_picture_group(&plan, 4, &grouping, NULL, NULL), RECEDE_OK);
    check_side(&grouping, &plan.sky, grouping.sky);
    weight[grouping.sky.crest] += shares[6] / 2;
    sum[grouping.sky.crest] += shares[6] / 2 * plan.sky.crest.recipe.colour.value;
    weight[grouping.sky.base] += shares[6] / 2;
    sum[grouping.sky.base] += shares[6] / 2 * plan.sky.base.recipe.colour.value;
    /* lit from the side, sun 100 degrees from the view: a little over half is lit */
    double lit_part = 0.55 + 0.13 * sin(10 * 3.14159265358979323846 / 180);
    for (int i = 0; i < 6; i++) {
        const recede_planned *p = &plan.planned[i];
        check_side(&grouping, &p->lit, grouping.lit[i]);
        check_side(&grouping, &p->shadow, grouping.shadow[i]);
        const recede_wash *base = p->lit.graded ? &p->lit.base : &p->lit.crest;
        double lit = shares[i] * lit_part / 2, shadow = shares[i] * (1 - lit_part);
        weight[grouping.lit[i].crest] += lit;
        sum[grouping.lit[i].crest] += lit * p->lit.crest.recipe.colour.value;
        weight[grouping.lit[i].base] += lit;
        sum[grouping.lit[i].base] += lit * base->recipe.colour.value;
        weight[grouping.shadow[i].crest] += shadow;
        sum[grouping.shadow[i].crest] += shadow * p->shadow.crest.recipe.colour.value;
    }
    for (int g = 0; g < grouping.groups.count; g++) {
        assert_near(grouping.groups.share[g], weight[g], 1e-9);
        assert_near(grouping.groups.value[g], sum[g] / weight[g], 1e-9);
    }
}

static void one_plane_has_few_values(void **state)
{
    (void)state;
    static recede_plan plan;
    recede_grouping grouping;
    fake_plan_make(&plan, 1, lights[0]);
    plan.sky.graded = 0;
    assert_int_equal(recede_picture_group(&plan, 5, &grouping, NULL, NULL), RECEDE_OK);
    assert_int_equal(grouping.groups.count, 3);
    assert_near(grouping.groups.error, 0.0, 1e-12);
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    static recede_plan plan;
    fake_plan_make(&plan, 3, lights[0]);
    for (size_t nth = 1;; nth++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, nth);
        recede_grouping grouping;
        recede_error error;
        recede_code code = recede_picture_group(&plan, 3, &grouping, &allocator, &error);
        assert_int_equal(memory.live, 0);
        if (!code)
            break;
        assert_int_equal(code, RECEDE_NO_MEMORY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(only_the_groups_values_are_painted),
        cmocka_unit_test(washes_are_weighed_by_their_area),
        cmocka_unit_test(one_plane_has_few_values),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
