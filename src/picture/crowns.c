#include "picture/crowns.h"

#include "picture/noise.h"

#include <math.h>

enum { MOST_ROWS = 4, MOST_CLUMPS = 16, MOST_IN_ROW = 1200 };

/* One tree being grown: its foot, its height, half its width. */
typedef struct tree {
    double x, foot_y, height, half;
    uint32_t seed;
} tree;

/* Bigger trees show more clumps. */
static int clumps_of(double height)
{
    return height > 90 ? MOST_CLUMPS : height > 40 ? 11 : height > 14 ? 6 : 3;
}

static double row_step(double growth, int row)
{
    return growth * 0.42 * (1 + 0.25 * row);
}

static int rows_to(double growth, double depth)
{
    int rows = 1;
    for (double y = 0; y < depth && rows < MOST_ROWS; rows++)
        y += row_step(growth, rows);
    return rows;
}

double recede_crowns_depth(double growth, double depth)
{
    double y = 0;
    for (int row = 1; row < rows_to(growth, depth); row++)
        y += row_step(growth, row);
    return y;
}

size_t recede_crowns_room(double width, double growth, double depth)
{
    double in_row = fmin(width / (growth * 0.28) + 4, MOST_IN_ROW);
    return (size_t)in_row * (size_t)rows_to(growth, depth) * MOST_CLUMPS;
}

static void add_clump(recede_crowns *crowns, const tree *t, double x, double y, double r)
{
    if (crowns->count == crowns->room)
        return;
    recede_clump *c = &crowns->clumps[crowns->count++];
    c->x = (float)x;
    c->y = (float)y;
    c->r = (float)r;
    c->crown_x = (float)t->x;
    c->crown_y = (float)(t->foot_y - 0.52 * t->height);
    c->crown_rx = (float)t->half;
    c->crown_ry = (float)(0.52 * t->height);
}

/* Round crowns: clumps strewn over an egg, from its crown down so that lower
 * clumps stand before higher ones. */
static void grow_round(recede_crowns *crowns, const tree *t)
{
    int count = clumps_of(t->height);
    double turn = recede_chance(t->seed, 90, 0, 1);
    for (int i = 0; i < count; i++) {
        double down = (i + 0.5) / count;
        turn += 0.618034 + recede_chance(t->seed, 100 + (uint32_t)i, -0.08, 0.08);
        double across = 2 * (turn - floor(turn)) - 1;
        double girth = sqrt(fmax(0, 1 - pow(2 * down - 1.05, 2)));
        double r = t->half * recede_chance(t->seed, 200 + (uint32_t)i, 0.30, 0.52);
        double x = t->x + across * girth * (t->half - 0.6 * r);
        double y = t->foot_y - t->height + r + down * (t->height * 0.86 - r);
        add_clump(crowns, t, x, y, r);
    }
}

/* Pointed crowns: tiers that widen downward. */
static void grow_pointed(recede_crowns *crowns, const tree *t)
{
    int tiers = clumps_of(t->height);
    for (int i = 0; i < tiers; i++) {
        double down = (i + 0.4) / tiers, half = t->half * (0.12 + 0.88 * down);
        double side = recede_chance(t->seed, 300 + (uint32_t)i, -0.45, 0.45);
        add_clump(crowns, t, t->x + side * half, t->foot_y - t->height * (1 - down),
                  half * recede_chance(t->seed, 400 + (uint32_t)i, 0.55, 0.75));
    }
}

/* Low growth comes in patches; trees stand all along their row. */
static int is_bare(const recede_look *look, double growth, double x, double lower)
{
    return look->form == RECEDE_LANDFORM_BANK
        && recede_noise_at(look->seed + 9, x / (growth * 11), lower / (growth * 4)) < 0.22;
}

/* Heights rise and fall along the row, so that trees stand in groups. */
static double height_at(const recede_look *look, double growth, double x, uint32_t seed)
{
    double group = recede_noise_octaves(look->seed + 7, x / (growth * 4.2), 2, 0.5);
    return growth * (0.68 + 0.36 * group) * recede_chance(seed, 1, 0.66, 1.18);
}

static void grow_row(recede_crowns *crowns, const recede_look *look, const float *foot,
                     size_t width, double growth, double lower, uint32_t seed)
{
    /* half a crown's width to its height, by form */
    static const double least_girth[] = {0, 0.36, 0.17, 0.70}, most_girth[] = {0, 0.54, 0.24, 1.30};
    double jitter = look->form == RECEDE_LANDFORM_BANK ? 0.5 : 0.22;
    double x = -growth * recede_chance(seed, 0, 0, 0.5);
    for (uint32_t i = 0; x < (double)width + growth * 0.4 && i < MOST_IN_ROW; i++) {
        tree t;
        t.seed = recede_seed_with(seed, i + 1);
        t.height = fmax(height_at(look, growth, x, t.seed), growth * 0.25);
        t.half = t.height * recede_chance(t.seed, 2, least_girth[look->form],
                                          most_girth[look->form]);
        t.x = x;
        size_t column = x < 0 ? 0 : x < (double)width ? (size_t)x : width - 1;
        t.foot_y = foot[column] + lower + growth * recede_chance(t.seed, 3, -0.4, 1) * jitter;
        if (look->form == RECEDE_LANDFORM_CONIFERS)
            grow_pointed(crowns, &t);
        else if (!is_bare(look, growth, x, t.foot_y))
            grow_round(crowns, &t);
        x += fmax(t.half * recede_chance(t.seed, 4, 0.9, 1.7), growth * 0.28);
    }
}

void recede_crowns_grow(recede_crowns *crowns, const recede_look *look, const float *foot,
                        size_t width, double growth, double depth)
{
    int rows = rows_to(growth, depth);
    double lower = 0;
    for (int row = 0; row < rows; row++) {
        grow_row(crowns, look, foot, width, growth * (1 + 0.08 * row), lower,
                 recede_seed_with(look->seed, 1000 + (uint32_t)row));
        lower += row_step(growth, row + 1);
    }
}
