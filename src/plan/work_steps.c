#include "plan/work_steps.h"

#include <math.h>
#include <string.h>

#include "plan/work_needed.h"
#include "plan/work_volumes.h"

/* Less than a speck is rounding. */
static double poured(double wanted_ml, double there_ml)
{
    double ml = wanted_ml - there_ml;
    return ml > 1e-9 * wanted_ml ? ml : 0;
}

/* The paints and the water of a step, less what the well brings of them. */
static void pour(recede_work_step *step, const recede_puddle *puddle, const recede_puddle *left)
{
    for (int i = 0; i < puddle->count; i++) {
        double there = left ? recede_puddle_share(left, puddle->paint[i]) : 0;
        step->paint_ml[i] = poured(step->mixed_ml * puddle->share[i], step->left_ml * there);
        step->additions += step->paint_ml[i] > 0;
    }
    step->water_ml = poured(step->mixed_ml * puddle->water,
                            left ? step->left_ml * left->water : 0);
    step->additions += step->water_ml > 0;
}

static recede_step_kind kind_of(const recede_work_path *path, size_t i)
{
    if (path->move[i] == RECEDE_MOVE_BARE)
        return RECEDE_STEP_BARE;
    if (path->move[i] == RECEDE_MOVE_ADD)
        return RECEDE_STEP_ADDED;
    return path->before[i] < 0 ? RECEDE_STEP_START : RECEDE_STEP_WASHED;
}

/* Which wash, and what colour it comes to. */
static void say_wash(const recede_washes *washes, const recede_work_path *path, size_t i,
                     recede_work_step *step)
{
    const recede_work_wash *wash = &washes->wash[i];
    int over = wash->ground < 0 ? 0 : path->offer[wash->ground];
    recede_spectrum seen = recede_wash_seen(washes, i, over, path->offer[i]);
    const recede_planned *planned =
        wash->at < 0 ? NULL : recede_plan_at(washes->plan, (size_t)wash->at);
    step->plane = planned ? (int)planned->plane : -1;
    step->edge = planned ? planned->edge : RECEDE_EDGE_SOFT;
    step->shadow = wash->shadow;
    step->graded = wash->side->graded != 0;
    step->base = wash->base;
    step->second = wash->partner >= 0;
    step->mix = wash->offers[path->offer[i]].mix;
    step->colour = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen));
    step->delta_e = recede_delta_e(step->colour.lab, wash->target);
    step->planned_delta_e = wash->planned->recipe.delta_e;
    step->ground = wash->ground >= 0 && path->move[wash->ground] != RECEDE_MOVE_BARE
                       ? RECEDE_ON_LIT : RECEDE_ON_PAPER;
}

static void say_puddle(const recede_washes *washes, const recede_work_path *path, size_t i,
                       const double *mixed_ml, recede_work *work)
{
    recede_work_step *step = &work->steps[i];
    const recede_puddle *left = NULL;
    step->kind = kind_of(path, i);
    step->well = step->before = -1;
    if (step->kind == RECEDE_STEP_BARE)
        return;
    step->before = path->before[i];
    step->mixed_ml = mixed_ml[i];
    step->need_ml = washes->wash[i].need_ml;
    if (step->before >= 0) {
        const recede_work_step *before = &work->steps[step->before];
        step->well = before->well;
        step->left_ml = before->mixed_ml - before->need_ml;
        if (step->kind == RECEDE_STEP_ADDED)
            left = &washes->wash[step->before].offers[path->offer[step->before]].puddle;
    } else {
        step->well = work->wells++;
    }
    pour(step, &washes->wash[i].offers[path->offer[i]].puddle, left);
}

/* work->wells counts the wells as they come into use. */
static void say_steps(const recede_washes *washes, const recede_work_path *path,
                      recede_work *out)
{
    double mixed_ml[RECEDE_MOST_STEPS];
    recede_work_volumes(washes, path, mixed_ml);
    for (size_t i = 0; i < washes->count; i++) {
        say_wash(washes, path, i, &out->steps[i]);
        say_puddle(washes, path, i, mixed_ml, out);
    }
}

static void sum_up(const recede_washes *washes, const recede_work_path *path, recede_work *out)
{
    const recede_palette *palette = recede_plan_palette(washes->plan);
    unsigned long needed = recede_work_needed(palette, recede_work_in_use(out));
    for (size_t i = 0; i < washes->count; i++) {
        const recede_work_step *step = &out->steps[i];
        out->difference += step->delta_e;
        out->planned_difference += step->planned_delta_e;
        out->additions += step->additions;
        out->washings += step->kind == RECEDE_STEP_WASHED;
    }
    out->tubes = recede_work_count_of(palette, needed).tubes;
    out->sum = 1e-6 * path->cost;
    out->exact = path->exact;
}

void recede_work_tell(const recede_washes *washes, const recede_work_path *path, int wells,
                      recede_work *out)
{
    memset(out, 0, sizeof *out);
    out->count = washes->count;
    say_steps(washes, path, out);
    out->wells = wells;
    recede_work_dry(washes, path, out);
    sum_up(washes, path, out);
}
