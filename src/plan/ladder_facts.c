#include <math.h>

#include "plan/ladder.h"

static const double MOVED_VALUE = 0.1, GREYER_PART = 1.0 / 3.0, GONE_OWN_SHARE = 0.02;

/* Hues closer than this from the start have no way to turn; a grey has no hue. */
static const double APART_DEG = 60.0, GREY_CHROMA = 1.5;

static double between_hues(const recede_colour *one, const recede_colour *other)
{
    double apart = fabs(one->lch.h_deg - other->lch.h_deg);
    return fmin(apart, 360.0 - apart);
}

static int has_turned(const recede_colour *near, const recede_colour *now, const recede_colour *air)
{
    return air->lch.c >= GREY_CHROMA && near->lch.c >= GREY_CHROMA &&
           between_hues(near, air) >= APART_DEG && between_hues(now, air) < between_hues(now, near);
}

static int has_moved(const recede_colour *near, const recede_colour *now)
{
    return fabs(now->value - near->value) >= MOVED_VALUE;
}

static int is_greyer(const recede_colour *near, const recede_colour *now)
{
    return now->lch.c <= (1.0 - GREYER_PART) * near->lch.c;
}

recede_stage recede_ladder_stage(const recede_ladder *ladder, size_t air, size_t rung,
                                 recede_ladder_row row)
{
    const recede_ladder_air *in = &ladder->air[air];
    const recede_wash *wash = &in->rung[rung].row[row];
    const recede_colour *near = &in->rung[0].row[row].target, *now = &wash->target;
    if (wash->own_share < GONE_OWN_SHARE)
        return RECEDE_STAGE_GONE;
    if (has_turned(near, now, &in->horizon))
        return RECEDE_STAGE_TURNED;
    if (is_greyer(near, now))
        return RECEDE_STAGE_GREYER;
    return has_moved(near, now) ? RECEDE_STAGE_MOVED : RECEDE_STAGE_OWN;
}

int recede_ladder_reaches(const recede_ladder *ladder, size_t air, recede_ladder_row row,
                          recede_stage stage)
{
    for (size_t i = 0; i < ladder->wish.rung_count; i++)
        if (recede_ladder_stage(ladder, air, i, row) >= stage)
            return (int)i;
    return -1;
}

size_t recede_ladder_telling_rungs(const recede_ladder *ladder, size_t rungs[3])
{
    size_t count = ladder->wish.rung_count, last = count - 1 - (count >= 6);
    const size_t wanted[3] = {0, count / 2, last};
    size_t kept = 0;
    for (size_t i = 0; i < 3; i++)
        if (i == 0 || wanted[i] > rungs[kept - 1])
            rungs[kept++] = wanted[i];
    return kept;
}
