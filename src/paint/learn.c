/* A paint of the painter's own, learnt from swatches: docs/paint.md. */
#include "recede.h"

#include <math.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/film.h"
#include "paint/learn_check.h"
#include "paint/learn_solve.h"

/* A probe that leaves the surface's own reflection out is set to read 1 on a perfect
 * white all the same: of Saunderson's equation the part beyond k1, over 1 - k1. */
static recede_spectrum with_surface(const recede_spectrum *read)
{
    recede_spectrum out = {{0}};
    double k1 = recede_seen_of_internal(0);
    for (int band = 0; band < RECEDE_BANDS; band++)
        out.at[band] = k1 + (1 - k1) * read->at[band];
    return out;
}

static void add_surface(recede_swatches *swatches)
{
    if (!swatches->surface_excluded)
        return;
    swatches->paper = with_surface(&swatches->paper);
    for (size_t i = 0; i < swatches->count; i++)
        if (swatches->of[i].has_reflectance)
            swatches->of[i].reflectance = with_surface(&swatches->of[i].reflectance);
}

static void report(const recede_lesson *lesson, const recede_unknowns *paint,
                   recede_paint_fit *out)
{
    double squares = 0;
    *out = (recede_paint_fit){.worst = 0};
    for (int band = 0; band < RECEDE_BANDS; band++) {
        out->k.at[band] = exp(paint->at[band]);
        out->s.at[band] = exp(paint->at[RECEDE_BANDS + band]);
    }
    for (size_t i = 0; i < lesson->count; i++) {
        recede_spectrum seen = recede_lesson_seen(lesson, lesson->of + i, paint);
        double off = recede_delta_e(lesson->of[i].lab, recede_lesson_lab(lesson, &seen));
        out->delta_e[i] = off;
        out->worst = fmax(out->worst, off);
        squares += off * off;
    }
    out->rms = sqrt(squares / (double)lesson->count);
}

/* What learning needs room for: too much for small stacks. */
typedef struct room {
    recede_swatches seen;
    recede_learn_room solve;
} room;

static recede_code learn(room *r, const recede_progress *progress, recede_paint_fit *out,
                         recede_error *error)
{
    add_surface(&r->seen);
    recede_code code = recede_learn_check_sense(&r->seen, error);
    if (code)
        return code;
    recede_unknowns paint;
    recede_lesson_of(&r->seen, &r->solve.lesson);
    code = recede_learn_solve(&r->solve, progress, &paint);
    if (code)
        return recede_fail(error, code, "");
    report(&r->solve.lesson, &paint, out);
    return RECEDE_OK;
}

recede_code recede_paint_learn(const recede_swatches *swatches, const recede_allocator *allocator,
                               const recede_progress *progress, recede_paint_fit *out,
                               recede_error *error)
{
    recede_code code = recede_learn_check_figures(swatches, error);
    if (code)
        return code;
    room *r = recede_allocate_array(allocator, 1, sizeof *r);
    if (!r)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    r->seen = *swatches;
    code = learn(r, progress, out, error);
    recede_release(allocator, r);
    return code;
}
