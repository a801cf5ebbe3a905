/*
 * Hues in a bound: which a box may hold, and what the mean with the target's own
 * can at most make of R_T and S_H.
 */
#include "paint/box.h"

#include <math.h>

static const double DEGREES = 180.0 / 3.14159265358979323846;

/* Of CIEDE2000's a' = (1 + G) a*. */
#define MOST_STRETCH 1.5

/* Where hues differ by more than half the circle, their mean lies across it; to
 * be safe from rounding, both places count this near. */
#define HALF_TURN_SLACK_DEG 0.01

static double twist_at(double mean_hue_deg)
{
    double off = (mean_hue_deg - 275.0) / 25.0;
    if (fabs(off) > 6.0)
        return 1e-15; /* it is less */
    return sin(60.0 / DEGREES * exp(-off * off));
}

/* T of S_H = 1 + 0.015 C' T (CIEDE2000):
 *
 *     1 - 0.17 cos(h - 30) + 0.24 cos 2h + 0.32 cos(3h + 6) - 0.20 cos(4h - 63)
 *
 * with the multiples of h from one cosine and sine. */
static double weight_at(double mean_hue_deg)
{
    static const double cos_30 = 0.86602540378443865, sin_30 = 0.5;
    static const double cos_6 = 0.99452189536827333, sin_6 = 0.10452846326765347;
    static const double cos_63 = 0.45399049973954675, sin_63 = 0.89100652418836786;
    double c1 = cos(mean_hue_deg / DEGREES), s1 = sin(mean_hue_deg / DEGREES);
    double c2 = c1 * c1 - s1 * s1, s2 = 2.0 * c1 * s1;
    double c3 = c2 * c1 - s2 * s1, s3 = s2 * c1 + c2 * s1;
    double c4 = c2 * c2 - s2 * s2, s4 = 2.0 * c2 * s2;
    return 1.0 - 0.17 * (c1 * cos_30 + s1 * sin_30) + 0.24 * c2 +
           0.32 * (c3 * cos_6 - s3 * sin_6) - 0.20 * (c4 * cos_63 + s4 * sin_63);
}

typedef struct { double low, high; } range_deg;

/* Takes in a range of mean hues. Between two points T is above the higher of them
 * by no more than an eighth of its second derivative, 7.3 at most (0.17 + 4 * 0.24
 * + 9 * 0.32 + 16 * 0.20), times their distance squared: 0.0101 for 6 degrees. */
static void take_hues(range_deg hues, float *twist, float *weight)
{
    double most = fmax(twist_at(hues.low), twist_at(hues.high));
    double largest = weight_at(hues.high);
    if (hues.low <= 275.0 && 275.0 <= hues.high)
        most = twist_at(275.0);
    for (double h = hues.low; h < hues.high; h += 6.0)
        largest = fmax(largest, weight_at(h));
    *twist = fmaxf(*twist, (float)(most * 1.0001));
    *weight = fmaxf(*weight, (float)(largest + 0.0102));
}

/* The target's own hue moves with G as well: between its two ends. */
static range_deg hues_of(recede_lab lab)
{
    double plain = atan2(lab.b, lab.a) * DEGREES;
    double stretched = atan2(lab.b, MOST_STRETCH * lab.a) * DEGREES;
    if (lab.b < 0.0) {
        plain += 360.0;
        stretched += 360.0;
    }
    return (range_deg){fmin(plain, stretched), fmax(plain, stretched)};
}

/* The hues a mean can have with the target's in one range, a colour's in another. */
static void take_means(range_deg own, range_deg other, float *twist, float *weight)
{
    range_deg mean = {0.5 * (own.low + other.low), 0.5 * (own.high + other.high)};
    double most_apart = fmax(own.high - other.low, other.high - own.low);
    double least_apart = fmax(own.low - other.high, other.low - own.high);
    if (least_apart < 180.0 + HALF_TURN_SLACK_DEG)
        take_hues(mean, twist, weight);
    if (most_apart > 180.0 - HALF_TURN_SLACK_DEG) {
        take_hues((range_deg){mean.low + 180.0, mean.high + 180.0}, twist, weight);
        take_hues((range_deg){mean.low - 180.0, mean.high - 180.0}, twist, weight);
    }
}

static void fill_arcs(recede_aim *aim, const float *twist, const float *weight)
{
    float all_twist = 0.0f, all_weight = 0.0f;
    for (int start = 0; start < RECEDE_HUE_SECTORS; start++) {
        float arc_twist = 0.0f, arc_weight = 0.0f;
        for (int more = 0; more < RECEDE_WIDEST_ARC; more++) {
            int sector = (start + more) % RECEDE_HUE_SECTORS;
            int arc = start * RECEDE_WIDEST_ARC + more;
            arc_twist = arc_twist > twist[sector] ? arc_twist : twist[sector];
            arc_weight = arc_weight > weight[sector] ? arc_weight : weight[sector];
            aim->twist[arc] = arc_twist;
            aim->weight[arc] = arc_weight;
        }
        all_twist = fmaxf(all_twist, arc_twist);
        all_weight = fmaxf(all_weight, arc_weight);
    }
    aim->twist[RECEDE_ALL_HUES] = all_twist;
    aim->weight[RECEDE_ALL_HUES] = all_weight;
}

void recede_aim_at(recede_aim *aim, recede_lab target)
{
    float twist[RECEDE_HUE_SECTORS] = {0}, weight[RECEDE_HUE_SECTORS] = {0};
    range_deg own = hues_of(target);
    aim->target = target;
    aim->l = (float)target.l;
    aim->a = (float)target.a;
    aim->b = (float)target.b;
    aim->chroma = (float)hypot(target.a, target.b);
    for (int i = 0; i < RECEDE_HUE_SECTORS; i++) {
        range_deg sector = {i * 360.0 / RECEDE_HUE_SECTORS, (i + 1) * 360.0 / RECEDE_HUE_SECTORS};
        take_means(own, sector, &twist[i], &weight[i]);
        if (target.a == 0.0 && target.b == 0.0) /* then the mean is the sum of the hues */
            take_hues(sector, &twist[i], &weight[i]);
    }
    fill_arcs(aim, twist, weight);
}

/* tan of 1, 2, ... eighths of a right angle */
static const float tangent[] = {0.198912367f, 0.414213562f, 0.668178638f, 1.0f,
                                1.496605763f, 2.414213562f, 5.027339492f};
enum { QUARTER = RECEDE_HUE_SECTORS / 4 };

/* Within a quarter turn, from its start. */
static int step_of(float along, float across)
{
    int step = 0;
    for (int i = 0; i < QUARTER - 1; i++)
        step += across > tangent[i] * along;
    return step;
}

static int sector_of(float a, float b)
{
    if (b >= 0.0f)
        return a > 0.0f ? step_of(a, b) : QUARTER + step_of(b, -a);
    return a < 0.0f ? 2 * QUARTER + step_of(-a, -b) : 3 * QUARTER + step_of(-b, a);
}

/* Where a box lies, from below nought to above in a* and in b*, tells the two of
 * its corners (0 low, 1 high) that its hues run between, counted upward, and
 * whether a* is stretched there. */
typedef struct { int a, stretched, b; } corner;
static const struct { corner start, end; } ends[3][3] = {
    {{{0, 1, 1}, {1, 0, 0}}, {{1, 0, 1}, {1, 0, 0}}, {{1, 0, 1}, {0, 1, 0}}},
    {{{0, 1, 1}, {1, 1, 1}}, {{0, 0, 0}, {0, 0, 0}}, {{1, 1, 0}, {0, 1, 0}}},
    {{{0, 0, 0}, {1, 1, 1}}, {{0, 0, 0}, {0, 0, 1}}, {{1, 1, 0}, {0, 0, 1}}},
};

static int side_of(float low, float high)
{
    return low > 0.0f ? 2 : high < 0.0f ? 0 : 1;
}

static int sector_at(const recede_box *box, corner at)
{
    float a = at.a ? box->high[1] : box->low[1];
    return sector_of(at.stretched ? (float)MOST_STRETCH * a : a,
                     at.b ? box->high[2] : box->low[2]);
}

unsigned recede_box_arc(const recede_box *box)
{
    int side_a = side_of(box->low[1], box->high[1]), side_b = side_of(box->low[2], box->high[2]);
    if (side_a == 1 && side_b == 1)
        return RECEDE_ALL_HUES;
    int start = sector_at(box, ends[side_a][side_b].start);
    int end = sector_at(box, ends[side_a][side_b].end);
    int more = (end - start + RECEDE_HUE_SECTORS) % RECEDE_HUE_SECTORS;
    return (unsigned)(start * RECEDE_WIDEST_ARC + more);
}
