/* The lower bound on CIEDE2000 over a box of Lab is never above the difference
 * itself. Random colours and boxes; nothing published is needed: the bound is
 * held against CIEDE2000 itself (checked elsewhere against its published pairs). */
#include "paint/box.h"

#include "paint/paints.h"
#include "recede.h"
#include "support/assert_near.h"

#define DEGREES 57.29577951308232

static double uniform(dice *d, double low, double high)
{
    return low + (high - low) * throw_dice(d);
}

static recede_box box_around(dice *d, double size)
{
    recede_box box;
    double middle[3] = {uniform(d, 0, 100), uniform(d, -90, 90), uniform(d, -90, 90)};
    for (int i = 0; i < 3; i++) {
        box.low[i] = (float)(middle[i] - uniform(d, 0, size));
        box.high[i] = (float)(middle[i] + uniform(d, 0, size));
    }
    return box;
}

static recede_lab inside(dice *d, const recede_box *box)
{
    /* Corners and faces as well as the inside: there bounds are tight. */
    double at[3];
    for (int i = 0; i < 3; i++) {
        double t = fmin(fmax(uniform(d, -0.5, 1.5), 0), 1);
        at[i] = box->low[i] + t * ((double)box->high[i] - box->low[i]);
    }
    return (recede_lab){at[0], at[1], at[2]};
}

static recede_box point(recede_lab at)
{
    return (recede_box){{(float)at.l, (float)at.a, (float)at.b},
                        {(float)at.l, (float)at.a, (float)at.b}};
}

static void check(const recede_aim *aim, const recede_box *box, recede_lab colour)
{
    float bound = recede_box_bound(aim, box, recede_box_arc(box));
    double difference = recede_delta_e(aim->target, colour);
    if (!(bound <= difference + 1e-6))
        print_error("target %g %g %g, colour %g %g %g\n", aim->target.l, aim->target.a,
                    aim->target.b, colour.l, colour.a, colour.b);
    assert_below(bound, difference + 1e-6);
}

static void never_above_the_difference(void **state)
{
    (void)state;
    static const double sizes[] = {0.0, 0.5, 3.0, 20.0, 90.0};
    static recede_aim aim;
    dice d = {20240611};
    for (int i = 0; i < 150000; i++) {
        recede_box box = box_around(&d, sizes[i % 5]);
        recede_lab target = {uniform(&d, 0, 100), uniform(&d, -90, 90), uniform(&d, -90, 90)};
        if (i % 3 == 0) /* near the box, where it matters most */
            target = (recede_lab){box.high[0] + uniform(&d, -4, 4),
                                  box.high[1] + uniform(&d, -4, 4),
                                  box.high[2] + uniform(&d, -4, 4)};
        if (i % 7 == 0)
            target.a = target.b = uniform(&d, -1, 1) * 1e-3;
        if (i % 77 == 0)
            target.a = target.b = 0;
        recede_aim_at(&aim, target);
        for (int j = 0; j < 8; j++)
            check(&aim, &box, inside(&d, &box));
    }
}

/* Blues, where the rotation term weakens the bound, and pairs across the hues. */
static void never_above_it_among_blues(void **state)
{
    (void)state;
    static const double sizes[] = {0.0, 0.02, 1.0, 8.0, 30.0};
    static recede_aim aim;
    dice d = {7};
    for (int i = 0; i < 150000; i++) {
        double hue = uniform(&d, 200, 350) / DEGREES, chroma = uniform(&d, 0, 110);
        double other = hue + uniform(&d, -3.2, 3.2) * (i % 2 ? 1.0 : 0.1);
        recede_lab target = {uniform(&d, 20, 90), chroma * cos(hue), chroma * sin(hue)};
        chroma = fabs(chroma + uniform(&d, -10, 10));
        recede_box box = point((recede_lab){target.l + uniform(&d, -3, 3), chroma * cos(other),
                                            chroma * sin(other)});
        for (int axis = 0; axis < 3; axis++) {
            box.low[axis] -= (float)uniform(&d, 0, sizes[i % 5]);
            box.high[axis] += (float)uniform(&d, 0, sizes[i % 5]);
        }
        recede_aim_at(&aim, target);
        for (int j = 0; j < 8; j++)
            check(&aim, &box, inside(&d, &box));
    }
}

/* A bound of nought would pass the tests above: it must be close to the difference
 * wherever colours are near, though less so among strong blues. */
static double mean_share(double hue_deg, double most_chroma)
{
    static recede_aim aim;
    dice d = {3};
    double sum = 0;
    enum { PAIRS = 4000 };
    for (int i = 0; i < PAIRS; i++) {
        double hue = (hue_deg + uniform(&d, -15, 15)) / DEGREES;
        double chroma = uniform(&d, 2, most_chroma);
        recede_lab target = {uniform(&d, 20, 95), chroma * cos(hue), chroma * sin(hue)};
        recede_box box = point((recede_lab){target.l + uniform(&d, -3, 3),
                                            target.a + uniform(&d, -3, 3),
                                            target.b + uniform(&d, -3, 3)});
        recede_lab colour = {box.low[0], box.low[1], box.low[2]};
        recede_aim_at(&aim, target);
        sum += recede_box_bound(&aim, &box, recede_box_arc(&box)) / recede_delta_e(target, colour);
    }
    return sum / PAIRS;
}

static void close_to_it_where_colours_are_near(void **state)
{
    (void)state;
    for (int hue = 0; hue < 360; hue += 30)
        assert_true(mean_share(hue, 20) > 0.95);
    for (int hue = 0; hue < 360; hue += 30)
        assert_true(mean_share(hue, 60) > (hue > 230 && hue < 330 ? 0.85 : 0.95));
}

/* The bound once more, one box, in double precision, as the formula reads. */
static double away(double from, double low, double high)
{
    return fmax(fmax(low - from, from - high), 0);
}

static double share_of_seventh(double chroma)
{
    return pow(chroma, 7) / (pow(chroma, 7) + pow(25, 7));
}

static double plain_bound(const recede_aim *aim, const recede_box *box, unsigned arc)
{
    double l = aim->target.l, a = aim->target.a, b = aim->target.b, own = hypot(a, b);
    double far_a = fmax(fabs(box->low[1]), fabs(box->high[1]));
    double far_b = fmax(fabs(box->low[2]), fabs(box->high[2]));
    double near_a = away(0, box->low[1], box->high[1]);
    double near_b = away(0, box->low[2], box->high[2]);
    double least = 1.5 - 0.5 * sqrt(share_of_seventh((own + hypot(far_a, far_b)) / 2));
    double most = 1.5 - 0.5 * sqrt(share_of_seventh((own + hypot(near_a, near_b)) / 2));
    double largest = hypot(most * far_a, far_b), own_most = hypot(most * a, b);
    double low_step = hypot(least * near_a, near_b) - own_most;
    double high_step = largest - hypot(least * a, b);
    double mean = (own_most + largest) / 2;
    double s_c = 1 + 0.045 * mean, s_h = fmin(s_c, 1 + 0.015 * mean * aim->weight[arc]);
    double off = (l + fmin(fmax(l, box->low[0]), box->high[0])) / 2 - 50;
    double dl = away(l, box->low[0], box->high[0]) / (1 + 0.015 * off * off / sqrt(20 + off * off));
    double da = least * away(a, box->low[1], box->high[1]), db = away(b, box->low[2], box->high[2]);
    double apart2 = da * da + db * db, step = fmax(fabs(low_step), fabs(high_step));
    double cross[4], low_cross = INFINITY, high_cross = -INFINITY;
    for (int i = 0; i < 4; i++) {
        cross[i] = a * (i & 1 ? box->high : box->low)[2] - b * (i & 2 ? box->high : box->low)[1];
        low_cross = fmin(low_cross, cross[i]);
        high_cross = fmax(high_cross, cross[i]);
    }
    double turn = 0;
    if ((high_step > 0 && high_cross > -0.01) || (low_step < 0 && low_cross < 0.01))
        turn = sqrt(share_of_seventh(mean)) * aim->twist[arc];
    double x = fmax(fmax(low_step, -high_step), 0) / s_c;
    double y = least * fmax(fmax(low_cross, -high_cross) - 0.01, 0) / sqrt(own_most * largest + 1e-6) / s_h;
    double far_x = fmax(x, turn * y), far_y = fmax(y, turn * x);
    double corner = fmin(x * x + far_y * far_y - 2 * turn * x * far_y,
                         far_x * far_x + y * y - 2 * turn * far_x * y);
    double whole = fmax(apart2 / (s_c * s_c),
                        apart2 / (s_h * s_h) - step * step * (1 / (s_h * s_h) - 1 / (s_c * s_c)));
    return sqrt(dl * dl + fmax((1 - turn) * whole, corner));
}

static void eight_at_once_are_the_plain_bound(void **state)
{
    (void)state;
    static const double sizes[] = {0.02, 1.0, 6.0, 40.0};
    static recede_aim aim;
    dice d = {99};
    for (int i = 0; i < 20000; i++) {
        recede_boxes boxes;
        float bounds[RECEDE_BLOCK];
        recede_lab target = {uniform(&d, 0, 100), uniform(&d, -90, 90), uniform(&d, -90, 90)};
        recede_aim_at(&aim, target);
        for (int lane = 0; lane < RECEDE_BLOCK; lane++) {
            recede_box box = box_around(&d, sizes[i % 4]);
            for (int axis = 0; axis < 3; axis++) {
                boxes.low[axis][lane] = (int16_t)(box.low[axis] * RECEDE_BOX_SCALE);
                boxes.high[axis][lane] = (int16_t)(box.high[axis] * RECEDE_BOX_SCALE);
            }
            box = recede_box_of(&boxes, lane);
            boxes.arc[lane] = (uint16_t)recede_box_arc(&box);
        }
        recede_bounds_of_boxes(&aim, &boxes, bounds);
        for (int lane = 0; lane < RECEDE_BLOCK; lane++) {
            recede_box box = recede_box_of(&boxes, lane);
            double plain = plain_bound(&aim, &box, boxes.arc[lane]);
            assert_near(bounds[lane], plain, 1e-3 + 3e-4 * plain);
            assert_near(bounds[lane], recede_box_bound(&aim, &box, boxes.arc[lane]), 0);
        }
    }
}

static void eight_colours_are_eight_small_boxes(void **state)
{
    (void)state;
    static recede_aim aim;
    dice d = {12};
    for (int i = 0; i < 5000; i++) {
        float l[RECEDE_BLOCK], a[RECEDE_BLOCK], b[RECEDE_BLOCK], bounds[RECEDE_BLOCK];
        recede_aim_at(&aim, (recede_lab){60, uniform(&d, -60, 60), uniform(&d, -60, 60)});
        for (int lane = 0; lane < RECEDE_BLOCK; lane++) {
            l[lane] = (float)uniform(&d, 20, 95);
            a[lane] = (float)uniform(&d, -60, 60);
            b[lane] = (float)uniform(&d, -60, 60);
        }
        recede_bounds_of_colours(&aim, l, a, b, 0.25f, RECEDE_ALL_HUES, bounds);
        for (int lane = 0; lane < RECEDE_BLOCK; lane++) {
            recede_box box = {{l[lane] - 0.25f, a[lane] - 0.25f, b[lane] - 0.25f},
                              {l[lane] + 0.25f, a[lane] + 0.25f, b[lane] + 0.25f}};
            assert_near(bounds[lane], recede_box_bound(&aim, &box, RECEDE_ALL_HUES), 1e-3);
        }
    }
}

static double hue_deg(double a, double b)
{
    double hue = atan2(b, a) * DEGREES;
    return hue < 0 ? hue + 360 : hue;
}

static int arc_holds(unsigned arc, double hue)
{
    int sector = (int)(hue * RECEDE_HUE_SECTORS / 360) % RECEDE_HUE_SECTORS;
    int start = (int)(arc / RECEDE_WIDEST_ARC), more = (int)(arc % RECEDE_WIDEST_ARC);
    return arc == RECEDE_ALL_HUES ||
           (sector - start + RECEDE_HUE_SECTORS) % RECEDE_HUE_SECTORS <= more;
}

static void an_arc_holds_its_box_s_hues_and_few_more(void **state)
{
    (void)state;
    static const double sizes[] = {0.1, 3.0, 20.0, 90.0};
    dice d = {5};
    double sectors = 0;
    enum { BOXES = 100000 };
    for (int i = 0; i < BOXES; i++) {
        recede_box box = box_around(&d, sizes[i % 4]);
        unsigned arc = recede_box_arc(&box);
        assert_true(arc < RECEDE_ARCS);
        if (i % 4 == 0)
            sectors += arc == RECEDE_ALL_HUES ? RECEDE_HUE_SECTORS : arc % RECEDE_WIDEST_ARC + 1;
        for (int j = 0; j < 6; j++) {
            recede_lab lab = inside(&d, &box);
            /* an edge of a sector belongs to both sides */
            double hue = hue_deg(uniform(&d, 1, 1.5) * lab.a, lab.b);
            assert_true(arc_holds(arc, fmod(hue + 1e-4, 360)) ||
                        arc_holds(arc, fmod(hue - 1e-4 + 360, 360)));
        }
    }
    assert_below(sectors / (BOXES / 4), 2.5); /* small boxes: the stretch takes most of it */
}

/* T and the rotation's sine, straight from CIEDE2000, against what an aim says is
 * their most. */
static void an_aim_knows_the_most_of_both_hue_terms(void **state)
{
    (void)state;
    static recede_aim aim;
    dice d = {31};
    for (int i = 0; i < 200000; i++) {
        if (i % 20 == 0)
            recede_aim_at(&aim, (recede_lab){50, uniform(&d, -80, 80), uniform(&d, -80, 80)});
        recede_box box = point((recede_lab){50, uniform(&d, -80, 80), uniform(&d, -80, 80)});
        double g = uniform(&d, 1, 1.5);
        double one = hue_deg(g * aim.target.a, aim.target.b);
        double other = hue_deg(g * box.low[1], box.low[2]);
        double mean = (one + other) / 2;
        if (fabs(one - other) > 180)
            mean += mean < 180 ? 180 : -180;
        double h = mean / DEGREES, off = (mean - 275) / 25;
        double t = 1 - 0.17 * cos(h - 30 / DEGREES) + 0.24 * cos(2 * h) +
                   0.32 * cos(3 * h + 6 / DEGREES) - 0.20 * cos(4 * h - 63 / DEGREES);
        unsigned arc = recede_box_arc(&box);
        assert_below(t, aim.weight[arc]);
        assert_below(sin(60 / DEGREES * exp(-off * off)), aim.twist[arc] + 1e-9);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(never_above_the_difference),
        cmocka_unit_test(never_above_it_among_blues),
        cmocka_unit_test(close_to_it_where_colours_are_near),
        cmocka_unit_test(eight_at_once_are_the_plain_bound),
        cmocka_unit_test(eight_colours_are_eight_small_boxes),
        cmocka_unit_test(an_arc_holds_its_box_s_hues_and_few_more),
        cmocka_unit_test(an_aim_knows_the_most_of_both_hue_terms),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
