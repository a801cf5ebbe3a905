/*
 * Let m be the least difference offered for a wash and e what an offer exceeds it
 * by. A puddle is added to at most once. So half of its e may be counted where it is
 * mixed and half where it is added to, and the washes from `next` on cost at least
 * the sum over them of m and the least of
 *
 *     e / 2 and a start, its well washed out, over all offers;
 *     e / 2, the addition, and half the e of what is added to, over all puddles of
 *     washes from `next` on.
 *
 * A puddle that stands in a well already is paid for. It can serve one of these
 * washes, and spare it at most what adding to it costs less than that least: the
 * gain, of all washes still to come the largest. A clean well spares one washing.
 */
#include "plan/work_bound.h"

#include <math.h>

#include "colour/memory.h"
#include "plan/work_costs.h"

typedef struct {
    const recede_washes *washes;
    recede_work_bound *bound;
    double *adding; /* by puddle and wash: least of e / 2 and the addition */
    double *least;  /* by wash, for the `next` at hand */
    double *excess; /* by puddle: e / 2 */
} workings;

static size_t number_of(size_t wash, int offer)
{
    return wash * RECEDE_MOST_OFFERS + (size_t)offer;
}

static double *adding_at(const workings *w, size_t puddle, size_t wash)
{
    return &w->adding[puddle * w->washes->count + wash];
}

static double nearest_over(const recede_work_wash *wash, int grounds, int offer)
{
    double least = INFINITY;
    for (int g = 0; g < grounds; g++)
        least = fmin(least, wash->difference[g][offer]);
    return least;
}

/* Fills in e / 2; returns m. */
static double exceed(const workings *w, size_t wash)
{
    const recede_work_wash *own = &w->washes->wash[wash];
    int grounds = own->ground < 0 ? 1 : w->washes->wash[own->ground].count;
    double least = INFINITY;
    for (int i = 0; i < own->count; i++) {
        w->excess[number_of(wash, i)] = nearest_over(own, grounds, i);
        least = fmin(least, w->excess[number_of(wash, i)]);
    }
    for (int i = 0; i < own->count; i++)
        w->excess[number_of(wash, i)] = 0.5 * (w->excess[number_of(wash, i)] - least);
    return least;
}

static double least_start(const workings *w, size_t wash)
{
    const recede_work_wash *own = &w->washes->wash[wash];
    double least = INFINITY;
    for (int i = 0; i < own->count; i++) {
        const recede_puddle *puddle = &own->offers[i].puddle;
        double start = puddle->count ? recede_start_cost(puddle) + RECEDE_WASHING : 0;
        least = fmin(least, w->excess[number_of(wash, i)] + start);
    }
    return least;
}

static double least_addition(const workings *w, size_t from, int offer, size_t to)
{
    const recede_work_wash *before = &w->washes->wash[from], *own = &w->washes->wash[to];
    double least = INFINITY, left_ml = recede_least_left_ml(before->need_ml);
    for (int i = 0; i < own->count; i++) {
        recede_pour pour =
            recede_pour_between(&before->offers[offer].puddle, &own->offers[i].puddle);
        if (isinf(pour.growth))
            continue;
        double mixed = recede_mixed_ml(own->need_ml, left_ml, pour.growth);
        least = fmin(least, w->excess[number_of(to, i)] +
                                recede_add_cost(own->need_ml, mixed, pour.additions));
    }
    return least;
}

static void add_everything(const workings *w)
{
    for (size_t from = 0; from < w->washes->count; from++)
        for (int offer = 0; offer < w->washes->wash[from].count; offer++)
            for (size_t to = from + 1; to < w->washes->count; to++)
                *adding_at(w, number_of(from, offer), to) = least_addition(w, from, offer, to);
}

/* The least that wash `to` costs beyond m if it is added to what `from` leaves. */
static double least_between(const workings *w, size_t from, size_t to)
{
    double least = INFINITY;
    for (int offer = 0; offer < w->washes->wash[from].count; offer++) {
        size_t puddle = number_of(from, offer);
        least = fmin(least, *adding_at(w, puddle, to) + w->excess[puddle]);
    }
    return least;
}

/* One wash more may be added to: those after it gain. */
static void let_add(const workings *w, size_t from)
{
    for (size_t to = from + 1; to < w->washes->count; to++)
        w->least[to] = fmin(w->least[to], least_between(w, from, to));
}

static void find_gains(const workings *w, size_t next)
{
    recede_work_bound *bound = w->bound;
    for (size_t from = 0; from < next; from++)
        for (int offer = 0; offer < w->washes->wash[from].count; offer++) {
            size_t puddle = number_of(from, offer);
            double most = 0;
            for (size_t to = next; to < w->washes->count; to++)
                most = fmax(most, w->least[to] - *adding_at(w, puddle, to));
            bound->gain[next * bound->puddles + puddle] = (float)ceil(most);
        }
}

static void fill(const workings *w)
{
    double nearest = 0;
    recede_work_bound *bound = w->bound;
    double m[RECEDE_MOST_STEPS] = {0};
    for (size_t i = 0; i < w->washes->count; i++)
        m[i] = exceed(w, i);
    for (size_t i = 0; i < w->washes->count; i++)
        w->least[i] = least_start(w, i);
    add_everything(w);
    bound->rest[w->washes->count] = 0;
    for (size_t next = w->washes->count; next-- > 0;) {
        let_add(w, next);
        nearest += m[next];
        bound->rest[next] = nearest;
        for (size_t to = next; to < w->washes->count; to++)
            bound->rest[next] += w->least[to];
        find_gains(w, next);
    }
    for (size_t puddle = 0; puddle < bound->puddles; puddle++)
        bound->gain[w->washes->count * bound->puddles + puddle] = 0;
}

static void find_dearest_start(const recede_washes *washes, recede_work_bound *bound)
{
    for (size_t i = 0; i < washes->count; i++)
        for (int j = 0; j < washes->wash[i].count; j++)
            bound->anew = fmax(bound->anew, RECEDE_WASHING + recede_start_cost(
                                                &washes->wash[i].offers[j].puddle));
}

recede_code recede_work_bound_start(recede_work_bound *bound, const recede_washes *washes,
                                    const recede_allocator *allocator)
{
    size_t count = washes->count, puddles = count * RECEDE_MOST_OFFERS;
    workings w = {.washes = washes, .bound = bound};
    *bound = (recede_work_bound){.allocator = allocator, .washes = count, .puddles = puddles};
    bound->gain = recede_allocate_array(allocator, (count + 1) * puddles, sizeof *bound->gain);
    w.adding = recede_allocate_array(allocator, puddles * count, sizeof *w.adding);
    w.least = recede_allocate_array(allocator, count, sizeof *w.least);
    w.excess = recede_allocate_array(allocator, puddles, sizeof *w.excess);
    recede_code code =
        bound->gain && w.adding && w.least && w.excess ? RECEDE_OK : RECEDE_NO_MEMORY;
    if (!code) {
        fill(&w);
        find_dearest_start(washes, bound);
    } else {
        recede_work_bound_end(bound);
    }
    recede_release(allocator, w.adding);
    recede_release(allocator, w.least);
    recede_release(allocator, w.excess);
    return code;
}

void recede_work_bound_end(recede_work_bound *bound)
{
    recede_release(bound->allocator, bound->gain);
    bound->gain = NULL;
}

double recede_work_bound_of(const recede_work_bound *bound, size_t next,
                            const recede_label *label)
{
    double least = label->cost + bound->rest[next];
    const float *gain = bound->gain + next * bound->puddles;
    for (int i = 0; i < RECEDE_MOST_WELLS; i++) {
        if (label->well[i] == RECEDE_CLEAN_WELL)
            least -= RECEDE_WASHING;
        else if (label->well[i] != RECEDE_NO_WELL)
            least -= (double)gain[label->well[i] - 1];
    }
    return least;
}
