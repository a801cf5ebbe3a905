/*
 * Dry, damp or wet. A hard edge wants what it meets dry; a soft one damp, once the
 * shine has gone; a lost one still wet. A wash over another wants that dry. A graded
 * wash is laid on damp paper, so that it runs, its second end into the first while
 * that is wet (all common practice, no source).
 */
#include <math.h>

#include "plan/work_steps.h"

/* As recede_wash_recipe has it: so much farther off than the worse end, and the
 * middle of one graded wash fails. */
#define TWO_WASHES_EXCESS 3.0

typedef struct {
    const recede_washes *washes;
    const recede_work_path *path;
    recede_work *work;
} telling;

static recede_paper_state paper_for(recede_edge edge)
{
    static const recede_paper_state papers[] = {
        [RECEDE_EDGE_HARD] = RECEDE_PAPER_DRY,
        [RECEDE_EDGE_SOFT] = RECEDE_PAPER_DAMP,
        [RECEDE_EDGE_LOST] = RECEDE_PAPER_WET,
    };
    return papers[edge];
}

/* The last step before one that has put paint on the paper; -1: none. */
static int painted_before(const recede_work *work, int step)
{
    for (step--; step >= 0; step--)
        if (work->steps[step].kind != RECEDE_STEP_BARE)
            break;
    return step;
}

/* The first step of the plane that a step belongs to. */
static int first_of_plane(const recede_work *work, int step)
{
    int plane = work->steps[step].plane;
    while (step > 0 && work->steps[step - 1].plane == plane)
        step--;
    return step;
}

/* ------------------------------------------------------- graded washes -- */

/* What lies under the middle of a graded wash: the paper, or the lit side's middle. */
static recede_spectrum middle_ground(const telling *t, const recede_work_wash *wash)
{
    const recede_palette *palette = recede_plan_palette(t->washes->plan);
    if (wash->ground < 0)
        return *recede_palette_paper(palette);
    const recede_work_wash *lit = &t->washes->wash[wash->ground];
    int offer = t->path->offer[wash->ground];
    const recede_mix *mix = &lit->offers[offer].mix, *other = mix;
    if (lit->partner >= 0)
        other = &t->washes->wash[lit->partner].offers[offer].mix;
    else if (recede_wash_ends(t->washes, (size_t)wash->ground) == 2)
        other = &t->washes->wash[wash->ground + 1].offers[offer].mix;
    return recede_half_and_half(palette, mix, other, NULL);
}

static int middle_fails(const telling *t, int second)
{
    const recede_work_wash *wash = &t->washes->wash[second];
    const recede_work_step *one = &t->work->steps[wash->partner], *other = &t->work->steps[second];
    recede_spectrum ground = middle_ground(t, wash);
    recede_spectrum half = recede_half_and_half(recede_plan_palette(t->washes->plan), &one->mix,
                                                &other->mix, &ground);
    recede_lab lab = recede_lab_of_xyz(recede_xyz_of_reflectance(&half), recede_white());
    return recede_delta_e(lab, wash->half) >
           TWO_WASHES_EXCESS + fmax(one->delta_e, other->delta_e);
}

/* Its well washed out for the second end, the first cannot wait for it wet. */
static int in_one_go(const telling *t, int second)
{
    const recede_work_step *step = &t->work->steps[second];
    int partner = t->washes->wash[second].partner;
    return !(step->kind == RECEDE_STEP_WASHED && step->before == partner) &&
           !middle_fails(t, second);
}

/* --------------------------------------------------------------- steps -- */

static void dry_second(const telling *t, int i)
{
    recede_work_step *step = &t->work->steps[i];
    step->after = t->washes->wash[i].partner;
    step->paper = in_one_go(t, i) ? RECEDE_PAPER_WET : RECEDE_PAPER_DRY;
}

static void dry_first(const telling *t, int i)
{
    recede_work_step *step = &t->work->steps[i];
    step->after = painted_before(t->work, step->shadow ? i : first_of_plane(t->work, i));
    if (step->plane < 0)
        step->paper = step->graded ? RECEDE_PAPER_DAMP : RECEDE_PAPER_DRY;
    else
        step->paper = step->ground == RECEDE_ON_LIT ? RECEDE_PAPER_DRY : paper_for(step->edge);
}

void recede_work_dry(const recede_washes *washes, const recede_work_path *path,
                     recede_work *work)
{
    telling t = {washes, path, work};
    for (int i = 0; i < (int)work->count; i++) {
        recede_work_step *step = &work->steps[i];
        step->after = -1;
        if (step->kind == RECEDE_STEP_BARE)
            continue;
        if (step->second && work->steps[washes->wash[i].partner].kind != RECEDE_STEP_BARE)
            dry_second(&t, i);
        else
            dry_first(&t, i);
    }
}
