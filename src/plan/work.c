/* The order of work: what is offered, the search, and fewer tubes. */
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "plan/fits.h"
#include "plan/stage.h"
#include "plan/work_needed.h"
#include "plan/work_steps.h"

typedef struct {
    const recede_plan *plan;
    const recede_rules *rules;
    const recede_allocator *allocator;
    int wells, most_tubes;
    const recede_index *index;
    recede_index *own_index;
    recede_washes washes;
    recede_sets sets;
    recede_tubes tubes;
    recede_work_path path;
} task;

static int tubes_of(const task *t)
{
    const recede_palette *palette = recede_plan_palette(t->plan);
    return recede_work_count_of(palette, recede_work_tubes(palette)).tubes;
}

/* ----------------------------------------------------------- beginning -- */

static recede_code check(task *t, const recede_work_wish *wish, recede_error *error)
{
    const recede_scene *scene = recede_plan_scene(t->plan);
    recede_code code = recede_check_range(error, "wells", wish->wells, 1, RECEDE_MOST_WELLS);
    if (!code)
        code = recede_check_range(error, "most_tubes", wish->most_tubes, 0, RECEDE_MOST_PAINTS);
    if (code)
        return code;
    t->wells = wish->wells;
    t->most_tubes = wish->most_tubes ? wish->most_tubes : scene->most_tubes;
    if (!t->most_tubes || t->most_tubes > tubes_of(t))
        t->most_tubes = tubes_of(t);
    if (t->index && !recede_index_fits(t->index, recede_plan_palette(t->plan), t->rules))
        return recede_fail(error, RECEDE_CONFLICT, "index");
    return RECEDE_OK;
}

static recede_code make_index(task *t, const recede_progress *progress)
{
    if (t->index)
        return RECEDE_OK;
    recede_code code = recede_index_new(recede_plan_palette(t->plan), t->rules, 0, t->allocator,
                                        progress, &t->own_index, NULL);
    t->index = t->own_index;
    return code;
}

static void end(task *t)
{
    recede_washes_end(&t->washes, t->allocator);
    recede_sets_end(&t->sets);
    recede_index_free(t->own_index);
    recede_release(t->allocator, t);
}

/* All mixes are offered; to be ended. */
static recede_code begin(task *t, const double *shares, const recede_work_wish *wish,
                         const recede_progress *progress, recede_error *error)
{
    recede_code code = check(t, wish, error);
    if (code)
        return code;
    code = make_index(t, progress);
    if (!code)
        code = recede_washes_start(&t->washes, t->plan, shares, t->allocator);
    if (!code)
        code = recede_sets_start(&t->sets, recede_plan_palette(t->plan), t->rules, t->index,
                                 t->allocator);
    if (!code)
        code = recede_washes_offer(&t->washes, &t->sets,
                                   recede_work_width(t->rules->most_pigments), &t->tubes);
    return code ? recede_fail(error, code, "") : RECEDE_OK;
}

static task *new_task(const recede_plan *plan, const recede_index *index,
                      const recede_allocator *allocator)
{
    allocator = recede_allocator_or_default(allocator);
    task *t = recede_allocate_array(allocator, 1, sizeof *t);
    if (!t)
        return NULL;
    memset(t, 0, sizeof *t);
    t->plan = plan;
    t->rules = &recede_plan_scene(plan)->rules;
    t->allocator = allocator;
    t->index = index;
    t->sets.allocator = allocator;
    return t;
}

/* ------------------------------------------------------------- seeking -- */

static recede_code seek(task *t, const recede_washes *washes, int wells,
                        const recede_progress *progress, recede_work *out)
{
    recede_code code = recede_work_search(washes, wells, t->allocator, progress, &t->path);
    if (!code)
        recede_work_tell(washes, &t->path, wells, out);
    return code;
}

/* The best order from so many tubes. */
static recede_code seek_from(task *t, int tubes, int wells, const recede_progress *progress,
                             recede_work *out)
{
    recede_washes fewer;
    recede_code code = recede_washes_within(&t->washes, recede_tubes_left(&t->tubes, tubes),
                                            t->allocator, &fewer);
    if (!code)
        code = seek(t, &fewer, wells, progress, out);
    recede_washes_end(&fewer, t->allocator);
    return code;
}

/* Whether an order can do with so many tubes, those that one would keep. */
static int does_with(const task *t, const recede_work *work, int tubes)
{
    return !(recede_work_in_use(work) & ~(unsigned long)recede_tubes_left(&t->tubes, tubes));
}

/* From all tubes, then from one less at a time, until no more are in use than may be. */
static recede_code leave_out(task *t, int wells, const recede_progress *progress,
                             recede_work *out)
{
    recede_stage stage;
    int all = tubes_of(t);
    double each = 1.0 / (1 + all - t->most_tubes);
    recede_code code = seek(t, &t->washes, wells, recede_stage_start(&stage, progress, 0, each),
                            out);
    for (int tubes = all - 1; !code && out->tubes > t->most_tubes; tubes--)
        if (!does_with(t, out, tubes))
            code = seek_from(t, tubes, wells,
                             recede_stage_start(&stage, progress, (all - tubes) * each,
                                                (1 + all - tubes) * each), out);
    out->most_tubes = t->most_tubes;
    return code;
}

/* With fewer tubes than there are, an order may have to give up paints that one from
 * fewer wells does without: then that one stands. */
static recede_code seek_within(task *t, int wells, const recede_progress *progress,
                               recede_work *out)
{
    recede_stage stage;
    recede_code code = leave_out(t, wells, recede_stage_start(&stage, progress, 0, 0.7), out);
    if (code || t->most_tubes == tubes_of(t) || wells == 1)
        return code;
    recede_work *other = recede_allocate_array(t->allocator, 1, sizeof *other);
    if (!other)
        return RECEDE_NO_MEMORY;
    code = seek_within(t, wells - 1, recede_stage_start(&stage, progress, 0.7, 1), other);
    if (!code && other->sum < out->sum)
        *out = *other;
    out->wells = wells;
    recede_release(t->allocator, other);
    return code;
}

recede_code recede_work_of(const recede_plan *plan, const double *shares,
                           const recede_work_wish *wish, const recede_index *index,
                           const recede_allocator *allocator, const recede_progress *progress,
                           recede_work *out, recede_error *error)
{
    recede_stage first, then;
    task *t = new_task(plan, index, allocator);
    if (!t)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    recede_code code = begin(t, shares, wish, recede_stage_start(&first, progress, 0, 0.3), error);
    if (!code) {
        code = seek_within(t, t->wells, recede_stage_start(&then, progress, 0.3, 1), out);
        if (code)
            recede_fail(error, code, "");
    }
    end(t);
    return code;
}

/* ------------------------------------------------------------- choices -- */

typedef struct {
    recede_work *work; /* of the row at hand */
    recede_work_choice *out;
    size_t *count;
} rows;

static void add_row(const rows *r)
{
    const recede_work *work = r->work;
    r->out[(*r->count)++] =
        (recede_work_choice){work->wells, work->tubes, work->sum, work->difference,
                             work->additions, work->washings, recede_work_in_use(work)};
}

static recede_code choose_wells(task *t, const recede_progress *progress, const rows *r)
{
    recede_code code = RECEDE_OK;
    for (int wells = 1; !code && wells <= RECEDE_MOST_WELLS; wells++) {
        recede_stage stage;
        code = seek_within(t, wells,
                           recede_stage_start(&stage, progress, (wells - 1) / 3.0, wells / 3.0),
                           r->work);
        if (!code)
            add_row(r);
    }
    return code;
}

/* One tube less at a time, a row for each order that uses fewer; that from all tubes
 * stands among the wells already, unless the wish is for fewer. */
static recede_code choose_tubes(task *t, const recede_progress *progress, const rows *r)
{
    int all = tubes_of(t), fewest = t->most_tubes < all ? all + 1 : 0;
    recede_stage stage;
    recede_code code = RECEDE_OK;
    for (int tubes = all; !code && tubes > 0; tubes--) {
        if (tubes < all && does_with(t, r->work, tubes))
            continue;
        code = seek_from(t, tubes, t->wells,
                         recede_stage_start(&stage, progress, 1 - (double)tubes / all,
                                            1 - (tubes - 1.0) / all), r->work);
        if (!code && r->work->tubes < fewest)
            add_row(r);
        if (!code && (tubes == all || r->work->tubes < fewest))
            fewest = r->work->tubes;
    }
    return code;
}

recede_code recede_work_choices(const recede_plan *plan, const double *shares,
                                const recede_work_wish *wish, const recede_index *index,
                                const recede_allocator *allocator,
                                const recede_progress *progress, recede_work_choice *out,
                                size_t *count, recede_error *error)
{
    recede_stage first, wells, tubes;
    task *t = new_task(plan, index, allocator);
    recede_work *work = t ? recede_allocate_array(t->allocator, 1, sizeof *work) : NULL;
    rows r = {work, out, count};
    *count = 0;
    if (!work) {
        if (t)
            end(t);
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    }
    recede_code code = begin(t, shares, wish, recede_stage_start(&first, progress, 0, 0.2), error);
    if (!code) {
        code = choose_wells(t, recede_stage_start(&wells, progress, 0.2, 0.5), &r);
        if (!code)
            code = choose_tubes(t, recede_stage_start(&tubes, progress, 0.5, 1), &r);
        if (code)
            recede_fail(error, code, "");
    }
    recede_release(t->allocator, work);
    end(t);
    return code;
}
