#include "picture/reduced.h"

#include <math.h>

#include "colour/error.h"
#include "picture/lighting.h"

/* The sky's two ends, and two ends of each plane's two sides. */
enum { MOST_ENDS = 2 + 4 * RECEDE_MOST_PLANES };

static double encoded_grey(double value)
{
    double y = recede_y_of_value(value);
    recede_xyz white = recede_white(), grey = {white.x * y, white.y * y, white.z * y};
    return fmin(fmax(recede_srgb_of_xyz(grey).g, 0), 1) * 255;
}

recede_reduced recede_reduced_to(const recede_groups *groups)
{
    recede_reduced reduced = {.count = groups->count};
    for (int i = 0; i < groups->count; i++) {
        double below = i ? (groups->value[i - 1] + groups->value[i]) / 2 : 0;
        reduced.from[i] = (uint16_t)floor(encoded_grey(below) * 256 + 0.5);
        reduced.grey[i] = (unsigned char)floor(encoded_grey(groups->value[i]) + 0.5);
    }
    return reduced;
}

/* The ends of all sides with the area each takes. */
typedef struct ends {
    double value[MOST_ENDS], area[MOST_ENDS];
    int group[MOST_ENDS];
    size_t count;
} ends;

static void add_side(ends *e, const recede_side *side, double area)
{
    const recede_wash *base = side->graded ? &side->base : &side->crest;
    e->value[e->count] = side->crest.recipe.colour.value;
    e->value[e->count + 1] = base->recipe.colour.value;
    e->area[e->count] = e->area[e->count + 1] = area / 2;
    e->count += 2;
}

static void add_all(ends *e, const recede_plan *plan, const double *shares)
{
    size_t planes = recede_plan_count(plan);
    double lit_part = recede_lighting_of(&recede_plan_scene(plan)->sky).lit_part;
    e->count = 0;
    add_side(e, recede_plan_sky(plan), shares[planes]);
    for (size_t i = 0; i < planes; i++) {
        const recede_planned *planned = recede_plan_at(plan, i);
        add_side(e, &planned->lit, shares[i] * lit_part);
        add_side(e, &planned->shadow, shares[i] * (1 - lit_part));
    }
}

static void take_groups(const ends *e, size_t planes, recede_grouping *out)
{
    const int *group = e->group;
    out->sky = (recede_side_groups){group[0], group[1]};
    for (size_t i = 0; i < planes; i++) {
        group = e->group + 2 + 4 * i;
        out->lit[i] = (recede_side_groups){group[0], group[1]};
        out->shadow[i] = (recede_side_groups){group[2], group[3]};
    }
}

recede_code recede_picture_group(const recede_plan *plan, int wanted, recede_grouping *out,
                                 const recede_allocator *allocator, recede_error *error)
{
    double shares[RECEDE_MOST_PLANES + 1];
    ends all;
    recede_code code = recede_picture_shares(plan, shares, allocator, error);
    if (code)
        return code;
    add_all(&all, plan, shares);
    code = recede_group_values(all.value, all.area, all.count, wanted, all.group, &out->groups,
                               allocator, error);
    if (!code)
        take_groups(&all, recede_plan_count(plan), out);
    return code;
}
