#include "plan/work_search.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "plan/work_bound.h"
#include "plan/work_costs.h"

/* First a few labels a wash are followed, for a path good enough to tell which
 * others are hopeless; then all, up to what memory one would spend on it. */
enum { SCOUTS = 512, MOST_KEPT = 1 << 16, MOST_AT_ONCE = 1 << 19 };

/* What a label leaves behind once the next wash is painted. */
typedef struct {
    uint32_t parent;
    uint16_t well[RECEDE_MOST_WELLS];
    uint8_t offer, added;
} trace;

typedef struct {
    const recede_washes *washes;
    int wells;
    const recede_allocator *allocator;
    const recede_progress *progress;
    recede_work_bound bound;
    double least_left_ml[RECEDE_MOST_STEPS];
    uint8_t keeps_under[RECEDE_MOST_STEPS], keeps_chosen[RECEDE_MOST_STEPS];
    recede_pour *pours;                 /* by puddle and offer; growth below 0: unknown */
    recede_labels now, then;
    trace *traces[RECEDE_MOST_STEPS];
    size_t counts[RECEDE_MOST_STEPS];
    double limit;
    int exact;
} search;

double recede_work_width(int paints)
{
    return 2 * (RECEDE_WASHING + (paints + 1) * RECEDE_ADDITION);
}

static uint16_t puddle_number(size_t wash, int offer)
{
    return (uint16_t)(1 + wash * RECEDE_MOST_OFFERS + (size_t)offer);
}

static const recede_puddle *puddle_numbered(const search *s, uint16_t number)
{
    size_t at = (size_t)(number - 1);
    return &s->washes->wash[at / RECEDE_MOST_OFFERS].offers[at % RECEDE_MOST_OFFERS].puddle;
}

/* What of the choices made must be remembered after each wash. */
static void find_dependence(search *s)
{
    size_t count = s->washes->count;
    for (size_t i = 0; i < count; i++) {
        const recede_work_wash *wash = s->washes->wash;
        s->least_left_ml[i] = recede_least_left_ml(wash[i].need_ml);
        s->keeps_chosen[i] = i + 1 < count && wash[i + 1].partner == (int)i;
        s->keeps_under[i] = 0;
        for (size_t j = i + 1; j < count; j++)
            s->keeps_under[i] |= wash[j].ground >= 0 && wash[j].ground <= (int)i;
    }
}

/* --------------------------------------------------------------- labels -- */

static recede_code offer_label(search *s, size_t wash, const recede_label *label)
{
    if (recede_work_bound_of(&s->bound, wash + 1, label) > s->limit)
        return RECEDE_OK;
    return recede_labels_offer(&s->then, label);
}

/* Puts a puddle into a well and keeps the wells in order. */
static void fill(recede_label *label, int well, uint16_t puddle, double left_ml)
{
    for (; well + 1 < RECEDE_MOST_WELLS && label->well[well + 1] < puddle; well++) {
        label->well[well] = label->well[well + 1];
        label->left_ml[well] = label->left_ml[well + 1];
    }
    label->well[well] = puddle;
    label->left_ml[well] = left_ml;
}

static const recede_pour *pour_into(search *s, size_t wash, uint16_t from, int offer)
{
    recede_pour *pour = &s->pours[(size_t)from * RECEDE_MOST_OFFERS + (size_t)offer];
    if (pour->growth < 0)
        *pour = recede_pour_between(puddle_numbered(s, from),
                                    &s->washes->wash[wash].offers[offer].puddle);
    return pour;
}

/* To what is left in one well. */
static recede_code add_to(search *s, size_t wash, recede_label label, int well)
{
    const recede_work_wash *w = &s->washes->wash[wash];
    uint16_t from = label.well[well];
    if (from == RECEDE_CLEAN_WELL || from == RECEDE_NO_WELL)
        return RECEDE_OK;
    const recede_pour *pour = pour_into(s, wash, from, label.offer);
    if (isinf(pour->growth))
        return RECEDE_OK;
    double mixed = recede_mixed_ml(w->need_ml, label.left_ml[well], pour->growth);
    label.cost += recede_add_cost(w->need_ml, mixed, pour->additions);
    label.added = 1;
    fill(&label, well, puddle_number(wash, label.offer), mixed - w->need_ml);
    return offer_label(s, wash, &label);
}

/* Anew in one well. While one is clean, no other is washed out: what stands there
 * can only be of use, and the washing comes no dearer later. */
static recede_code start_in(search *s, size_t wash, recede_label label, int well)
{
    const recede_work_wash *w = &s->washes->wash[wash];
    int clean = label.well[0] == RECEDE_CLEAN_WELL;
    if (label.well[well] == RECEDE_NO_WELL || (clean && well > 0))
        return RECEDE_OK;
    label.cost += recede_start_cost(&w->offers[label.offer].puddle) + (clean ? 0 : RECEDE_WASHING);
    fill(&label, well, puddle_number(wash, label.offer), s->least_left_ml[wash]);
    return offer_label(s, wash, &label);
}

/* All that one offer can follow a label with. */
static recede_code follow(search *s, size_t wash, const recede_label *from, uint32_t parent,
                          int offer)
{
    const recede_work_wash *w = &s->washes->wash[wash];
    recede_label label = *from;
    recede_code code = RECEDE_OK;
    label.cost += w->difference[w->ground < 0 ? 0 : from->under][offer];
    label.parent = parent;
    label.offer = (uint8_t)offer;
    label.added = 0;
    label.chosen = s->keeps_chosen[wash] ? label.offer : 0;
    if (!s->keeps_under[wash])
        label.under = 0;
    else if (w->ground < 0)
        label.under = label.offer;
    if (!w->offers[offer].puddle.count)
        return offer_label(s, wash, &label);
    for (int well = 0; !code && well < RECEDE_MOST_WELLS; well++) {
        code = add_to(s, wash, label, well);
        if (!code)
            code = start_in(s, wash, label, well);
    }
    return code;
}

static recede_code follow_all(search *s, size_t wash)
{
    const recede_work_wash *w = &s->washes->wash[wash];
    recede_code code = RECEDE_OK;
    for (size_t i = 0; !code && i < s->now.count; i++) {
        const recede_label *from = &s->now.items[i];
        int first = w->partner < 0 ? 0 : from->chosen;
        int end = w->partner < 0 ? w->count : first + 1;
        for (int offer = first; !code && offer < end; offer++)
            code = follow(s, wash, from, (uint32_t)i, offer);
    }
    return code;
}

/* ----------------------------------------------------------------- path -- */

static recede_code keep_traces(search *s, size_t wash)
{
    trace *traces = recede_allocate_array(s->allocator, s->then.count, sizeof *traces);
    if (!traces)
        return RECEDE_NO_MEMORY;
    for (size_t i = 0; i < s->then.count; i++) {
        const recede_label *label = &s->then.items[i];
        traces[i] = (trace){label->parent, {0}, label->offer, label->added};
        memcpy(traces[i].well, label->well, sizeof traces[i].well);
    }
    s->traces[wash] = traces;
    s->counts[wash] = s->then.count;
    return RECEDE_OK;
}

/* What stood before in the well whose puddle is new: the one puddle of before that
 * stands no longer. */
static uint16_t replaced(const uint16_t *before, const uint16_t *after)
{
    int i = 0, j = 0;
    while (i < RECEDE_MOST_WELLS && j < RECEDE_MOST_WELLS && before[i] == after[j])
        i++, j++;
    return before[i < RECEDE_MOST_WELLS ? i : RECEDE_MOST_WELLS - 1];
}

static void read_move(const trace *t, const uint16_t *before, size_t wash,
                      const recede_work_wash *w, recede_work_path *out)
{
    out->offer[wash] = t->offer;
    out->before[wash] = -1;
    out->move[wash] = RECEDE_MOVE_BARE;
    if (!w->offers[t->offer].puddle.count)
        return;
    uint16_t stood = replaced(before, t->well);
    out->move[wash] = t->added ? RECEDE_MOVE_ADD : RECEDE_MOVE_START;
    if (stood != RECEDE_CLEAN_WELL)
        out->before[wash] = (int16_t)((stood - 1) / RECEDE_MOST_OFFERS);
}

static void wells_at_first(const search *s, uint16_t *well)
{
    for (int i = 0; i < RECEDE_MOST_WELLS; i++)
        well[i] = i < s->wells ? RECEDE_CLEAN_WELL : RECEDE_NO_WELL;
}

static void read_path(const search *s, recede_work_path *out)
{
    size_t best = 0;
    uint16_t first[RECEDE_MOST_WELLS];
    wells_at_first(s, first);
    for (size_t i = 1; i < s->now.count; i++)
        if (s->now.items[i].cost < s->now.items[best].cost)
            best = i;
    out->cost = s->now.items[best].cost;
    out->exact = s->exact;
    for (size_t wash = s->washes->count; wash-- > 0;) {
        const trace *t = &s->traces[wash][best];
        best = t->parent;
        read_move(t, wash ? s->traces[wash - 1][best].well : first, wash,
                  &s->washes->wash[wash], out);
    }
}

/* ------------------------------------------------------------------ run -- */

static void free_traces(search *s)
{
    for (size_t i = 0; i < s->washes->count; i++) {
        recede_release(s->allocator, s->traces[i]);
        s->traces[i] = NULL;
    }
}

static void forget_pours(search *s)
{
    size_t count = (1 + s->washes->count * RECEDE_MOST_OFFERS) * RECEDE_MOST_OFFERS;
    for (size_t i = 0; i < count; i++)
        s->pours[i].growth = -1;
}

static recede_code paint(search *s, size_t wash, size_t keep)
{
    recede_labels_clear(&s->then);
    forget_pours(s);
    recede_code code = follow_all(s, wash);
    recede_labels_settle(&s->then);
    if (!code)
        code = recede_labels_prune(&s->then, s->wells, s->bound.anew, s->least_left_ml);
    if (!code)
        code = recede_labels_cut(&s->then, keep);
    if (!code)
        code = keep_traces(s, wash);
    if (code)
        return code;
    s->exact &= !s->then.dropped;
    recede_labels then = s->then;
    s->then = s->now;
    s->now = then;
    return RECEDE_OK;
}

static recede_code report(const search *s, double done)
{
    return s->progress && s->progress->report(s->progress->context, done) ? RECEDE_CANCELLED
                                                                          : RECEDE_OK;
}

/* One pass over all washes, done from one share of the whole to another. */
static recede_code run(search *s, size_t keep, double from, double to, recede_work_path *out)
{
    recede_label start = {0};
    size_t count = s->washes->count;
    wells_at_first(s, start.well);
    s->exact = 1;
    recede_labels_clear(&s->now);
    recede_code code = recede_labels_offer(&s->now, &start);
    for (size_t i = 0; !code && i < count; i++) {
        code = paint(s, i, keep);
        if (!code)
            code = report(s, from + (to - from) * (double)(i + 1) / (double)count);
    }
    /* Where the limit leaves nothing, the path that set it stands, as not exact. */
    if (!code && s->now.count)
        read_path(s, out);
    free_traces(s);
    return code;
}

static recede_code search_all(search *s, recede_work_path *out)
{
    size_t puddles = 1 + s->washes->count * RECEDE_MOST_OFFERS;
    s->pours = recede_allocate_array(s->allocator, puddles * RECEDE_MOST_OFFERS,
                                     sizeof *s->pours);
    if (!s->pours)
        return RECEDE_NO_MEMORY;
    find_dependence(s);
    s->limit = INFINITY;
    recede_code code = run(s, SCOUTS, 0, 0.2, out);
    s->limit = out->cost + 1; /* what rounding may add */
    if (!code && !out->exact)
        code = run(s, MOST_KEPT, 0.2, 1, out);
    recede_release(s->allocator, s->pours);
    return code;
}

recede_code recede_work_search(const recede_washes *washes, int wells,
                               const recede_allocator *allocator,
                               const recede_progress *progress, recede_work_path *out)
{
    search *s = recede_allocate_array(allocator, 1, sizeof *s);
    if (!s)
        return RECEDE_NO_MEMORY;
    memset(s, 0, sizeof *s);
    s->washes = washes;
    s->wells = wells;
    s->allocator = allocator;
    s->progress = progress;
    recede_labels_start(&s->now, MOST_AT_ONCE, allocator);
    recede_labels_start(&s->then, MOST_AT_ONCE, allocator);
    recede_code code = recede_work_bound_start(&s->bound, washes, allocator);
    if (!code)
        code = search_all(s, out);
    recede_work_bound_end(&s->bound);
    recede_labels_end(&s->now);
    recede_labels_end(&s->then);
    recede_release(allocator, s);
    return code;
}
